import { describe, expect, it } from 'vitest';
import { meets, within } from '#quantity/meets.ts';

describe('exactly enough is enough', () => {
  it('takes a sum that is equal on paper though not in the last digit', () => {
    expect(0.1 + 0.2 <= 0.3).toBe(false);
    expect(within(0.1 + 0.2, 0.3)).toBe(true);
    expect(0.3 - 0.1 >= 0.2).toBe(false);
    expect(meets(0.3 - 0.1, 0.2)).toBe(true);
  });

  it('takes a box that is exactly full', () => {
    expect(within(9 * 2.25, 20.25)).toBe(true);
    expect(meets(20.25, 9 * 2.25)).toBe(true);
  });

  it('takes nothing off a limit that can be measured', () => {
    expect(meets(49.999_999, 50)).toBe(false);
    expect(within(50.000_001, 50)).toBe(false);
    expect(meets(-50.000_001, -50)).toBe(false);
    expect(within(-49.999_999, -50)).toBe(false);
  });

  it('knows zero and infinity', () => {
    expect(meets(0, 0)).toBe(true);
    expect(within(0, 0)).toBe(true);
    expect(meets(-1e-12, 0)).toBe(false);
    expect(meets(Number.POSITIVE_INFINITY, 50)).toBe(true);
    expect(within(Number.POSITIVE_INFINITY, 50)).toBe(false);
  });

  it('lets nothing pass that is not a number', () => {
    expect(meets(Number.NaN, 50)).toBe(false);
    expect(within(Number.NaN, 50)).toBe(false);
    expect(meets(50, Number.NaN)).toBe(false);
    expect(within(50, Number.NaN)).toBe(false);
  });
});
