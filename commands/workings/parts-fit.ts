import { bayFit, clearBay, fitsUnderFloor, flangeCovers, openingToCut } from '#engine/take-off/opening-fit.ts';
import type { Finding } from '#findings/finding.ts';
import {
  besideHousing,
  type FramingId,
  flangeOverlap,
  framing,
  memberSize,
  openingGap,
  takeOffAllowances,
} from '#knowledge/materials.ts';
import { cite } from '#knowledge/sources.ts';
import { type Metres, metres } from '#quantity/units.ts';
import { side, sidesText } from '../questions/size-reading.ts';
import { citations } from './citations.ts';
import type { PartsInputs } from './parts-inputs.ts';
import type { PartsStory } from './parts-list.ts';

/** The opening to cut, and whether the new grille hides the old one. */
export function openingFinding({ inputs, units }: PartsStory): Finding | undefined {
  const { housing, oldOpening, grille } = inputs;
  const [length, width] = housing ?? [];
  if (length === undefined || width === undefined) return undefined;
  const cut = [openingToCut(length, openingGap), openingToCut(width, openingGap)] as const;
  const gap = cite(takeOffAllowances['opening-gap']);
  const told = old(oldOpening, grille, cut);
  return {
    id: 'opening',
    weight: told.weight,
    says: `Cut the opening ${sidesText(cut, units)}, unless the leaflet says otherwise. ${told.says}`,
    value: { number: Math.max(...cut), unit: side.siUnit, shown: sidesText(cut, units) },
    working: cut.map((each, index) => ({
      what: index === 0 ? 'Along the housing' : 'Across the housing',
      how: `${side.showShort(index === 0 ? length : width, units)} + 2 × ${side.showShort(openingGap, units)}`,
      value: side.showShort(each, units),
      source: gap,
    })),
    sources: citations(gap, ...(told.covers ? [cite(takeOffAllowances['flange-overlap'])] : [])),
  };
}

/** How the old opening stands to the new cut and the new grille, the long sides and the short ones together. */
function old(
  opening: readonly Metres[] | null,
  grille: readonly Metres[] | null,
  cut: readonly [Metres, Metres],
): { readonly weight: Finding['weight']; readonly says: string; readonly covers: boolean } {
  const sorted = (sides: readonly Metres[]) => sides.toSorted((a, b) => b - a);
  const larger = opening !== null && sorted(opening).some((each, index) => each > (sorted(cut)[index] ?? 0) + 1e-9);
  if (opening === null) return { weight: 'advice', says: 'Measure the old opening too.', covers: false };
  if (!larger) return { weight: 'good', says: 'The old opening is no larger.', covers: false };
  if (grille === null) {
    return {
      weight: 'caution',
      says: 'The old opening is larger: see that the new grille covers its edge.',
      covers: true,
    };
  }
  const covered = sorted(grille).every((each, index) =>
    flangeCovers({ flange: each, opening: sorted(opening)[index] ?? metres(0), overlapEach: flangeOverlap }),
  );
  return covered
    ? { weight: 'good', says: 'The grille covers the edge of the old opening.', covers: true }
    : {
        weight: 'caution',
        says: 'The old opening shows beside the new grille: patch the ceiling before the fan goes in.',
        covers: true,
      };
}

const widthOf = (joists: PartsInputs['joists']): FramingId =>
  joists === 'truss' ? 'truss-chord-width' : joists === 'i-joist' ? 'i-joist-flange-width' : 'joist-width';

