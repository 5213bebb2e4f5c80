import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BoxFillInput, ConductorKind } from '#engine/electrical/box-contents.ts';
import { boxFill, boxFillByEdition } from '#engine/electrical/box-fill.ts';
import { boxVolume, volumeOfEachSide } from '#engine/electrical/box-volume.ts';
import { type Gauge, gauges, isGauge } from '#engine/electrical/gauge.ts';
import { boxThatFits, furtherConductors } from '#engine/electrical/standard-box.ts';
import {
  barrierVolumes,
  boxFillRules,
  boxRuleOfLine,
  type ElectricalCodeEdition,
  standardBoxes,
} from '#knowledge/box-rules.ts';
import { cubicInches, ratio } from '#quantity/units.ts';

const empty: BoxFillInput = {
  box: { servesFan: false },
  conductors: [],
  grounds: { count: 0, largestAwg: 14 },
  devices: [],
  internalClamps: false,
  supportFittings: [],
  terminalBlocks: [],
  canopy: false,
};
const neededIn = (edition: ElectricalCodeEdition, contents: Partial<BoxFillInput>) =>
  boxFill({ ...empty, ...contents }, boxFillRules[edition]).needed;
const wires = (kind: ConductorKind, count: number, awg: Gauge) => [{ count, awg, kind }];

describe('what counts in a box', () => {
  it('counts a wire running through once and one with a long loop twice (NEC 314.16(B)(1))', () => {
    expect(neededIn('2020', { conductors: wires('through', 2, 12) })).toBe(4.5);
    expect(neededIn('2020', { conductors: wires('loop', 2, 12) })).toBe(9);
  });

  it('needs no room for an empty box, even one with clamps', () => {
    expect(neededIn('2023', { internalClamps: true, supportFittings: ['stud'] })).toBe(0);
  });

  it('charges clamps once and each type of support once, by the thickest wire in the box (NEC 314.16(B)(2), (3))', () => {
    const contents = {
      conductors: wires('spliced-or-terminated', 2, 14),
      grounds: { count: 1, largestAwg: 12 },
    } as const;
    expect(neededIn('2020', { ...contents, internalClamps: true })).toBe(4 + 2.25 + 2.25);
    expect(neededIn('2020', { ...contents, supportFittings: ['stud', 'stud', 'hickey'] })).toBe(4 + 2.25 + 4.5);
  });

  it('counts the ground wires by the edition (NEC 314.16(B)(5))', () => {
    const grounds = (count: number) => ({ grounds: { count, largestAwg: 14 } as const });
    expect([0, 1, 4, 5, 8].map((count) => neededIn('2017', grounds(count)))).toEqual([0, 2, 2, 2, 2]);
    expect([0, 1, 4, 5, 8].map((count) => neededIn('2020', grounds(count)))).toEqual([0, 2, 2, 2.5, 4]);
  });

  it('gives an isolated ground set its own allowance to 2017 and counts it with the rest from 2020', () => {
    const grounds = { count: 3, largestAwg: 14, isolated: { count: 2, largestAwg: 12 } } as const;
    expect(neededIn('2017', { grounds })).toBe(2 + 2.25);
    expect(neededIn('2020', { grounds })).toBe(1.25 * 2.25);
  });

  it('counts a terminal block from 2023 only, and still names it before (NEC 314.16(B)(6))', () => {
    const terminalBlocks = [{ count: 1, largestAwg: 14 }] as const;
    expect(neededIn('2020', { terminalBlocks })).toBe(0);
    expect(neededIn('2023', { terminalBlocks })).toBe(2);
    const { lines } = boxFill({ ...empty, terminalBlocks }, boxFillRules[2020]);
    expect(lines).toMatchObject([{ what: 'terminal-blocks', count: 1, allowances: 0, total: 0 }]);
  });

  it('knows the words and the source behind every line', () => {
    expect(boxRuleOfLine('grounds', '2017').source).not.toBe(boxRuleOfLine('grounds', '2020').source);
    expect(boxRuleOfLine('stud', '2023').says).toContain('stud');
  });
});

