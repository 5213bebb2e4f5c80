import { type CubicMetresPerSecond, type Seconds, type Watts, watts } from '#quantity/units.ts';

const daysPerYear = 365;

/**
 * What a fan draws from the wall, from its airflow and efficacy.
 *
 * P = Q / e
 *
 * P in W, Q airflow in m³/s, e efficacy in m³/s for each watt, above zero.
 *
 * @source definition of fan efficacy, as in the energy codes
 */
export function fanPower(airflow: CubicMetresPerSecond, efficacy: number): Watts {
  return watts(airflow / efficacy);
}

/**
 * Electricity a fan uses in a year, J.
 *
 * E = 365 P t
 *
 * P power in W, t running time a day in s. A fan on two speeds counts as two.
 *
 * @source own working
 */
export function fanEnergyPerYear(power: Watts, runningPerDay: Seconds): number {
  return daysPerYear * power * runningPerDay;
}
