import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { breakerForLoad, continuousCurrent, mostCurrent, mostPower } from '#engine/electrical/circuit-load.ts';
import { controlCarries } from '#engine/electrical/control-load.ts';
import { currentDrawn, powerTogether } from '#engine/electrical/current.ts';
import {
  breakerCeilings,
  type CircuitLimitId,
  circuitLimits,
  continuousFactor,
  standardBreakers,
} from '#knowledge/electrical.ts';
import { amperes, ratio, volts, watts } from '#quantity/units.ts';

type Row = { readonly id: string; readonly title: string; readonly source: string } & (
  | { readonly sum: 'current'; readonly power: number; readonly voltage: number; readonly expected: number }
  | { readonly sum: 'share'; readonly rating: number; readonly limit: CircuitLimitId; readonly expected: number }
  | {
      readonly sum: 'share-in-watts';
      readonly rating: number;
      readonly voltage: number;
      readonly limit: CircuitLimitId;
      readonly expected: number;
    }
  | { readonly sum: 'together'; readonly powers: readonly number[]; readonly expected: number }
  | {
      readonly sum: 'continuous';
      readonly power: number;
      readonly voltage: number;
      readonly expected: number;
      readonly breaker: number;
    }
  | {
      readonly sum: 'control';
      readonly rating: number;
      readonly power: number;
      readonly voltage: number;
      readonly expected: boolean;
    }
  | { readonly sum: 'ceiling'; readonly awg: 14 | 12 | 10; readonly expected: number }
);
const figures: {
  readonly rows: readonly Row[];
  readonly listed: readonly string[];
  readonly notTested: Readonly<Record<string, string>>;
} = JSON.parse(readFileSync(join(import.meta.dirname, 'figures/electrical-loads.json'), 'utf8'));

const drawn = ({ power, voltage }: { readonly power: number; readonly voltage: number }) =>
  currentDrawn({ power: watts(power), voltage: volts(voltage), powerFactor: ratio(1) });
const shareOf = (limit: CircuitLimitId) => ratio(circuitLimits[limit].value);

/** Every sum here is of whole numbers and simple fractions, and comes out exactly. */
function worked(row: Row): number | boolean | undefined {
  switch (row.sum) {
    case 'current':
      return drawn(row);
    case 'share':
      return mostCurrent(amperes(row.rating), shareOf(row.limit));
    case 'share-in-watts':
      return mostPower({ rating: amperes(row.rating), share: shareOf(row.limit), voltage: volts(row.voltage) });
    case 'together':
      return powerTogether(row.powers.map(watts));
    case 'continuous':
      return continuousCurrent(drawn(row), continuousFactor);
    case 'control':
      return controlCarries({ current: drawn(row), rating: amperes(row.rating), share: ratio(1) }).carries;
    case 'ceiling':
      return breakerCeilings.get(row.awg);
  }
}

describe('loads come out as published', () => {
  for (const row of figures.rows) {
    it(`${row.id}: ${row.title} (${row.source})`, () => {
      expect(worked(row)).toBe(row.expected);
      if (row.sum === 'continuous') {
        expect(breakerForLoad(amperes(row.expected), standardBreakers)).toEqual({ found: true, breaker: row.breaker });
      }
    });
  }

  it('tries every row that was listed, or says why not', () => {
    expect([...figures.rows.map(({ id }) => id), ...Object.keys(figures.notTested)].toSorted()).toEqual(figures.listed);
  });
});
