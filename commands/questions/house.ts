import { oneOf, yesNo } from '#interview/choices.ts';
import { estimated } from '#interview/quantities.ts';
import { makeUpDefaults } from '#knowledge/make-up.ts';
import { houseLeakage as houseLeakageKind } from '#quantity/kinds.ts';
import { houseQuestions } from '../words/house-questions.ts';

export const houseLeakage = estimated({
  id: 'house-leakage',
  words: { spanish: houseQuestions['house-leakage'] },
  prompt: 'How leaky is the house? The blower-door figure, airflow at 50 Pa, if there is one.',
  why: 'Every fan pulls the house below outdoors; how far depends on how tight it is. Only a blower door tells.',
  brief: 'Blower-door figure: airflow at 50 Pa',
  kind: houseLeakageKind,
  whenUnknown: {
    value: makeUpDefaults['house-leakage'].estimate,
    because: 'Houses run from 500 to 4500 cfm50; too wide to reckon with, so no house pressure is worked out.',
  },
});

export const attachedGarage = yesNo({
  id: 'attached-garage',
  safety: true,
  words: { spanish: houseQuestions['attached-garage'] },
  prompt: 'Does a garage share a wall or a door with the house?',
  why: 'A house pulled below outdoors draws from the garage too, and car fumes with it.',
  brief: 'Garage attached to the house',
  whenUnknown: { value: 'yes', because: 'Nobody has said, so a garage is reckoned with.' },
});

export const carbonMonoxideAlarm = oneOf({
  id: 'carbon-monoxide-alarm',
  safety: true,
  words: { spanish: houseQuestions['carbon-monoxide-alarm'] },
  prompt: 'Is there a carbon monoxide alarm?',
  why: 'Carbon monoxide cannot be smelled. The alarm is the last guard when a fan makes a chimney flow backwards.',
  brief: 'Carbon monoxide alarm',
  choices: [
    { id: 'fitted', label: 'Fitted and tested', hint: 'its button was pressed', also: ['fitted and tested', 'tested'] },
    { id: 'none', label: 'None', also: ['no', 'not fitted'] },
    { id: 'not-tested', label: 'There, not tested', also: ['yes', 'there', 'untested'] },
    { id: 'sounding', label: 'It is sounding now', hint: 'leave first', also: ['sounding', 'beeping', 'alarming'] },
  ],
  whenUnknown: { value: 'none', because: 'Nobody has said, so none is counted on.' },
});

export const recordedBy = oneOf({
  id: 'recorded-by',
  words: { spanish: houseQuestions['recorded-by'] },
  prompt: 'Who looked at the fuel-burning appliances?',
  why: 'Only a lead may record that there is none, or that one is sealed. From anybody else it stays unknown.',
  brief: 'Who looked at the fuel-burning appliances',
  choices: [
    { id: 'lead', label: 'A lead, on site' },
    {
      id: 'other',
      label: 'Somebody else',
      hint: 'the customer, the office, an apprentice',
      also: ['other', 'customer'],
    },
  ],
  whenUnknown: { value: 'other', because: 'Nobody has said that a lead looked.' },
});

export const sealedProof = oneOf({
  id: 'sealed-proof',
  words: { spanish: houseQuestions['sealed-proof'] },
  prompt: 'What shows that the appliance is sealed?',
  why: 'A sealed appliance takes its air from outdoors by a pipe of its own. It counts once that is seen, with a photo.',
  brief: 'What shows that an appliance is sealed',
  choices: [
    {
      id: 'two-pipes',
      label: 'Two pipes seen',
      hint: 'one for air in, one for fumes out',
      also: ['two pipes', 'pipes'],
    },
    { id: 'rating-plate', label: 'Rating plate seen', also: ['plate', 'label'] },
    { id: 'nothing', label: 'Nothing seen', also: ['nothing', 'no', 'hearsay'] },
  ],
  whenUnknown: { value: 'nothing', because: 'Nobody has said what was seen.' },
});
