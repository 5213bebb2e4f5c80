import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { likelyBand } from '#engine/uncertainty/likely-band.ts';
import { mostTelling } from '#engine/uncertainty/most-telling.ts';
import { type Direction, outerBound } from '#engine/uncertainty/outer-bound.ts';
import { triangularQuantile } from '#engine/uncertainty/triangular-sample.ts';
import { type Estimate, exactly } from '#quantity/estimate.ts';

const runs = { seed: 1, numRuns: 200 };
const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);
const between = (low: number, typical: number, high: number): Estimate => ({ low, typical, high });

const anyEstimate: fc.Arbitrary<Estimate> = fc
  .tuple(
    fc.double({ min: -10, max: 10, noNaN: true }),
    fc.double({ min: 0, max: 5, noNaN: true }),
    fc.double({ min: 0, max: 5, noNaN: true }),
  )
  .map(([low, rise, more]) => between(low, low + rise, low + rise + more));

describe('the likely band', () => {
  it('holds the typical answer and lies within the outer bound', () => {
    fc.assert(
      fc.property(fc.array(anyEstimate, { minLength: 0, maxLength: 8 }), (parameters) => {
        const band = likelyBand({ parameters, evaluate: sum });
        const outer = outerBound({
          parameters: parameters.map((estimate) => ({ ...estimate, direction: 'up' })),
          evaluate: sum,
        });
        expect(band.low).toBeLessThanOrEqual(band.typical);
        expect(band.typical).toBeLessThanOrEqual(band.high);
        expect(band.low).toBeGreaterThanOrEqual(outer.low - 1e-9);
        expect(band.high).toBeLessThanOrEqual(outer.high + 1e-9);
      }),
      runs,
    );
  });

  it('is the 5 and 95 % of one triangular unknown', () => {
    // Own arithmetic: 5 % of a triangle from 0 over 4 to 10 is √(0.05 × 10 × 4) = 1.414, 95 % is 10 − √(0.05 × 10 × 6) = 8.268.
    const band = likelyBand({ parameters: [between(0, 4, 10)], evaluate: sum });
    expect(band.low).toBeCloseTo(Math.sqrt(2), 1);
    expect(band.high).toBeCloseTo(10 - Math.sqrt(3), 1);
  });

  it('comes near the band of a great many random draws', () => {
    // A plain generator with its own arithmetic, a hundred thousand draws, five unlike unknowns.
    let state = 12_345;
    const random = () => {
      state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296;
      return state / 4_294_967_296;
    };
    const parameters = [between(1, 2, 4), between(0, 1, 3), between(-1, 0, 2), between(10, 12, 13), between(0, 0.5, 1)];
    const evaluate = (v: Float64Array) =>
      (v[0] as number) * (v[1] as number) + 0.1 * (v[2] as number) * (v[3] as number) + (v[4] as number);
    const draws = Float64Array.from({ length: 100_000 }, () =>
      evaluate(Float64Array.from(parameters, (parameter) => triangularQuantile(parameter, random()))),
    ).sort();
    const [low, high] = [draws[5000] as number, draws[95_000] as number];
    const band = likelyBand({ parameters, evaluate });
    expect(Math.abs(band.low - low)).toBeLessThan(0.05 * (high - low));
    expect(Math.abs(band.high - high)).toBeLessThan(0.05 * (high - low));
  });

  it('comes out the same every time', () => {
    const parameters = [between(0, 1, 2), between(3, 4, 9)];
    expect(likelyBand({ parameters, evaluate: sum })).toEqual(likelyBand({ parameters, evaluate: sum }));
  });

  it('takes a single look when everything is known', () => {
    let looks = 0;
    const evaluate = (values: Float64Array) => {
      looks += 1;
      return sum(values);
    };
    expect(likelyBand({ parameters: [exactly(2), exactly(3)], evaluate })).toEqual({
      low: 5,
      typical: 5,
      high: 5,
      withoutAnswer: 0,
    });
    expect(looks).toBe(1);
  });

  it('hands over known values untouched', () => {
    const seen = new Set<number>();
    likelyBand({
      parameters: [exactly(7), between(0, 1, 2)],
      evaluate: (values) => {
        seen.add(values[0] as number);
        return 0;
      },
    });
    expect([...seen]).toEqual([7]);
  });

  it('is wider when unknowns travel together, and gone when they cancel', () => {
    const parameters = [between(0, 1, 2), between(0, 1, 2)];
    const width = (drivers: readonly number[]) => {
      const { low, high } = likelyBand({ parameters, drivers, evaluate: sum });
      return high - low;
    };
    expect(width([1, 1])).toBeGreaterThan(1.3 * width([0, 0]));
    expect(width([1, -1])).toBeLessThan(1e-9);
  });

  it('leaves samples without an answer out and says how many, or counts them as told', () => {
    const parameters = [between(0, 0.5, 1)];
    const evaluate = (values: Float64Array) => ((values[0] as number) < 0.25 ? Number.NaN : (values[0] as number));
    const leftOut = likelyBand({ parameters, evaluate });
    expect(leftOut.withoutAnswer).toBeCloseTo(0.125, 2);
    expect(leftOut.low).toBeGreaterThan(0.25);
    const counted = likelyBand({ parameters, evaluate, whenNone: 0 });
    expect(counted.low).toBe(0);
    expect(counted.withoutAnswer).toBe(leftOut.withoutAnswer);
  });

  it('has no number at all where there is never an answer', () => {
    const band = likelyBand({ parameters: [between(0, 1, 2)], evaluate: () => Number.NaN });
    expect(band).toEqual({ low: Number.NaN, typical: Number.NaN, high: Number.NaN, withoutAnswer: 1 });
  });
});

