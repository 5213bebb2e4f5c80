import {
  type CubicMetres,
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type SquareMetres,
} from '#quantity/units.ts';

const secondsPerHour = 3600;

/**
 * Airflow for a bathroom by the size of its floor.
 *
 * Q = q A
 *
 * Q in m³/s, q airflow for each square metre in m³/(s·m²), A floor area in m². Meant for ceilings of ordinary height and
 * rooms up to the area the guideline names.
 *
 * @source HVI residential ventilation guideline, bathrooms
 */
export const floorAreaAirflow = ({ area, perArea }: { area: SquareMetres; perArea: number }): CubicMetresPerSecond =>
  cubicMetresPerSecond(perArea * area);

/** Fixtures that count, each once. A shower over a tub is one fixture, and so is a jetted tub with a shower head. */
export interface Fixtures<Each extends number = number> {
  readonly toilet: Each;
  readonly shower: Each;
  readonly tub: Each;
  readonly jettedTub: Each;
}

/**
 * Airflow for a large bathroom by what stands in it.
 *
 * Q = Σ n_i q_i
 *
 * Q in m³/s, n_i how many of a fixture, q_i airflow for each in m³/s. Counts of nought or more.
 *
 * @source HVI residential ventilation guideline, bathrooms
 */
export const fixtureAirflow = ({
  fixtures,
  rates,
}: {
  fixtures: Fixtures;
  rates: Fixtures<CubicMetresPerSecond>;
}): CubicMetresPerSecond =>
  cubicMetresPerSecond(
    fixtures.toilet * rates.toilet +
      fixtures.shower * rates.shower +
      fixtures.tub * rates.tub +
      fixtures.jettedTub * rates.jettedTub,
  );

/**
 * Airflow that changes all the air in a room a number of times an hour.
 *
 * Q = V n / 3600
 *
 * Q in m³/s, V volume of the room in m³, n air changes per hour.
 *
 * @source HVI residential ventilation guideline, bathrooms
 */
export const airChangeAirflow = ({
  volume,
  airChangesPerHour,
}: {
  volume: CubicMetres;
  airChangesPerHour: number;
}): CubicMetresPerSecond => cubicMetresPerSecond((volume * airChangesPerHour) / secondsPerHour);
