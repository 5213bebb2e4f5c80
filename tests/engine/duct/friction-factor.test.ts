import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frictionFactor, laminarEnd, turbulentStart } from '#engine/duct/friction-factor.ts';
import { colebrookByHalving } from './explicit-friction.ts';

const laws = { seed: 1, numRuns: 500 };
const relativeRoughness = fc.double({ min: 0, max: 0.05, noNaN: true });
/** Evenly spread over the powers of ten. */
const reynoldsFrom = (low: number, high: number) =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);
/** Pressure goes with f Re² in a given duct. */
const pressure = (reynolds: number, rough: number) =>
  frictionFactor({ reynolds, relativeRoughness: rough }) * reynolds * reynolds;

describe('the friction factor', () => {
  it('is the root of Colebrook–White to 1e-10, from the start of turbulence to far past any bath fan', () => {
    fc.assert(
      fc.property(reynoldsFrom(turbulentStart, 1e7), relativeRoughness, (reynolds, rough) => {
        const exact = colebrookByHalving({ reynolds, relativeRoughness: rough });
        expect(Math.abs(frictionFactor({ reynolds, relativeRoughness: rough }) - exact)).toBeLessThan(1e-10);
      }),
      laws,
    );
  });

  it('forgets the wall when the air slides in layers', () => {
    expect(frictionFactor({ reynolds: 1000, relativeRoughness: 0.05 })).toBe(0.064);
    expect(frictionFactor({ reynolds: 1000, relativeRoughness: 0 })).toBe(0.064);
  });

  it.each([laminarEnd, turbulentStart])('does not jump at Reynolds number %d', (reynolds) => {
    for (const rough of [0, 0.001, 0.009, 0.0275, 0.05]) {
      const before = frictionFactor({ reynolds: reynolds * (1 - 1e-9), relativeRoughness: rough });
      const after = frictionFactor({ reynolds: reynolds * (1 + 1e-9), relativeRoughness: rough });
      expect(Math.abs(after - before)).toBeLessThan(1e-8);
    }
  });

  it('never lets pressure fall as the flow rises, through sliding, between and tumbling', () => {
    fc.assert(
      fc.property(
        reynoldsFrom(10, 3e5),
        fc.double({ min: 1e-6, max: 0.5, noNaN: true }),
        relativeRoughness,
        (reynolds, more, rough) => {
          expect(pressure(reynolds * (1 + more), rough)).toBeGreaterThan(pressure(reynolds, rough));
        },
      ),
      laws,
    );
  });

  it('never falls as the wall gets rougher', () => {
    fc.assert(
      fc.property(
        reynoldsFrom(10, 3e5),
        relativeRoughness,
        fc.double({ min: 1e-4, max: 0.01, noNaN: true }),
        (reynolds, rough, more) => {
          const smoother = frictionFactor({ reynolds, relativeRoughness: rough });
          const rougher = frictionFactor({ reynolds, relativeRoughness: rough + more });
          if (reynolds > laminarEnd) expect(rougher).toBeGreaterThan(smoother);
          else expect(rougher).toBe(smoother);
        },
      ),
      laws,
    );
  });
});