describe('the outer bound', () => {
  it('takes two looks when every unknown acts one way', () => {
    let looks = 0;
    const evaluate = (values: Float64Array) => {
      looks += 1;
      return (values[0] as number) - (values[1] as number);
    };
    const parameters = [
      { ...between(0, 1, 2), direction: 'up' as const },
      { ...between(10, 11, 15), direction: 'down' as const },
    ];
    expect(outerBound({ parameters, evaluate })).toEqual({ low: -15, high: -8 });
    expect(looks).toBe(2);
  });

  it('finds a peak inside a range, which the ends would miss', () => {
    // Own arithmetic: 7 − (x − 0.37)² has its top, 7, at 0.37 and falls to 7 − 0.63² at 1.
    const evaluate = (values: Float64Array) => 7 - ((values[0] as number) - 0.37) ** 2;
    const bound = outerBound({ parameters: [{ ...between(0, 0.5, 1), direction: 'hump' }], evaluate });
    expect(bound.high).toBeCloseTo(7, 6);
    expect(bound.low).toBeCloseTo(7 - 0.63 ** 2, 9);
  });

  it('holds ten thousand samples from inside', () => {
    const parameters = [
      { ...between(0, 1, 3), direction: 'up' as const },
      { ...between(-2, 0, 1), direction: 'down' as const },
      { ...between(0, 0.6, 2), direction: 'hump' as const },
      { ...between(-1, 0.2, 1), direction: 'hump' as const },
      { ...between(5, 6, 7), direction: 'none' as const },
    ];
    // A product with a hump, and a hump whose top moves with the parameter beside it.
    const evaluate = (v: Float64Array) => {
      const [up, down, hump, other] = v as unknown as [number, number, number, number];
      return up * (2 - (hump - 0.7) ** 2 / 4) - down - (other - 0.3 * hump) ** 2;
    };
    const { low, high } = outerBound({ parameters, evaluate });
    const inside = fc.tuple(
      ...parameters.map(({ low: from, high: to }) => fc.double({ min: from, max: to, noNaN: true })),
    );
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const values of fc.sample(inside, { seed: 1, numRuns: 10_000 })) {
      const answer = evaluate(Float64Array.from(values));
      least = Math.min(least, answer);
      most = Math.max(most, answer);
    }
    expect(least).toBeGreaterThanOrEqual(low - 1e-4 * (high - low));
    expect(most).toBeLessThanOrEqual(high + 1e-4 * (high - low));
    expect(high - low).toBeLessThan(1.2 * (most - least));
  });

  it('searches more humps than a grid could carry', () => {
    const top = [0.1, 0.35, 0.6, 0.85];
    const evaluate = (v: Float64Array) =>
      -v.reduce((total, value, index) => total + (value - (top[index] as number)) ** 2, 0);
    const parameters = top.map(() => ({ ...between(0, 0.5, 1), direction: 'hump' as const }));
    expect(outerBound({ parameters, evaluate }).high).toBeCloseTo(0, 5);
  });

  it('says there is no number where it meets none, or counts it as told', () => {
    const question = {
      parameters: [{ ...between(0, 1, 2), direction: 'up' as const }],
      evaluate: (values: Float64Array) => ((values[0] as number) < 1 ? Number.NaN : (values[0] as number)),
    };
    expect(outerBound(question)).toEqual({ low: Number.NaN, high: 2 });
    expect(outerBound({ ...question, whenNone: 0 })).toEqual({ low: 0, high: 2 });
  });

  it('is the answer itself when everything is known', () => {
    const directions: readonly Direction[] = ['up', 'down', 'hump', 'none'];
    const parameters = directions.map((direction) => ({ ...exactly(3), direction }));
    expect(outerBound({ parameters, evaluate: sum })).toEqual({ low: 12, high: 12 });
  });
});

describe('the most telling measurement', () => {
  it('is the one whose doubt is widest', () => {
    const telling = mostTelling({
      parameters: [between(0, 1, 2), between(0, 5, 10), exactly(3)],
      evaluate: sum,
    });
    expect(telling.found && telling.ranked.map(({ parameter }) => parameter)[0]).toBe(1);
    expect(telling.found && telling.ranked[0].narrowing).toBeGreaterThan(0.5);
  });

  it('ranks only what would narrow the answer by a twentieth or more', () => {
    const telling = mostTelling({ parameters: [between(0, 1, 2), between(0, 50, 100)], evaluate: sum });
    expect(telling.found && telling.ranked.map(({ parameter }) => parameter)).toEqual([1]);
  });

  it('is none when the answer does not depend on what is unknown', () => {
    const parameters = [between(0, 1, 2)];
    expect(mostTelling({ parameters, evaluate: () => 4 })).toEqual({ found: false, why: 'nothing narrows it' });
  });

  it('is none when everything is known', () => {
    const outcome = mostTelling({ parameters: [exactly(1)], evaluate: sum });
    expect(outcome).toEqual({ found: false, why: 'nothing is unknown' });
  });

  it('is worth little when what it travels with still moves', () => {
    const parameters = [between(0, 1, 2), between(0, 1, 2)];
    const together = mostTelling({ parameters, drivers: [1, 1], evaluate: sum });
    expect(together.found && together.ranked[0].narrowing).toBeCloseTo(0.5, 1);
  });
});