/** Whether the housing goes between the joists, its narrow side across. Joists nobody has seen are taken as the widest. */
export function joistBay({ inputs, units }: PartsStory): Finding | undefined {
  const { housing, joistSpacing, joists } = inputs;
  const [length, width] = housing ?? [];
  if (joistSpacing === null || length === undefined || width === undefined) return undefined;
  const narrow = metres(Math.min(length, width));
  const member: FramingId = joists === null ? 'truss-chord-width' : widthOf(joists);
  const fitWith = (id: FramingId) => {
    const clear = clearBay(joistSpacing, memberSize(id));
    return { clear, ...bayFit({ housingWidth: narrow, clear, besideEach: besideHousing }) };
  };
  const fit = fitWith(member);
  const sawn = fitWith('joist-width');
  const long = metres(Math.max(length, width));
  const both = bayFit({ housingWidth: long, clear: fit.clear, besideEach: besideHousing }).withRoom;
  const across = `${side.showShort(narrow, units)} side across`;
  const [weight, says]: readonly [Finding['weight'], string] = fit.withRoom
    ? [
        'good',
        `The housing goes between the joists, ${both ? 'either way round' : `its ${across}`}, with ${side.showShort(fit.eachSide, units)} on each side.`,
      ]
    : joists === null && sawn.withRoom
      ? [
          'caution',
          `Measure the clear bay: the housing goes in between sawn joists, its ${across}, but not between truss chords.`,
        ]
      : fit.goesIn
        ? [
            'caution',
            `The housing just goes in, its ${across}, with no room for brackets: look for another way to fix it.`,
          ]
        : [
            'stop',
            `Do not order this housing: the bay is ${side.showShort(fit.clear, units)} clear and its narrow side is ${side.showShort(narrow, units)}. No joist, truss or flange is ever cut.`,
          ];
  return {
    id: 'joist-bay',
    weight,
    says,
    value: { number: fit.clear, unit: side.siUnit, shown: `${side.showShort(fit.clear, units)} clear` },
    working: [
      {
        what: joists === null ? 'Clear bay, if truss chords' : 'Clear bay',
        how: `${side.showShort(joistSpacing, units)} − ${side.showShort(memberSize(member), units)}`,
        value: side.showShort(fit.clear, units),
        source: cite(framing[member]),
      },
      ...(joists === null
        ? [
            {
              what: 'Clear bay, if sawn joists',
              how: `${side.showShort(joistSpacing, units)} − ${side.showShort(memberSize('joist-width'), units)}`,
              value: side.showShort(sawn.clear, units),
              source: cite(framing['joist-width']),
            },
          ]
        : []),
      {
        what: 'On each side',
        how: `(${side.showShort(fit.clear, units)} − ${side.showShort(narrow, units)}) ÷ 2`,
        value:
          fit.eachSide < 0
            ? `${side.showShort(metres(-fit.eachSide), units)} too little`
            : side.showShort(fit.eachSide, units),
        source: cite(takeOffAllowances['beside-housing']),
      },
    ],
    sources: citations(cite(framing[member]), cite(takeOffAllowances['beside-housing'])),
  };
}

/** Whether the housing fits under a floor, within the depth of the joists. */
export function housingDepth({ inputs, units }: PartsStory): Finding | undefined {
  const height = inputs.housing?.[2];
  const { above, joists } = inputs;
  if (height === undefined || above === 'attic') return undefined;
  const sawn = joists !== null && joists !== 'truss' && joists !== 'i-joist' ? joists : null;
  if (sawn === null) {
    return above === null
      ? undefined
      : {
          id: 'housing-depth',
          weight: 'caution',
          says: `Measure the depth of the joists: with a floor above, the housing needs ${side.showShort(height, units)}.`,
          working: [],
          sources: [],
        };
  }
  const member: FramingId = `depth-${sawn}`;
  const depth = memberSize(member);
  const fits = fitsUnderFloor({ housingHeight: height, cover: metres(0), joistDepth: depth });
  const floor = above === null ? 'If a floor is above: the' : 'The';
  return {
    id: 'housing-depth',
    weight: fits ? 'good' : above === null ? 'caution' : 'stop',
    says: fits
      ? `${floor} housing, ${side.showShort(height, units)} high, fits within a ${sawn}.`
      : `${above === null ? 'See what is above the ceiling: under a floor the' : 'Do not order this housing: the'} ${sawn} is ${side.showShort(depth, units)} deep and the housing ${side.showShort(height, units)} high.`,
    value: { number: depth, unit: side.siUnit, shown: `${side.showShort(depth, units)} deep` },
    working: [{ what: `Depth of a ${sawn}`, value: side.showShort(depth, units), source: cite(framing[member]) }],
    sources: citations(cite(framing[member])),
  };
}
