import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { BoxFillInput } from '#engine/electrical/box-contents.ts';
import { boxFill } from '#engine/electrical/box-fill.ts';
import { type BarrierMaterial, boxVolume } from '#engine/electrical/box-volume.ts';
import { type CanadianConductors, type CanadianGauge, canadianBoxFill } from '#engine/electrical/canadian-box-fill.ts';
import type { Gauge } from '#engine/electrical/gauge.ts';
import { boxThatFits, furtherConductors } from '#engine/electrical/standard-box.ts';
import {
  barrierVolumes,
  boxFillRules,
  conductorVolumes,
  type ElectricalCodeEdition,
  standardBoxes,
} from '#knowledge/box-rules.ts';
import { canadianBoxFillRules, canadianConductorVolumes } from '#knowledge/canadian-box-rules.ts';
import { cubicInches, metres } from '#quantity/units.ts';

/** Published and worked problems in box fill. Totals are legal arithmetic and must come out exactly: no tolerance. */
interface Expected {
  readonly needed: number;
  readonly available?: number;
  readonly fits?: boolean;
  readonly parts?: Readonly<Record<string, number>>;
}
interface Row extends BoxFillInput {
  readonly id: string;
  readonly title: string;
  readonly expected: Readonly<Partial<Record<ElectricalCodeEdition, Expected>>>;
  readonly allowances?: number;
  readonly smallest?: { readonly kind: string; readonly size: string };
  readonly further14?: number;
  /** What a published answer says that is wrong. */
  readonly printedWrong?: { readonly needed?: number; readonly allowances?: number };
  readonly source: string;
}
interface Figures {
  readonly rows: readonly Row[];
  readonly canadian: readonly {
    readonly id: string;
    readonly title: string;
    readonly conductors: readonly CanadianConductors[];
    readonly connectors: { readonly count: number; readonly largestAwg: CanadianGauge };
    readonly needed: { readonly value: number };
    readonly source: string;
  }[];
  readonly volumes: readonly {
    readonly id: string;
    readonly title: string;
    readonly parts: readonly number[];
    readonly barriers: readonly BarrierMaterial[];
    readonly available: number;
    readonly source: string;
  }[];
  readonly countTable: readonly {
    readonly id: string;
    readonly volume: number;
    readonly most: Readonly<Record<string, number>>;
    readonly source: string;
  }[];
  readonly countTableMisprints: readonly { readonly box: string; readonly awg: string; readonly right: number }[];
  readonly freeSpace: readonly { readonly awg: Gauge; readonly in3: number; readonly cm3: number }[];
  readonly canadianFreeSpace: readonly { readonly awg: CanadianGauge; readonly mL: number; readonly in3: number }[];
  readonly listed: readonly string[];
  readonly notTested: Readonly<Record<string, string>>;
}
const figures: Figures = JSON.parse(readFileSync(join(import.meta.dirname, 'figures/box-fill.json'), 'utf8'));

const partOf: Readonly<Record<string, string>> = {
  'spliced-or-terminated': 'conductors',
  'fixture-wire': 'conductors',
  'fixture-wire-left-out': 'conductors',
  pigtail: 'conductors',
  stud: 'supports',
  hickey: 'supports',
};

const fillOf = (row: Row, edition: ElectricalCodeEdition, available?: number) =>
  boxFill(
    { ...row, box: { ...row.box, ...(available === undefined ? {} : { volume: cubicInches(available) }) } },
    boxFillRules[edition],
  );

const editionsOf = (row: Row) => Object.entries(row.expected) as [ElectricalCodeEdition, Expected][];

