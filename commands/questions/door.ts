import { estimated, optional } from '#interview/quantities.ts';
import type { Question } from '#interview/question.ts';
import { makeUpDefaults } from '#knowledge/make-up.ts';
import { lengthOf } from '#quantity/kind-makers.ts';
import { airflow, doorWidth as doorWidthKind, openingArea, percentage, smallLength } from '#quantity/kinds.ts';
import { metres, type SquareMetres, squareMetres } from '#quantity/units.ts';
import { houseQuestions } from '../words/house-questions.ts';

/** One side of a grille. */
const smallSide = lengthOf({
  bare: { 'inch-pound': 'in', metric: 'mm' },
  least: metres(0.0127),
  most: metres(1.2192),
  example: '12 in or 300 mm',
});

export const doorWidth = estimated({
  id: 'door-width',
  words: { spanish: houseQuestions['door-width'] },
  prompt: 'How wide is the bathroom door?',
  why: 'The air the fan throws out comes in under the door; its width and gap are the only way in.',
  brief: 'Bathroom door width',
  kind: doorWidthKind,
  whenUnknown: {
    value: {
      low: doorWidthKind.from(24, 'in'),
      typical: doorWidthKind.from(30, 'in'),
      high: doorWidthKind.from(32, 'in'),
    },
    because: 'Bathroom doors are mostly 24 to 32 in wide; from common practice.',
  },
});

export const doorGap = estimated({
  id: 'door-gap',
  words: { spanish: houseQuestions['door-gap'] },
  prompt: 'How high is the gap under the shut door, from the floor or the top of the carpet?',
  why: 'A tight door starves the strongest fan: the gap takes pressure just as the duct does.',
  brief: 'Gap under the shut door',
  kind: smallLength,
  whenUnknown: {
    value: { low: smallLength.from(0.25, 'in'), typical: smallLength.from(0.5, 'in'), high: smallLength.from(1, 'in') },
    because: 'Gaps of 1/4 to 1 in are common; from common practice.',
  },
});

const grilleFace = optional({
  id: 'transfer-grille',
  words: { spanish: houseQuestions['transfer-grille'] },
  prompt: 'Is there a grille through the door or the wall beside it? Its face, such as 12 x 6 in, or none.',
  why: 'A grille lets air in beside the gap under the door; together they decide how hard the fan has to pull.',
  brief: 'Face of a grille through door or wall, or none',
  kind: openingArea,
  because: 'Reckoned without a grille: the gap under the door is the only way in.',
});

/** Of text with single spaces: a number in each place can be read in one way only, so no text is tried for long. */
const number = String.raw`([\d./]+(?: [\d./]+)*)`;
const unit = '(in|inch|inches|"|mm|cm)?';
const sides = new RegExp(`^${number} ?${unit} ?(?:x|×|by) ?${number} ?${unit}$`, 'i');

/** A grille is told by its two sides, 12 x 6 in; "none" is an answer. */
export const transferGrille: Question<SquareMetres | null> = {
  ...grilleFace,
  accepts: 'an area or two sides, such as 12 x 6 in, or none',
  widget: { kind: 'text', placeholder: '12 x 6 in' },
  read(text, units) {
    if (/^\s*(?:none|no|no grille)[.!]?\s*$/i.test(text)) return { value: squareMetres(0) };
    const [, wide, unitOfWide, high, unitOfHigh] = sides.exec(text.trim().replace(/\s+/g, ' ')) ?? [];
    if (wide === undefined || high === undefined) return grilleFace.read(text, units);
    const one = smallSide.read(`${wide} ${unitOfWide ?? unitOfHigh ?? ''}`, units);
    const other = smallSide.read(`${high} ${unitOfHigh ?? unitOfWide ?? ''}`, units);
    if ('rejected' in one) return one;
    return 'rejected' in other ? other : { value: squareMetres(one.value * other.value) };
  },
  show: (value, units) => (value === 0 ? 'none' : grilleFace.show(value, units)),
};

export const transferGrilleFreeShare = estimated({
  id: 'transfer-grille-free-share',
  words: { spanish: houseQuestions['transfer-grille-free-share'] },
  prompt: 'How much of that grille’s face is open?',
  why: 'Blades and mesh take the rest; the open part is what the air gets.',
  brief: 'Open share of the grille’s face',
  kind: percentage,
  whenUnknown: {
    value: makeUpDefaults['grille-free-share'].estimate,
    because: 'Grilles are mostly 50 to 75 % open; from common practice.',
  },
});

export const hallDoorGap = optional({
  id: 'hall-door-gap',
  words: { spanish: houseQuestions['hall-door-gap'] },
  prompt: 'Is there a second shut door between the bathroom and the rest of the house? The gap under it.',
  why: 'Air that has to pass two doors loses pressure at both.',
  brief: 'Gap under a second door on the way, where there is one',
  kind: lengthOf({
    bare: { 'inch-pound': 'in', metric: 'mm' },
    least: metres(0.001),
    most: metres(0.3048),
    example: '3/4 in or 20 mm',
  }),
  because: 'Reckoned without a second door on the way.',
});

export const hallDoorWidth = estimated({
  id: 'hall-door-width',
  words: { spanish: houseQuestions['hall-door-width'] },
  prompt: 'How wide is that second door?',
  why: 'Its width and its gap make the opening.',
  brief: 'Width of the second door',
  kind: doorWidthKind,
  whenUnknown: {
    value: makeUpDefaults['door-width'].estimate,
    because: 'Doors are mostly 24 to 36 in wide; from common practice.',
  },
});

export const doorOpenAirflow = optional({
  id: 'door-open-airflow',
  words: { spanish: houseQuestions['door-open-airflow'] },
  prompt: 'What does it measure with the door open? The same way, the same place; or don’t know.',
  why: 'A drop of a tenth or more when the door is shut means the fan is starved. The pair tells more than any gap.',
  brief: 'Airflow measured the same way with the door open',
  kind: airflow,
  because: 'Not measured with the door open, so the door’s part cannot be told apart.',
});
