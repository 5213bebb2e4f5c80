import {
  type CubicMetres,
  cubicMetres,
  type Metres,
  metres,
  type Ratio,
  type SquareMetres,
  squareMetres,
} from '#quantity/units.ts';
import { wrapArea } from './duct-wrap.ts';
import { flexBands, screwsPerJoint } from './fastenings.ts';
import { jointTape, withWaste } from './foil-tape.ts';
import { jointMastic } from './mastic.ts';
import { flexToCut, hangersBetweenEnds } from './supports.ts';
import { wholePieces } from './whole-pieces.ts';

/** A straight length of duct of one kind and size. */
interface Straight {
  readonly diameter: Metres;
  readonly length: Metres;
}

/** One part of the run from the fan's collar to the outside, in order. */
export type RunPart =
  | (Straight & { readonly kind: 'rigid' })
  | (Straight & { readonly kind: 'flex' })
  | { readonly kind: 'fitting'; readonly diameter: Metres };

/** So much of something, for one size of duct. */
interface AmountOfSize {
  readonly diameter: Metres;
  readonly amount: number;
}

export interface TakeOffDefaults {
  readonly wraps: number;
  readonly endLap: Metres;
  readonly waste: Ratio;
  readonly leastScrews: number;
  readonly screwSpacing: Metres;
  readonly bandsPerFlexEnd: number;
  readonly flexSpacing: Metres;
  readonly rigidSpacing: Metres;
  readonly rigidStick: Metres;
  readonly flexBag: Metres;
  readonly flexTrim: Metres;
  readonly tapeRoll: Metres;
  readonly masticBand: Metres;
  readonly masticThickness: Metres;
}

export interface DuctTakeOff {
  /** Joints in the run, those at the fan and the hood among them. */
  readonly joints: number;
  /** The joints by the diameter that is taped, the larger of the two sides. */
  readonly jointsBySize: readonly AmountOfSize[];
  /** Sticks of rigid duct, for each size. */
  readonly sticks: readonly AmountOfSize[];
  /** Metres of flexible duct to cut, for each size, trimming included. */
  readonly flex: readonly AmountOfSize[];
  /** Bags of flexible duct, for each size. */
  readonly flexBags: readonly AmountOfSize[];
  readonly screws: number;
  readonly bands: number;
  readonly hangers: number;
  /** Foil tape with the allowance for waste. */
  readonly tape: Metres;
  readonly tapeRolls: number;
  /** Mastic instead of tape on every joint. */
  readonly mastic: CubicMetres;
  /** Insulation wrap for the bare rigid duct; absent when none is asked for. */
  readonly wrap?: SquareMetres;
}

/**
 * What a run of duct takes: sticks and bags of duct, screws, bands, hangers, tape or mastic, and wrap.
 *
 * Pieces in a row have one joint more than there are pieces: the first at the fan's collar, the last at the hood. Each
 * part is as many sticks, or lengths from the bag, as make it up. Offcuts of rigid duct are not counted on; flexible duct is
 * bought by its total. A joint is taped around the larger of its two sides; it is screwed when neither side is flexible,
 * and every end of flexible duct is banded.
 *
 * Lengths in m. `wrapAllowance` is what insulation wrap is cut longer than the bare perimeter of the rigid duct.
 *
 * @source own working: geometry, with common practice and the NREL Standard Work Specifications for the allowances
 */
export function ductTakeOff(run: readonly RunPart[], defaults: TakeOffDefaults, wrapAllowance?: Metres): DuctTakeOff {
  const rigid = run.filter((part) => part.kind === 'rigid');
  const flex = run.filter((part) => part.kind === 'flex');
  const pieces = run.flatMap((part) => Array.from({ length: piecesIn(part, defaults) }, () => part));
  const joints = jointsOf(pieces);
  const cut = ({ length }: Straight) => (length > 0 ? flexToCut(length, defaults.flexTrim) : metres(0));
  const tape = withWaste(
    metres(sum(joints, ({ diameter }) => jointTape({ diameter, wraps: defaults.wraps, endLap: defaults.endLap }))),
    defaults.waste,
  );
  return {
    joints: joints.length,
    jointsBySize: bySize(joints, () => 1),
    sticks: bySize(rigid, (part) => piecesIn(part, defaults)),
    flex: bySize(flex, cut),
    flexBags: bySize(flex, cut).map(({ diameter, amount }) => ({
      diameter,
      amount: wholePieces(amount, defaults.flexBag),
    })),
    screws: sum(
      joints.filter(({ flexible }) => !flexible),
      ({ diameter }) => screwsPerJoint(diameter, { least: defaults.leastScrews, spacing: defaults.screwSpacing }),
    ),
    bands: flexBands(2 * pieces.filter(({ kind }) => kind === 'flex').length, defaults.bandsPerFlexEnd),
    hangers:
      sum(rigid, ({ length }) => hangersBetweenEnds(length, defaults.rigidSpacing)) +
      sum(flex, ({ length }) => hangersBetweenEnds(length, defaults.flexSpacing)),
    tape,
    tapeRolls: wholePieces(tape, defaults.tapeRoll),
    mastic: cubicMetres(
      sum(joints, ({ diameter }) =>
        jointMastic({ diameter, band: defaults.masticBand, thickness: defaults.masticThickness }),
      ),
    ),
    ...(wrapAllowance !== undefined && {
      wrap: squareMetres(
        sum(rigid, ({ diameter, length }) => wrapArea({ diameter, allowance: wrapAllowance, length })),
      ),
    }),
  };
}

/** How many separate pieces a part of the run is made of: none for no length, one for a fitting. */
function piecesIn(part: RunPart, { rigidStick, flexBag, flexTrim }: TakeOffDefaults): number {
  if (part.kind === 'fitting') return 1;
  if (part.length <= 0) return 0;
  return part.kind === 'rigid'
    ? wholePieces(part.length, rigidStick)
    : wholePieces(flexToCut(part.length, flexTrim), flexBag);
}

/** The joints between pieces in a row, with the ones at each end of the row. An empty row has none. */
function jointsOf(pieces: readonly RunPart[]): { readonly diameter: Metres; readonly flexible: boolean }[] {
  const [first] = pieces;
  const last = pieces.at(-1);
  if (!first || !last) return [];
  return [first, ...pieces].map((before, i) => {
    const after = pieces[i] ?? last;
    return {
      diameter: metres(Math.max(before.diameter, after.diameter)),
      flexible: before.kind === 'flex' || after.kind === 'flex',
    };
  });
}

const sum = <Item>(items: readonly Item[], amount: (item: Item) => number): number =>
  items.reduce((total, item) => total + amount(item), 0);

const bySize = <Part extends Pick<Straight, 'diameter'>>(
  parts: readonly Part[],
  amount: (part: Part) => number,
): AmountOfSize[] =>
  [...new Set(parts.map(({ diameter }) => diameter))].map((diameter) => ({
    diameter,
    amount: sum(
      parts.filter((part) => part.diameter === diameter),
      amount,
    ),
  }));
