import { estimated } from '#interview/quantities.ts';
import type { Question } from '#interview/question.ts';
import { plain } from '#interview/words.ts';
import { ductCondensationDefaults } from '#knowledge/moisture.ts';
import { type Estimate, exactly } from '#quantity/estimate.ts';
import { ductDiameter as diameterKind, insulation, ductLength as lengthKind, temperature } from '#quantity/kinds.ts';
import { type SquareMetreKelvinsPerWatt, squareMetreKelvinsPerWatt } from '#quantity/units.ts';
import { ductQuestions } from '../words/duct-questions.ts';

export const ductDiameter = estimated({
  id: 'duct-diameter',
  words: { spanish: ductQuestions['duct-diameter'] },
  prompt: 'What is the inside diameter of the duct?',
  why: 'A wide duct carries the air slower and has more wall to cool it, so it sweats sooner.',
  brief: 'Inside diameter of the duct',
  kind: diameterKind,
  whenUnknown: {
    value: exactly(diameterKind.from(4, 'in')),
    because: 'Bath fan duct is mostly 4 in; from common practice.',
  },
});

export const atticDuctLength = estimated({
  id: 'attic-duct-length',
  words: { spanish: ductQuestions['attic-duct-length'] },
  prompt: 'How much duct lies in the cold, as it lies?',
  why: 'The air cools with every foot; a long duct sweats where a short one stays dry.',
  brief: 'Length of duct in the attic or other cold space',
  kind: lengthKind,
  whenUnknown: {
    value: { low: lengthKind.from(6, 'ft'), typical: lengthKind.from(12, 'ft'), high: lengthKind.from(25, 'ft') },
    because: 'Runs of 6 to 25 ft are common; from common practice.',
  },
});

export const atticTemperature = estimated({
  id: 'attic-temperature',
  words: { spanish: ductQuestions['attic-temperature'] },
  prompt: 'How cold does it get around the duct?',
  why: 'Water settles where the duct wall is colder than the dew point of the air inside. Think of a cold night.',
  brief: 'Temperature around the duct on a cold night',
  kind: temperature,
  whenUnknown: {
    value: ductCondensationDefaults['attic-temperature'].estimate,
    because: ductCondensationDefaults['attic-temperature'].reason,
  },
});

const bare = exactly(squareMetreKelvinsPerWatt(0));
const wordsForBare = new Set(['bare', 'none', 'no', 'nothing', 'uninsulated', 'not insulated']);

const labelled = estimated({
  id: 'duct-insulation',
  words: { spanish: ductQuestions['duct-insulation'] },
  prompt: 'What insulation is on the duct? The R on the label, or none.',
  why: 'A bare duct in a cold attic sweats from its first foot. Squeezed wrap gives less than its label says.',
  brief: 'Insulation on the duct',
  kind: insulation,
  whenUnknown: { value: bare, because: 'Taken as bare, the worst case, until somebody looks.' },
});

/** R or RSI of the wrap on the duct. "None" and "bare" are answers. */
export const ductInsulation: Question<Estimate<SquareMetreKelvinsPerWatt>> = {
  ...labelled,
  accepts: `${labelled.accepts}, or none`,
  read: (text, units) => (wordsForBare.has(plain(text)) ? { value: bare } : labelled.read(text, units)),
  show: (value, units) => (value.high === 0 ? 'none' : labelled.show(value, units)),
};
