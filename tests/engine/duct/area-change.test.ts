import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coefficientOnDiameter,
  coneAngle,
  conicalContraction,
  conicalExpansion,
  suddenContraction,
  suddenExpansion,
} from '#engine/duct/area-change.ts';
import { metres, ratio } from '#quantity/units.ts';

const laws = { seed: 1, numRuns: 200 };
const ends = fc
  .tuple(fc.double({ min: 0.07, max: 0.2, noNaN: true }), fc.double({ min: 1, max: 3, noNaN: true }))
  .map(([small, times]) => ({ small: metres(small), large: metres(small * times) }));
const angle = fc.double({ min: 0.01, max: Math.PI, noNaN: true });

describe('where the duct changes size', () => {
  it('a cone never loses more than a flat step', () => {
    fc.assert(
      fc.property(ends, angle, (change, includedAngle) => {
        const cone = { ...change, includedAngle };
        expect(conicalContraction(cone)).toBeLessThanOrEqual(suddenContraction(change) + 1e-12);
        expect(conicalExpansion(cone)).toBeLessThanOrEqual(suddenExpansion(change) + 1e-12);
        expect(conicalContraction(cone)).toBeGreaterThanOrEqual(0);
      }),
      laws,
    );
  });

  it('a cone of no length is a flat step', () => {
    fc.assert(
      fc.property(ends, (change) => {
        if (change.large === change.small) return;
        const includedAngle = coneAngle({ ...change, length: metres(0) });
        expect(includedAngle).toBeCloseTo(Math.PI, 12);
        expect(conicalContraction({ ...change, includedAngle })).toBeCloseTo(suddenContraction(change), 9);
        expect(conicalExpansion({ ...change, includedAngle })).toBe(suddenExpansion(change));
      }),
      laws,
    );
  });

  // 6 to 3 in over 4 in is 41.11° (own working).
  it('the angle of a cone comes from its ends and its length', () => {
    const change = { large: metres(0.1524), small: metres(0.0762), length: metres(0.1016) };
    expect((coneAngle(change) * 180) / Math.PI).toBeCloseTo(41.11, 2);
  });

  it('costs nothing where nothing changes', () => {
    const same = { large: metres(0.1), small: metres(0.1) };
    expect(suddenContraction(same)).toBe(0);
    expect(suddenExpansion(same)).toBe(0);
  });

  it('a coefficient moved to another diameter and back is unchanged', () => {
    fc.assert(
      fc.property(ends, fc.double({ min: 0.01, max: 6, noNaN: true }), ({ large, small }, coefficient) => {
        const moved = coefficientOnDiameter({ coefficient: ratio(coefficient), from: small, to: large });
        const back = coefficientOnDiameter({ coefficient: moved, from: large, to: small });
        expect(back).toBeCloseTo(coefficient, 9);
        expect(moved).toBeGreaterThanOrEqual(coefficient);
      }),
      laws,
    );
  });
});
