import { describe, expect, it } from 'vitest';
import { ductLengthTables } from '#knowledge/duct-length-table.ts';
import { ductStatements, terminationClearances } from '#knowledge/duct-rules.ts';
import {
  cones,
  ductMaterials,
  ducts,
  type FittingId,
  fittingIds,
  fittingLoss,
  fittings,
  flexLays,
  foilFlexLays,
} from '#knowledge/ducts.ts';
import { metres } from '#quantity/units.ts';

const inches = (value: number) => metres(value * 0.0254);
const typical = (id: FittingId, size = 4) => fittingLoss(id, inches(size)).typical;

describe('fittings', () => {
  it('every loss coefficient lies in a sane band', () => {
    for (const id of fittingIds) {
      for (const size of [2.5, 3, 4, 5, 6, 7, 8, 10]) {
        const { low, typical: middle, high } = fittingLoss(id, inches(size));
        expect(low, id).toBeGreaterThan(0);
        expect(middle, id).toBeGreaterThanOrEqual(low);
        expect(high, id).toBeGreaterThanOrEqual(middle);
        expect(high, id).toBeLessThanOrEqual(8);
      }
    }
  });

  it('ends of the run count the exit, and nothing else does', () => {
    const ends = fittingIds.filter((id) => fittings[id].includesExit).sort();
    expect(ends).toEqual(['exit-bare', 'louvered-hood', 'roof-cap', 'soffit-fitting', 'wall-cap']);
    for (const id of ends) expect(fittingLoss(id, inches(4)).low).toBeGreaterThanOrEqual(1);
  });

  // Common practice, no source; the wall cap sits by the 2.35 that the code's 30 ft allowance comes to at 4 in.
  it('a wall cap costs less than a roof cap, and a roof cap less than a louvered hood', () => {
    expect(typical('wall-cap')).toBe(2.2);
    expect(typical('roof-cap')).toBe(3.5);
    expect(typical('louvered-hood')).toBe(4);
  });

  it('a worse bend costs more', () => {
    const order: FittingId[] = [
      'elbow-90-stamped',
      'elbow-90',
      'elbow-90-flex',
      'elbow-90-mitered',
      'elbow-90-flex-kinked',
    ];
    const losses = order.map((id) => typical(id));
    expect(losses).toEqual([...losses].sort((a, b) => a - b));
  });

  it('an eighth of a turn costs less than a quarter of the same make', () => {
    for (const make of ['', '-stamped', '-adjustable', '-gored', '-pleated', '-flex', '-mitered'] as const) {
      for (const size of [3, 4, 6, 8]) {
        expect(typical(`elbow-45${make}`, size), make).toBeLessThan(typical(`elbow-90${make}`, size));
      }
    }
  });

  // ASHRAE Fundamentals (2009, SI), CD3-1: 0.21 at 100 mm, 0.14 at 150 mm.
  it('reads straight between two printed sizes and holds the last one beyond them', () => {
    expect(typical('elbow-90-stamped', 4)).toBe(0.21);
    expect(typical('elbow-90-stamped', 4.5)).toBeCloseTo((0.21 + 0.16) / 2, 9);
    expect(typical('elbow-90-stamped', 2)).toBe(0.3);
    expect(typical('elbow-90-stamped', 14)).toBe(0.11);
    expect(fittingLoss('elbow-90-stamped', inches(4.5)).citation.source).toBe('ashrae-duct-design-2009');
  });

  it('no two fittings share a name', () => {
    const names = fittingIds.flatMap((id) => fittings[id].names);
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
  });

  it('what nobody has published is never marked as seen in print', () => {
    for (const id of fittingIds) {
      for (const { loss } of fittings[id].losses) {
        if (['common-practice', 'own-working', 'from-memory'].includes(loss.citation.source)) {
          expect(loss.citation.verified, id).toBe(false);
        }
      }
    }
    expect(cones.reducer.citation.verified).toBe(false);
  });
});

describe('ducts', () => {
  it('foil flex is rougher than wire flex, and wire flex than pipe', () => {
    expect(ducts['foil-flex'].roughness.low).toBeGreaterThan(ducts.flex.roughness.high);
    expect(ducts.flex.roughness.typical).toBeGreaterThan(ducts.smooth.roughness.high);
  });

  it('smooth and spiral read the smooth column of the code table, both flexes the flex column', () => {
    expect(Object.values(ducts).map(({ tableColumn }) => tableColumn)).toEqual(['smooth', 'smooth', 'flex', 'flex']);
  });

  it('a single figure lies inside its printed range', () => {
    for (const [id, { roughness, printedRange }] of Object.entries(ductMaterials)) {
      if (printedRange === undefined) continue;
      expect(roughness, id).toBeGreaterThanOrEqual(printedRange.low * (1 - 1e-12));
      expect(roughness, id).toBeLessThanOrEqual(printedRange.high * (1 + 1e-12));
    }
  });

  it('slack runs from none to the most that was tested, and foil hardly has any', () => {
    const lays = Object.values(flexLays).map(({ amount }) => amount);
    expect(Math.min(...lays.map(({ low }) => low))).toBe(0);
    expect(Math.max(...lays.map(({ high }) => high))).toBeCloseTo(0.45, 12);
    expect(flexLays.unsaid.amount).toEqual({ low: 0.04, typical: 0.15, high: 0.3 });
    expect(foilFlexLays.unsaid.amount.high).toBeLessThan(flexLays['as-let-go'].amount.low);
  });
});

describe('duct rules', () => {
  it('a hood 4 ft from a fresh-air intake is too close in every edition', () => {
    for (const clearances of Object.values(terminationClearances)) {
      const fourFeet = 4 * 0.3048;
      expect(fourFeet).toBeGreaterThan(clearances.openings);
      expect(fourFeet).toBeGreaterThan(clearances.propertyLine);
      expect(fourFeet).toBeLessThan(clearances.mechanicalIntake);
    }
  });

  it('every window counts before 2021, only the ones that open from then on', () => {
    expect(terminationClearances['2018'].openingsThatCount).toBe('every opening');
    expect(terminationClearances['2021'].openingsThatCount).toMatch(/^operable/);
    expect(terminationClearances['2021'].openingExceptionAbove).toBeUndefined();
    expect(terminationClearances['2024'].openingExceptionAbove).toBeCloseTo(0.3048, 12);
  });

  it('foil flex in a garage is a stop', () => {
    expect(ductStatements['garage-no-foil-flex'].stop).toBe(true);
    expect(Object.values(ductStatements).filter(({ stop }) => stop)).toHaveLength(1);
  });

  it('both length tables print rising airflows and rising sizes', () => {
    for (const table of Object.values(ductLengthTables)) {
      expect([...table.airflows].sort((a, b) => a - b)).toEqual(table.airflows);
      for (const kind of ['smooth', 'flex'] as const) {
        const sizes = table.rows.filter(({ duct }) => duct === kind).map(({ diameter }) => diameter);
        expect([...sizes].sort((a, b) => a - b)).toEqual(sizes);
      }
    }
  });
});
