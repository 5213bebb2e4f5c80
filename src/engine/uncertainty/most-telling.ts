import { type Ratio, ratio } from '#quantity/units.ts';
import type { LikelyBandQuestion } from './likely-band.ts';
import { likelyEnds, takeSamples } from './sampled-answers.ts';
import { type SampleCount, triangularSample } from './triangular-sample.ts';

export interface Telling {
  /** Which parameter, by its place in the list. */
  readonly parameter: number;
  /** Width of the likely band if this one were known and turned out typical. */
  readonly width: number;
  /** How much of the band's width that takes away: 0.4 is forty percent narrower. */
  readonly narrowing: Ratio;
}

export type MostTelling =
  | { readonly found: true; readonly width: number; readonly ranked: readonly [Telling, ...Telling[]] }
  | { readonly found: false; readonly why: 'nothing is unknown' | 'nothing narrows it' };

/** Each parameter takes a round of samples of its own, so these are fewer. */
const tellingSamples: SampleCount = 256;
/** Less than this is lost in the sampling and not worth a trip up the ladder. */
const leastNarrowing = 0.05;

/**
 * Which single measurement would narrow an answer most, ranked; or that none would by more than a twentieth.
 *
 * 1 − w_i / w
 *
 * w width of the likely band as things are, w_i its width with parameter i held at its typical value, from the same samples.
 * What shares a driver with i still moves.
 *
 * @source own working: lattice sampling of triangular unknowns
 */
export function mostTelling(question: LikelyBandQuestion): MostTelling {
  const { parameters, evaluate, whenNone = Number.NaN, samples = tellingSamples } = question;
  const sample = triangularSample(question, samples);
  const answers = new Float64Array(samples);
  const widthWith = (held?: { index: number; at: number }) => {
    takeSamples({ sample, evaluate, whenNone, answers, ...(held ? { held } : {}) });
    const [low, high] = likelyEnds(answers);
    return high - low;
  };
  const unknown = parameters.flatMap(({ low, typical, high }, index) => (low === high ? [] : [{ index, at: typical }]));
  if (unknown.length === 0) return { found: false, why: 'nothing is unknown' };
  const width = widthWith();
  if (!(width > 0)) return { found: false, why: 'nothing narrows it' };
  const [first, ...rest] = unknown
    .map((held) => {
      const known = widthWith(held);
      return { parameter: held.index, width: known, narrowing: ratio(1 - known / width) };
    })
    .filter(({ narrowing }) => narrowing > leastNarrowing)
    .sort((a, b) => b.narrowing - a.narrowing);
  return first === undefined
    ? { found: false, why: 'nothing narrows it' }
    : { found: true, width, ranked: [first, ...rest] };
}
