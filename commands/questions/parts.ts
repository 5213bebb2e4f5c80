import { oneOf } from '#interview/choices.ts';
import { optional } from '#interview/quantities.ts';
import type { Question } from '#interview/question.ts';
import { plain } from '#interview/words.ts';
import { ductLength, insulation } from '#quantity/kinds.ts';
import { type Metres, type SquareMetreKelvinsPerWatt, squareMetreKelvinsPerWatt } from '#quantity/units.ts';
import type { InOtherWords } from '#words/question-words.ts';
import { ductQuestions } from '../words/duct-questions.ts';
import { partQuestions } from '../words/part-questions.ts';
import { readSides, side, sidesText } from './size-reading.ts';

interface Sides {
  readonly id: string;
  readonly words: InOtherWords;
  readonly prompt: string;
  readonly why: string;
  readonly brief: string;
  readonly example: string;
  readonly counts: readonly number[];
  readonly because: string;
}

const sides = ({ example, counts, because, ...wording }: Sides): Question<readonly Metres[] | null> => ({
  ...wording,
  accepts: `${counts.join(' or ')} sides with x between, such as ${example}`,
  widget: { kind: 'text', placeholder: example },
  whenUnknown: { value: null, because },
  read: (text, units) => readSides(text, units, { counts, example }),
  show: (value, units) => (value === null ? 'not known' : sidesText(value, units)),
});

export const housingSize = sides({
  id: 'housing-size',
  words: { spanish: partQuestions['housing-size'] },
  prompt: 'How large is the housing of the new fan: length, width and height?',
  why: 'It decides the opening to cut, whether it goes between the joists, and whether it goes under a floor.',
  brief: 'Housing of the new fan, length x width x height',
  example: '10-1/4 x 10-1/2 x 7-5/8 in',
  counts: [2, 3],
  because: 'No opening and no fit can be told without the size of the housing.',
});

export const oldOpening = sides({
  id: 'old-opening',
  words: { spanish: partQuestions['old-opening'] },
  prompt: 'How large is the opening the old fan leaves?',
  why: 'An opening larger than the new housing shows, unless the new grille covers its edge.',
  brief: 'Opening left by the old fan, length x width',
  example: '9 x 9-1/4 in',
  counts: [2],
  because: 'Measure it before the fan is ordered: a larger hole than the grille covers has to be patched.',
});

export const grilleSize = sides({
  id: 'grille-size',
  words: { spanish: partQuestions['grille-size'] },
  prompt: 'How large is the grille of the new fan?',
  why: 'It has to cover the edge of the opening on every side.',
  brief: 'Grille of the new fan, length x width',
  example: '13 x 14 in',
  counts: [2],
  because: 'Whether the grille covers the old opening cannot be told without it.',
});

const spacing = optional({
  id: 'joist-spacing',
  words: { spanish: partQuestions['joist-spacing'] },
  prompt: 'How far apart are the joists, center to center?',
  why: 'No joist, truss or flange is ever cut to make a housing fit; the clear bay has to take it.',
  brief: 'Joist spacing, center to center',
  kind: side,
  because: 'Measure it before the fan is ordered; the clear bay has to take the housing.',
});

const onCentre = /[\s,]*(?:o\.?\s?c\.?|on[\s-]?cent(?:er|re)|cent(?:er|re)s?(?:\s+to\s+cent(?:er|re))?)\.?\s*$/i;

export const joistSpacing: Question<Metres | null> = {
  ...spacing,
  read: (text, units) => spacing.read(text.replace(onCentre, ''), units),
};

export const joistKind = oneOf({
  id: 'joist-kind',
  words: { spanish: partQuestions['joist-kind'] },
  prompt: 'What are the joists?',
  why: 'A truss chord or an I-joist flange is wider than a sawn joist and leaves a narrower bay.',
  brief: 'What the joists are',
  choices: [
    { id: '2x6', label: '2x6', also: ['2 x 6'] },
    { id: '2x8', label: '2x8', also: ['2 x 8'] },
    { id: '2x10', label: '2x10', also: ['2 x 10'] },
    { id: '2x12', label: '2x12', also: ['2 x 12'] },
    { id: 'truss', label: 'Truss', hint: 'chord laid flat', also: ['trusses'] },
    { id: 'i-joist', label: 'I-joist', also: ['i joist'] },
  ],
  whenUnknown: { value: 'truss', because: 'Taken as truss chords, the widest, until somebody looks.' },
});

export const aboveCeiling = oneOf({
  id: 'above-ceiling',
  words: { spanish: partQuestions['above-ceiling'] },
  prompt: 'What is above the ceiling?',
  why: 'Under a floor the housing has to fit within the depth of the joists; in an attic it may stand higher.',
  brief: 'What is above the ceiling',
  choices: [
    { id: 'attic', label: 'Open attic', also: ['roof space', 'loft'] },
    { id: 'floor', label: 'A floor or a roof deck', hint: 'no room above the joists', also: ['floor', 'roof', 'deck'] },
  ],
  whenUnknown: { value: 'floor', because: 'Taken as a floor above, with no room over the joists.' },
});

export const cableLength = optional({
  id: 'cable-length',
  words: { spanish: partQuestions['cable-length'] },
  prompt: 'How long is the new cable, as it will run?',
  why: 'Cable is counted as it lies, up, over and down.',
  brief: 'New cable, as it will run',
  kind: ductLength,
  because: 'No new cable is on the list until its length is known.',
});

const wrapped = optional({
  id: 'insulation-wanted',
  words: { spanish: ductQuestions['insulation-wanted'] },
  prompt: 'To what R is the duct to be wrapped? None where it stays inside the warm part of the house.',
  why: 'A bare duct in the cold sweats. The number counts once the wrap is on, not as it lies on the roll.',
  brief: 'Insulation wanted on the duct, or none',
  kind: insulation,
  because: 'Taken as R-8, which the field standard asks for outside the warm part of the house.',
});
const bare = new Set(['none', 'no', 'nothing', 'bare']);

export const insulationWanted: Question<SquareMetreKelvinsPerWatt | null> = {
  ...wrapped,
  accepts: `${wrapped.accepts}, or none`,
  read: (text, units) => (bare.has(plain(text)) ? { value: squareMetreKelvinsPerWatt(0) } : wrapped.read(text, units)),
  show: (value, units) => (value === 0 ? 'none' : wrapped.show(value, units)),
};