describe('box fill comes out as published', () => {
  for (const row of figures.rows) {
    for (const [edition, { needed, available, fits, parts }] of editionsOf(row)) {
      it(`${row.id}, ${edition} code: ${row.title} (${row.source})`, () => {
        const fill = fillOf(row, edition, available);
        expect(fill.needed).toBe(needed);
        if (fits !== undefined) expect(fill.room).toMatchObject({ known: true, available, fits });
        const sums: Record<string, number> = {};
        for (const { what, total } of fill.lines)
          sums[partOf[what] ?? what] = (sums[partOf[what] ?? what] ?? 0) + total;
        for (const [part, total] of Object.entries(parts ?? {})) expect(sums[part] ?? 0, part).toBe(total);
      });
    }
  }

  for (const row of figures.rows.filter(({ allowances }) => allowances !== undefined)) {
    it(`${row.id}: the allowances of ${row.title} add up to the published count (${row.source})`, () => {
      const counts = editionsOf(row).map(([edition]) =>
        fillOf(row, edition).lines.reduce((sum, { allowances }) => sum + allowances, 0),
      );
      expect(new Set(counts)).toEqual(new Set([row.allowances]));
    });
  }

  for (const row of figures.rows.filter(({ printedWrong }) => printedWrong !== undefined)) {
    it(`${row.id}: the wrong published answer is not repeated (${row.source})`, () => {
      for (const [edition] of editionsOf(row)) {
        const fill = fillOf(row, edition);
        const allowances = fill.lines.reduce((sum, line) => sum + line.allowances, 0);
        expect(fill.needed).not.toBe(row.printedWrong?.needed);
        expect(allowances).not.toBe(row.printedWrong?.allowances);
      }
    });
  }

  for (const row of figures.rows.filter(({ smallest }) => smallest !== undefined)) {
    it(`${row.id}: the smallest ${row.smallest?.kind} that takes ${row.title} is ${row.smallest?.size} (${row.source})`, () => {
      const kind = standardBoxes.filter((box) => box.kind === row.smallest?.kind);
      for (const [edition] of editionsOf(row)) {
        expect(boxThatFits(fillOf(row, edition).needed, kind)).toMatchObject({
          found: true,
          box: { size: row.smallest?.size },
        });
      }
    });
  }

  for (const row of figures.rows.filter(({ further14 }) => further14 !== undefined)) {
    it(`${row.id}: ${row.title} (${row.source})`, () => {
      for (const [edition, { available }] of editionsOf(row)) {
        const { room } = fillOf(row, edition, available);
        expect(room.known && furtherConductors(room.left, conductorVolumes['awg-14'].freeSpace)).toBe(row.further14);
      }
    });
  }

  for (const { id, title, parts, barriers, available, source } of figures.volumes) {
    it(`${id}: ${title} (${source})`, () => {
      const assembly = { parts: parts.map(cubicInches), barriers: barriers.map((material) => ({ material })) };
      expect(boxVolume(assembly, barrierVolumes)).toBe(available);
    });
  }

  for (const { id, title, conductors, connectors, needed, source } of figures.canadian) {
    it(`${id}: ${title} (${source})`, () => {
      const fill = canadianBoxFill(
        {
          conductors,
          insulatedConnectors: connectors,
          fixtureWires: { count: 0, lightOnThisBox: false },
          supportFittings: [],
          devices: [],
        },
        canadianBoxFillRules,
      );
      // A millionth of a millilitre: the sum is made in cubic metres, the example in millilitres.
      expect(fill.needed * 1e6).toBeCloseTo(needed.value, 6);
      expect(fill.lines.find(({ what }) => what === 'connectors')?.conductors).toBe(1);
    });
  }

  it('tries every row that was listed, or says why not', () => {
    const tried = [...figures.rows, ...figures.canadian, ...figures.volumes].map(({ id }) => id);
    expect([...tried, ...Object.keys(figures.notTested)].toSorted()).toEqual(figures.listed.toSorted());
  });
});

