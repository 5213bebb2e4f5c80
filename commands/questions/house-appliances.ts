import { severalOf, yesNo } from '#interview/choices.ts';
import { optional } from '#interview/quantities.ts';
import type { Question } from '#interview/question.ts';
import { countOf } from '#quantity/kind-makers.ts';
import { houseQuestions } from '../words/house-questions.ts';

export type ApplianceId =
  | 'natural-draft'
  | 'unvented'
  | 'solid-fuel'
  | 'induced-draft'
  | 'power-vented'
  | 'sealed'
  | 'kind-unknown';

const appliances = [
  {
    id: 'natural-draft',
    label: 'Draft hood (natural draft)',
    hint: 'an open hood or gap where the pipe leaves a heater, boiler or furnace',
    also: [
      'draft hood',
      'atmospheric',
      'natural draught',
      'natural draft water heater',
      'natural draft furnace',
      'water heater with draft hood',
      'gas water heater with draft hood',
      'gas water heater with a draft hood',
      'draft hood water heater',
    ],
  },
  {
    id: 'unvented',
    label: 'Heater without a vent',
    hint: 'room heater or log set, no pipe at all',
    also: ['vent-free', 'ventless', 'no vent', 'unvented heater', 'kerosene heater'],
  },
  {
    id: 'solid-fuel',
    label: 'Fireplace or wood stove',
    also: ['fireplace', 'wood stove', 'stove', 'pellet stove', 'gas log', 'coal stove'],
  },
  {
    id: 'induced-draft',
    label: 'Furnace or boiler with a draft fan',
    hint: 'a small fan at the foot of a metal pipe',
    also: ['draft fan', 'induced', 'fan assisted'],
  },
  {
    id: 'power-vented',
    label: 'Power vented',
    hint: 'a blower on top pushes the fumes out through one plastic pipe',
    also: ['power vent', 'power vented water heater'],
  },
  {
    id: 'sealed',
    label: 'Sealed combustion',
    hint: 'a pipe of its own for the air, another for the fumes',
    also: ['sealed', 'direct vent', 'two pipes'],
  },
  {
    id: 'kind-unknown',
    label: 'There is one of unknown kind',
    hint: 'gas or oil, nobody has looked how it is vented',
    also: [
      'there is one',
      'yes',
      'gas',
      'oil',
      'furnace',
      'boiler',
      'water heater',
      'gas water heater',
      'gas furnace',
      'gas boiler',
      'oil furnace',
      'oil boiler',
      'oil burner',
      'oil water heater',
      'propane furnace',
      'propane boiler',
      'propane water heater',
    ],
  },
] as const;

/** "No" is how people say that there is none. */
function sayingNo<Id extends string>(question: Question<readonly Id[]>): Question<readonly Id[]> {
  return {
    ...question,
    read: (text, units) =>
      question.read(/^\s*(?:no|no one|nothing|all[ -]?electric)[.!]?\s*$/i.test(text) ? 'none' : text, units),
  };
}

export const fuelAppliances: Question<readonly ApplianceId[]> = sayingNo(
  severalOf({
    id: 'fuel-appliances',
    safety: true,
    words: { spanish: houseQuestions['fuel-appliances'] },
    prompt:
      'What burns fuel in the house, taking air from indoors or venting through it? Furnace, boiler, water heater, fireplace, stove, gas log.',
    why: 'A fan can pull the fumes of a flame back into the house. Nothing here can rule that out; it can only say who must look.',
    brief: 'Fuel-burning appliances in the house',
    choices: appliances,
    whenUnknown: {
      value: ['kind-unknown'],
      because: 'Nobody has said, so one that can spill its fumes is counted on.',
    },
  }),
);

export const applianceInBathZone: Question<readonly ApplianceId[]> = sayingNo(
  severalOf({
    id: 'appliance-in-bath-zone',
    safety: true,
    words: { spanish: houseQuestions['appliance-in-bath-zone'] },
    prompt: 'Does one of them stand in the bathroom, or in a closet that opens only into it?',
    why: 'There the whole pull across the shut door acts on the flame, many times what the house feels.',
    brief: 'Fuel-burning appliance in the bathroom or its closet',
    choices: appliances,
    whenUnknown: { value: ['kind-unknown'], because: 'Nobody has said, so one is counted on until a lead has looked.' },
  }),
);

export const spillageSeen = yesNo({
  id: 'spillage-seen',
  safety: true,
  words: { spanish: houseQuestions['spillage-seen'] },
  prompt: 'Has smoke or hot gas been seen or felt coming back out of a draft hood or fireplace?',
  why: 'That is poison gas in the house now, whatever any sum says.',
  brief: 'Smoke or hot gas coming back into the house',
  unknownCounts: true,
  whenUnknown: { value: 'no', because: 'Nobody has reported any; where nobody can say, it is counted on.' },
});

export const carbonMonoxideReading = optional({
  id: 'carbon-monoxide',
  safety: true,
  words: { spanish: houseQuestions['carbon-monoxide'] },
  prompt: 'What does a carbon monoxide meter read, less what it reads outdoors?',
  why: 'From 9 ppm above outdoors somebody must find the cause; from 35 ppm everybody goes outside.',
  brief: 'Carbon monoxide above outdoors, in ppm',
  kind: countOf({ least: 0, most: 5000, things: 'ppm', example: '9 ppm', noun: 'a meter reading' }),
  because: 'Nobody has measured it.',
});
