import type { Estimate } from '#quantity/estimate.ts';
import {
  type CubicMetres,
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type Ratio,
  type Seconds,
} from '#quantity/units.ts';
import type { MeasuredAirflow, MeasuringLimit } from './reading.ts';

/** How far a bag and a stopwatch can be trusted. */
export interface BagTrust {
  /** How far each timing may be off, at both ends together. */
  readonly reaction: Seconds;
  /** Under this the timing is mostly reaction. */
  readonly shortestTime: Seconds;
  /** How many readings make a mean worth having. */
  readonly fewestReadings: number;
  /** Spread of the readings over their mean above which something else is going on. */
  readonly widestSpread: Ratio;
}

/**
 * Airflow from a bag that empties into an exhaust grille, or fills at an outlet.
 *
 * Q = V / t̄,  ± √(r² + (2 s / √n)²) on t̄
 *
 * Q in m³/s, V volume of the full bag in m³, t̄ mean of n times in s, s their standard deviation, r how far a timing may be off.
 * Poor under `shortestTime`; no number at all when the error eats the whole time.
 *
 * @source RESNET 804, timed bag; error by own working
 */
export function timedBagAirflow({
  volume,
  times,
  trust,
}: {
  volume: Estimate<CubicMetres>;
  times: readonly Seconds[];
  trust: BagTrust;
}): MeasuredAirflow {
  if (times.length === 0) return { measured: false, why: 'no readings' };
  if (!times.every((time) => time > 0) || !(volume.low > 0)) return { measured: false, why: 'not a positive reading' };
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length;
  const scatter = times.length < 2 ? 0 : 2 * standardError(times, mean);
  const error = Math.hypot(trust.reaction, scatter);
  if (error >= mean) return { measured: false, why: 'too quick to time' };
  const limits: MeasuringLimit[] = [];
  if (mean < trust.shortestTime) limits.push('bag fills too fast');
  if (times.length < trust.fewestReadings) limits.push('too few readings');
  if ((Math.max(...times) - Math.min(...times)) / mean > trust.widestSpread) limits.push('readings disagree');
  return {
    measured: true,
    airflow: {
      low: cubicMetresPerSecond(volume.low / (mean + error)),
      typical: cubicMetresPerSecond(volume.typical / mean),
      high: cubicMetresPerSecond(volume.high / (mean - error)),
    },
    limits,
  };
}

const standardError = (values: readonly number[], mean: number): number =>
  Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1) / values.length);

/**
 * The most airflow a bag can measure before it fills faster than a person can time.
 *
 * Q = V / t_min
 *
 * Q in m³/s, V volume of the bag in m³, t_min shortest time worth reading in s.
 *
 * @source RESNET 804, timed bag, turned round
 */
export const mostAirflowForBag = (volume: CubicMetres, shortestTime: Seconds): CubicMetresPerSecond =>
  cubicMetresPerSecond(volume / shortestTime);
