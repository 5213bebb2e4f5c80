import {
  type CubicMetres,
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type KilogramsPerCubicMetre,
  type Pascals,
  pascals,
  type Ratio,
  ratio,
  type SquareMetres,
} from '#quantity/units.ts';
import { openingNeeded } from './orifice.ts';

/** The pressure a blower door holds a house at. Definition of the test. */
const testPressure = pascals(50);
const secondsPerHour = 3600;

/** How leaky a house is: what a blower door finds, and the shape of its cracks. */
export interface HouseLeakage {
  /** Airflow that holds the house 50 Pa from outdoors; above zero. */
  readonly airflowAt50: CubicMetresPerSecond;
  /** Flow exponent: 0.5 for holes, 1 for hairline cracks, 0.65 for most houses. */
  readonly exponent: Ratio;
}

/**
 * How far the house falls below outdoors when more air is drawn out than blown in.
 *
 * Δp = 50 (Q / Q₅₀)^(1/n)
 *
 * Q net exhaust in m³/s, Q₅₀ leakage at 50 Pa in m³/s, n exponent from 0.5 to 1; below 50 Pa a larger n reads higher.
 * A calm day with no stack effect, and the house as one room: a shut-up furnace room can be tighter than the house. A
 * reading of 2 Pa is less than a breeze makes: it cannot be ruled out, and it clears nothing.
 *
 * @source power law of building leakage, as in ASTM E779
 */
export function houseDepressurisation(
  { airflowAt50, exponent }: HouseLeakage,
  netExhaust: CubicMetresPerSecond,
): Pascals {
  return pascals(testPressure * (Math.max(0, netExhaust) / airflowAt50) ** (1 / exponent));
}

/**
 * What all the fans together draw out of the house. Take each at its upper flow: for appliances, more is worse.
 *
 * Q = max(0, Σ exhausts − Σ supplies)
 *
 * @source own working
 */
export function netExhaust({
  exhausts,
  supplies,
}: {
  readonly exhausts: readonly CubicMetresPerSecond[];
  readonly supplies: readonly CubicMetresPerSecond[];
}): CubicMetresPerSecond {
  return cubicMetresPerSecond(Math.max(0, total(exhausts) - total(supplies)));
}

const total = (flows: readonly CubicMetresPerSecond[]): number => flows.reduce((sum, flow) => sum + flow, 0);

/**
 * Leakage at 50 Pa from air changes at 50 Pa.
 *
 * Q₅₀ = N₅₀ V / 3600
 *
 * N₅₀ air changes per hour, V volume of the house in m³.
 *
 * @source definition, ASTM E779
 */
export function leakageFromAirChanges(volume: CubicMetres, airChangesAt50: Ratio): CubicMetresPerSecond {
  return cubicMetresPerSecond((airChangesAt50 * volume) / secondsPerHour);
}

/**
 * Air changes at 50 Pa from leakage at 50 Pa, per hour.
 *
 * N₅₀ = 3600 Q₅₀ / V
 *
 * @source definition, ASTM E779
 */
export function airChangesFromLeakage(volume: CubicMetres, airflowAt50: CubicMetresPerSecond): Ratio {
  return ratio((airflowAt50 * secondsPerHour) / volume);
}

/** How a leakage area is defined: at which pressure, and as what kind of opening. */
export interface LeakageAreaDefinition {
  /** 4 Pa for ELA, 10 Pa for EqLA. */
  readonly pressure: Pascals;
  /** 1 for ELA, 0.611 for EqLA. */
  readonly dischargeCoefficient: Ratio;
  readonly density: KilogramsPerCubicMetre;
}

/**
 * All the cracks of a house gathered into one hole.
 *
 * A = Q₅₀ (Δp/50)^n / (C_d √(2 Δp / ρ))
 *
 * Δp and C_d as the definition has them, ρ in kg/m³.
 *
 * @source ASTM E779 (ELA at 4 Pa); CAN/CGSB-149.10 (EqLA at 10 Pa); arithmetic own working
 */
export function leakageArea({ airflowAt50, exponent }: HouseLeakage, definition: LeakageAreaDefinition): SquareMetres {
  const airflow = cubicMetresPerSecond(airflowAt50 * (definition.pressure / testPressure) ** exponent);
  return openingNeeded({ ...definition, airflow });
}
