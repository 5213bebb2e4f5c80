import type { Estimate } from '#quantity/estimate.ts';
import type { Ratio, Sones } from '#quantity/units.ts';

/** The rule of thumb between a fan's sones and what a meter reads, with what it is worth. */
export interface SoundLevelRule {
  /** dBA of one sone of fan noise. */
  readonly atOneSone: number;
  /** dBA for every tenfold of sones. */
  readonly perDecade: number;
  /** How far off it may be either way, dB. */
  readonly accuracy: number;
  /** Below this the rule says nothing. */
  readonly leastSones: Sones;
}

/**
 * What a sound meter reads for a fan of so many sones, by the usual rule of thumb and without its error.
 *
 * L_A = a + b log₁₀ N
 *
 * L_A in dBA where the fan is listened to, N in sones, a and b of the rule. For broad fan noise without a tone.
 *
 * @source AMCA 302, attribution from memory
 */
export const meterLevel = (sones: Sones, { atOneSone, perDecade }: SoundLevelRule): number =>
  atOneSone + perDecade * Math.log10(sones);

export type MeterLevelBand =
  | { readonly known: true; readonly level: Estimate }
  | { readonly known: false; readonly why: 'too quiet for the rule' };

/**
 * The same, with the rule's error, or the admission that the fan is too quiet for it.
 *
 * L_A = a + b log₁₀ N ± u
 *
 * L_A in dBA, N in sones at or above the rule's least, u its accuracy in dB.
 *
 * @source AMCA 302, attribution from memory
 */
export function meterLevelBand(sones: Sones, rule: SoundLevelRule): MeterLevelBand {
  if (!(sones >= rule.leastSones)) return { known: false, why: 'too quiet for the rule' };
  const typical = meterLevel(sones, rule);
  return { known: true, level: { low: typical - rule.accuracy, typical, high: typical + rule.accuracy } };
}

/**
 * How many decibels a fan gains when it turns faster along the same duct.
 *
 * ΔL = 50 log₁₀ n
 *
 * ΔL in dB, n speed over the speed it was rated at.
 *
 * @source ASHRAE and AMCA fan sound law, from memory
 */
export const speedSoundChange = (speedRatio: Ratio): number => 50 * Math.log10(speedRatio);

/**
 * Several sounds heard at once.
 *
 * L = 10 log₁₀ Σ 10^(L_i / 10)
 *
 * L in dB of each and of all. At least one sound.
 *
 * @source textbook acoustics: the sum of sound energies
 */
export const levelSum = (levels: readonly number[]): number =>
  10 * Math.log10(levels.reduce((energy, level) => energy + 10 ** (level / 10), 0));
