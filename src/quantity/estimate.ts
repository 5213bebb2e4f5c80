/**
 * A number somebody gave us, with how far off it may be. A measured length has all three alike; "don't know" carries the
 * low and high a practitioner would expect and the value in between that is most likely.
 */
export interface Estimate<Q extends number = number> {
  readonly low: Q;
  readonly typical: Q;
  readonly high: Q;
}

export const exactly = <Q extends number>(value: Q): Estimate<Q> => ({ low: value, typical: value, high: value });

export const isExact = (estimate: Estimate): boolean => estimate.low === estimate.high;

/** The same operation on all three; `change` must rise with its argument, or low and high trade places. */
export const mapEstimate = <Q extends number, R extends number>(
  estimate: Estimate<Q>,
  change: (value: Q) => R,
): Estimate<R> => {
  const [a, typical, b] = [change(estimate.low), change(estimate.typical), change(estimate.high)];
  return a <= b ? { low: a, typical, high: b } : { low: b, typical, high: a };
};
