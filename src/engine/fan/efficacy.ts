import type { CubicMetresPerSecond, Ratio, Watts } from '#quantity/units.ts';

/**
 * Air moved for each watt, the figure by which codes limit a fan's appetite.
 *
 * η = Q / W
 *
 * η in m³/s per watt, Q airflow in m³/s, W power in watts, both at the same rated point.
 *
 * @source IECC, whole-dwelling mechanical ventilation fan efficacy
 */
export const fanEfficacy = ({ airflow, power }: { airflow: CubicMetresPerSecond; power: Watts }): number =>
  airflow / power;

/** The least efficacy for fans of a size: m³/s per watt for airflows up to and not including `below`. */
export interface EfficacyLimit {
  readonly below: CubicMetresPerSecond;
  readonly least: number;
}

/** A label rounds its figures; a fan that meets its limit on the label is not failed by the conversion. */
const labelRounding = 1e-3;

export type EfficacyOutcome = 'meets' | 'falls short' | 'not limited';

/**
 * Whether a fan moves enough air for each watt.
 *
 * Q / W ≥ η_min(Q)
 *
 * Q rated airflow in m³/s, W power in watts, η_min the limit for that size, in m³/s per watt. A thousandth is forgiven.
 *
 * @source IECC, whole-dwelling mechanical ventilation fan efficacy
 */
export function efficacyOutcome({
  airflow,
  power,
  limits,
}: {
  airflow: CubicMetresPerSecond;
  power: Watts;
  limits: readonly EfficacyLimit[];
}): EfficacyOutcome {
  const limit = limits.toSorted((a, b) => a.below - b.below).find(({ below }) => airflow < below);
  if (limit === undefined) return 'not limited';
  return fanEfficacy({ airflow, power }) >= limit.least * (1 - labelRounding) ? 'meets' : 'falls short';
}

/**
 * Whether a fan keeps enough of its rated flow at the higher of its two rated pressures.
 *
 * Q_high / Q_low ≥ r
 *
 * Airflow at both rated pressures in m³/s, r the share asked for.
 *
 * @source ENERGY STAR ventilating fans, installed-airflow criterion
 */
export const keepsItsAirflow = ({
  atLowPressure,
  atHighPressure,
  share,
}: {
  atLowPressure: CubicMetresPerSecond;
  atHighPressure: CubicMetresPerSecond;
  share: Ratio;
}): boolean => atHighPressure >= atLowPressure * share * (1 - labelRounding);
