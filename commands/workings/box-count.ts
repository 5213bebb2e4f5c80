import type { BoxFillInput, Conductors } from '#engine/electrical/box-contents.ts';
import { boxFill, boxFillByEdition, type FillItem, type FillLine } from '#engine/electrical/box-fill.ts';
import { boxVolume } from '#engine/electrical/box-volume.ts';
import {
  barrierVolumes,
  boxFillRules,
  boxRuleOfLine,
  boxRules,
  conductorVolumes,
  type ElectricalCodeEdition,
} from '#knowledge/box-rules.ts';
import { cite } from '#knowledge/sources.ts';
import { type CubicInches, cubicInches } from '#quantity/units.ts';
import type { BoxAnswer } from '../questions/box-reading.ts';
import { insulatedIn, type WireList } from '../questions/wire-list-reading.ts';
import { canadianCount } from './box-count-canada.ts';
import { groundsCounted } from './box-grounds.ts';
import type { BoxCount, BoxInputs, CountLine } from './box-inputs.ts';

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
    // Whatever is no light is counted as a fan's box: only a light has a canopy that lets leads be left out.
    box: { servesFan: inputs.serves !== 'light', ...(inputs.box === null ? {} : { volume: roomOf(inputs.box) }) },
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

/** Wire connectors, told all the same: the National Electrical Code counts them for nothing. */
function connectorLines({ connectors }: BoxInputs): readonly CountLine[] {
  const count = insulatedIn(connectors).reduce((sum, wires) => sum + wires.count, 0);
  const none = cubicInches(0);
  const rule = cite(boxRules['small-fittings']);
  return count === 0 ? [] : [{ what: 'Wire connectors', count, allowances: 0, each: none, total: none, rule }];
}

const neededFor = (inputs: BoxInputs, edition: ElectricalCodeEdition | 'unknown'): BoxCount => {
  const contents = contentsOf(inputs);
  const fill = boxFillByEdition<ElectricalCodeEdition>(contents, edition, boxFillRules);
  return {
    edition: fill.edition,
    editionKnown: fill.editionKnown,
    lines: [...fill.lines.map((line) => countLine(line, fill.edition)), ...connectorLines(inputs)],
    needed: fill.needed,
    freeSpace(awg) {
      const volume = conductorVolumes[`awg-${awg}`];
      return { volume: volume.freeSpace, citation: cite(volume) };
    },
    printed: { unit: 'cu in', of: (volume) => volume },
  };
};

/** The one that asks for more; of two that ask alike, the first. */
const stricter = (one: BoxCount, other: BoxCount): BoxCount => (other.needed > one.needed ? other : one);

/**
 * The count under the edition in force; under the one that asks for most where several are named or none is known. The
 * Canadian code is among them where something was told that only that code counts.
 */
export function boxCount(inputs: BoxInputs): BoxCount {
  const counts = inputs.editions.map((edition) =>
    edition === 'canada' ? canadianCount(inputs) : neededFor(inputs, edition),
  );
  const [first] = counts;
  if (first) return counts.reduce(stricter, first);
  const american = neededFor(inputs, 'unknown');
  return inputs.told.connectors || inputs.deviceDepth !== null
    ? stricter(american, { ...canadianCount(inputs), editionKnown: false })
    : american;
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
