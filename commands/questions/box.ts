import { oneOf, severalOf, type Wording, yesNo } from '#interview/choices.ts';
import { optional } from '#interview/quantities.ts';
import type { Question } from '#interview/question.ts';
import { smallLength } from '#quantity/kinds.ts';
import { boxQuestions } from '../words/box-questions.ts';
import { type BoxAnswer, boxText, readBox } from './box-reading.ts';
import {
  noWires,
  readStraps,
  readWireList,
  type Straps,
  strapsText,
  type WireList,
  wireListText,
} from './wire-list-reading.ts';

export const box: Question<BoxAnswer | null> = {
  id: 'box',
  words: { spanish: boxQuestions.box },
  prompt: 'Which box is it? The cubic inches marked inside it, or its size and shape.',
  why: 'Every box has so much room and no more. Plastic boxes are marked; standard metal ones are listed by size and depth.',
  accepts: 'a marked volume (21 in3) or a standard metal box (4 x 1-1/2 square); a ring after a +',
  brief: 'Box (its cubic inches, or its size and shape)',
  widget: { kind: 'text', placeholder: '4 x 1-1/2 square' },
  whenUnknown: { value: null, because: 'Nobody knows the room in the box, so nothing can be said to fit.' },
  read: readBox,
  show: (value) => (value === null ? 'not known' : boxText(value)),
};

interface Listed {
  readonly placeholder: string;
  readonly because: string;
  readonly cables?: boolean;
}

const wireList = ({ placeholder, because, cables = false, ...wording }: Wording & Listed): Question<WireList> => ({
  ...wording,
  accepts: cables
    ? 'count x size, such as 4x14, 2x12; or cables, such as 3 x 14/2 with ground'
    : `count x size, such as ${placeholder}, or none`,
  widget: { kind: 'text', placeholder },
  whenUnknown: { value: noWires, because },
  read: (text) => readWireList(text, { cables }),
  show: wireListText,
});

export const conductors = wireList({
  id: 'conductors',
  words: { spanish: boxQuestions.conductors },
  prompt: 'Which insulated wires come in and end in this box? Count only in a box proven dead.',
  why: 'Each hot, neutral or switch wire that comes in counts one, by its size. Grounds and wires that run through are asked apart.',
  brief: 'Insulated wires ending in the box (count x size)',
  placeholder: '4x14, 2x12',
  cables: true,
  because: 'Nobody has counted the wires, so nothing can be said to fit.',
});

export const grounds = wireList({
  id: 'grounds',
  words: { spanish: boxQuestions.grounds },
  prompt: 'How many bare or green wires come in, and how thick is the thickest?',
  why: 'Ground wires count together: up to four as one wire, by the thickest. From the 2020 code each further one adds a quarter.',
  brief: 'Ground wires coming in (count x thickest)',
  placeholder: '3x14',
  because: 'Counted without ground wires, unless cables bring them.',
});

export const devices: Question<readonly Straps[]> = {
  id: 'devices',
  words: { spanish: boxQuestions.devices },
  prompt: 'Which switches, timers or receptacles sit in the box? Count them by the thickest wire on each.',
  why: 'Each one on its own strap counts two wires, or two for each gang when it is wider than one.',
  accepts: 'count x thickest wire, such as 1x14; 1x14 2-gang for one that takes two gangs side by side; or none',
  brief: 'Switches, timers, receptacles (count x thickest wire)',
  widget: { kind: 'text', placeholder: '1x14' },
  whenUnknown: { value: [], because: 'Counted without any.' },
  read: readStraps,
  show: strapsText,
};

export const clamps = oneOf({
  id: 'clamps',
  words: { spanish: boxQuestions.clamps },
  prompt: 'Do clamps inside the box hold the cables?',
  why: 'Clamps inside take the room of one wire, all together. Connectors that clamp outside take none.',
  brief: 'Cable clamps inside the box',
  choices: [
    { id: 'internal', label: 'Yes, inside', also: ['inside', 'yes', 'y', 'in the box'] },
    {
      id: 'none',
      label: 'None inside',
      hint: 'or connectors that clamp outside',
      also: ['no', 'n', 'outside', 'external'],
    },
  ],
  whenUnknown: {
    value: 'none',
    because: 'Counted without clamps; look, since clamps inside take the room of one more wire.',
  },
});

export const serves = oneOf({
  id: 'serves',
  words: { spanish: boxQuestions.serves },
  prompt: 'What is the box for?',
  why: 'The leads of a fan always count. Only under the domed canopy of a light may thin leads be left out.',
  brief: 'What the box serves',
  choices: [
    { id: 'fan', label: 'The fan', hint: 'its own leads come into this box', also: ['exhaust fan', 'bath fan'] },
    { id: 'switch', label: 'A switch, timer or sensor', also: ['switch', 'timer', 'sensor', 'control', 'receptacle'] },
    { id: 'light', label: 'A light on the box', also: ['lamp', 'luminaire', 'fixture'] },
    { id: 'other', label: 'Splices only, or other', also: ['junction', 'splices', 'junction box', 'splice'] },
  ],
  whenUnknown: {
    value: 'fan',
    because: 'Taken as the box of the fan, whose leads all count, until somebody says what it is for.',
  },
});