describe('leads under a lamp canopy', () => {
  const leads = [...wires('fixture-wire', 5, 18), ...wires('fixture-wire', 1, 14)];

  it('count one each when no canopy is there', () => {
    expect(neededIn('2023', { conductors: leads })).toBe(5 * 1.5 + 2);
  });

  it('are left out up to four under a domed canopy, thin ones only', () => {
    const fill = boxFill({ ...empty, conductors: leads, canopy: true }, boxFillRules[2023]);
    expect(fill.canopy).toBe('granted');
    expect(fill.needed).toBe(1.5 + 2);
    expect(fill.lines.find(({ what }) => what === 'fixture-wire-left-out')).toMatchObject({ count: 4, total: 0 });
  });

  it("all count in a fan's box, canopy or not", () => {
    const fill = boxFill({ ...empty, box: { servesFan: true }, conductors: leads, canopy: true }, boxFillRules[2023]);
    expect(fill.canopy).toBe('refused-for-fan');
    expect(fill.needed).toBe(5 * 1.5 + 2);
  });
});

describe('room in the box', () => {
  it('passes a box that is exactly full and fails one a wire over', () => {
    const volume = cubicInches(8);
    const room = (count: number) =>
      boxFill(
        { ...empty, box: { servesFan: false, volume }, conductors: wires('spliced-or-terminated', count, 14) },
        boxFillRules[2023],
      ).room;
    expect(room(4)).toEqual({ known: true, available: 8, left: 0, fits: true });
    expect(room(5)).toEqual({ known: true, available: 8, left: -2, fits: false });
  });

  it('says nothing of a box whose volume nobody knows', () => {
    expect(boxFill(empty, boxFillRules[2023]).room).toEqual({ known: false });
  });

  it('adds rings and takes barriers off, leaving no dust of arithmetic (2018 IRC E3905.12.1)', () => {
    const parts = [10.3, 8.2].map(cubicInches);
    expect(boxVolume({ parts, barriers: [] }, barrierVolumes)).toBe(18.5);
    expect(boxVolume({ parts, barriers: [{ material: 'metal' }, { marked: cubicInches(0.7) }] }, barrierVolumes)).toBe(
      17.3,
    );
  });

  it('shares the room out by the width of each side of a barrier', () => {
    expect(volumeOfEachSide(cubicInches(33), [2, 1].map(ratio))).toEqual([22, 11]);
  });

  it('finds no listed box for more than the largest holds', () => {
    expect(boxThatFits(cubicInches(42), standardBoxes)).toMatchObject({
      found: true,
      box: { size: '4-11/16 x 2-1/8' },
    });
    expect(boxThatFits(cubicInches(42.25), standardBoxes)).toEqual({ found: false, why: 'needs-more-than-any-listed' });
  });

  it('offers no further wire in an overfull box', () => {
    expect(furtherConductors(cubicInches(-3), cubicInches(2))).toBe(0);
  });

  it('figures 18 to 6 AWG and nothing thicker (NEC 314.28)', () => {
    expect([18, 16, 14, 12, 10, 8, 6].every(isGauge)).toBe(true);
    expect([4, 2, 13, 0].some(isGauge)).toBe(false);
  });
});

describe('an edition nobody knows', () => {
  const nine = { ...empty, grounds: { count: 9, largestAwg: 12 } } as const;

  it('is taken as the one that asks for the most room, and says so', () => {
    const fill = boxFillByEdition(nine, 'unknown', boxFillRules);
    expect(fill.needed).toBe(2.25 * 2.25);
    expect(fill).toMatchObject({ edition: '2026', editionKnown: false });
  });

  it('may be an old one: a separate isolated ground set asks for more before 2020', () => {
    const isolated = {
      ...empty,
      grounds: { count: 2, largestAwg: 14, isolated: { count: 2, largestAwg: 14 } },
    } as const;
    expect(boxFillByEdition(isolated, 'unknown', boxFillRules)).toMatchObject({ edition: '2017', needed: 4 });
  });

  it('is never figured when the edition is given', () => {
    expect(boxFillByEdition(nine, '2017', boxFillRules)).toMatchObject({
      edition: '2017',
      editionKnown: true,
      needed: 2.25,
    });
  });
});

