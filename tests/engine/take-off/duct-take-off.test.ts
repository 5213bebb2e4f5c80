import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ductTakeOff, type RunPart } from '#engine/take-off/duct-take-off.ts';
import { wrapForResistance } from '#engine/take-off/duct-wrap.ts';
import { bayFit, flangeCovers, openingToCut } from '#engine/take-off/opening-fit.ts';
import { bendsTooTight } from '#engine/take-off/round-duct.ts';
import { wireConnectors } from '#engine/take-off/splices.ts';
import { wholePieces } from '#engine/take-off/whole-pieces.ts';
import {
  bendsAsked,
  besideHousing,
  ductWraps,
  flangeOverlap,
  openingGap,
  spareConnectors,
  takeOffDefaults,
  wrapAllowance,
  wrapResistanceAsked,
} from '#knowledge/materials.ts';
import { type Metres, metres, squareMetreKelvinsPerWatt } from '#quantity/units.ts';

const inches = (value: number): Metres => metres(value * 0.0254);
const feet = (value: number): Metres => metres(value * 0.3048);
const d4 = inches(4);

describe('the take-off of a run', () => {
  const run: RunPart[] = [
    { kind: 'flex', diameter: d4, length: feet(3) },
    { kind: 'rigid', diameter: d4, length: feet(12) },
    { kind: 'fitting', diameter: d4 },
  ];
  const list = ductTakeOff(run, takeOffDefaults);

  it('has a joint between every two pieces and one at each end', () => {
    // Collar, flex, three sticks of 5 ft, elbow, hood: five pieces, six joints.
    expect(list.sticks).toEqual([{ diameter: d4, amount: 3 }]);
    expect(list.joints).toBe(6);
    expect(list.jointsBySize).toEqual([{ diameter: d4, amount: 6 }]);
  });

  it('screws the metal joints, three each, and bands the flexible ends, two each (NREL 6.6002.4)', () => {
    expect(list.screws).toBe(4 * 3);
    expect(list.bands).toBe(4);
  });

  it('cuts flexible duct half a foot long at each end and buys it by the bag', () => {
    expect(list.flex[0]?.amount).toBeCloseTo(4 * 0.3048, 9);
    expect(list.flexBags).toEqual([{ diameter: d4, amount: 1 }]);
  });

  it('hangs 12 ft of rigid duct once and 3 ft of flexible duct not at all', () => {
    expect(list.hangers).toBe(1);
  });

  it('tapes six 4 in joints with a tenth for waste: 7 ft 6 in, one roll', () => {
    // Own working: 6 × (π × 4 + 1) × 1.1 = 89.54 in.
    expect(list.tape / 0.0254).toBeCloseTo(89.54, 2);
    expect(list.tapeRolls).toBe(1);
  });

  it('spreads mastic 4 in wide and 0.08 in thick: 24 cubic inches on six 4 in joints', () => {
    // Own working: 6 × π × 4 × 4 × 0.08 = 24.1 in3.
    expect(list.mastic / 0.0254 ** 3).toBeCloseTo(24.13, 2);
  });

  it('wraps the rigid duct only, and only when asked', () => {
    expect(list.wrap).toBeUndefined();
    const wrapped = ductTakeOff(run, takeOffDefaults, wrapAllowance('wrap-2-in')).wrap ?? 0;
    // Own working: (π × 4 + 12) × 144 / 144 = 24.6 sq ft for 12 ft.
    expect(wrapped / 0.3048 ** 2).toBeCloseTo(24.57, 2);
  });

  it('tapes a joint between two sizes around the larger', () => {
    const reduced = ductTakeOff([{ kind: 'fitting', diameter: inches(6) }], takeOffDefaults);
    const both = ductTakeOff(
      [
        { kind: 'fitting', diameter: inches(6) },
        { kind: 'fitting', diameter: d4 },
      ],
      takeOffDefaults,
    );
    const middle = both.tape - reduced.tape;
    expect(middle / 1.1 / 0.0254).toBeCloseTo(4 * Math.PI + 1, 9);
  });

  it('is empty for no run', () => {
    expect(ductTakeOff([], takeOffDefaults)).toMatchObject({ joints: 0, screws: 0, bands: 0, tape: 0, tapeRolls: 0 });
  });
});

