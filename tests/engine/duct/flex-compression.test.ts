import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compressionOf,
  flexFactorAt,
  flexPressureFactor,
  foilFlexPressureFactor,
  publishedFlexFactor,
} from '#engine/duct/flex-compression.ts';
import { metres, ratio } from '#quantity/units.ts';

const inches = (value: number) => metres(value * 0.0254);
const slack = ratio(0.15);

describe('flexible duct that is not pulled tight', () => {
  it.each([6, 7, 8, 9, 10])('has one factor in %d in, which was tested', (size) => {
    const factor = flexPressureFactor({ compression: slack, diameter: inches(size) });
    expect(factor.outsideTests).toBe(false);
    expect(factor.low).toBe(factor.high);
    expect(factor.typical).toBe(publishedFlexFactor({ compression: slack, diameter: inches(size) }));
  });

  // ASHRAE equation 22 by hand: 5.085 at 6 in and 6.256 at 4 in for 15 %.
  it('has a range in 4 in, from the 6 in factor to the formula, and says no test covers it', () => {
    const factor = flexPressureFactor({ compression: slack, diameter: inches(4) });
    expect(factor.low).toBeCloseTo(5.085, 2);
    expect(factor.high).toBeCloseTo(6.256, 2);
    expect(factor.typical).toBeCloseTo((5.085 + 6.256) / 2, 2);
    expect(factor.outsideTests).toBe(true);
  });

  it('leans from the nearest test to the formula, and not at all where it was tested', () => {
    const at = (size: number, lean: number) => flexFactorAt({ compression: slack, diameter: inches(size), lean });
    const { low, typical, high } = flexPressureFactor({ compression: slack, diameter: inches(4) });
    expect([at(4, 0), at(4, 0.5), at(4, 1)]).toEqual([low, typical, high]);
    expect(at(8, 0)).toBe(at(8, 1));
  });

  it('counts 150 mm as the 6 in that was tested', () => {
    expect(flexPressureFactor({ compression: slack, diameter: metres(0.15) }).outsideTests).toBe(false);
    expect(flexPressureFactor({ compression: slack, diameter: metres(0.127) }).outsideTests).toBe(true);
    expect(flexPressureFactor({ compression: slack, diameter: inches(12) }).outsideTests).toBe(true);
  });

  it('never costs less than duct pulled tight, and more slack never costs less', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.44, noNaN: true }),
        fc.double({ min: 0.001, max: 0.01, noNaN: true }),
        fc.double({ min: 0.07, max: 0.4, noNaN: true }).map(metres),
        (compression, more, diameter) => {
          for (const factorOf of [flexPressureFactor, foilFlexPressureFactor]) {
            const less = factorOf({ compression: ratio(compression), diameter });
            const slacker = factorOf({ compression: ratio(compression + more), diameter });
            expect(less.low).toBeGreaterThanOrEqual(1);
            expect(less.low).toBeLessThanOrEqual(less.typical);
            expect(less.typical).toBeLessThanOrEqual(less.high);
            expect(slacker.high).toBeGreaterThan(less.high);
            expect(slacker.low).toBeGreaterThanOrEqual(less.low);
          }
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });

  it('is told from the length pulled tight and the length as it lies', () => {
    expect(compressionOf({ stretchedLength: metres(4), installedLength: metres(3.4) })).toBeCloseTo(0.15, 12);
  });
});

describe('foil flexible duct', () => {
  it('takes no factor in the likely answer, and the wire-helix one only in the worst', () => {
    const factor = foilFlexPressureFactor({ compression: slack, diameter: inches(4) });
    expect(factor).toMatchObject({ low: 1, typical: 1, outsideTests: true });
    expect(factor.high).toBe(publishedFlexFactor({ compression: slack, diameter: inches(6) }));
  });

  it('is as printed when nothing is squeezed', () => {
    expect(foilFlexPressureFactor({ compression: ratio(0), diameter: inches(4) })).toEqual({
      low: 1,
      typical: 1,
      high: 1,
      outsideTests: false,
    });
  });
});
