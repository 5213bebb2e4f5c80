import { oneOf } from '#interview/choices.ts';
import { optional } from '#interview/quantities.ts';
import type { Question } from '#interview/question.ts';
import { plain } from '#interview/words.ts';
import { current, fanPower } from '#quantity/kinds.ts';
import { type Amperes, amperes, type Watts, watts } from '#quantity/units.ts';
import { loadQuestions } from '../words/load-questions.ts';

const nothing = new Set(['none', 'no', 'nothing', '0', 'zero']);

/** The same question, where none of it is an answer too. */
const orNone = <Q extends number>(question: Question<Q | null>, none: Q): Question<Q | null> => ({
  ...question,
  accepts: `${question.accepts}, or none`,
  read: (text, units) => (nothing.has(plain(text)) ? { value: none } : question.read(text, units)),
  show: (value, units) => (value === none ? 'none' : question.show(value, units)),
});

export const fanAmps = optional({
  id: 'fan-amps',
  words: { spanish: loadQuestions['fan-amps'] },
  prompt: 'How many amps does the fan’s label say?',
  why: 'A motor draws more amps than its watts tell. The amps on the label go before any sum.',
  brief: 'Amps of the fan',
  kind: current,
  because: 'Reckoned from the watts of the fan.',
});

export const heaterWatts: Question<Watts | null> = orNone(
  optional({
    id: 'heater-watts',
    words: { spanish: loadQuestions['heater-watts'] },
    prompt: 'How many watts has the heater?',
    why: 'A heater fills a circuit by itself: 1500 W draw 12.5 A.',
    brief: 'Watts of the heater',
    kind: fanPower,
    because: 'The load cannot be added up without the watts of the heater.',
  }),
  watts(0),
);

export const lampWatts: Question<Watts | null> = orNone(
  optional({
    id: 'lamp-watts',
    words: { spanish: loadQuestions['lamp-watts'] },
    prompt: 'How many watts have the lamps in the unit?',
    why: 'A control that works fan and lamp together switches both.',
    brief: 'Watts of the lamps in the unit',
    kind: fanPower,
    because: 'The load cannot be added up without the watts of the lamps.',
  }),
  watts(0),
);

export const otherFixedLoad: Question<Amperes | null> = orNone(
  optional({
    id: 'other-fixed-load',
    words: { spanish: loadQuestions['other-fixed-load'] },
    prompt: 'How many amps does other fixed equipment on the circuit draw, all of it together?',
    why: 'Fixed equipment may take half of a circuit that also feeds lamps or plugs.',
    brief: 'Amps of other fixed equipment on the circuit',
    kind: current,
    because: 'The share of the circuit cannot be told without it.',
  }),
  amperes(0),
);

export const breaker = optional({
  id: 'breaker',
  words: { spanish: loadQuestions.breaker },
  prompt: 'What is the breaker of the circuit rated?',
  why: 'Wire and load are judged against it. The number stands on its handle.',
  brief: 'Breaker of the fan’s circuit',
  kind: current,
  because: 'Nothing is judged against the breaker until it is read.',
});

export const thinnestWire = oneOf({
  id: 'thinnest-wire',
  words: { spanish: loadQuestions['thinnest-wire'] },
  prompt: 'What is the thinnest wire on the circuit? Read it off the cable sheath, or in a box proven dead.',
  why: 'One thin piece anywhere limits the breaker: copper of 14 AWG takes 15 A, 12 AWG 20 A, 10 AWG 30 A.',
  brief: 'Thinnest wire on the circuit',
  choices: [
    { id: '14', label: '14 AWG', also: ['#14', '14 gauge', '14/2', '14-2'] },
    { id: '12', label: '12 AWG', also: ['#12', '12 gauge', '12/2', '12-2'] },
    { id: '10', label: '10 AWG or thicker', also: ['#10', '10 awg', '10 gauge', '10/2', '8', '6'] },
    { id: '16', label: '16 AWG or thinner', also: ['#16', '16 awg', '16 gauge', '18'] },
  ],
  whenUnknown: { value: '16', because: 'Taken as too thin until it is read.' },
});

export const controlAmps = optional({
  id: 'control-amps',
  words: { spanish: loadQuestions['control-amps'] },
  prompt: 'How many amps of motor load is the new control rated for?',
  why: 'A fan is a motor: a lamp rating in watts says nothing about it.',
  brief: 'Motor rating of the new control',
  kind: current,
  because: 'Nothing is judged against the rating of the control until it is read.',
});

export const controlMinimum: Question<Watts | null> = orNone(
  optional({
    id: 'control-minimum',
    words: { spanish: loadQuestions['control-minimum'] },
    prompt: 'What is the least load the new control needs? Its leaflet says, or none.',
    why: 'An electronic control may flicker, stay on or never start with too small a load.',
    brief: 'Least load the new control needs',
    kind: fanPower,
    because: 'Nothing is judged against the least load until the leaflet is read.',
  }),
  watts(0),
);

export const fanWattsLow = optional({
  id: 'fan-watts-low',
  words: { spanish: loadQuestions['fan-watts-low'] },
  prompt: 'How many watts does the fan take at its lowest speed?',
  why: 'Its lowest speed decides whether an electronic control holds, not the number on the carton.',
  brief: 'Watts of the fan at its lowest speed',
  kind: fanPower,
  because: 'Nothing is judged against the least load until it is known.',
});
