import type { Estimate } from '#quantity/estimate.ts';
import type { MetresPerSecond, Pascals, Ratio, Sones } from '#quantity/units.ts';
import { loudnessChanged } from './loudness.ts';
import { speedSoundChange } from './sound-level.ts';

/** What is taken about the noise of a small fan away from its rated point. None of it is printed on a label. */
export interface SoundAllowances {
  /** dB either way between the rating and the same fan screwed to joists. */
  readonly asInstalled: Estimate;
  /** dB for every tenfold of static pressure above the rated one. */
  readonly perPressureDecade: Estimate;
  /** Duct velocity above which air noise begins. The low one begins soonest. */
  readonly airNoiseFrom: Estimate<MetresPerSecond>;
  /** dB for every tenfold of velocity above that. */
  readonly perVelocityDecade: Estimate;
}

export interface SoundQuestion {
  /** Absent when the fan has no sound rating. */
  readonly ratedSones?: Sones;
  /** Static pressure of the sound rating. */
  readonly ratedAt: Pascals;
  /** Where the fan really works. */
  readonly staticPressure: Pascals;
  /** Speed of the setting over the speed of the rating; 1 where the setting has its own rating. */
  readonly speedRatio: Ratio;
  /** In the narrowest duct near the fan. */
  readonly ductVelocity: MetresPerSecond;
  readonly allowances: SoundAllowances;
}

export type SoundBand =
  | {
      readonly told: true;
      readonly sones: Estimate<Sones>;
      /** Where the change comes from, in dB. */
      readonly changes: { readonly speed: number; readonly pressure: Estimate; readonly airNoise: Estimate };
    }
  | { readonly told: false; readonly why: 'no sound rating' };

/** A fan at much less than its rated pressure is not credited with more quiet than this share of the pressure gives. */
export const leastPressureRatio = 0.5;

/**
 * How loud a fan is where it really works, as a band. A fan without a sound rating gets no number at all.
 *
 * ΔL = 50 log₁₀ n + c_p log₁₀(P / (n² P_r)) + c_v log₁₀(V / V_0) + u,  N = N(L(N_r) + ΔL)
 *
 * N loudness and N_r its rating in sones, L in phons, n speed ratio, P static pressure and P_r that of the rating in Pa, V air
 * velocity in the duct and V_0 the one where air noise begins in m/s, c the allowances and u that for mounting, in dB. Low
 * takes every allowance at its low end. Not for a fan hung far off in the attic.
 *
 * @source ASHRAE fan sound law and the empirical 20 log p of fan sound power for speed and pressure; the rest common practice
 */
export function soundBand({
  ratedSones,
  ratedAt,
  staticPressure,
  speedRatio,
  ductVelocity,
  allowances,
}: SoundQuestion): SoundBand {
  if (ratedSones === undefined || !(ratedSones > 0)) return { told: false, why: 'no sound rating' };
  const speed = speedSoundChange(speedRatio);
  const pressureRatio = Math.max(leastPressureRatio, staticPressure / (speedRatio * speedRatio * ratedAt));
  const pressure = inOrder((end) => allowances.perPressureDecade[end] * Math.log10(pressureRatio));
  const { airNoiseFrom, perVelocityDecade } = allowances;
  const airNoise = {
    low: above(ductVelocity, airNoiseFrom.high) * perVelocityDecade.low,
    typical: above(ductVelocity, airNoiseFrom.typical) * perVelocityDecade.typical,
    high: above(ductVelocity, airNoiseFrom.low) * perVelocityDecade.high,
  };
  const sones = inOrder((end) =>
    loudnessChanged(ratedSones, speed + pressure[end] + airNoise[end] + allowances.asInstalled[end]),
  );
  return { told: true, sones, changes: { speed, pressure, airNoise } };
}

const above = (velocity: number, from: number): number => Math.max(0, Math.log10(velocity / from));

function inOrder<Q extends number>(at: (end: keyof Estimate) => Q): Estimate<Q> {
  const [low, typical, high] = [at('low'), at('typical'), at('high')];
  return low <= high ? { low, typical, high } : { low: high, typical, high: low };
}

export type RatedSoundOutcome = 'meets' | 'too loud' | 'no sound rating' | 'exempt';

/**
 * Whether a fan's sound rating is quiet enough for the way it runs. Judged by the rating, not by the noise where it is mounted.
 *
 * N_r ≤ N_max
 *
 * N_r rated and N_max allowed loudness in sones. An exempt fan is never too loud.
 *
 * @source ASHRAE 62.2, section 7.2
 */
export function ratedSoundOutcome({
  ratedSones,
  most,
  exempt,
}: {
  ratedSones?: Sones;
  most: Sones;
  exempt: boolean;
}): RatedSoundOutcome {
  if (exempt) return 'exempt';
  if (ratedSones === undefined) return 'no sound rating';
  return ratedSones <= most ? 'meets' : 'too loud';
}