const gauge = fc.constantFrom(...gauges);
const few = fc.integer({ min: 0, max: 12 });
const kind = fc.constantFrom<ConductorKind>('spliced-or-terminated', 'through', 'loop', 'pigtail', 'fixture-wire');
const conductor = fc.record({ count: few, awg: gauge, kind });
const contents: fc.Arbitrary<BoxFillInput> = fc.record({
  box: fc.record({ servesFan: fc.boolean() }),
  conductors: fc.array(conductor, { maxLength: 5 }),
  grounds: fc.record({ count: few, largestAwg: gauge }),
  devices: fc.array(fc.record({ count: few, largestAwg: gauge, gangs: fc.integer({ min: 1, max: 2 }) }), {
    maxLength: 3,
  }),
  internalClamps: fc.boolean(),
  supportFittings: fc.array(fc.constantFrom('stud' as const, 'hickey' as const), { maxLength: 3 }),
  terminalBlocks: fc.array(fc.record({ count: few, largestAwg: gauge }), { maxLength: 2 }),
  canopy: fc.boolean(),
});
const edition = fc.constantFrom<ElectricalCodeEdition>('2014', '2017', '2020', '2023', '2026');

describe('laws of box fill', () => {
  it('adding a wire never frees space, whatever the edition', () => {
    fc.assert(
      fc.property(contents, conductor, edition, (input, more, year) => {
        const before = boxFill(input, boxFillRules[year]).needed;
        expect(
          boxFill({ ...input, conductors: [...input.conductors, more] }, boxFillRules[year]).needed,
        ).toBeGreaterThanOrEqual(before);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('adding a ground, a clamp, a fitting, a device or a terminal block never frees space', () => {
    fc.assert(
      fc.property(contents, gauge, edition, (input, awg, year) => {
        const before = boxFill(input, boxFillRules[year]).needed;
        const more: Partial<BoxFillInput>[] = [
          { grounds: { count: input.grounds.count + 1, largestAwg: input.grounds.largestAwg } },
          { internalClamps: true },
          { supportFittings: [...input.supportFittings, 'hickey'] },
          { devices: [...input.devices, { count: 1, largestAwg: awg, gangs: 1 }] },
          { terminalBlocks: [...input.terminalBlocks, { count: 1, largestAwg: awg }] },
        ];
        for (const added of more) {
          expect(boxFill({ ...input, ...added }, boxFillRules[year]).needed).toBeGreaterThanOrEqual(before);
        }
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('a canopy never adds to the fill, and never helps a fan', () => {
    fc.assert(
      fc.property(contents, edition, (input, year) => {
        const fill = (servesFan: boolean, canopy: boolean) =>
          boxFill({ ...input, canopy, box: { servesFan } }, boxFillRules[year]).needed;
        expect(fill(false, true)).toBeLessThanOrEqual(fill(false, false));
        expect(fill(true, true)).toBe(fill(true, false));
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('the total is the sum of its lines, and an unknown edition never asks for less than a known one', () => {
    fc.assert(
      fc.property(contents, edition, (input, year) => {
        const known = boxFillByEdition(input, year, boxFillRules);
        expect(known.lines.reduce((sum, { total }) => sum + total, 0)).toBe(known.needed);
        for (const { allowances, each, total } of known.lines) expect(allowances * each).toBe(total);
        expect(boxFillByEdition(input, 'unknown', boxFillRules).needed).toBeGreaterThanOrEqual(known.needed);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});
