import { type CubicMetresPerSecond, cubicMetresPerSecond, type Ratio } from '#quantity/units.ts';
import type { MeasuredAirflow } from './reading.ts';

/**
 * Airflow read off a flow hood, with the error of its kind.
 *
 * low, high = Q̄ (1 ∓ e)
 *
 * Q̄ mean of the readings in m³/s, e the error of the hood as a share. A hood without its own fan errs more than one with.
 *
 * @source Stratton, Walker and Wray 2012, LBNL-5982E
 */
export function measuredByHood({
  readings,
  error,
}: {
  readings: readonly CubicMetresPerSecond[];
  error: Ratio;
}): MeasuredAirflow {
  if (readings.length === 0) return { measured: false, why: 'no readings' };
  const mean = readings.reduce((sum, reading) => sum + reading, 0) / readings.length;
  if (!(mean > 0)) return { measured: false, why: 'not a positive reading' };
  return {
    measured: true,
    airflow: {
      low: cubicMetresPerSecond(mean * (1 - error)),
      typical: cubicMetresPerSecond(mean),
      high: cubicMetresPerSecond(mean * (1 + error)),
    },
    limits: [],
  };
}
