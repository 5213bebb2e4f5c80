import { type Gauge, thickest } from '#engine/electrical/gauge.ts';
import { canadianBoxRules } from '#knowledge/canadian-box-rules.ts';
import { type CubicInches, cubicInches } from '#quantity/units.ts';
import { insulatedIn, type WireList } from '../questions/wire-list-reading.ts';
import { boxCount } from './box-count.ts';
import { groundsCounted } from './box-grounds.ts';
import type { BoxCount, BoxInputs, Untold } from './box-inputs.ts';

type Candidate = readonly [open: boolean, what: string, change: Partial<BoxInputs>];

const list = (count: number, awg: Gauge): WireList => ({ wires: [{ count, awg }], cables: [] });
const piecesIn = (wires: WireList): number => insulatedIn(wires).reduce((sum, { count }) => sum + count, 0);

/** Every list of wires in the box, whatever they do there. */
const wiresIn = ({ conductors, passThrough, loops, pigtails, fixtureWires }: BoxInputs) =>
  [conductors, passThrough, loops, pigtails, fixtureWires].flatMap((wires) => insulatedIn(wires));

/** The thickest wire of any kind in the box, 14 AWG where none is told. */
function thickestIn(inputs: BoxInputs): Gauge {
  const grounds = groundsCounted(inputs);
  return thickest([...wiresIn(inputs).map(({ awg }) => awg), ...(grounds.count > 0 ? [grounds.awg] : [])]) ?? 14;
}

/** Things said to be in the box whose number or size nobody could tell: one of each. */
function namedOnly(inputs: BoxInputs, largest: Gauge): readonly Candidate[] {
  const named = (id: string) => inputs.extras.value.includes(id);
  const anything = !inputs.extras.known && inputs.extras.asked !== false;
  const one = list(1, largest);
  return [
    [anything, 'a wire running through, or another thing of that size', { passThrough: one }],
    [named('pass-through') && inputs.passThrough.wires.length === 0, 'a wire running through', { passThrough: one }],
    [named('loops') && inputs.loops.wires.length === 0, 'a long loop of wire', { loops: one }],
    [
      named('support-fittings') && inputs.supportFittings.length === 0,
      'a stud and a hickey',
      { supportFittings: ['stud', 'hickey'] },
    ],
    [named('terminal-blocks') && inputs.terminalBlocks.wires.length === 0, 'a terminal block', { terminalBlocks: one }],
  ];
}

/** What only the Canadian code counts: a wire connector on every two wires, and devices as deep as they come. */
function canadianOnly(inputs: BoxInputs, largest: Gauge): readonly Candidate[] {
  const ending = [inputs.conductors, inputs.fixtureWires, inputs.pigtails];
  const wires = ending.reduce((sum, each) => sum + piecesIn(each), groundsCounted(inputs).count);
  return [
    [
      !inputs.told.connectors,
      'a wire connector on every two wires',
      { connectors: list(Math.ceil(wires / 2), largest) },
    ],
    [
      inputs.deviceDepth === null && inputs.devices.length > 0,
      'a switch or timer 5 cm (2 in) deep',
      { deviceDepth: canadianBoxRules['likely-depth'].depth },
    ],
  ];
}

/** What the count leaves out because nobody said, with the room each would take. */
export function untoldIn(inputs: BoxInputs, counted: BoxCount): readonly Untold[] {
  const { told, serves } = inputs;
  const canadian = counted.edition === 'canada';
  const largest = thickestIn(inputs);
  const insulated = thickest(insulatedIn(inputs.conductors).map(({ awg }) => awg)) ?? 14;
  const more = (change: Partial<BoxInputs>): CubicInches =>
    cubicInches(Math.max(0, boxCount({ ...inputs, ...change, editions: [counted.edition] }).needed - counted.needed));
  const noSwitch =
    (told.serves && (serves === 'fan' || serves === 'light')) || inputs.canopy || inputs.supportFittings.length > 0;
  const device = {
    devices: [{ count: 1, awg: insulated, gangs: 1 }],
    ...(canadian && inputs.deviceDepth === null ? { deviceDepth: canadianBoxRules['likely-depth'].depth } : {}),
  };
  const candidates: readonly Candidate[] = [
    [!told.clamps, 'clamps inside', { internalClamps: true }],
    [!told.grounds && groundsCounted(inputs).count === 0, 'ground wires', { grounds: list(1, largest) }],
    [!told.devices && !noSwitch, 'a switch or timer', device],
    [
      !told.fixtureWires && serves !== 'switch',
      `two 18 AWG leads of ${told.serves && serves !== 'other' ? 'the' : 'a'} ${serves === 'light' ? 'light' : 'fan'}`,
      { fixtureWires: list(2, 18) },
    ],
    ...namedOnly(inputs, largest),
    ...(canadian ? canadianOnly(inputs, largest) : []),
  ];
  return candidates
    .filter(([open]) => open)
    .map(([, what, change]) => ({ what, extra: more(change) }))
    .filter(({ extra }) => extra > 0);
}
