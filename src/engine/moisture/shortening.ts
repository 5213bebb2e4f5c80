import { type Ratio, type Seconds, seconds } from '#quantity/units.ts';
import type { Bathroom, RecoveryLimits } from './bathroom.ts';
import type { RecoveryTime } from './recovery-level.ts';
import { runTime } from './run-time.ts';

/** One thing that could be done, as the bathroom it would leave. */
export interface Alternative<Name extends string> {
  readonly name: Name;
  readonly bathroom: Bathroom;
}

export interface Shortening<Name extends string> {
  readonly name: Name;
  readonly fanMayStop: RecoveryTime;
  /** How much sooner the fan may stop; no number when there is no time to compare with, before or after. */
  readonly sooner: Seconds | null;
}

/**
 * What each change would do to the run time as it is today, the shortest first.
 *
 * A bigger door gap, more flow and a fan left on in the shower all arrive as the bathroom they make; airflows must be
 * solved with the gap and duct in place. Changes that lead to no time at all come last.
 *
 * @source own working, model RT-1
 */
export function shortening<Name extends string>(
  today: RecoveryTime,
  limits: RecoveryLimits,
  alternatives: readonly Alternative<Name>[],
): readonly Shortening<Name>[] {
  return alternatives
    .map(({ name, bathroom }) => {
      const { fanMayStop } = runTime(bathroom, limits);
      const sooner = today.found && fanMayStop.found ? seconds(today.after - fanMayStop.after) : null;
      return { name, fanMayStop, sooner };
    })
    .sort((a, b) => sortingTime(a.fanMayStop) - sortingTime(b.fanMayStop));
}

/** Large rather than endless, so that two of them still compare as alike. */
const sortingTime = (time: RecoveryTime): number => (time.found ? time.after : Number.MAX_VALUE);

/**
 * The bathroom after somebody has wiped down the wet walls.
 *
 * m' = left × m
 *
 * @source own working
 */
export function squeegeed(bathroom: Bathroom, filmLeft: Ratio): Bathroom {
  return { ...bathroom, splashFilm: bathroom.splashFilm * filmLeft };
}
