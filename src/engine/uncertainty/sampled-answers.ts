import type { TriangularSample } from './triangular-sample.ts';

const lowShare = 0.05;
const highShare = 0.95;

export interface Sampling {
  readonly sample: TriangularSample;
  readonly evaluate: (values: Float64Array) => number;
  readonly whenNone: number;
  /** Filled with the answers. */
  readonly answers: Float64Array;
  /** A parameter held at its typical value instead. */
  readonly held?: { readonly index: number; readonly at: number };
}

/**
 * Fills `answers` with one round of samples and counts how many of them had no answer. The same round every time.
 *
 * y_n = y(x_n)
 *
 * y the answer, x_n the values of sample n.
 *
 * @source own working: lattice sampling of triangular unknowns
 */
export function takeSamples({ sample, evaluate, whenNone, answers, held }: Sampling): number {
  let missing = 0;
  sample.restart();
  for (let n = 0; n < answers.length; n += 1) {
    sample.next();
    if (held) sample.values[held.index] = held.at;
    const answer = evaluate(sample.values);
    const missed = Number.isNaN(answer);
    if (missed) missing += 1;
    answers[n] = missed ? whenNone : answer;
  }
  return missing;
}

/**
 * The 5 % and 95 % of some answers, leaving out NaN, which sorting puts last. Sorts them in place.
 *
 * y_(p) at place p (n − 1) among n sorted answers, straight between neighbours
 *
 * Both NaN when there is no answer at all.
 *
 * @source textbook statistics: linear interpolation of order statistics
 */
export function likelyEnds(answers: Float64Array): readonly [number, number] {
  answers.sort();
  let count = answers.length;
  while (count > 0 && Number.isNaN(answers[count - 1])) count -= 1;
  return [quantile(answers, count, lowShare), quantile(answers, count, highShare)];
}

function quantile(sorted: Float64Array, count: number, share: number): number {
  if (count === 0) return Number.NaN;
  const place = share * (count - 1);
  const below = Math.floor(place);
  const lower = sorted[below] as number;
  const upper = sorted[Math.min(below + 1, count - 1)] as number;
  return lower + (upper - lower) * (place - below);
}
