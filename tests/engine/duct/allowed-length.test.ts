import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allowedDuctLength, type LengthLimit } from '#engine/duct/allowed-length.ts';
import { ductLengthTables } from '#knowledge/duct-length-table.ts';
import { toSi } from '#quantity/unit-factors.ts';
import { cubicMetresPerSecond, metres } from '#quantity/units.ts';

const table = ductLengthTables.irc;
const look = ({ duct = 'smooth' as 'smooth' | 'flex', inches = 4, cfm = 80, elbows = 0 }) =>
  allowedDuctLength({
    table,
    duct,
    diameter: metres(toSi(inches, 'in', 'm')),
    airflow: cubicMetresPerSecond(toSi(cfm, 'cfm', 'm^3/s')),
    elbows,
  });
const feet = (limit: LengthLimit) => (typeof limit === 'number' ? limit / 0.3048 : limit);
const allowedFeet = (asked: Parameters<typeof look>[0]) => {
  const found = look(asked);
  return found.found ? feet(found.allowed) : found.why;
};
/** A limit as a number, so that limits can be ranked. */
const rank = (limit: LengthLimit): number => {
  if (limit === 'any') return Number.POSITIVE_INFINITY;
  return limit === 'none' ? 0 : limit;
};

describe('the longest duct the code table allows', () => {
  it('is the printed cell for a straight run', () => {
    expect(allowedFeet({})).toBeCloseTo(31, 9);
    expect(allowedFeet({ duct: 'flex' })).toBeCloseTo(4, 9);
    expect(allowedFeet({ duct: 'flex', inches: 3, cfm: 50 })).toBe('none');
    expect(allowedFeet({ inches: 6, cfm: 80 })).toBe('any');
  });

  it('loses 15 ft for each elbow, and nothing is left when they use it up', () => {
    expect(allowedFeet({ elbows: 1 })).toBeCloseTo(16, 9);
    expect(allowedFeet({ elbows: 2 })).toBeCloseTo(1, 9);
    expect(allowedFeet({ elbows: 3 })).toBe('none');
    expect(look({ elbows: 3 })).toMatchObject({ printed: toSi(31, 'ft', 'm') });
  });

  it('reads the column with more air for a fan between two', () => {
    expect(allowedFeet({ cfm: 81 })).toBeCloseTo(10, 9);
    expect(allowedFeet({ cfm: 110 })).toBe('none');
    expect(look({ cfm: 110 })).toMatchObject({ column: toSi(125, 'cfm', 'm^3/s') });
    expect(allowedFeet({ cfm: 30 })).toBeCloseTo(114, 9);
  });

  it('reads the narrower row for a duct between two, and the widest row for anything wider', () => {
    expect(allowedFeet({ inches: 4.9, cfm: 80 })).toBeCloseTo(31, 9);
    // A 3-1/4 x 10 in wall stack has a hydraulic diameter of 4.906 in.
    expect(allowedFeet({ inches: 4.906, cfm: 80 })).toBeCloseTo(31, 9);
    expect(allowedFeet({ inches: 12, cfm: 300 })).toBeCloseTo(133, 9);
  });

  it('reads the 4 in row for 100 mm pipe', () => {
    expect(allowedFeet({ inches: 100 / 25.4 })).toBeCloseTo(31, 9);
  });

  it('says so when the table does not reach', () => {
    expect(allowedFeet({ inches: 2 })).toBe('narrower than the table');
    expect(allowedFeet({ cfm: 301 })).toBe('more air than the table');
  });

  it('says so when the table prints no such cell', () => {
    const found = allowedDuctLength({
      table: ductLengthTables['washington-2021'],
      duct: 'flex',
      diameter: metres(toSi(7, 'in', 'm')),
      airflow: cubicMetresPerSecond(toSi(50, 'cfm', 'm^3/s')),
      elbows: 3,
    });
    expect(found).toEqual({ found: false, why: 'cell not printed' });
  });

  it('does not give length back for fewer elbows than a table counts in', () => {
    const at = (elbows: number) =>
      allowedDuctLength({
        table: ductLengthTables['washington-2021'],
        duct: 'smooth',
        diameter: metres(toSi(4, 'in', 'm')),
        airflow: cubicMetresPerSecond(toSi(50, 'cfm', 'm^3/s')),
        elbows,
      });
    expect(at(0)).toEqual(at(3));
    expect(at(4)).toMatchObject({ allowed: expect.closeTo(toSi(60, 'ft', 'm'), 9) });
  });

  it('never grows with more air, more elbows or a narrower duct', () => {
    const asked = fc.record({
      duct: fc.constantFrom('smooth' as const, 'flex' as const),
      inches: fc.double({ min: 3, max: 9, noNaN: true }),
      cfm: fc.double({ min: 20, max: 290, noNaN: true }),
      elbows: fc.integer({ min: 0, max: 5 }),
    });
    const ranked = (where: Parameters<typeof look>[0]) => {
      const found = look(where);
      return found.found ? rank(found.allowed) : Number.NaN;
    };
    fc.assert(
      fc.property(asked, fc.double({ min: 0, max: 10, noNaN: true }), (where, more) => {
        const here = ranked(where);
        expect(ranked({ ...where, cfm: where.cfm + more })).toBeLessThanOrEqual(here);
        expect(ranked({ ...where, elbows: where.elbows + 1 })).toBeLessThanOrEqual(here);
        expect(ranked({ ...where, inches: where.inches + more })).toBeGreaterThanOrEqual(here);
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});
