import { expect, it } from 'vitest';
import { toSi } from '#quantity/unit-factors.ts';

/** A figure with its unit as printed: `[3.25, 'in']`. */
export type Printed = readonly [value: number, unit: string];

const siUnit: Readonly<Record<string, string>> = {
  ft: 'm',
  in: 'm',
  mm: 'm',
  m: 'm',
  'm/s': 'm/s',
  cfm: 'm^3/s',
  'L/s': 'm^3/s',
  fpm: 'm/s',
  inH2O: 'Pa',
  'lb/ft^3': 'kg/m^3',
  'kg/m^3': 'kg/m^3',
  degF: 'degC',
  deg: 'rad',
  Rvalue: 'm^2 K/W',
};

/** The SI number of a printed figure. The caller puts the brand on. */
export function si([value, unit]: Printed): number {
  if (unit === 'in/ft') return value / 12;
  const target = siUnit[unit];
  if (target === undefined) throw new TypeError(`no SI unit is known for ${unit}`);
  return toSi(value, unit === 'L/s' ? 'litre/s' : unit, target);
}

type Tolerance = { readonly relative: number } | { readonly absolute: number };

/** One row of a figures file. A row without a check is listed, with the reason in `why`. */
export interface Row {
  readonly check: string | null;
  // Every row of the JSON has a type of its own; each check says what it reads.
  readonly inputs: unknown;
  readonly expected: unknown;
  readonly tolerance: unknown;
  readonly source: string;
  readonly verified: boolean;
  /** Why it is not checked. */
  readonly why?: string;
}

export const margin = (expected: number, tolerance: unknown): number => {
  const known = tolerance as Tolerance;
  const room = 'relative' in known ? Math.abs(expected) * known.relative : known.absolute;
  // An exact figure may still differ in the last binary digit after a change of unit.
  return room === 0 ? Math.abs(expected) * 1e-12 : room;
};

/** The actual number lies within the row's tolerance of the expected one. */
export function near(actual: number, expected: number, tolerance: unknown): void {
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(margin(expected, tolerance));
}

export type Checks = Readonly<Record<string, (row: Row) => void>>;

/**
 * Makes a test of every row that names a check, and one that shows no row is left out: each id is either checked or listed
 * with the reason it is not.
 */
export function checkRows(rows: Readonly<Record<string, Row>>, checks: Checks): void {
  for (const [id, row] of Object.entries(rows)) {
    if (row.check === null) continue;
    it(`${id}: ${row.source}${row.verified ? '' : ' (not a published figure)'}`, () => {
      const check = checks[row.check as string];
      expect(check, `no check is called ${row.check}`).toBeDefined();
      expect.hasAssertions();
      check?.(row);
    });
  }

  it('every row is either checked or listed with the reason it is not', () => {
    const unchecked = Object.values(rows).filter(({ check }) => check === null);
    expect(unchecked.filter(({ why }) => !why?.endsWith('.'))).toEqual([]);
    expect(Object.values(rows).filter(({ check, why }) => check !== null && why !== undefined)).toEqual([]);
  });
}
