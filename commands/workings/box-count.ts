import type { BoxFillInput, Conductors } from '#engine/electrical/box-contents.ts';
import { boxFill, boxFillByEdition, type FillItem, type FillLine } from '#engine/electrical/box-fill.ts';
import { boxVolume } from '#engine/electrical/box-volume.ts';
import { type Gauge, thickest } from '#engine/electrical/gauge.ts';
import {
  barrierVolumes,
  boxFillRules,
  boxRuleOfLine,
  conductorVolumes,
  type ElectricalCodeEdition,
} from '#knowledge/box-rules.ts';
import { cite } from '#knowledge/sources.ts';
import { type CubicInches, cubicInches } from '#quantity/units.ts';
import type { BoxAnswer } from '../questions/box-reading.ts';
import { groundsIn, insulatedIn, type WireList } from '../questions/wire-list-reading.ts';
import { canadianCount } from './box-count-canada.ts';
import type { BoxCount, BoxInputs, CountLine, Untold } from './box-inputs.ts';

const lineWords: Readonly<Record<FillItem, string>> = {
  'spliced-or-terminated': 'Wires ending here',
  through: 'Wires running through',
  loop: 'Wires with a long loop',
  pigtail: 'Pigtails',
  'fixture-wire': 'Leads of the fan or light',
  'fixture-wire-left-out': 'Leads left out, under a canopy',
  grounds: 'Ground wires, together',
  'isolated-grounds': 'Isolated ground wires',
  devices: 'Switches, timers, receptacles',
  clamps: 'Clamps inside, together',
  'terminal-blocks': 'Terminal blocks',
  stud: 'Fixture stud',
  hickey: 'Hickey',
};

/** The grounds counted: those told, or those the cables bring when they are more. */
export function groundsCounted({ grounds, conductors }: BoxInputs): { readonly count: number; readonly awg: Gauge } {
  const told = insulatedIn(grounds);
  const brought = groundsIn(conductors);
  const sizes = [...told.map(({ awg }) => awg), ...(brought.largestAwg === undefined ? [] : [brought.largestAwg])];
  return {
    count: Math.max(
      told.reduce((sum, { count }) => sum + count, 0),
      brought.count,
    ),
    awg: thickest(sizes) ?? 14,
  };
}

/** The room in the box with its rings and barriers. */
export const roomOf = ({ parts, barriers }: BoxAnswer): CubicInches =>
  boxVolume(
    { parts: parts.map(({ volume }) => volume), barriers: barriers.map((material) => ({ material })) },
    barrierVolumes,
  );

/** The contents as the count of the National Electrical Code takes them. */
function contentsOf(inputs: BoxInputs): BoxFillInput {
  const kind = (list: WireList, as: Conductors['kind']): Conductors[] =>
    insulatedIn(list).map((wires) => ({ ...wires, kind: as }));
  const { count, awg } = groundsCounted(inputs);
  return {
    box: { servesFan: inputs.serves === 'fan', ...(inputs.box === null ? {} : { volume: roomOf(inputs.box) }) },
    conductors: [
      ...kind(inputs.conductors, 'spliced-or-terminated'),
      ...kind(inputs.passThrough, 'through'),
      ...kind(inputs.loops, 'loop'),
      ...kind(inputs.pigtails, 'pigtail'),
      ...kind(inputs.fixtureWires, 'fixture-wire'),
    ],
    grounds: { count, largestAwg: awg },
    devices: inputs.devices.map(({ count: straps, awg: largestAwg, gangs }) => ({ count: straps, largestAwg, gangs })),
    internalClamps: inputs.internalClamps,
    supportFittings: inputs.supportFittings,
    terminalBlocks: inputs.terminalBlocks.wires.map(({ count: blocks, awg: largestAwg }) => ({
      count: blocks,
      largestAwg,
    })),
    canopy: inputs.canopy,
  };
}

function countLine({ what, count, awg, allowances, each, total }: FillLine, edition: ElectricalCodeEdition): CountLine {
  return { what: lineWords[what], count, awg, allowances, each, total, rule: cite(boxRuleOfLine(what, edition)) };
}