const part: fc.Arbitrary<RunPart> = fc.oneof(
  fc.record({
    kind: fc.constantFrom('rigid' as const, 'flex' as const),
    diameter: fc.constantFrom(3, 4, 5, 6).map(inches),
    length: fc.double({ min: 0, max: 40, noNaN: true }).map(feet),
  }),
  fc.record({ kind: fc.constant('fitting' as const), diameter: fc.constantFrom(3, 4, 5, 6).map(inches) }),
);

describe('laws of the take-off', () => {
  it('grows with length: a longer part never takes less of anything', () => {
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 5 }),
        fc.nat(),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (run, which, more) => {
          const at = which % run.length;
          const longer = run.map((one, i) =>
            i === at && one.kind !== 'fitting' ? { ...one, length: metres(one.length + more) } : one,
          );
          const allowance = wrapAllowance('wrap-3-in');
          const [before, after] = [run, longer].map((parts) => ductTakeOff(parts, takeOffDefaults, allowance));
          if (!before || !after) throw new Error('two runs went in');
          for (const amount of [
            'joints',
            'screws',
            'bands',
            'hangers',
            'tape',
            'tapeRolls',
            'mastic',
            'wrap',
          ] as const) {
            // A joint of flexible duct is banded, not screwed: where flexible duct appears, a screwed joint may go.
            if (amount === 'screws' && before.bands !== after.bands) continue;
            expect(after[amount] ?? 0, amount).toBeGreaterThanOrEqual((before[amount] ?? 0) - 1e-12);
          }
          const total = (amounts: readonly { readonly amount: number }[]) =>
            amounts.reduce((sum, { amount }) => sum + amount, 0);
          for (const amounts of ['sticks', 'flex', 'flexBags'] as const) {
            expect(total(after[amounts]), amounts).toBeGreaterThanOrEqual(total(before[amounts]) - 1e-12);
          }
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe('insulation wrap', () => {
  it('takes 3 in nominal for R-8: 2 in is worth R-5.6 once it is wrapped', () => {
    expect(wrapForResistance(wrapResistanceAsked, ductWraps)).toMatchObject({ found: true, wrap: { id: 'wrap-3-in' } });
  });

  it('has no listed wrap for more than the thickest is worth', () => {
    const much = squareMetreKelvinsPerWatt(2);
    expect(wrapForResistance(much, ductWraps)).toEqual({ found: false, why: 'more-than-any-listed' });
  });
});

describe('fits and openings', () => {
  it('tells a housing that goes in from one that goes in with room to fix it', () => {
    const inBay = (width: number) =>
      bayFit({ housingWidth: inches(width), clear: inches(14.5), besideEach: besideHousing });
    expect(inBay(14)).toMatchObject({ goesIn: true, withRoom: true });
    expect(inBay(14.25)).toMatchObject({ goesIn: true, withRoom: false });
    expect(inBay(14.75)).toMatchObject({ goesIn: false, withRoom: false });
  });

  it('cuts an opening an eighth larger on each side, and asks the grille to cover it by a quarter', () => {
    const opening = openingToCut(inches(10), openingGap);
    expect(opening / 0.0254).toBeCloseTo(10.25, 9);
    expect(flangeCovers({ flange: inches(10.75), opening, overlapEach: flangeOverlap })).toBe(true);
    expect(flangeCovers({ flange: inches(10.7), opening, overlapEach: flangeOverlap })).toBe(false);
  });

  it('asks for one diameter straight and one diameter of bend', () => {
    const bends = (straight: number, radius: number) =>
      bendsTooTight({ diameter: d4, straight: inches(straight), radius: inches(radius) }, bendsAsked);
    expect(bends(4, 4)).toEqual([]);
    expect(bends(2, 3)).toEqual(['straight-before-bend-too-short', 'radius-too-small']);
  });

  it('counts whole pieces without tripping over a unit conversion', () => {
    expect(wholePieces(feet(12), feet(4))).toBe(3);
    expect(wholePieces(feet(12.1), feet(4))).toBe(4);
    expect(wholePieces(0, feet(4))).toBe(0);
  });

  it('brings two spare wire connectors, and none when nothing is spliced', () => {
    expect(wireConnectors({ splices: 3, spare: spareConnectors })).toBe(5);
    expect(wireConnectors({ splices: 0, spare: spareConnectors })).toBe(0);
  });
});
