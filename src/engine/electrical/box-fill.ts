import { within } from '#quantity/meets.ts';
import { type CubicInches, cubicInches } from '#quantity/units.ts';
import type { BoxFillInput, BoxFillRules, ConductorKind, SupportFitting } from './box-contents.ts';
import { fixtureWireLines } from './fixture-wires.ts';
import { type Gauge, thickest } from './gauge.ts';
import { groundLines } from './ground-fill.ts';

export type FillItem =
  | ConductorKind
  | 'fixture-wire-left-out'
  | 'grounds'
  | 'isolated-grounds'
  | 'devices'
  | 'clamps'
  | 'terminal-blocks'
  | SupportFitting;

/** One line of the sum: how many, how many allowances that makes, and how much room. */
export interface FillLine {
  readonly what: FillItem;
  readonly count: number;
  /** The wire size whose free space is one allowance. */
  readonly awg: Gauge;
  readonly allowances: number;
  readonly each: CubicInches;
  readonly total: CubicInches;
}

type RoomInBox =
  | {
      readonly known: true;
      readonly available: CubicInches;
      /** Negative when the box is overfull. */
      readonly left: CubicInches;
      readonly fits: boolean;
    }
  | { readonly known: false };

export interface BoxFill {
  readonly lines: readonly FillLine[];
  readonly needed: CubicInches;
  readonly room: RoomInBox;
  readonly canopy: 'not-asked' | 'granted' | 'refused-for-fan';
}

/**
 * The room that everything in an electrical box needs, line by line, against the room the box has.
 *
 * needed = Σ allowances × free space of the wire each allowance is based on;  fits when needed ≤ volume
 *
 * Wires of their own size; devices and terminal blocks by the thickest wire landed on them; clamps and support fittings by
 * the thickest wire in the box, whatever it does there. All in printed cubic inches. For 18 to 6 AWG.
 *
 * @source NFPA 70 (National Electrical Code), 314.16(A) and (B)
 */
export function boxFill(input: BoxFillInput, rules: BoxFillRules): BoxFill {
  const line = (what: FillItem, awg: Gauge, count: number, allowances: number): FillLine => {
    const each = rules.freeSpace[awg];
    return { what, count, awg, allowances, each, total: cubicInches(allowances * each) };
  };
  const { conductors, devices, terminalBlocks } = input;
  const exempting = input.canopy && !input.box.servesFan;
  const thickestInBox = thickest(wiresIn(input));
  const fittingsBy = (awg: Gauge | undefined) =>
    awg === undefined
      ? []
      : [
          ...(input.internalClamps ? [line('clamps', awg, 1, rules.clamps)] : []),
          ...[...new Set(input.supportFittings)].map((fitting) =>
            line(
              fitting,
              awg,
              input.supportFittings.filter((other) => other === fitting).length,
              rules.supportFittingType,
            ),
          ),
        ];
  const lines = [
    ...conductors
      .filter(({ kind }) => kind !== 'fixture-wire')
      .map(({ kind, awg, count }) => line(kind, awg, count, count * rules.conductor[kind])),
    ...fixtureWireLines(conductors, exempting ? rules.canopy : undefined).map(({ what, awg, count }) =>
      line(what, awg, count, what === 'fixture-wire' ? count * rules.conductor[what] : 0),
    ),
    ...groundLines(input.grounds, rules.grounds).map(({ what, awg, count, allowances }) =>
      line(what, awg, count, allowances),
    ),
    ...devices.map(({ count, largestAwg, gangs }) =>
      line('devices', largestAwg, count, count * gangs * rules.deviceGang),
    ),
    ...fittingsBy(thickestInBox),
    ...terminalBlocks.map(({ count, largestAwg }) =>
      line('terminal-blocks', largestAwg, count, count * rules.terminalBlock),
    ),
  ].filter(({ count }) => count > 0);
  const needed = cubicInches(lines.reduce((sum, { total }) => sum + total, 0));
  return {
    lines,
    needed,
    room: roomInBox(needed, input.box.volume),
    canopy: !input.canopy ? 'not-asked' : exempting ? 'granted' : 'refused-for-fan',
  };
}

/** A box fill, with the edition it was figured by. */
export type BoxFillByEdition<Edition extends string> = BoxFill & {
  readonly edition: Edition;
  /** False when nobody knew the edition, and the one that asks for most room was taken. */
  readonly editionKnown: boolean;
};

/**
 * Box fill under the edition of the code in force, or, when nobody knows which that is, under whichever edition asks for
 * the most room for this box. Of editions that ask alike, the last listed is named.
 *
 * needed = max over editions, when the edition is unknown
 *
 * @source own working: the stricter reading where the edition is not known
 */
export function boxFillByEdition<Edition extends string>(
  input: BoxFillInput,
  edition: NoInfer<Edition> | 'unknown',
  rulesByEdition: Readonly<Record<Edition, BoxFillRules>>,
): BoxFillByEdition<Edition> {
  if (edition !== 'unknown') {
    return { ...boxFill(input, rulesByEdition[edition]), edition, editionKnown: true };
  }
  const editions = Object.keys(rulesByEdition) as Edition[];
  return editions
    .map((each) => ({ ...boxFill(input, rulesByEdition[each]), edition: each, editionKnown: false }))
    .reduce((strictest, other) => (other.needed >= strictest.needed ? other : strictest));
}

function roomInBox(needed: CubicInches, volume: CubicInches | undefined): RoomInBox {
  if (volume === undefined) return { known: false };
  return { known: true, available: volume, left: cubicInches(volume - needed), fits: within(needed, volume) };
}

/** Every wire present, bare ones and pigtails too: the code says "the largest conductor present in the box". */
const wiresIn = ({ conductors, grounds, devices, terminalBlocks }: BoxFillInput): Gauge[] => [
  ...conductors.filter(({ count }) => count > 0).map(({ awg }) => awg),
  ...(grounds.count > 0 ? [grounds.largestAwg] : []),
  ...(grounds.isolated && grounds.isolated.count > 0 ? [grounds.isolated.largestAwg] : []),
  ...[...devices, ...terminalBlocks].filter(({ count }) => count > 0).map(({ largestAwg }) => largestAwg),
];
