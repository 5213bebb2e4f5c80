import {
  dryAirSpecificHeat,
  moistAirDensity,
  specificVolume,
  vapourSpecificHeat,
} from '#engine/psychrometrics/moist-air.ts';
import {
  type Celsius,
  celsius,
  type Metres,
  type SquareMetreKelvinsPerWatt,
  squareMetreKelvinsPerWatt,
} from '#quantity/units.ts';
import { type ExhaustDuct, exhaustAir } from './exhaust-duct.ts';

/** Heat conducted by air near 20 °C, W/(m·K). Standard property tables, from memory. */
export const airConductivity = 0.0257;
/** Dynamic viscosity of air near 20 °C, Pa·s: 1.51·10⁻⁵ m²/s at 1.2 kg/m³. Standard property tables, from memory. */
export const airViscosity = 1.812e-5;
/** Momentum over thermal diffusivity of air. Standard property tables, from memory. */
const airPrandtlNumber = 0.71;
/** Nusselt number of smooth, slow flow in a pipe at one wall temperature. Heat transfer texts, from memory. */
const laminarNusseltNumber = 3.66;

/** What keeps the heat in a duct, and how fast it cools on its way out. */
export interface DuctCooling {
  readonly insideFilm: SquareMetreKelvinsPerWatt;
  /** Inside film, wrap and outside film together: 1/U. */
  readonly overall: SquareMetreKelvinsPerWatt;
  /** Share of the temperature difference lost with each metre at the start, 1/m. */
  readonly perMetre: number;
  /** The numbers on the way there. */
  readonly reynoldsNumber: number;
  readonly nusseltNumber: number;
  /** Heat that the air passing through gives up for each kelvin it cools, W/K. */
  readonly heatCapacity: number;
}

/**
 * How fast the exhaust cools in its duct.
 *
 * Nu = max(3.66, 0.023 Re^0.8 Pr^0.3),  h_in = Nu k / D,  1/U = 1/h_in + R + R_out
 * K = U π D / (ṁ c_p)
 *
 * Re from the mean velocity, D inside diameter in m, R wrap and R_out outside film in m²·K/W, ṁ mass flow in kg/s and
 * c_p heat capacity with the vapour counted. The metal is ignored and every area taken at the inside diameter, which
 * flatters thick wrap on a small duct. The film equation is meant for Re above 10 000 (about 25 cfm in 4 in); the floor
 * carries it down to still air.
 *
 * @source Dittus and Boelter for the film; handbook heat balance for the rest
 */
export function ductCooling(duct: ExhaustDuct): DuctCooling {
  const air = exhaustAir(duct);
  const { diameter: D, airflow } = duct;
  const velocity = airflow / ((Math.PI * D * D) / 4);
  const reynoldsNumber = (velocity * D * moistAirDensity(air)) / airViscosity;
  const nusseltNumber = Math.max(laminarNusseltNumber, 0.023 * reynoldsNumber ** 0.8 * airPrandtlNumber ** 0.3);
  const insideFilm = D / (nusseltNumber * airConductivity);
  const overall = insideFilm + duct.insulation + duct.outsideFilm;
  const heatCapacity = (airflow / specificVolume(air)) * (dryAirSpecificHeat + vapourSpecificHeat * air.humidityRatio);
  return {
    insideFilm: squareMetreKelvinsPerWatt(insideFilm),
    overall: squareMetreKelvinsPerWatt(overall),
    perMetre: (Math.PI * D) / (overall * heatCapacity),
    reynoldsNumber,
    nusseltNumber,
    heatCapacity,
  };
}

/**
 * The temperature of the air some way along the duct.
 *
 * T(x) = T_a + (T₀ − T_a) e^(−K x)
 *
 * x distance from the fan in m, T₀ exhaust and T_a surrounding temperature in °C, K from `ductCooling` in 1/m, which may be
 * handed in where it is at hand.
 *
 * @source California Residential ACM reference manual, appendix A (the same balance)
 */
export function airTemperature(duct: ExhaustDuct, distance: Metres, cooling = ductCooling(duct)): Celsius {
  const spread = duct.exhaustTemperature - duct.surroundings;
  // At the fan the air has not cooled yet, not even air that all but stands still.
  const left = distance === 0 ? 1 : Math.exp(-cooling.perMetre * distance);
  return celsius(duct.surroundings + spread * left);
}

/**
 * The temperature of the inside of the wall some way along the duct: what decides whether it sweats.
 *
 * T_w = T − (T − T_a) R_in / R_total
 *
 * T air temperature there, R_in inside film and R_total overall resistance in m²·K/W.
 *
 * @source own working, heat flow in series
 */
export function wallTemperature(duct: ExhaustDuct, distance: Metres, cooling = ductCooling(duct)): Celsius {
  const { insideFilm, overall } = cooling;
  const air = airTemperature(duct, distance, cooling);
  return celsius(air - ((air - duct.surroundings) * insideFilm) / overall);
}
