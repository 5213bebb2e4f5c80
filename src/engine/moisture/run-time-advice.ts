import { type Seconds, seconds } from '#quantity/units.ts';
import type { RecoveryTime } from './recovery-level.ts';

/** How run times are told: in what steps, the least worth setting a timer to, and the most before more air is needed. */
export interface RunTimeSteps {
  readonly step: Seconds;
  readonly least: Seconds;
  readonly most: Seconds;
}

export type RunTimeAdvice =
  | { readonly kind: 'run'; readonly for: Seconds }
  /** The answer is a stronger fan, a better duct or a bigger door gap, not a longer timer. */
  | { readonly kind: 'more air' }
  | { readonly kind: 'never'; readonly why: 'no air moves' | 'house air too humid' };

/**
 * What to set the timer to: the run time rounded up, held to a least, and refused past the most.
 *
 * @source own working
 */
export function runTimeAdvice(fanMayStop: RecoveryTime, steps: RunTimeSteps): RunTimeAdvice {
  if (!fanMayStop.found) {
    return fanMayStop.why === 'longer than followed' ? { kind: 'more air' } : { kind: 'never', why: fanMayStop.why };
  }
  if (fanMayStop.after > steps.most) return { kind: 'more air' };
  return { kind: 'run', for: seconds(Math.max(steps.least, roundedUp(fanMayStop.after, steps.step))) };
}

/**
 * A modelled time as it should be told: rounded up to whole steps, and never less than one, because a model that says
 * "zero" means "within minutes".
 *
 * @source own working
 */
export function roundedUp(time: Seconds, step: Seconds): Seconds {
  return seconds(Math.max(1, Math.ceil(time / step)) * step);
}
