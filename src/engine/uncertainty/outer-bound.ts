import { type Estimate, isExact } from '#quantity/estimate.ts';

/**
 * How an answer moves as a parameter grows: always up, always down, first one way and then the other (`hump`, either way up),
 * or not at all. A parameter that is one of several kinds has no direction: ask for a bound for each kind.
 */
export type Direction = 'up' | 'down' | 'hump' | 'none';

export interface BoundedParameter extends Estimate {
  readonly direction: Direction;
}

export interface OuterBoundQuestion {
  readonly parameters: readonly BoundedParameter[];
  /** The answer for one set of values; NaN says that there is none. */
  readonly evaluate: (values: Float64Array) => number;
  /** What NaN counts as: 0 for an airflow. Without it a bound that meets NaN is NaN. */
  readonly whenNone?: number;
}

export interface OuterBound {
  readonly low: number;
  readonly high: number;
}

/** Grid points along each humped parameter, by how many there are: fewer the more there are. */
const gridPoints = [1, 9, 9, 5] as const;
const fewestGridPoints = 3;
/** After the grid, each humped parameter is closed in on between its neighbours, one after another, this often. */
const refiningRounds = 2;
const goldenSteps = 14;
const golden = (Math.sqrt(5) - 1) / 2;

/**
 * The least and the most an answer can be, with every unknown anywhere in its range.
 *
 * low = min y,  high = max y
 *
 * y the answer. Parameters that act one way sit at the end that is worst or best, so two evaluations are enough where all do.
 * Humped ones are searched on a grid and then closed in on by golden section. True only as far as the directions are.
 *
 * @source own working: corners for one-way parameters, grid and golden section inside
 */
export function outerBound(question: OuterBoundQuestion): OuterBound {
  return { low: -extreme(question, -1), high: extreme(question, 1) };
}

/** The most of y for sign 1; the most of −y for sign −1. */
function extreme({ parameters, evaluate, whenNone = Number.NaN }: OuterBoundQuestion, sign: 1 | -1): number {
  const values = Float64Array.from(parameters, ({ direction, low, typical, high }) => {
    if (direction === 'up') return sign === 1 ? high : low;
    if (direction === 'down') return sign === 1 ? low : high;
    return typical;
  });
  const signed = () => {
    const answer = evaluate(values);
    return sign * (Number.isNaN(answer) ? whenNone : answer);
  };
  const humps = parameters.flatMap((parameter, index) =>
    parameter.direction === 'hump' && !isExact(parameter) ? [{ index, low: parameter.low, high: parameter.high }] : [],
  );
  let best = signed();
  if (humps.length === 0) return best;

  const across = gridPoints[humps.length] ?? fewestGridPoints;
  const bestValues = Float64Array.from(values);
  for (let cell = 0; cell < across ** humps.length; cell += 1) {
    let rest = cell;
    for (const { index, low, high } of humps) {
      values[index] = low + ((high - low) * (rest % across)) / (across - 1);
      rest = Math.floor(rest / across);
    }
    const answer = signed();
    if (Number.isNaN(answer)) return answer;
    if (answer > best) {
      best = answer;
      bestValues.set(values);
    }
  }

  for (let round = 0; round < refiningRounds; round += 1) {
    for (const { index, low, high } of humps) {
      values.set(bestValues);
      const spacing = (high - low) / (across - 1);
      let from = Math.max(low, (bestValues[index] as number) - spacing);
      let to = Math.min(high, (bestValues[index] as number) + spacing);
      for (let step = 0; step < goldenSteps; step += 1) {
        const [left, right] = [to - golden * (to - from), from + golden * (to - from)];
        const [atLeft, atRight] = [at(left, index), at(right, index)];
        if (atLeft > atRight) to = right;
        else from = left;
      }
    }
  }
  return best;

  function at(value: number, index: number): number {
    values[index] = value;
    const answer = signed();
    if (answer > best) {
      best = answer;
      bestValues.set(values);
    }
    return answer;
  }
}
