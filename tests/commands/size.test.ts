import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { OneShot } from '#chat/one-shot.ts';
import size from '#commands/size.ts';
import { findingOf, once } from './talked.ts';

const cfm = 0.3048 ** 3 / 60;
const needed = (answer: OneShot): number => (findingOf(answer, 'airflow-needed').value?.number ?? Number.NaN) / cfm;
const ids = ({ reply }: OneShot) => reply?.findings.map(({ id }) => id) ?? [];

const bath = (length: string, width: string, ...more: string[]) =>
  once(size, `room-length=${length}`, `room-width=${width}`, 'ceiling-height=8 ft', 'toilet-compartment=no', ...more);

// The guideline: Home Ventilating Institute, residential ventilation guideline for bathrooms. The code minimum: IRC table of
// local exhaust rates, 50 cfm intermittent or 20 cfm continuous for a bathroom.
describe('the air a room needs', () => {
  it('is 1 cfm for each square foot up to 100, and never under 50', () => {
    expect(needed(bath('9 ft', '8 ft', 'fixtures=toilet, tub'))).toBeCloseTo(72, 6);
    expect(needed(bath('8 ft', '5 ft', 'fixtures=toilet, tub'))).toBeCloseTo(50, 6);
    expect(needed(bath('10 ft', '10 ft', 'fixtures=toilet, tub'))).toBeCloseTo(100, 6);
  });

  it('is 50 cfm for each fixture above 100 square feet, and 100 for a jetted tub', () => {
    expect(needed(bath('12 ft', '9 ft', 'fixtures=toilet, shower, tub'))).toBeCloseTo(150, 6);
    expect(needed(bath('12 ft', '9 ft', 'fixtures=toilet, shower, jetted tub'))).toBeCloseTo(200, 6);
  });

  it('is no less in a larger room, though a single fixture counts for little', () => {
    const large = bath('12 ft', '10 ft', 'fixtures=toilet');
    expect(needed(large)).toBeCloseTo(100, 6);
    expect(findingOf(large, 'airflow-needed').says).toContain('a room of 100 sq ft needs as much');
    expect(findingOf(large, 'airflow-needed').sources.map(({ source }) => source)).toContain('own-working');
    const unsure = bath('9 to 11 ft', '10 ft', 'fixtures=toilet');
    const { low = 0, high = 0 } = findingOf(unsure, 'airflow-needed').value ?? {};
    expect([low / cfm, high / cfm].map((flow) => Math.round(flow))).toEqual([90, 100]);
  });

  it('is eight air changes an hour under a high ceiling, where that is more', () => {
    // 9 ft x 8 ft x 11 ft x 8 / 60 min = 105.6 cfm.
    const high = once(size, 'room-length=9 ft', 'room-width=8 ft', 'ceiling-height=11 ft', 'fixtures=toilet, tub');
    expect(needed(high)).toBeCloseTo((9 * 8 * 11 * 8) / 60, 6);
    expect(findingOf(high, 'airflow-needed').says).toContain('the high ceiling makes the volume decide');
  });

  it('is the code minimum where the fan never stops, which must be turned up for bathing', () => {
    const always = bath('9 ft', '8 ft', 'fixtures=toilet, tub', 'running=continuous');
    expect(needed(always)).toBeCloseTo(20, 6);
    expect(findingOf(always, 'when-bathing').says).toContain('72 cfm');
  });

  it('can be told from the floor area alone', () => {
    expect(needed(once(size, 'room-area=72 sq ft', 'ceiling-height=8 ft'))).toBeCloseTo(72, 6);
    expect(once(size, 'room-area=72').missing).toEqual([]);
  });

  it('comes with every rule worked out, whether it applies or not', () => {
    const answer = bath('9 ft', '8 ft', 'fixtures=toilet, tub');
    expect(ids(answer).slice(0, 5)).toEqual([
      'airflow-needed',
      'code-minimum',
      'by-floor-area',
      'by-fixtures',
      'by-air-changes',
    ]);
    const values = ['code-minimum', 'by-floor-area', 'by-fixtures', 'by-air-changes'].map(
      (id) => (findingOf(answer, id).value?.number ?? 0) / cfm,
    );
    // 50 by the code; 9 x 8; 50 + 50; 9 x 8 x 8 x 8 / 60.
    for (const [index, expected] of [50, 72, 100, 76.8].entries()) expect(values[index]).toBeCloseTo(expected, 6);
  });
});

