import { within } from '#quantity/meets.ts';
import { type Amperes, amperes, type Ratio, type Volts, type Watts, watts } from '#quantity/units.ts';
import type { Gauge } from './gauge.ts';

/**
 * The most a breaker, a switch or a circuit may be loaded to when only a share of its rating may be used.
 *
 * I_max = share × rating
 *
 * @source NFPA 70 (National Electrical Code), 210.23(A)(2), 404.14 and 210.20(A), which differ in the share
 */
export function mostCurrent(rating: Amperes, share: Ratio): Amperes {
  return amperes(rating * share);
}

/**
 * The watts that go with that current when the load is a plain resistance.
 *
 * P_max = share × rating × V
 *
 * @source own working
 */
export function mostPower({
  rating,
  share,
  voltage,
}: {
  readonly rating: Amperes;
  readonly share: Ratio;
  readonly voltage: Volts;
}): Watts {
  return watts(mostCurrent(rating, share) * voltage);
}

/**
 * What a load that stays on for hours counts as, when wire and breaker are chosen for it.
 *
 * I_counted = factor × I
 *
 * @source NFPA 70 (National Electrical Code), 210.19(A), 210.20(A) and 424.4(B)
 */
export function continuousCurrent(current: Amperes, factor: Ratio): Amperes {
  return amperes(current * factor);
}

export type BreakerForLoad =
  | { readonly found: true; readonly breaker: Amperes }
  | { readonly found: false; readonly why: 'more-than-any-listed' };

/**
 * The smallest standard breaker that carries a counted current. The label of the unit goes before it.
 *
 * smallest rating with rating ≥ I_counted
 *
 * @source NFPA 70 (National Electrical Code), 240.6(A) for the ratings
 */
export function breakerForLoad(counted: Amperes, standardRatings: readonly Amperes[]): BreakerForLoad {
  const breaker = standardRatings.toSorted((a, b) => a - b).find((rating) => within(counted, rating));
  return breaker === undefined ? { found: false, why: 'more-than-any-listed' } : { found: true, breaker };
}

/**
 * Whether a copper wire is thick enough for the breaker ahead of it. A size that has no listed ceiling is not.
 *
 * rating ≤ ceiling of the wire size
 *
 * @source NFPA 70 (National Electrical Code), 240.4(D)
 */
export function wireAllowsBreaker(
  { awg, breaker }: { readonly awg: Gauge; readonly breaker: Amperes },
  ceilings: ReadonlyMap<Gauge, Amperes>,
): boolean {
  const ceiling = ceilings.get(awg);
  return ceiling !== undefined && within(breaker, ceiling);
}
