import { scaleLinear } from 'd3-scale';
import type { Axis } from '#findings/reply.ts';

export interface AxisNumber {
  readonly value: number;
  readonly words: string;
}

/**
 * Round numbers along an axis, as many as have room, `most` at the utmost and hardly ever fewer than two. Steps are one,
 * two or five times a power of ten.
 */
export function axisNumbers(
  axis: Axis,
  most: number,
  haveRoom: (numbers: readonly AxisNumber[]) => boolean,
): readonly AxisNumber[] {
  for (let count = most; count > 1; count -= 1) {
    const numbers = numbersOf(axis, count);
    if (numbers.length > 1 && numbers.length <= most && haveRoom(numbers)) return numbers;
  }
  return numbersOf(axis, 1).slice(0, 2);
}

function numbersOf(axis: Axis, count: number): readonly AxisNumber[] {
  const scale = scaleLinear([axis.min, axis.max], [0, 1]);
  const exponential = isExponential(axis);
  const words = scale.tickFormat(count, exponential ? '~e' : undefined);
  return scale.ticks(count).map((value) => {
    if (!exponential) return { value, words: words(value) };
    return { value, words: value === 0 ? '0' : words(value).replace('e+', 'e') };
  });
}

/** Numbers too long to print out: a million and beyond, or steps finer than a thousandth. */
const isExponential = ({ min, max }: Axis): boolean =>
  Math.max(Math.abs(min), Math.abs(max)) >= 1e6 || max - min < 1e-3;