describe('what else the room asks for', () => {
  it('a toilet behind its own door gets a fan of its own, and leaves less for the rest', () => {
    const words = ['room-length=12 ft', 'room-width=9 ft', 'ceiling-height=8 ft', 'fixtures=toilet, shower, tub'];
    const answer = once(size, ...words, 'toilet-compartment=yes');
    expect(findingOf(answer, 'toilet-compartment')).toMatchObject({ weight: 'caution' });
    expect(findingOf(answer, 'toilet-compartment').says).toMatch(/fan of its own of 50 cfm .* then needs 100 cfm/);
  });

  it('a steam shower gets one too', () => {
    const answer = bath('9 ft', '8 ft', 'fixtures=toilet, steam shower');
    expect(findingOf(answer, 'steam-shower')).toMatchObject({ weight: 'caution' });
    expect(ids(bath('9 ft', '8 ft', 'fixtures=toilet, shower'))).not.toContain('steam-shower');
  });

  it('too much is named, with what it would take of a shut door', () => {
    expect(findingOf(bath('9 ft', '8 ft'), 'too-much').says).toMatch(/much above 108 cfm/);
  });

  it('nobody without a toilet is asked about its door', () => {
    const none = once(size, 'room-length=9 ft', 'room-width=8 ft', 'fixtures=tub');
    expect(none.reply?.assumed?.join()).not.toContain('Toilet behind');
    const some = once(size, 'room-length=9 ft', 'room-width=8 ft', 'fixtures=toilet');
    expect(some.reply?.assumed?.join()).toContain('Toilet behind its own door: No');
  });
});

describe('a room that is not measured', () => {
  it('is planned for as it most likely is, and told how far up that may go', () => {
    const answer = once(size, 'room-length=8 to 12 ft', 'room-width=8 ft', 'ceiling-height=8 ft', 'fixtures=toilet');
    expect(answer.reply?.headline).toBe('This room needs 80 cfm (37.8 L/s), up to 96 cfm if it turns out larger.');
    const { low = 0, high = 0 } = findingOf(answer, 'airflow-needed').value ?? {};
    expect([low / cfm, high / cfm].map((flow) => Math.round(flow))).toEqual([64, 96]);
  });

  it('needs no more said where nothing of it matters', () => {
    const answer = once(size, 'room-length=6 to 7 ft', 'room-width=5 ft', 'ceiling-height=8 ft', 'fixtures=toilet');
    expect(answer.reply?.headline).toBe('This room needs 50 cfm (23.6 L/s).');
  });
});

describe('the need', () => {
  it('never falls as the room grows in any direction', () => {
    const side = fc.integer({ min: 4, max: 20 });
    const height = fc.integer({ min: 7, max: 14 });
    const stands = fc.constantFrom('none', 'toilet', 'toilet, tub', 'toilet, shower, jetted tub');
    const of = (length: number, width: number, ceiling: number, fixtures: string) =>
      needed(
        once(size, `room-length=${length}`, `room-width=${width}`, `ceiling-height=${ceiling}`, `fixtures=${fixtures}`),
      );
    fc.assert(
      fc.property(side, side, height, stands, (length, width, ceiling, fixtures) => {
        const now = of(length, width, ceiling, fixtures);
        const least = now * (1 - 1e-9);
        expect(of(length + 1, width, ceiling, fixtures)).toBeGreaterThanOrEqual(least);
        expect(of(length, width + 1, ceiling, fixtures)).toBeGreaterThanOrEqual(least);
        expect(of(length, width, ceiling + 1, fixtures)).toBeGreaterThanOrEqual(least);
        expect(of(width, length, ceiling, fixtures)).toBeCloseTo(now, 9);
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});

it('speaks of a door as makeup does: what one bears, the other does not refuse', () => {
  expect(findingOf(bath('8 ft', '5 ft', 'fixtures=toilet, tub'), 'too-much').says).toMatch(
    /75 cfm.*takes 9\.9 Pa: tight, though a fan can bear it\.$/,
  );
  expect(findingOf(bath('10 ft', '10 ft', 'fixtures=toilet, tub'), 'too-much').says).toMatch(
    /150 cfm.*more than a bath fan can spare\.$/,
  );
});
