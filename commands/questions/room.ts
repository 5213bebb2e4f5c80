import { oneOf, severalOf, yesNo } from '#interview/choices.ts';
import { estimated } from '#interview/quantities.ts';
import {
  ceilingHeight as ceilingHeightKind,
  roomArea as roomAreaKind,
  roomLength as roomLengthKind,
} from '#quantity/kinds.ts';
import { roomQuestions } from '../words/room-questions.ts';

const feet = (low: number, typical: number, high: number) => ({
  low: roomLengthKind.from(low, 'ft'),
  typical: roomLengthKind.from(typical, 'ft'),
  high: roomLengthKind.from(high, 'ft'),
});

export const roomLength = estimated({
  id: 'room-length',
  words: { spanish: roomQuestions['room-length'] },
  prompt: 'How long is the room, wall to wall?',
  why: 'The floor area sets how much air the room needs. Measure at the floor, closets left out.',
  brief: 'Room length',
  kind: roomLengthKind,
  whenUnknown: { value: feet(7, 8, 10), because: 'The common small bath is 5 ft by 8 ft; from common practice.' },
});

export const roomWidth = estimated({
  id: 'room-width',
  words: { spanish: roomQuestions['room-width'] },
  prompt: 'How wide is it?',
  why: 'The floor area sets how much air the room needs.',
  brief: 'Room width',
  kind: roomLengthKind,
  whenUnknown: { value: feet(5, 5, 8), because: 'The common small bath is 5 ft by 8 ft; from common practice.' },
});

export const roomArea = estimated({
  id: 'room-area',
  words: { spanish: roomQuestions['room-area'] },
  prompt: 'What is the floor area?',
  why: 'Given instead of length and width, for a room that is not a rectangle.',
  brief: 'Floor area, instead of length and width',
  kind: roomAreaKind,
  whenUnknown: {
    value: {
      low: roomAreaKind.from(35, 'ft^2'),
      typical: roomAreaKind.from(40, 'ft^2'),
      high: roomAreaKind.from(80, 'ft^2'),
    },
    because: 'The common small bath is 5 ft by 8 ft; from common practice.',
  },
});

export const ceilingHeight = estimated({
  id: 'ceiling-height',
  words: { spanish: roomQuestions['ceiling-height'] },
  prompt: 'How high is the ceiling? For a sloped one, the average.',
  why: 'Above 8 ft the room holds more air than its floor tells, so it is sized by volume.',
  brief: 'Ceiling height',
  kind: ceilingHeightKind,
  whenUnknown: {
    value: {
      low: ceilingHeightKind.from(8, 'ft'),
      typical: ceilingHeightKind.from(8, 'ft'),
      high: ceilingHeightKind.from(9, 'ft'),
    },
    because: 'Most houses have 8 ft ceilings; from common practice.',
  },
});

export const fixtures = severalOf({
  id: 'fixtures',
  words: { spanish: roomQuestions.fixtures },
  prompt: 'What stands in the room? A shower over a tub counts once, as a tub.',
  why: 'Rooms over 100 sq ft are sized by their fixtures, and a jetted tub or steam shower asks for more at any size.',
  brief: 'Fixtures in the room',
  choices: [
    { id: 'toilet', label: 'Toilet', also: ['wc', 'water closet'] },
    { id: 'shower', label: 'Shower', also: ['shower stall', 'walk-in shower'] },
    {
      id: 'tub',
      label: 'Tub',
      hint: 'with or without a shower over it',
      also: ['bath', 'bathtub', 'tub shower', 'tub and shower'],
    },
    { id: 'jetted-tub', label: 'Jetted tub', also: ['jet tub', 'whirlpool', 'whirlpool tub', 'jetted'] },
    {
      id: 'steam-shower',
      label: 'Steam shower',
      hint: 'closed to the ceiling, with a steam generator',
      also: ['steam'],
    },
  ],
  whenUnknown: { value: ['toilet', 'tub'], because: 'A toilet and a tub with a shower over it are the usual pair.' },
});

export const toiletCompartment = yesNo({
  id: 'toilet-compartment',
  words: { spanish: roomQuestions['toilet-compartment'] },
  prompt: 'Is the toilet behind a door of its own?',
  why: 'A closed toilet compartment needs a fan of its own or a window that opens: a fan in the main room does not reach it.',
  brief: 'Toilet behind its own door',
  whenUnknown: { value: 'no', because: 'Most toilets stand in the room itself; look before the fan is bought.' },
});

export const running = oneOf({
  id: 'running',
  words: { spanish: roomQuestions.running },
  prompt: 'How will the fan run?',
  why: 'A fan that never stops may run at less air than one switched on for the shower; it must then be very quiet.',
  brief: 'How the fan runs',
  choices: [
    {
      id: 'on-demand',
      label: 'When the room is used',
      hint: 'switch, timer or humidity control',
      also: ['on demand', 'intermittent', 'demand', 'switched'],
    },
    {
      id: 'continuous',
      label: 'All the time',
      hint: 'low speed day and night',
      also: ['continuously', 'always', 'non-stop'],
    },
  ],
  whenUnknown: { value: 'on-demand', because: 'Most bath fans are switched on when needed.' },
});
