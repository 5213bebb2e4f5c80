import fc from 'fast-check';
import { type FanCurve, fanCurve } from '#engine/fan/fan-curve.ts';
import type { CurvePoint, FanDescription, FanShape } from '#engine/fan/fan-points.ts';
import { cubicMetresPerSecond, pascals } from '#quantity/units.ts';

/** A shape with nothing unusual about it; 25 and 62 Pa are the two rating pressures. */
export const plainShape: FanShape = {
  bow: 2,
  reach: 1,
  longestTail: pascals(87),
  strength: 0.78,
  strengthFrom: pascals(24.9),
  strengthTo: pascals(62.3),
  droop: 0.02,
};

export const point = (airflow: number, staticPressure: number): CurvePoint => ({
  airflow: cubicMetresPerSecond(airflow),
  staticPressure: pascals(staticPressure),
});

export function curveOf(description: FanDescription, shape: FanShape = plainShape): FanCurve {
  const outcome = fanCurve(description, shape);
  if (!outcome.valid) throw new TypeError(outcome.why);
  return outcome.curve;
}

export const curveThrough = (points: readonly CurvePoint[], shape?: FanShape): FanCurve =>
  curveOf({ kind: 'points', points }, shape);

/** Any shape within the ranges the trade knows. */
export const anyShape: fc.Arbitrary<FanShape> = fc
  .record({
    bow: fc.double({ min: 1, max: 4, noNaN: true }),
    reach: fc.double({ min: 0.3, max: 2, noNaN: true }),
    longestTail: fc.double({ min: 20, max: 200, noNaN: true }),
    strength: fc.double({ min: 0.2, max: 1, noNaN: true }),
    droop: fc.double({ min: 0, max: 0.1, noNaN: true }),
  })
  .map((guess) => ({ ...plainShape, ...guess, longestTail: pascals(guess.longestTail) }));

/** Steps of airflow lost and pressure gained from one point to the next. */
const steps = fc.array(
  fc.record({
    lost: fc.oneof(fc.constant(0), fc.double({ min: 0.0005, max: 0.03, noNaN: true })),
    gained: fc.double({ min: 2, max: 60, noNaN: true }),
  }),
  { minLength: 0, maxLength: 5 },
);

/** Any fan that can be: rated points, one rating, or a constant-flow fan. */
export const anyFan: fc.Arbitrary<FanDescription> = fc.oneof(
  fc
    .record({ steps, first: fc.constantFrom(0, 24.9), last: fc.double({ min: 0.002, max: 0.05, noNaN: true }) })
    .map(({ steps: chosen, first, last }): FanDescription => {
      const lost = chosen.reduce((sum, step) => sum + step.lost, 0);
      let [airflow, pressure] = [last + lost, first];
      const points = [point(airflow, pressure)];
      for (const step of chosen) {
        airflow -= step.lost;
        pressure += step.gained;
        points.push(point(Math.max(airflow, last), pressure));
      }
      return { kind: 'points', points };
    }),
  fc
    .record({
      airflow: fc.double({ min: 0.005, max: 0.1, noNaN: true }),
      heldTo: fc.double({ min: 30, max: 120, noNaN: true }),
    })
    .map(
      ({ airflow, heldTo }): FanDescription => ({
        kind: 'constant flow',
        airflow: cubicMetresPerSecond(airflow),
        heldTo: pascals(heldTo),
      }),
    ),
);