export const fixtureWires = wireList({
  id: 'fixture-wires',
  words: { spanish: boxQuestions['fixture-wires'] },
  prompt: 'How many leads of the fan or light come into this box, and what size?',
  why: 'Each lead of a fan or light counts one wire of its size: thin leads take less room, but they take some.',
  brief: 'Leads of the fan or light (count x size)',
  placeholder: '2x18',
  because: 'Counted without leads of a fan or light, and told apart what two of them would take.',
});

export const canopy = yesNo({
  id: 'canopy',
  words: { spanish: boxQuestions.canopy },
  prompt: 'Is the box covered by the domed canopy of a light?',
  why: 'Up to four leads thinner than 14 AWG may be left out under such a canopy. A fan has none.',
  brief: 'Box under the domed canopy of a light',
  whenUnknown: { value: 'no', because: 'Taken as no canopy, so every lead counts.' },
});

export const passThrough = wireList({
  id: 'pass-through',
  words: { spanish: boxQuestions['pass-through'] },
  prompt: 'Which wires run through the box unbroken?',
  why: 'A wire running straight through counts one.',
  brief: 'Wires running through unbroken (count x size)',
  placeholder: '2x12',
  because: 'Counted without wires running through.',
});

export const loops = wireList({
  id: 'loops',
  words: { spanish: boxQuestions.loops },
  prompt: 'Which unbroken wires have a loop of 12 in or more left in the box?',
  why: 'A long loop can be cut and spliced later, so it counts two.',
  brief: 'Unbroken wires with a loop of 12 in or more (count x size)',
  placeholder: '1x12',
  because: 'Counted without long loops.',
});

export const pigtails = wireList({
  id: 'pigtails',
  words: { spanish: boxQuestions.pigtails },
  prompt: 'How many pigtails are there, short wires that never leave the box?',
  why: 'They count nothing, but the thickest wire in the box decides what clamps and studs count.',
  brief: 'Pigtails that never leave the box (count x size)',
  placeholder: '3x14',
  because: 'Counted without pigtails, which take no room by the code.',
});

export const supportFittings = severalOf({
  id: 'support-fittings',
  words: { spanish: boxQuestions['support-fittings'] },
  prompt: 'Which support fittings are in the box?',
  why: 'A fixture stud counts one wire and a hickey one, by the thickest wire in the box.',
  brief: 'Fixture stud or hickey in the box',
  choices: [
    { id: 'stud', label: 'Stud', hint: 'the threaded post a fixture hangs from', also: ['fixture stud', 'studs'] },
    { id: 'hickey', label: 'Hickey', hint: 'the coupling between stud and fixture stem', also: ['hickeys'] },
  ],
  whenUnknown: { value: [], because: 'Counted without stud or hickey.' },
});

export const terminalBlocks = wireList({
  id: 'terminal-blocks',
  words: { spanish: boxQuestions['terminal-blocks'] },
  prompt: 'How many terminal blocks are in the box, and how thick is the thickest wire on them?',
  why: 'From the 2023 code each terminal block counts one wire.',
  brief: 'Terminal blocks (count x thickest wire)',
  placeholder: '1x14',
  because: 'Counted without terminal blocks.',
});

export const boxExtras = severalOf({
  id: 'box-extras',
  words: { spanish: boxQuestions['box-extras'] },
  prompt: 'Is anything else in the box?',
  why: 'Each of these changes the count; a plain box has none of them.',
  brief: 'What else is in the box',
  choices: [
    { id: 'pass-through', label: 'Wires running through', also: ['through', 'pass through'] },
    { id: 'loops', label: 'Long loops of wire', hint: '12 in or more, unbroken', also: ['loop', 'loops'] },
    { id: 'support-fittings', label: 'Stud or hickey', also: ['stud', 'hickey'] },
    { id: 'terminal-blocks', label: 'Terminal block', also: ['terminal blocks'] },
    { id: 'pigtails', label: 'Pigtails', also: ['pigtail'] },
  ],
  whenUnknown: { value: [], because: 'Counted with nothing else in the box.' },
});

export const wireConnectors = wireList({
  id: 'wire-connectors',
  words: { spanish: boxQuestions['wire-connectors'] },
  prompt: 'How many wire connectors are in the box, and how thick is the thickest wire under them?',
  why: 'The Canadian code counts every pair of capped wire connectors as one wire.',
  brief: 'Wire connectors in the box (Canada, count x thickest wire)',
  placeholder: '4x14',
  because: 'The Canadian code counts every pair of them as one wire, so what they may take is told apart.',
});

export const deviceDepth = optional({
  id: 'device-depth',
  words: { spanish: boxQuestions['device-depth'] },
  prompt: 'How deep is the deepest switch or timer behind its strap?',
  why: 'The Canadian code charges a device deeper than 2.54 cm (1 in) by its depth.',
  brief: 'Depth of the deepest device behind its strap (Canada)',
  kind: smallLength,
  because: 'A device deeper than 1 in takes more by the Canadian code, so what a deep one takes is told apart.',
});
