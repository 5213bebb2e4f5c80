import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { wrapArea } from '#engine/take-off/duct-wrap.ts';
import { screwsPerJoint } from '#engine/take-off/fastenings.ts';
import { bandTape, jointTape, withWaste } from '#engine/take-off/foil-tape.ts';
import { bayFit, clearBay, fitsUnderFloor } from '#engine/take-off/opening-fit.ts';
import { dropOverRun } from '#engine/take-off/round-duct.ts';
import { allowedSag, hangersBetweenEnds } from '#engine/take-off/supports.ts';
import {
  besideHousing,
  type FramingId,
  memberSize,
  sagPerLength,
  slope,
  takeOffDefaults,
  tapeWidth,
  turnOverlap,
  wrapAllowance,
} from '#knowledge/materials.ts';
import { type Metres, metres } from '#quantity/units.ts';

interface Row {
  readonly id: string;
  readonly sum: keyof typeof sums;
  readonly title: string;
  readonly source: string;
  readonly unit: string;
  readonly expected: number | boolean;
  readonly diameter: number;
  readonly length: number;
  readonly spacing: number;
  readonly wraps: number;
  readonly lap: number;
  readonly joints?: number;
  readonly member: FramingId;
  readonly width: number;
  readonly clear: number;
  readonly height: number;
  readonly band: number;
  readonly wrap: Parameters<typeof wrapAllowance>[0];
}
const inches = (value: number): Metres => metres(value * 0.0254);
const feet = (value: number): Metres => metres(value * 0.3048);
const inInches = (length: Metres): number => length / 0.0254;

const sums = {
  tape: ({ diameter, wraps, lap, joints }: Row) => {
    const one = jointTape({ diameter: inches(diameter), wraps, endLap: inches(lap) });
    return inInches(joints === undefined ? one : withWaste(metres(one * joints), takeOffDefaults.waste));
  },
  band: ({ diameter, band }: Row) =>
    inInches(bandTape({ diameter: inches(diameter), band: inches(band), tapeWidth, overlap: turnOverlap })),
  screws: ({ diameter }: Row) =>
    screwsPerJoint(inches(diameter), { least: takeOffDefaults.leastScrews, spacing: takeOffDefaults.screwSpacing }),
  hangers: ({ length }: Row) => hangersBetweenEnds(feet(length), takeOffDefaults.flexSpacing),
  sag: ({ spacing }: Row) => inInches(allowedSag(feet(spacing), sagPerLength)),
  drop: ({ length }: Row) => inInches(dropOverRun(feet(length), slope)),
  bay: ({ spacing, member }: Row) => inInches(clearBay(inches(spacing), memberSize(member))),
  'fits-bay': ({ width, clear }: Row) =>
    bayFit({ housingWidth: inches(width), clear: inches(clear), besideEach: besideHousing }).withRoom,
  'fits-depth': ({ height, member }: Row) =>
    fitsUnderFloor({ housingHeight: inches(height), cover: metres(0), joistDepth: memberSize(member) }),
  wrap: ({ diameter, length, wrap }: Row) =>
    wrapArea({ diameter: inches(diameter), allowance: wrapAllowance(wrap), length: feet(length) }) / 0.3048 ** 2,
};

const figures: {
  readonly rows: readonly Row[];
  readonly listed: readonly string[];
  readonly notTested: Readonly<Record<string, string>>;
} = JSON.parse(readFileSync(join(import.meta.dirname, 'figures/take-off.json'), 'utf8'));

/** Half of the last digit printed: two decimals of an inch, one of a square foot. */
const halfADigit = (unit: string): number => (unit === 'sq ft' ? 0.05 : 0.005);

describe('a take-off comes out as worked by hand', () => {
  for (const row of figures.rows) {
    it(`${row.id}: ${row.title} (${row.source})`, () => {
      const worked = sums[row.sum](row);
      if (typeof row.expected === 'boolean' || typeof worked === 'boolean') expect(worked).toBe(row.expected);
      else if (Number.isInteger(row.expected) && row.unit !== 'in') expect(worked).toBe(row.expected);
      else expect(Math.abs(worked - row.expected)).toBeLessThanOrEqual(halfADigit(row.unit));
    });
  }

  it('tries every row that was listed, or says why not', () => {
    expect([...figures.rows.map(({ id }) => id), ...Object.keys(figures.notTested)].toSorted()).toEqual(figures.listed);
  });
});
