import { describe, expect, it } from 'vitest';
import { toSi } from '#quantity/unit-factors.ts';
import { cubicMetresPerSecond, metres, pascals, squareMetres } from '#quantity/units.ts';

/** One published number and what it was published for. An id may have several. */
export interface Check<Given = unknown> {
  readonly id: string;
  /** Which of the test's checks reads it. */
  readonly kind: string;
  readonly given: Given;
  readonly expected: unknown;
  readonly unit: string;
  readonly tolerance: number;
  readonly source: string;
  /** Whether the figure was seen in the publication. */
  readonly verified: boolean;
}

export interface Figures {
  /** Every id there is. */
  readonly ids: readonly string[];
  readonly checks: readonly Check[];
  /** Ids left out, each with its reason. */
  readonly notTested: Readonly<Record<string, string>>;
}

/** Makes a test of every check, and one that shows each id is either checked or left out for a reason. */
export function workedExamples(
  topic: string,
  { ids, checks, notTested }: Figures,
  kinds: Readonly<Record<string, (check: Check<never>) => void>>,
): void {
  describe(topic, () => {
    for (const check of checks) {
      const { id, kind, given, source, verified } = check;
      it(`${id} ${kind} ${JSON.stringify(given)}: ${source}${verified ? '' : ' (not seen in print)'}`, () => {
        expect.hasAssertions();
        expect(Object.keys(kinds)).toContain(kind);
        kinds[kind]?.(check as Check<never>);
      });
    }

    it('checks every figure or says why not', () => {
      const own = (id: string) => id.startsWith('own-');
      const checked = new Set(checks.map(({ id }) => id).filter((id) => !own(id)));
      const leftOut = Object.keys(notTested);
      expect(leftOut.filter((id) => checked.has(id))).toEqual([]);
      expect([...checked, ...leftOut].sort()).toEqual(ids.toSorted());
      expect(Object.values(notTested).every((reason) => reason.endsWith('.'))).toBe(true);
    });
  });
}

/** The last binary digits may differ after a change of unit. */
const rounding = 1e-9;

/** The number is the expected one, within the check's tolerance in the check's unit. */
export function agrees(actual: number, { expected, tolerance }: Check): void {
  expect(Math.abs(actual - (expected as number)), `${actual} against ${expected}`).toBeLessThanOrEqual(
    tolerance + rounding * Math.abs(expected as number),
  );
}

/** The number lies in the expected range. */
export function liesIn(actual: number, { expected }: Check): void {
  const [low, high] = expected as readonly [number, number];
  expect(actual).toBeGreaterThanOrEqual(low * (1 - rounding));
  expect(actual).toBeLessThanOrEqual(high * (1 + rounding));
}

export const cfm = (value: number) => cubicMetresPerSecond(toSi(value, 'cfm', 'm^3/s'));
export const inchesOfWater = (value: number) => pascals(toSi(value, 'inH2O', 'Pa'));
export const feet = (value: number) => metres(toSi(value, 'ft', 'm'));
export const squareFeet = (value: number) => squareMetres(toSi(value, 'ft^2', 'm^2'));
