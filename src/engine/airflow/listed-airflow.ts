import type { CubicMetresPerSecond, Pascals } from '#quantity/units.ts';

/** A point printed on the fan's listing, not one read off a curve drawn through such points. */
export interface ListedPoint {
  readonly airflow: CubicMetresPerSecond;
  readonly staticPressure: Pascals;
}

export type ListedAirflowOutcome = 'meets' | 'falls short' | 'not listed there';

/** Labels round to whole units; the conversion must not fail a fan that meets its figure on the label. */
const labelRounding = 1e-3;

/**
 * Whether a fan's listing shows the airflow a code asks for at a static pressure.
 *
 * Q(P ≥ P_s) ≥ Q_min
 *
 * Q a listed airflow in m³/s at P, P_s the pressure the code names in Pa, Q_min the airflow it asks for. A point at a higher
 * pressure proves the lower one, and a point that is short at a lower pressure disproves the higher one, since airflow never
 * rises with pressure. With neither, the listing is silent and the answer is not known.
 *
 * @source IRC 2021 Table M1505.4.4 note a; IRC 2024 M1505.5
 */
export function listedAirflowOutcome({
  points,
  needed,
  atPressure,
}: {
  points: readonly ListedPoint[];
  needed: CubicMetresPerSecond;
  atPressure: Pascals;
}): ListedAirflowOutcome {
  const enough = ({ airflow }: ListedPoint) => airflow >= needed * (1 - labelRounding);
  const atLeast = (pressure: number) => pressure >= atPressure * (1 - labelRounding);
  const atMost = (pressure: number) => pressure <= atPressure * (1 + labelRounding);
  if (points.some((point) => atLeast(point.staticPressure) && enough(point))) return 'meets';
  if (points.some((point) => atMost(point.staticPressure) && !enough(point))) return 'falls short';
  return 'not listed there';
}
