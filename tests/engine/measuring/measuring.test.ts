import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { comparedWithNeeded, comparedWithPredicted } from '#engine/measuring/comparison.ts';
import { flowBoxAirflow, flowBoxPressure } from '#engine/measuring/flow-box.ts';
import { type GrilleReadings, type MethodTrust, measuredAirflow } from '#engine/measuring/measured-airflow.ts';
import { mostAirflowForBag } from '#engine/measuring/timed-bag.ts';
import { exactly } from '#quantity/estimate.ts';
import {
  type CubicMetresPerSecond,
  cubicMetres,
  cubicMetresPerSecond,
  metresPerSecond,
  pascals,
  ratio,
  seconds,
  squareMetres,
} from '#quantity/units.ts';

const trust: MethodTrust = {
  bag: { reaction: seconds(0.3), shortestTime: seconds(5), fewestReadings: 3, widestSpread: ratio(0.25) },
  box: {
    constant: 0.78,
    error: ratio(0.1),
    gaugeError: pascals(0.25),
    gaugeShare: ratio(0.01),
    leastPressure: pascals(2),
    mostPressure: pascals(8),
  },
  traverse: { error: ratio(0.25), fewestReadings: 3 },
  hood: { powered: ratio(0.06), unpowered: ratio(0.25) },
};

function read(readings: GrilleReadings) {
  const outcome = measuredAirflow(readings, trust);
  if (!outcome.measured) throw new TypeError(outcome.why);
  return outcome;
}

const bag = (...times: readonly number[]): GrilleReadings => ({
  method: 'bag',
  volume: exactly(cubicMetres(0.2)),
  times: times.map(seconds),
});
const box = (...pressures: readonly number[]): GrilleReadings => ({
  method: 'box',
  opening: squareMetres(0.02),
  pressures: pressures.map(pascals),
});

describe('a timed bag', () => {
  it('gives volume over mean time, with the stopwatch in the band', () => {
    // Own arithmetic: 0.2 m³ in 10 s is 0.02 m³/s; 0.3 s either way is 0.2/10.3 and 0.2/9.7.
    const { airflow, limits } = read(bag(10, 10, 10));
    expect(airflow.typical).toBeCloseTo(0.02, 12);
    expect(airflow.low).toBeCloseTo(0.2 / 10.3, 12);
    expect(airflow.high).toBeCloseTo(0.2 / 9.7, 12);
    expect(limits).toEqual([]);
  });

  it('says so when it fills too fast, is read too seldom or reads all over the place', () => {
    expect(read(bag(2)).limits).toEqual(['bag fills too fast', 'too few readings']);
    expect(read(bag(7, 10, 13)).limits).toEqual(['readings disagree']);
  });

  it('doubts readings that scatter more than the stopwatch does', () => {
    const steady = read(bag(10, 10, 10)).airflow;
    const scattered = read(bag(9, 10, 11)).airflow;
    expect(scattered.high - scattered.low).toBeGreaterThan(2 * (steady.high - steady.low));
  });

  it('has a most it can measure', () => {
    expect(mostAirflowForBag(cubicMetres(0.075), seconds(5))).toBeCloseTo(0.015, 12);
  });

  it('gives nothing where there is nothing to go by', () => {
    expect(measuredAirflow(bag(), trust)).toEqual({ measured: false, why: 'no readings' });
    expect(measuredAirflow(bag(0), trust)).toEqual({ measured: false, why: 'not a positive reading' });
    expect(measuredAirflow(bag(0.3), trust)).toEqual({ measured: false, why: 'too quick to time' });
  });
});

describe('a flow box', () => {
  it('there and back again is the same pressure', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 50, noNaN: true }), (pressure) => {
        const opening = { opening: squareMetres(0.01), constant: 0.78 };
        expect(flowBoxPressure(opening, flowBoxAirflow(opening, pascals(pressure)))).toBeCloseTo(pressure, 9);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('carries the error of the box and of the gauge', () => {
    const { airflow } = read(box(4));
    expect(airflow.typical).toBeCloseTo(0.0312, 12);
    expect(airflow.low).toBeCloseTo(0.78 * 0.02 * Math.sqrt(3.75) * 0.9, 12);
    expect(airflow.high).toBeCloseTo(0.78 * 0.02 * Math.sqrt(4.25) * 1.1, 12);
  });

  it('says so outside its window', () => {
    expect(read(box(1.9)).limits).toEqual(['box pressure too low']);
    expect(read(box(2, 8)).limits).toEqual([]);
    expect(read(box(8.1)).limits).toEqual(['box pressure too high']);
  });

  it('gives nothing without a pressure', () => {
    expect(measuredAirflow(box(0), trust)).toEqual({ measured: false, why: 'not a positive reading' });
  });
});

