import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airflowAt, freeAirflow, shutOffPressure } from '#engine/fan/fan-curve.ts';
import { operatingPoint, operatingPressure } from '#engine/fan/operating-point.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, type Pascals, pascals } from '#quantity/units.ts';
import { anyFan, anyShape, curveOf, curveThrough, point } from './fans-for-tests.ts';

const runs = { seed: 1, numRuns: 200 };

/** A duct that asks for `pressure` at 0.04 m³/s, with something standing against the fan or helping it. */
const duct =
  (pressure: number, exponent = 1.9, standing = 0) =>
  (airflow: CubicMetresPerSecond): Pascals =>
    pascals(standing + pressure * (airflow / 0.04) ** exponent);

const anyDuct = fc.record({
  pressure: fc.double({ min: 1, max: 2000, noNaN: true }),
  exponent: fc.double({ min: 1, max: 2.2, noNaN: true }),
  standing: fc.double({ min: -5, max: 15, noNaN: true }),
});

describe('the operating point', () => {
  it('lies on the fan curve and on the duct curve', () => {
    fc.assert(
      fc.property(anyFan, anyShape, anyDuct, (description, shape, { pressure, exponent, standing }) => {
        const fan = curveOf(description, shape);
        const systemPressure = duct(pressure, exponent, standing);
        const found = operatingPoint({ fan, systemPressure });
        if (!found.found) {
          expect(found.why).toBe('fan too weak');
          expect(systemPressure(cubicMetresPerSecond(0))).toBeGreaterThanOrEqual(shutOffPressure(fan));
          return;
        }
        expect(found.airflow).toBe(airflowAt(fan, found.staticPressure));
        // The duct's pressure brackets the fan's within the stated step, on both sides of the point.
        const step = 1e-5 * shutOffPressure(fan);
        const miss = (p: number) => p - systemPressure(airflowAt(fan, pascals(p)));
        expect(miss(found.staticPressure - step)).toBeLessThanOrEqual(0);
        expect(miss(found.staticPressure + step)).toBeGreaterThanOrEqual(0);
      }),
      { seed: 1, numRuns: 1000 },
    );
  });

  it('agrees with plain arithmetic for a straight fan and a straight duct', () => {
    // Own arithmetic: P = 100 (1 − Q / 0.05) and P = 1000 Q meet at Q = 1/30.
    const fan = curveThrough([point(0.05, 0), point(0, 100)]);
    const found = operatingPoint({ fan, systemPressure: (airflow) => pascals(1000 * airflow) });
    expect(found.found && found.airflow).toBeCloseTo(1 / 30, 9);
    expect(found.found && found.staticPressure).toBeCloseTo(100 / 3, 6);
  });

  it('moves no more air through more duct', () => {
    fc.assert(
      fc.property(anyFan, anyDuct, fc.double({ min: 1.001, max: 5, noNaN: true }), (description, given, more) => {
        const fan = curveOf(description);
        const moved = (factor: number) => {
          const found = operatingPoint({
            fan,
            systemPressure: duct(given.pressure * factor, given.exponent, Math.max(0, given.standing)),
          });
          return found.found ? found.airflow : 0;
        };
        expect(moved(more)).toBeLessThanOrEqual(moved(1) + 1e-4 * freeAirflow(fan));
      }),
      runs,
    );
  });

  it('comes out the same wherever the search starts', () => {
    fc.assert(
      fc.property(anyFan, anyDuct, fc.double({ min: -50, max: 400, noNaN: true }), (description, given, start) => {
        const fan = curveOf(description);
        const systemPressure = duct(given.pressure, given.exponent, given.standing);
        const cold = operatingPressure({ fan, systemPressure });
        const warm = operatingPressure({ fan, systemPressure, start: pascals(start) });
        if (Number.isNaN(cold)) expect(warm).toBeNaN();
        else expect(Math.abs(warm - cold)).toBeLessThan(1e-5 * shutOffPressure(fan));
      }),
      runs,
    );
  });

  it('needs few looks at the duct, and at the looser tolerance for sampling fewer still', () => {
    const fan = curveThrough([point(0.04, 25), point(0.031, 62)]);
    const looksTaken = (tolerance?: number) => {
      let looks = 0;
      for (let pressure = 5; pressure < 200; pressure += 5) {
        const systemPressure = (airflow: CubicMetresPerSecond) => {
          looks += 1;
          return duct(pressure)(airflow);
        };
        operatingPressure({ fan, systemPressure, ...(tolerance === undefined ? {} : { tolerance }) });
      }
      return looks / 39;
    };
    expect(looksTaken()).toBeLessThan(7);
    expect(looksTaken(1e-3)).toBeLessThan(5);
  });

  it('is still within a thousandth of the airflow at the tolerance for sampling', () => {
    fc.assert(
      fc.property(anyDuct, ({ pressure, exponent }) => {
        const fan = curveThrough([point(0.04, 25), point(0.031, 62)]);
        const at = (tolerance: number) =>
          airflowAt(fan, operatingPressure({ fan, systemPressure: duct(pressure, exponent), tolerance }));
        expect(Math.abs(at(1e-3) - at(1e-9))).toBeLessThan(1e-3 * freeAirflow(fan));
      }),
      runs,
    );
  });

  it('copes with a duct whose pressure jumps', () => {
    const fan = curveThrough([point(0.04, 25), point(0.031, 62)]);
    const jump = 0.036;
    const systemPressure = (airflow: CubicMetresPerSecond) => pascals(airflow > jump ? 90 : 5);
    const found = operatingPoint({ fan, systemPressure });
    expect(found.found && found.airflow).toBeCloseTo(jump, 6);
  });
});

describe('no operating point', () => {
  const fan = curveThrough([point(0.04, 25), point(0.031, 62)]);

  it('is an answer where something stands against the fan that it cannot lift', () => {
    expect(operatingPoint({ fan, systemPressure: duct(10, 2, 500) })).toEqual({ found: false, why: 'fan too weak' });
    expect(operatingPressure({ fan, systemPressure: duct(10, 2, 500) })).toBeNaN();
  });

  it('is an answer where the house pulls harder than the fan', () => {
    const outcome = operatingPoint({ fan, systemPressure: () => pascals(-900) });
    expect(outcome).toEqual({ found: false, why: 'pulled past free air' });
  });

  it('is an answer where the duct gives no number', () => {
    const outcome = operatingPoint({ fan, systemPressure: () => pascals(Number.NaN) });
    expect(outcome).toEqual({ found: false, why: 'system pressure is not a number' });
  });

  it('is found past free air where the duct helps a little', () => {
    const outcome = operatingPoint({ fan, systemPressure: duct(10, 2, -20) });
    expect(outcome.found && outcome.staticPressure).toBeLessThan(0);
    expect(outcome.found && outcome.airflow).toBeGreaterThan(freeAirflow(fan));
  });
});
