import { type Sones, sones } from '#quantity/units.ts';

/** Loudness level of one sone, by definition. ISO 131. */
const phonsOfOneSone = 40;
const phonsPerDoubling = 10;
/** Below one sone loudness falls off by this power. ISO 532. */
const quietExponent = 0.35;

/**
 * Loudness level of a loudness.
 *
 * N ≥ 1: L = 40 + 10 log₂ N,  N < 1: L = 40 N^0.35
 *
 * L in phons, N in sones, over 0. The quiet form leaves out the standard's 0.0005 sone, which moves 0.3 sone by 0.02 phon.
 *
 * @source ISO 131 at one sone and above; ISO 532 below
 */
export const loudnessLevel = (loudness: Sones): number =>
  loudness >= 1 ? phonsOfOneSone + phonsPerDoubling * Math.log2(loudness) : phonsOfOneSone * loudness ** quietExponent;

/**
 * Loudness of a loudness level.
 *
 * L ≥ 40: N = 2^((L − 40) / 10),  L < 40: N = (L / 40)^(1 / 0.35)
 *
 * N in sones, L in phons; nothing is heard at 0 phons and under.
 *
 * @source ISO 131 at 40 phons and above; ISO 532 below
 */
export const loudness = (level: number): Sones =>
  sones(
    level >= phonsOfOneSone
      ? 2 ** ((level - phonsOfOneSone) / phonsPerDoubling)
      : (Math.max(0, level) / phonsOfOneSone) ** (1 / quietExponent),
  );

/**
 * Loudness of a noise made louder or softer by some decibels.
 *
 * N_2 = N(L(N_1) + ΔL)
 *
 * N in sones, ΔL in dB taken as phons, which holds for a noise whose colour stays the same.
 *
 * @source ISO 131 and ISO 532
 */
export const loudnessChanged = (from: Sones, decibels: number): Sones => loudness(loudnessLevel(from) + decibels);
