import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AirflowGuideline, airflowNeeded, type Bathroom } from '#engine/airflow/airflow-needed.ts';
import { cubicMetresPerSecond, metres, squareMetres } from '#quantity/units.ts';

/** Round figures instead of a code's: 0.005 m³/s for a square metre, 9 m², 2.4 m. */
const guideline: AirflowGuideline = {
  perArea: 0.005,
  areaLimit: squareMetres(9),
  least: cubicMetresPerSecond(0.02),
  fixtures: {
    toilet: cubicMetresPerSecond(0.025),
    shower: cubicMetresPerSecond(0.025),
    tub: cubicMetresPerSecond(0.025),
    jettedTub: cubicMetresPerSecond(0.05),
  },
  airChangesPerHour: 8,
  ordinaryCeiling: metres(2.4),
};
const code = { intermittent: cubicMetresPerSecond(0.024), continuous: cubicMetresPerSecond(0.01) };

const plain: Bathroom = {
  area: squareMetres(6),
  ceilingHeight: metres(2.4),
  fixtures: { toilet: 1, shower: 1, tub: 0, jettedTub: 0 },
  toiletCompartment: false,
  running: 'on demand',
};

const need = (room: Partial<Bathroom>) => airflowNeeded({ room: { ...plain, ...room }, code, guideline });

describe('the airflow a bathroom needs', () => {
  it('goes by floor area in a room of ordinary size', () => {
    expect(need({})).toMatchObject({ needed: 0.03, governedBy: 'floor area', whenBathing: 0.03 });
  });

  it('never falls under the code in a small one', () => {
    expect(need({ area: squareMetres(2) })).toMatchObject({ needed: 0.024, governedBy: 'code' });
  });

  it('goes by fixtures above the limit, and not a hair below it', () => {
    expect(need({ area: squareMetres(9) }).governedBy).toBe('floor area');
    expect(need({ area: squareMetres(9.01) }).governedBy).toBe('floor area');
    expect(need({ area: squareMetres(9.1) })).toMatchObject({ needed: 0.05, governedBy: 'fixtures' });
  });

  it('goes by volume under a high ceiling, in rooms of any size', () => {
    expect(need({ ceilingHeight: metres(3) })).toMatchObject({ needed: 0.04, governedBy: 'air changes' });
    expect(need({ ceilingHeight: metres(2.404) }).governedBy).toBe('floor area');
    expect(need({ area: squareMetres(15), ceilingHeight: metres(4) }).governedBy).toBe('air changes');
  });

  it('lists every rule, with those that had no say', () => {
    expect(need({}).candidates.map(({ rule, applies }) => [rule, applies])).toEqual([
      ['code', true],
      ['floor area', true],
      ['fixtures', false],
      ['air changes', false],
    ]);
  });

  it('asks little of a fan that never stops, and says what to boost to', () => {
    const continuous = need({ running: 'continuous' });
    expect(continuous).toMatchObject({ needed: 0.01, governedBy: 'code', whenBathing: 0.03 });
  });

  it('covers what the fan owes the whole house', () => {
    const wholeHouse = cubicMetresPerSecond(0.035);
    expect(need({ running: 'continuous', wholeHouse })).toMatchObject({ needed: 0.035, governedBy: 'whole house' });
    expect(need({ wholeHouse })).toMatchObject({ needed: 0.035, governedBy: 'whole house' });
  });

  it('gives a toilet behind its own door its own fan', () => {
    const large = need({ area: squareMetres(20), toiletCompartment: true });
    expect(large.needed).toBeCloseTo(0.05, 12);
    expect(large.compartment).toEqual({ own: 0.025, mainRoom: 0.025 });
    expect(need({ toiletCompartment: true }).compartment).toEqual({ own: 0.025, mainRoom: 0.03 });
    expect(need({}).compartment).toBeUndefined();
  });

  it('is the largest rule that applies, and never falls when the room grows within one rule', () => {
    const size = fc.record({
      area: fc.double({ min: 1, max: 30, noNaN: true }),
      height: fc.double({ min: 2, max: 5, noNaN: true }),
    });
    fc.assert(
      fc.property(size, ({ area, height }) => {
        const result = need({ area: squareMetres(area), ceilingHeight: metres(height) });
        const applying = result.candidates.filter(({ applies }) => applies).map(({ airflow }) => airflow);
        expect(result.needed).toBe(Math.max(...applying));
        expect(result.needed).toBeGreaterThanOrEqual(code.intermittent);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});
