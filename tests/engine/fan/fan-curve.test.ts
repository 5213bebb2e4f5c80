import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airflowAt,
  type FanCurve,
  fanCurve,
  freeAirflow,
  isBetweenPoints,
  reshapeFanCurve,
  shutOffPressure,
} from '#engine/fan/fan-curve.ts';
import { cubicMetresPerSecond, pascals } from '#quantity/units.ts';
import { anyFan, anyShape, curveOf, curveThrough, plainShape, point } from './fans-for-tests.ts';

const runs = { seed: 1, numRuns: 200 };

/** Airflow at even steps of pressure from free air to past shut-off. */
const readings = (curve: FanCurve): number[] =>
  Array.from({ length: 201 }, (_, step) => airflowAt(curve, pascals((step / 190) * shutOffPressure(curve))));

describe('a fan curve', () => {
  it('passes through its rated points', () => {
    const points = [point(0.045, 0), point(0.04, 25), point(0.031, 62), point(0, 124)];
    const curve = curveThrough(points);
    for (const { airflow, staticPressure } of points) {
      expect(airflowAt(curve, staticPressure)).toBeCloseTo(airflow, 12);
    }
  });

  it('takes its points in any order', () => {
    const points = [point(0.045, 0), point(0.04, 25), point(0.031, 62)];
    expect(readings(curveThrough(points.toReversed()))).toEqual(readings(curveThrough(points)));
  });

  it('never moves more air against more pressure, whatever the points and the guesses', () => {
    fc.assert(
      fc.property(anyFan, anyShape, (description, shape) => {
        const flows = readings(curveOf(description, shape));
        const rises = flows.filter((flow, step) => flow > (flows[step - 1] ?? Number.POSITIVE_INFINITY) + 1e-12);
        expect(rises).toEqual([]);
        expect(Math.min(...flows)).toBe(0);
      }),
      runs,
    );
  });

  it('moves nothing at shut-off and something just below it', () => {
    fc.assert(
      fc.property(anyFan, anyShape, (description, shape) => {
        const curve = curveOf(description, shape);
        expect(airflowAt(curve, shutOffPressure(curve))).toBe(0);
        expect(airflowAt(curve, pascals(shutOffPressure(curve) * 0.999))).toBeGreaterThan(0);
      }),
      runs,
    );
  });

  it('carries a parabola on as the same parabola, both ways', () => {
    // Own arithmetic: Q² = 0.0025 (1 − P / 100) at 25 and 62 Pa.
    const parabola = (pressure: number) => Math.sqrt(0.0025 * (1 - pressure / 100));
    const curve = curveThrough([point(parabola(25), 25), point(parabola(62), 62)]);
    expect(freeAirflow(curve)).toBeCloseTo(0.05, 9);
    expect(shutOffPressure(curve)).toBeCloseTo(100, 6);
    for (const pressure of [10, 40, 75, 90]) {
      expect(Math.abs(airflowAt(curve, pascals(pressure)) / parabola(pressure) - 1)).toBeLessThan(0.01);
    }
  });

  it('does not let level points put shut-off at the end of the world', () => {
    const curve = curveThrough([point(0.05, 25), point(0.05, 62)]);
    expect(shutOffPressure(curve)).toBeCloseTo(62 + plainShape.longestTail, 9);
  });

  it('goes on past free air where the duct helps the fan', () => {
    const curve = curveThrough([point(0.045, 0), point(0.04, 25), point(0, 124)]);
    expect(airflowAt(curve, pascals(-5))).toBeGreaterThan(freeAirflow(curve));
  });

  it('knows where it is read off and where it is guessed', () => {
    const two = curveThrough([point(0.04, 25), point(0.031, 62)]);
    expect([0, 25, 40, 62, 80].map((pressure) => isBetweenPoints(two, pascals(pressure)))).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
    expect(isBetweenPoints(curveThrough([point(0.04, 25)]), pascals(40))).toBe(false);
  });
});

describe('a fan known by its carton number alone', () => {
  it('passes through that number at whatever pressure it was rated', () => {
    fc.assert(
      fc.property(anyShape, fc.constantFrom(0, 10, 24.9, 40, 62.3), (shape, pressure) => {
        expect(airflowAt(curveThrough([point(0.04, pressure)], shape), pascals(pressure))).toBeCloseTo(0.04, 12);
      }),
      runs,
    );
  });

  it('keeps the share its class keeps', () => {
    for (const strength of [0.3, 0.6, 0.85, 1]) {
      const curve = curveThrough([point(0.04, plainShape.strengthFrom)], { ...plainShape, strength });
      expect(airflowAt(curve, plainShape.strengthTo) / 0.04).toBeCloseTo(strength, 9);
    }
  });

  it('gives more against pressure and less in free air, the stronger its class', () => {
    const weak = curveThrough([point(0.04, 24.9)], { ...plainShape, strength: 0.45 });
    const strong = curveThrough([point(0.04, 24.9)], { ...plainShape, strength: 0.9 });
    expect(airflowAt(strong, pascals(60))).toBeGreaterThan(airflowAt(weak, pascals(60)));
    expect(freeAirflow(strong)).toBeLessThan(freeAirflow(weak));
    expect(shutOffPressure(strong)).toBeGreaterThan(shutOffPressure(weak));
  });
});

describe('a constant-flow fan', () => {
  it('holds its airflow and then falls', () => {
    const curve = curveOf({ kind: 'constant flow', airflow: cubicMetresPerSecond(0.05), heldTo: pascals(75) });
    expect(freeAirflow(curve)).toBe(0.05);
    expect(airflowAt(curve, pascals(75))).toBeCloseTo(0.049, 12);
    expect(airflowAt(curve, pascals(120))).toBeLessThan(0.04);
    expect(shutOffPressure(curve)).toBeCloseTo(75 + plainShape.longestTail, 9);
  });
});

describe('reshaping a curve in place', () => {
  it('gives the curve it would have had from the start', () => {
    fc.assert(
      fc.property(anyFan, anyShape, anyShape, (description, before, after) => {
        const curve = curveOf(description, before);
        reshapeFanCurve(curve, after);
        expect(readings(curve)).toEqual(readings(curveOf(description, after)));
      }),
      runs,
    );
  });
});

describe('points that cannot be a fan', () => {
  const faults = [
    ['no points', 0, []],
    ['not a number', 1, [point(0.05, 0), point(Number.NaN, 25)]],
    ['negative pressure', 0, [point(0.05, -1), point(0.04, 25)]],
    ['negative airflow', 1, [point(0.05, 0), point(-0.01, 25)]],
    ['no airflow', 0, [point(0, 0), point(0, 25)]],
    ['no airflow', 0, [point(0, 25)]],
    ['same pressure twice', 1, [point(0.05, 25), point(0.04, 25)]],
    ['airflow rises with pressure', 2, [point(0.05, 0), point(0.04, 25), point(0.041, 62)]],
    ['airflow stops twice', 2, [point(0.05, 0), point(0, 100), point(0, 120)]],
    ['one point past the class', 0, [point(0.05, 70)]],
  ] as const;
  for (const [why, at, points] of faults) {
    it(`are refused with the reason: ${why} at ${at} of ${points.length}`, () => {
      expect(fanCurve({ kind: 'points', points }, plainShape)).toEqual({ valid: false, why, at });
    });
  }
});