describe('the printed tables', () => {
  const spaceOf = new Map(Object.values(conductorVolumes).map((entry) => [String(entry.awg), entry.freeSpace]));

  for (const { id, volume, most, source } of figures.countTable) {
    it(`${id} takes as many wires of one size as printed (${source})`, () => {
      const box = standardBoxes.find((standard) => standard.id === id);
      expect(box?.volume).toBe(volume);
      for (const [awg, printed] of Object.entries(most)) {
        const misprint = figures.countTableMisprints.find((cell) => cell.box === id && cell.awg === awg);
        expect(furtherConductors(cubicInches(volume), spaceOf.get(awg) ?? cubicInches(0)), `${awg} AWG`).toBe(
          misprint ? misprint.right : printed,
        );
      }
    });
  }

  it('lists no box that the printed table does not', () => {
    expect(standardBoxes.map(({ id }) => id)).toEqual(figures.countTable.map(({ id }) => id));
  });

  it('holds the free space of each wire size (NEC table 314.16(B))', () => {
    expect(
      Object.values(conductorVolumes).map(({ awg, freeSpace, printedMetric }) => [awg, freeSpace, printedMetric.value]),
    ).toEqual(figures.freeSpace.map(({ awg, in3, cm3 }) => [awg, in3, cm3]));
    // The metric column is the inch column times 16.387, rounded to a tenth.
    for (const { in3, cm3 } of figures.freeSpace) expect(Math.round(in3 * 163.87) / 10).toBe(cm3);
  });

  it('holds the Canadian free space of each wire size (CSA C22.1 table 22)', () => {
    const printed = Object.values(canadianConductorVolumes);
    expect(printed.map(({ awg, printedInches }) => [awg, printedInches.value])).toEqual(
      figures.canadianFreeSpace.map(({ awg, in3 }) => [awg, in3]),
    );
    for (const [i, { mL }] of figures.canadianFreeSpace.entries()) {
      expect((printed[i]?.freeSpace ?? 0) * 1e6).toBeCloseTo(mL, 9);
    }
  });

  it('takes 2026 as 2023 until a change is known', () => {
    expect(boxFillRules[2026]).toEqual(boxFillRules[2023]);
  });
});

describe('the Canadian rule counts what its text says', () => {
  const empty = {
    conductors: [],
    fixtureWires: { count: 0, lightOnThisBox: false },
    supportFittings: [],
    insulatedConnectors: { count: 0, largestAwg: 14 },
    devices: [],
  } as const;
  const millilitresOf = (input: Parameters<typeof canadianBoxFill>[0]) =>
    canadianBoxFill(input, canadianBoxFillRules).needed * 1e6;

  it('charges every full pair of connectors: 1 none, 2 and 3 one, 4 and 5 two (Ontario text, 12-3034(2)(b))', () => {
    const pairs = [0, 1, 2, 3, 4, 5].map((count) =>
      Math.round(millilitresOf({ ...empty, insulatedConnectors: { count, largestAwg: 14 } }) / 24.6),
    );
    expect(pairs).toEqual([0, 0, 1, 1, 2, 2]);
  });

  it('leaves out thin leads of a light on the box and counts those of a fan (Ontario text, 12-3034(1)(d))', () => {
    expect(millilitresOf({ ...empty, fixtureWires: { count: 3, lightOnThisBox: true } })).toBe(0);
    expect(millilitresOf({ ...empty, fixtureWires: { count: 3, lightOnThisBox: false } })).toBeCloseTo(3 * 24.6, 6);
  });

  it('charges a deep device by its depth, at 32 cm3 a centimetre (Ontario text, 12-3034(3))', () => {
    const conductors: readonly CanadianConductors[] = [{ count: 2, awg: 14, kind: 'spliced-or-terminated' }];
    const withDevice = (depth: number) =>
      millilitresOf({ ...empty, conductors, devices: [{ count: 1, depth: metres(depth) }] });
    expect(withDevice(0.0254)).toBeCloseTo(4 * 24.6, 6);
    expect(withDevice(0.04)).toBeCloseTo(2 * 24.6 + 128, 6);
  });

  it('counts each stud and hickey, and no pigtail (Ontario text, 12-3034(1)(c) and (2)(a))', () => {
    const fill = canadianBoxFill(
      {
        ...empty,
        conductors: [
          { count: 2, awg: 12, kind: 'spliced-or-terminated' },
          { count: 1, awg: 12, kind: 'pigtail' },
        ],
        supportFittings: ['stud', 'stud'],
      },
      canadianBoxFillRules,
    );
    expect(fill.lines.map(({ what, conductors }) => [what, conductors])).toEqual([
      ['spliced-or-terminated', 2],
      ['pigtail', 0],
      ['stud', 2],
    ]);
  });
});
