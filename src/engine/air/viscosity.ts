import { absoluteZeroOffset } from '#engine/psychrometrics/saturation-pressure.ts';
import type { Celsius, KilogramsPerCubicMetre } from '#quantity/units.ts';

/** β, kg/(s·m·√K). U.S. Standard Atmosphere 1976, table 2. */
const sutherlandFactor = 1.458e-6;
/** S, K. U.S. Standard Atmosphere 1976, table 2. */
const sutherlandTemperature = 110.4;

/**
 * How thick the air is, in Pa·s. Warm air is a little thicker than cold air; height makes no difference.
 *
 * μ = β T^1.5 / (T + S)
 *
 * T in K, β = 1.458·10⁻⁶, S = 110.4 K. Good to about 1 % from −100 °C to 500 °C.
 *
 * @source U.S. Standard Atmosphere 1976, equation 51 (Sutherland)
 */
export function dynamicViscosity(temperature: Celsius): number {
  const T = temperature + absoluteZeroOffset;
  return (sutherlandFactor * T * Math.sqrt(T)) / (T + sutherlandTemperature);
}

/**
 * Thickness of the air against its weight, in m²/s: what decides whether it flows smoothly or tumbles.
 *
 * ν = μ / ρ
 *
 * μ dynamic viscosity in Pa·s, ρ density in kg/m³.
 *
 * @source U.S. Standard Atmosphere 1976, equation 52
 */
export function kinematicViscosity(air: {
  readonly temperature: Celsius;
  readonly density: KilogramsPerCubicMetre;
}): number {
  return dynamicViscosity(air.temperature) / air.density;
}
