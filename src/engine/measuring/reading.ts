import type { Estimate } from '#quantity/estimate.ts';
import type { CubicMetresPerSecond } from '#quantity/units.ts';

/** What a method of measuring should not be asked to do, and was. The number still stands, with less trust in it. */
export type MeasuringLimit =
  | 'bag fills too fast'
  | 'too few readings'
  | 'readings disagree'
  | 'box pressure too low'
  | 'box pressure too high';

/** An airflow read at a grille, with the method's error, or the reason why these readings give none. */
export type MeasuredAirflow =
  | {
      readonly measured: true;
      readonly airflow: Estimate<CubicMetresPerSecond>;
      readonly limits: readonly MeasuringLimit[];
    }
  | { readonly measured: false; readonly why: 'no readings' | 'not a positive reading' | 'too quick to time' };