describe('a walk over the grille and a hood', () => {
  it('the grille gives mean speed through the open share of its face', () => {
    const { airflow, limits } = read({
      method: 'traverse',
      velocities: [1, 2, 3].map(metresPerSecond),
      faceArea: squareMetres(0.05),
      openShare: { low: ratio(0.5), typical: ratio(0.6), high: ratio(0.7) },
    });
    expect(airflow.low).toBeCloseTo(0.0375, 12);
    expect(airflow.typical).toBeCloseTo(0.06, 12);
    expect(airflow.high).toBeCloseTo(0.0875, 12);
    expect(limits).toEqual([]);
  });

  it('a hood with its own fan is trusted further than one without', () => {
    const hood = (powered: boolean) =>
      read({ method: 'hood', powered, airflows: [cubicMetresPerSecond(0.03)] }).airflow;
    expect(hood(true)).toEqual({ low: 0.03 * 0.94, typical: 0.03, high: 0.03 * 1.06 });
    expect(hood(false).low).toBeCloseTo(0.0225, 12);
  });
});

describe('measured against predicted', () => {
  const band = (typical: number, half: number) => ({
    low: cubicMetresPerSecond(typical - half),
    typical: cubicMetresPerSecond(typical),
    high: cubicMetresPerSecond(typical + half),
  });
  const verdict = (measured: number, predicted: number, half: number) =>
    comparedWithPredicted({
      measured: band(measured, half),
      predicted: band(predicted, half),
      widestTelling: ratio(0.25),
    }).verdict;

  it('agrees, differs, or cannot be told', () => {
    // Own arithmetic: two halves of 0.003 explain 0.00424.
    expect(verdict(0.036, 0.04, 0.003)).toBe('agrees');
    expect(verdict(0.0357, 0.04, 0.003)).toBe('lower');
    expect(verdict(0.0443, 0.04, 0.003)).toBe('higher');
    expect(verdict(0.036, 0.04, 0.01)).toBe('cannot tell');
    expect(verdict(0.01, 0.04, 0.01)).toBe('lower');
  });

  it('uses the halves of the bands that face each other', () => {
    const lopsided = comparedWithPredicted({
      measured: {
        low: cubicMetresPerSecond(0.01),
        typical: cubicMetresPerSecond(0.03),
        high: cubicMetresPerSecond(0.031),
      },
      predicted: {
        low: cubicMetresPerSecond(0.039),
        typical: cubicMetresPerSecond(0.04),
        high: cubicMetresPerSecond(0.09),
      },
      widestTelling: ratio(0.25),
    });
    expect(lopsided.verdict).toBe('lower');
    expect(lopsided.explained).toBeCloseTo(Math.hypot(0.001, 0.001), 12);
    expect(lopsided.weight).toBeCloseTo(-0.01 / Math.hypot(0.001, 0.001), 9);
  });

  it('agrees with itself', () => {
    const same = band(0.04, 0);
    const outcome = comparedWithPredicted({ measured: same, predicted: same, widestTelling: ratio(0.25) });
    expect(outcome).toEqual({ verdict: 'agrees', difference: 0, explained: 0, weight: 0 });
  });
});

describe('measured against needed', () => {
  const judged = (low: number, typical: number, high: number) => {
    const q = (value: number): CubicMetresPerSecond => cubicMetresPerSecond(value);
    return comparedWithNeeded({ low: q(low), typical: q(typical), high: q(high) }, q(0.024));
  };

  it('is met only when the low end meets it', () => {
    expect(judged(0.024, 0.03, 0.04)).toBe('met');
    expect(judged(0.023, 0.03, 0.04)).toBe('not shown');
    expect(judged(0.01, 0.02, 0.023)).toBe('not met');
  });
});
