import { oneOf, yesNo } from '#interview/choices.ts';
import { estimated } from '#interview/quantities.ts';
import { bathroomDefaults, ductCondensationDefaults } from '#knowledge/moisture.ts';
import {
  houseTemperature as houseTemperatureKind,
  minutes,
  relativeHumidity,
  temperature as temperatureKind,
} from '#quantity/kinds.ts';
import { moistureQuestions } from '../words/moisture-questions.ts';

export const showerMinutes = estimated({
  id: 'shower-minutes',
  words: { spanish: moistureQuestions['shower-minutes'] },
  prompt: 'How long is the longest shower, or all of them in a row?',
  why: 'Every minute of hot water puts more steam in the room. One shower after another counts as one long one.',
  brief: 'Length of the shower, or of all in a row',
  kind: minutes,
  whenUnknown: {
    value: bathroomDefaults.showerDuration.estimate,
    because: bathroomDefaults.showerDuration.reason,
  },
});

export const houseHumidity = estimated({
  id: 'house-humidity',
  words: { spanish: moistureQuestions['house-humidity'] },
  prompt: 'What is the humidity of the house, outside the bathroom?',
  why: 'The fan can only make the room as dry as the house air it draws in. A cheap hygrometer in the hall tells.',
  brief: 'Relative humidity of the house',
  kind: relativeHumidity,
  whenUnknown: {
    value: bathroomDefaults.houseRelativeHumidity.estimate,
    because: bathroomDefaults.houseRelativeHumidity.reason,
  },
});

export const houseTemperature = estimated({
  id: 'house-temperature',
  words: { spanish: moistureQuestions['house-temperature'] },
  prompt: 'How warm is the house?',
  why: 'Warm air of the same humidity carries more water, and a warm bathroom dries sooner.',
  brief: 'Temperature of the house',
  kind: houseTemperatureKind,
  whenUnknown: {
    value: bathroomDefaults.houseTemperature.estimate,
    because: bathroomDefaults.houseTemperature.reason,
  },
});

export const bathroomTemperature = estimated({
  id: 'bathroom-temperature',
  words: { spanish: moistureQuestions['bathroom-temperature'] },
  prompt: 'How warm is the bathroom just after a shower?',
  why: 'The strongest of all the guesses: each degree warmer dries the room sooner.',
  brief: 'Temperature of the bathroom after a shower',
  kind: temperatureKind,
  whenUnknown: {
    value: bathroomDefaults.roomTemperature.estimate,
    because: bathroomDefaults.roomTemperature.reason,
  },
});

export const fanDuringShower = yesNo({
  id: 'fan-during-shower',
  words: { spanish: moistureQuestions['fan-during-shower'] },
  prompt: 'Does the fan run during the shower too?',
  why: 'A fan that starts with the water keeps steam off the walls; one started after has all of it to fetch back.',
  brief: 'Fan on during the shower',
  whenUnknown: {
    value: 'yes',
    because: 'Most fans come on with the light; the table tells what leaving it off costs.',
  },
});

export const wipeDown = yesNo({
  id: 'wipe-down',
  words: { spanish: moistureQuestions['wipe-down'] },
  prompt: 'Does somebody squeegee the wet walls after the shower?',
  why: 'The water left on walls and curtain keeps the fan busy longest; what is wiped off need not be blown out.',
  brief: 'Wet walls squeegeed after the shower',
  whenUnknown: { value: 'no', because: 'Most people do not.' },
});

export const mirrorWall = oneOf({
  id: 'mirror-wall',
  words: { spanish: moistureQuestions['mirror-wall'] },
  prompt: 'Does the mirror hang on an outside wall?',
  why: 'A cold mirror fogs more and clears later.',
  brief: 'Wall the mirror hangs on',
  choices: [
    { id: 'inside', label: 'Inside wall', also: ['no', 'interior', 'partition'] },
    { id: 'outside', label: 'Outside wall', also: ['yes', 'exterior', 'outer'] },
  ],
  whenUnknown: { value: 'inside', because: 'Most hang on an inside wall.' },
});

export const exhaustHumidity = estimated({
  id: 'exhaust-humidity',
  words: { spanish: moistureQuestions['exhaust-humidity'] },
  prompt: 'How humid is the air that goes into the fan during a shower?',
  why: 'It decides at what temperature water settles in the duct. Near 100 % any cold duct gets wet.',
  brief: 'Relative humidity of the exhaust',
  kind: relativeHumidity,
  whenUnknown: {
    value: ductCondensationDefaults['exhaust-humidity'].estimate,
    because: ductCondensationDefaults['exhaust-humidity'].reason,
  },
});

export const exhaustTemperature = estimated({
  id: 'exhaust-temperature',
  words: { spanish: moistureQuestions['exhaust-temperature'] },
  prompt: 'How warm is that air?',
  why: 'At the same humidity reading warmer air carries more water, so it wets a cold duct sooner.',
  brief: 'Temperature of the exhaust',
  kind: temperatureKind,
  whenUnknown: {
    value: ductCondensationDefaults['exhaust-temperature'].estimate,
    because: ductCondensationDefaults['exhaust-temperature'].reason,
  },
});
