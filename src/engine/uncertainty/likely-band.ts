import type { Estimate } from '#quantity/estimate.ts';
import { type Ratio, ratio } from '#quantity/units.ts';
import { likelyEnds, takeSamples } from './sampled-answers.ts';
import { type SampleCount, type SampledParameters, triangularSample } from './triangular-sample.ts';

export interface LikelyBandQuestion extends SampledParameters {
  /** The answer for one set of values. NaN says that there is none, such as a fan that cannot move the air at all. */
  readonly evaluate: (values: Float64Array) => number;
  /** What NaN counts as, where it counts: 0 for an airflow. Without it such samples are left out of the band. */
  readonly whenNone?: number;
  readonly samples?: SampleCount;
}

export interface LikelyBand extends Estimate {
  /** The share of the samples for which there was no answer. */
  readonly withoutAnswer: Ratio;
}

const usualSamples: SampleCount = 512;

/**
 * Where an answer usually lies: its 5 % and 95 % over the chances of everything unknown, and its value at the typical ones.
 *
 * low = y_(5 %),  typical = y(c_1 … c_n),  high = y_(95 %)
 *
 * y the answer, c typical values of the parameters. Widened where needed to hold the typical answer. Typical is NaN when there
 * is no answer at the typical values and nothing stands for it; low and high only when there is none anywhere.
 *
 * @source own working: lattice sampling of triangular unknowns
 */
export function likelyBand(question: LikelyBandQuestion): LikelyBand {
  const { parameters, evaluate, whenNone = Number.NaN, samples = usualSamples } = question;
  const sample = triangularSample(question, samples);
  sample.values.set(parameters.map(({ typical }) => typical));
  const typicalAnswer = evaluate(sample.values);
  const typical = Number.isNaN(typicalAnswer) ? whenNone : typicalAnswer;
  if (parameters.every(({ low, high }) => low === high)) {
    return { low: typical, typical, high: typical, withoutAnswer: ratio(Number.isNaN(typicalAnswer) ? 1 : 0) };
  }
  const answers = new Float64Array(samples);
  const missing = takeSamples({ sample, evaluate, whenNone, answers });
  const [low, high] = likelyEnds(answers);
  return {
    low: Number.isNaN(typical) ? low : Math.min(low, typical),
    typical,
    high: Number.isNaN(typical) ? high : Math.max(high, typical),
    withoutAnswer: ratio(missing / samples),
  };
}
