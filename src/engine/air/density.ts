import { atmosphericPressure } from '#engine/psychrometrics/atmospheric-pressure.ts';
import { absoluteZeroOffset } from '#engine/psychrometrics/saturation-pressure.ts';
import {
  type Celsius,
  celsius,
  type KilogramsPerCubicMetre,
  kilogramsPerCubicMetre,
  type Metres,
  metres,
  type Ratio,
  ratio,
} from '#quantity/units.ts';

/**
 * Standard air, 0.075 lb/ft³: the air that fan ratings and friction charts are drawn for. ASHRAE Handbook, Fundamentals,
 * Duct Design. The SI edition of the chapter rounds to 1.204, a quarter of a percent more.
 */
export const standardAirDensity = kilogramsPerCubicMetre(1.2014);

/** The temperature of standard air, 70 °F. ASHRAE Handbook, Fundamentals, Duct Design. */
export const standardAirTemperature = celsius(21.11);

const seaLevel = metres(0);

/** Where a job is and how warm its air is. */
export interface Surroundings {
  /** Above the sea. */
  readonly altitude: Metres;
  readonly temperature: Celsius;
}

/**
 * How heavy the air is beside standard air: 0.83 in a town at 5000 ft means 17 % lighter.
 *
 * ρ/ρ₀ = (p/p₀) (T₀/T)
 *
 * p from the standard atmosphere, T in K, T₀ = 294.26 K. Dry air below 11 000 m; steam from a shower takes off a further
 * percent at most.
 *
 * @source U.S. Standard Atmosphere 1976 for p/p₀; perfect-gas law for temperature
 */
export function densityRatio({ altitude, temperature }: Surroundings): Ratio {
  const pressure = atmosphericPressure(altitude) / atmosphericPressure(seaLevel);
  return ratio((pressure * (standardAirTemperature + absoluteZeroOffset)) / (temperature + absoluteZeroOffset));
}

/**
 * What a cubic metre of air weighs at a height and temperature.
 *
 * ρ = 1.2014 (ρ/ρ₀)
 *
 * Tied to standard air rather than to the gas constant, so that a job at sea level and 70 °F has exactly the air its fan
 * was rated in.
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design, standard air; U.S. Standard Atmosphere 1976
 */
export function airDensity(surroundings: Surroundings): KilogramsPerCubicMetre {
  return kilogramsPerCubicMetre(standardAirDensity * densityRatio(surroundings));
}
