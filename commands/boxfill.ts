import type { AnswerCommand, Telling } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { ask, type Interview, offer, take } from '#interview/interview.ts';
import {
  box,
  boxExtras,
  canopy,
  clamps,
  conductors,
  deviceDepth,
  devices,
  fixtureWires,
  grounds,
  loops,
  passThrough,
  pigtails,
  serves,
  supportFittings,
  terminalBlocks,
  wireConnectors,
} from './questions/box.ts';
import { type CodeInForce, codeEdition, electricalCodeEdition } from './questions/electrical-code.ts';
import { groundsIn, insulatedIn } from './questions/wire-list-reading.ts';
import { boxCount, roomOf } from './workings/box-count.ts';
import { type BoxStory, boxVolumeFinding, fillNeeded, roomText, volumeLeft } from './workings/box-findings.ts';
import type { BoxInputs } from './workings/box-inputs.ts';
import { boxRemarks } from './workings/box-remarks.ts';
import { boxThatFitsFinding } from './workings/box-that-fits.ts';
import { untoldIn } from './workings/box-untold.ts';

/** The edition by either of its names; both when they differ, none when nobody knows. */
function* editionsNamed(): Interview<readonly CodeInForce[]> {
  const short = yield* take(codeEdition);
  const full = short.known ? yield* take(electricalCodeEdition) : yield* offer(electricalCodeEdition);
  const named = [short, full].flatMap(({ known, value }) => (known && value !== 'unknown' ? [value] : []));
  return [...new Set(named)];
}

/** The rarer contents: taken where they are told, asked one by one where somebody says that they are there. */
function* extras(): Interview<
  Pick<BoxInputs, 'passThrough' | 'loops' | 'supportFittings' | 'terminalBlocks' | 'pigtails' | 'extras'>
> {
  const known = [
    yield* take(passThrough),
    yield* take(loops),
    yield* take(supportFittings),
    yield* take(terminalBlocks),
    yield* take(pigtails),
  ].some((each) => each.known);
  const answer = known ? yield* take(boxExtras) : yield* offer(boxExtras);
  const { value } = answer;
  return {
    extras: answer,
    passThrough: (value.includes('pass-through') ? yield* ask(passThrough) : yield* take(passThrough)).value,
    loops: (value.includes('loops') ? yield* ask(loops) : yield* take(loops)).value,
    supportFittings: (value.includes('support-fittings') ? yield* ask(supportFittings) : yield* take(supportFittings))
      .value,
    terminalBlocks: (value.includes('terminal-blocks') ? yield* ask(terminalBlocks) : yield* take(terminalBlocks))
      .value,
    pigtails: (value.includes('pigtails') ? yield* ask(pigtails) : yield* take(pigtails)).value,
  };
}

function* boxInterview(): Interview<BoxInputs> {
  const which = yield* ask(box);
  const wires = yield* ask(conductors);
  const purpose = yield* offer(serves);
  const bare = groundsIn(wires.value).count > 0 ? yield* take(grounds) : yield* offer(grounds);
  const noDevice = purpose.known && (purpose.value === 'fan' || purpose.value === 'light');
  const straps = noDevice ? yield* take(devices) : yield* offer(devices);
  const held = yield* offer(clamps);
  const atSwitch = purpose.known && purpose.value === 'switch';
  const leads = atSwitch ? yield* take(fixtureWires) : yield* offer(fixtureWires);
  const mayBeCanopy = leads.value.wires.length > 0 && purpose.value === 'light';
  const domed = mayBeCanopy ? yield* offer(canopy) : yield* take(canopy);
  const rest = yield* extras();
  const editions = yield* editionsNamed();
  const canadian = editions.includes('canada');
  const connectors = canadian ? yield* offer(wireConnectors) : yield* take(wireConnectors);
  const mayHaveDevice = straps.known ? straps.value.length > 0 : !noDevice;
  const depth = canadian && mayHaveDevice ? yield* offer(deviceDepth) : yield* take(deviceDepth);
  return {
    box: which.value,
    conductors: wires.value,
    grounds: bare.value,
    devices: straps.value,
    internalClamps: held.value === 'internal',
    serves: purpose.value,
    fixtureWires: leads.value,
    canopy: domed.value === 'yes',
    ...rest,
    connectors: connectors.value,
    deviceDepth: depth.value,
    editions,
    told: {
      conductors: wires.known,
      grounds: bare.known,
      devices: straps.known,
      clamps: held.known,
      serves: purpose.known,
      fixtureWires: leads.known,
      connectors: connectors.known,
    },
  };
}

function headline({ inputs, count, untold, units }: BoxStory): string {
  if (!inputs.told.conductors) return 'The wires in this box have not been counted.';
  const needed = roomText(count.needed, units);
  if (inputs.box === null) return `This box has to have ${needed} or more; how much it has is not known.`;
  const asTold = untold.length > 0 ? ', as far as was told,' : '';
  return `This box needs${asTold} ${needed} and has ${roomText(roomOf(inputs.box), units)}.`;
}

function answer(inputs: BoxInputs, { units }: Telling): Reply {
  const count = boxCount(inputs);
  const story: BoxStory = { inputs, count, untold: inputs.told.conductors ? untoldIn(inputs, count) : [], units };
  const remarks = boxRemarks(story);
  return {
    headline: headline(story),
    findings: [
      volumeLeft(story),
      ...remarks.filter(({ weight }) => weight === 'caution'),
      fillNeeded(story),
      boxVolumeFinding(story),
      ...(insulatedIn(inputs.conductors).length > 0 || count.needed > 0 ? [boxThatFitsFinding(story)] : []),
      ...remarks.filter(({ weight }) => weight !== 'caution'),
    ],
    suggestions: [{ label: 'What may the control switch?', command: 'power' }],
  };
}

const boxfill: AnswerCommand<BoxInputs> = {
  kind: 'answer',
  name: 'boxfill',
  summary: 'Whether everything fits in an electrical box, wire by wire, and the smallest box that would do.',
  example:
    'box="4 x 1-1/2 square" conductors="4x14, 2x12" grounds="3x12" devices="1x12" clamps=internal code-edition=2023',
  takes: [
    box,
    conductors,
    serves,
    grounds,
    devices,
    clamps,
    fixtureWires,
    canopy,
    boxExtras,
    passThrough,
    loops,
    supportFittings,
    terminalBlocks,
    pigtails,
    electricalCodeEdition,
    codeEdition,
    wireConnectors,
    deviceDepth,
  ],
  interview: boxInterview,
  answer,
};

export default boxfill;
