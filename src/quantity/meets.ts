/**
 * Two sums that are equal on paper may differ in the last digits of a computer. A billionth part of the limit is far below
 * anything that can be measured and far above that noise.
 */
const slack = (limit: number): number => (Number.isFinite(limit) ? 1e-9 * Math.abs(limit) : 0);

/** At least what is required: "exactly enough" passes. Never true of a number that is not one. */
export const meets = (actual: number, required: number): boolean => actual >= required - slack(required);

/** At most the limit: "exactly full" passes. Never true of a number that is not one. */
export const within = (actual: number, limit: number): boolean => actual <= limit + slack(limit);