const neededFor = (inputs: BoxInputs, edition: ElectricalCodeEdition | 'unknown'): BoxCount => {
  const contents = contentsOf(inputs);
  const fill = boxFillByEdition<ElectricalCodeEdition>(contents, edition, boxFillRules);
  return {
    edition: fill.edition,
    editionKnown: fill.editionKnown,
    lines: fill.lines.map((line) => countLine(line, fill.edition)),
    needed: fill.needed,
    freeSpace(awg) {
      const volume = conductorVolumes[`awg-${awg}`];
      return { volume: volume.freeSpace, citation: cite(volume) };
    },
    canopyRefused: fill.canopy === 'refused-for-fan',
    printed: { unit: 'cu in', of: (volume) => volume },
  };
};

/** The count under the edition in force; under the one that asks for most where several are named or none is known. */
export function boxCount(inputs: BoxInputs): BoxCount {
  const counts = inputs.editions.map((edition) =>
    edition === 'canada' ? canadianCount(inputs) : neededFor(inputs, edition),
  );
  const [first] = counts;
  return first
    ? counts.reduce((most, other) => (other.needed > most.needed ? other : most), first)
    : neededFor(inputs, 'unknown');
}

/** What the other editions of the National Electrical Code ask for the same box, where they differ. */
export function otherEditions(
  inputs: BoxInputs,
  counted: BoxCount,
): readonly { readonly edition: string; readonly needed: CubicInches }[] {
  if (counted.edition === 'canada') return [];
  const contents = contentsOf(inputs);
  return (Object.keys(boxFillRules) as ElectricalCodeEdition[])
    .map((edition) => ({ edition, needed: boxFill(contents, boxFillRules[edition]).needed }))
    .filter(({ needed }) => Math.abs(needed - counted.needed) > 1e-9);
}

/** The thickest wire of any kind in the box. */
const thickestIn = (inputs: BoxInputs): Gauge | undefined => {
  const { conductors, grounds, largest } = { ...contentsOf(inputs), largest: groundsCounted(inputs) };
  return thickest([...conductors.map(({ awg }) => awg), ...(grounds.count > 0 ? [largest.awg] : [])]);
};

/** What the count leaves out because nobody said, with the room each would take. */
export function untoldIn(inputs: BoxInputs, counted: BoxCount): readonly Untold[] {
  const { told, serves } = inputs;
  const largest = thickestIn(inputs) ?? 14;
  const insulated = thickest(insulatedIn(inputs.conductors).map(({ awg }) => awg)) ?? 14;
  const more = (change: Partial<BoxInputs>): CubicInches =>
    cubicInches(Math.max(0, boxCount({ ...inputs, ...change, editions: [counted.edition] }).needed - counted.needed));
  const one = (awg: Gauge): WireList => ({ wires: [{ count: 1, awg }], cables: [] });
  const lightOrFan =
    serves === 'fan' ||
    serves === 'light' ||
    inputs.canopy ||
    inputs.supportFittings.length > 0 ||
    inputs.fixtureWires.wires.length > 0;
  const candidates: readonly (readonly [boolean, string, Partial<BoxInputs>])[] = [
    [!told.clamps, 'clamps inside', { internalClamps: true }],
    [!told.grounds && groundsCounted(inputs).count === 0, 'ground wires', { grounds: one(largest) }],
    [!told.devices && !lightOrFan, 'a switch or timer', { devices: [{ count: 1, awg: insulated, gangs: 1 }] }],
    [
      !told.fixtureWires && (serves === 'fan' || serves === 'light'),
      `two 18 AWG leads of the ${serves}`,
      { fixtureWires: { wires: [{ count: 2, awg: 18 }], cables: [] } },
    ],
  ];
  return candidates
    .filter(([open]) => open)
    .map(([, what, change]) => ({ what, extra: more(change) }))
    .filter(({ extra }) => extra > 0);
}
