import { dryAirSpecificHeat } from '#engine/psychrometrics/moist-air.ts';
import {
  type CubicMetresPerSecond,
  type KilogramsPerCubicMetre,
  type Seconds,
  type Watts,
  watts,
} from '#quantity/units.ts';

const secondsPerDay = 86_400;

/** Air leaving the house, and what it weighs. */
export interface ExhaustStream {
  readonly airflow: CubicMetresPerSecond;
  readonly density: KilogramsPerCubicMetre;
}

/**
 * Heat that leaves with the exhaust while it is colder outside.
 *
 * Φ = ρ c_p Q ΔT
 *
 * Φ in W, ρ density in kg/m³, c_p = 1006 J/(kg·K), Q airflow in m³/s, ΔT indoors less outdoors in K. The vapour's own
 * heat is left out.
 *
 * @source ASHRAE Handbook, Fundamentals, residential load calculations: 1.08 Btu/h for each cfm and °F at sea level
 */
export function exhaustHeatFlow({ airflow, density }: ExhaustStream, temperatureDifference: number): Watts {
  return watts(density * dryAirSpecificHeat * airflow * temperatureDifference);
}

/** A year of weather and of running the fan. */
export interface HeatingYear {
  /** Heating degree-days, K·day. */
  readonly degreeDays: number;
  readonly runningPerDay: Seconds;
}

/**
 * Heat thrown out with the exhaust in a year, J: an upper bound for heating only.
 *
 * H = ρ c_p Q D t
 *
 * D degree-days in K·day, t running time a day in s; the fan is taken to run evenly round the clock, though a morning
 * shower meets colder air. Part of this air would have leaked out anyway. Cooling and drying the air that comes in are not
 * counted, so in a humid summer this bounds nothing.
 *
 * @source degree-day method, ASHRAE Handbook, Fundamentals; own working
 */
export function heatThrownOutPerYear(stream: ExhaustStream, { degreeDays, runningPerDay }: HeatingYear): number {
  return exhaustHeatFlow(stream, 1) * degreeDays * secondsPerDay * (runningPerDay / secondsPerDay);
}
