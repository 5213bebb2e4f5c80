import { describe, expect, it, test } from 'vitest';
import type { PrintedFigure } from '#knowledge/figure.ts';
import { toSi } from '#quantity/unit-factors.ts';

/** A figure the knowledge base must hold exactly as its source prints it. */
interface HeldFigure {
  readonly id: string;
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly unit: string;
}

/** One line of a figures file: what is given, what a publication or another program says of it, and how near to come. */
export interface Row {
  readonly given?: Readonly<Record<string, number | boolean>>;
  readonly expected?: Readonly<Record<string, unknown>>;
  readonly tolerance?: Readonly<Record<string, unknown>>;
  readonly figures?: readonly HeldFigure[];
  readonly limit?: string;
  readonly source?: string;
  readonly where?: string;
  readonly verified: boolean;
  /** Why the tolerance is what it is. */
  readonly why?: string;
}

export interface RowFile {
  /** Every row there is. */
  readonly ids: readonly string[];
  readonly rows: Readonly<Record<string, Row>>;
  readonly notTested: Readonly<Record<string, string>>;
}

type Check = (row: Row, id: string) => void;

/**
 * Tests every row with each check whose pattern fits its id, and shows that no row is left out: each id is tested or is
 * listed with the reason why not.
 */
export function testEveryRow(
  topic: string,
  file: RowFile,
  checks: readonly (readonly [RegExp, string, Check])[],
): void {
  const tested = new Set<string>();
  for (const [pattern, title, check] of checks) {
    const fitting = Object.entries(file.rows).filter(([id]) => pattern.test(id));
    describe(title, () => {
      for (const [id, row] of fitting) {
        tested.add(id);
        test(`${id} (${row.source ?? 'printed figure'}${row.where === undefined ? '' : `, ${row.where}`})`, () =>
          check(row, id));
      }
    });
  }
  describe(`the rows of ${topic}`, () => {
    it('are each tested, or listed with a reason', () => {
      const listed = Object.keys(file.notTested);
      expect([...tested, ...listed].toSorted()).toEqual([...file.ids].toSorted());
      expect(listed.filter((id) => tested.has(id) || file.notTested[id] === '')).toEqual([]);
    });
  });
}

/** A check that the knowledge base holds a row's figures as printed, and says as honestly whether they were seen. */
export const held =
  (figures: Readonly<Record<string, PrintedFigure>>): Check =>
  (row) => {
    expect(row.figures?.length).toBeGreaterThan(0);
    for (const { id, ...printed } of row.figures ?? []) {
      expect(figures[id], id).toMatchObject(printed);
      expect(figures[id]?.citation.verified, `${id}: seen in print`).toBe(row.verified);
    }
  };

export const given = (row: Row, name: string): number => {
  const value = row.given?.[name];
  if (typeof value !== 'number') throw new TypeError(`the row gives no number ${name}`);
  return value;
};

export const expected = (row: Row, name = 'result'): number => {
  const value = row.expected?.[name];
  if (typeof value !== 'number') throw new TypeError(`the row expects no number ${name}`);
  return value;
};

export const tolerance = (row: Row, name: string): number => {
  const value = row.tolerance?.[name];
  if (typeof value !== 'number') throw new TypeError(`the row has no tolerance ${name}`);
  return value;
};

/** Fails unless the numbers are within a share of the expected one, an absolute distance, or the larger of both. */
export function near(actual: number, wanted: number, room: { readonly rel?: number; readonly abs?: number }): void {
  const allowed = Math.max(Math.abs(wanted) * (room.rel ?? 0), room.abs ?? 0);
  expect(Math.abs(actual - wanted), `${actual} should be ${wanted} ± ${allowed}`).toBeLessThanOrEqual(allowed);
}

/** The unit conversions the rows of this family need, into SI. */
export const inSi = {
  airflow: (cfm: number) => toSi(cfm, 'cfm', 'm^3/s'),
  inches: (value: number) => toSi(value, 'in', 'm'),
  feet: (value: number) => toSi(value, 'ft', 'm'),
  cubicFeet: (value: number) => toSi(value, 'ft^3', 'm^3'),
  fahrenheit: (value: number) => toSi(value, 'degF', 'degC'),
  psi: (value: number) => toSi(value, 'psi', 'Pa'),
  rValue: (value: number) => toSi(value, 'Rvalue', 'm^2 K/W'),
};
