import { oneOf, yesNo } from '#interview/choices.ts';
import { estimated, optional } from '#interview/quantities.ts';
import { fieldMethods } from '#knowledge/field-methods.ts';
import { exactly } from '#quantity/estimate.ts';
import { pressureOf } from '#quantity/kind-makers.ts';
import { airflow, airSpeed, containerVolume, openingArea, percentage, stopwatchTime } from '#quantity/kinds.ts';
import { pascals } from '#quantity/units.ts';
import { measuringQuestions } from '../words/measuring-questions.ts';
import { readings } from './measuring-readings.ts';

export const method = oneOf({
  id: 'method',
  words: { spanish: measuringQuestions.method },
  prompt: 'How was the airflow measured?',
  why: 'Each way errs by its own amount; the answer says how far it can be trusted.',
  brief: 'How the airflow was measured',
  choices: [
    { id: 'bag', label: 'Bag and stopwatch', also: ['bag', 'timed bag', 'garbage bag', 'bin bag'] },
    {
      id: 'flow-box',
      label: 'Flow box',
      hint: 'a box over the grille with one opening and a pressure gauge',
      also: ['box', 'flow box', 'box and gauge'],
    },
    {
      id: 'traverse',
      label: 'Speeds over the grille',
      hint: 'an anemometer moved over its face',
      also: ['traverse', 'anemometer', 'vane', 'grille traverse'],
    },
    {
      id: 'hood',
      label: 'Flow hood',
      hint: 'it shows the airflow itself',
      also: ['hood', 'powered hood', 'capture hood'],
    },
  ],
  whenUnknown: { value: 'bag', because: 'A bag is what most crews have.' },
});

export const bagVolume = estimated({
  id: 'bag-volume',
  words: { spanish: measuringQuestions['bag-volume'] },
  prompt: 'How much does the bag hold? The number on its box.',
  why: 'Volume over time is the airflow. A bag hardly ever fills to the number on its box; the band allows for that.',
  brief: 'Volume of the bag',
  kind: containerVolume,
  whenUnknown: {
    value: exactly(containerVolume.from(55, 'gallon')),
    because: 'Without the volume a bag tells nothing; 55 gal or larger suits a bath fan.',
  },
});

export const fillTimes = readings({
  id: 'fill-times',
  words: { spanish: measuringQuestions['fill-times'] },
  prompt: 'How many seconds each time, door shut? Five times, with commas between.',
  why: 'One timing may be half a second off; the mean of five is worth having.',
  brief: 'Seconds to fill or empty the bag, each time',
  kind: stopwatchTime,
  placeholder: '6.2, 6.0, 6.4 s',
});

const amount = String.raw`(\d+(?:[.,]\d+)?(?:[ -]\d+\/\d+)?|\d+\/\d+)`;
const inch = String.raw`in(?:ch(?:es)?)?\.?|["″]`;
const twoSides = new RegExp(
  String.raw`^\s*${amount}\s*(${inch}|mm|cm)?\s*(?:x|×|\*|by)\s*${amount}\s*(${inch}|mm|cm)\s*$`,
  'i',
);
const sideSaid = (said: string): number =>
  said
    .replace(',', '.')
    .split(/[ -]/)
    .reduce(
      (sum, part) =>
        sum + (part.includes('/') ? Number(part.split('/')[0]) / Number(part.split('/')[1]) : Number(part)),
      0,
    );
const unitOf = (said: string): 'in' | 'mm' | 'cm' => (/^mm$/i.test(said) ? 'mm' : /^cm$/i.test(said) ? 'cm' : 'in');

/** "6 x 6 in" as the area between the sides; sides in two units, or in none, are left to be refused. */
function areaOfSides(text: string): string {
  const [, one, first, other, last] = twoSides.exec(text) ?? [];
  if (one === undefined || other === undefined || last === undefined) return text;
  const unit = unitOf(last);
  if (first !== undefined && unitOf(first) !== unit) return text;
  const area = sideSaid(one) * sideSaid(other);
  if (!Number.isFinite(area)) return text;
  return unit === 'in' ? `${area} sq in` : `${Number((unit === 'mm' ? area / 100 : area).toFixed(4))} cm2`;
}

const openingAsked = optional({
  id: 'box-opening',
  words: { spanish: measuringQuestions['box-opening'] },
  prompt: 'How large is the opening of the box?',
  why: 'Opening and pressure make the airflow.',
  brief: 'Area of the flow box’s opening',
  kind: openingArea,
  because: 'Without the opening a flow box tells nothing.',
});
/** An opening is measured by its sides: length times width is taken as well as the area. */
export const boxOpening: typeof openingAsked = {
  ...openingAsked,
  read: (text, units) => openingAsked.read(areaOfSides(text), units),
};

export const boxPressure = readings({
  id: 'box-pressure',
  words: { spanish: measuringQuestions['box-pressure'] },
  prompt: 'What does the gauge read inside the box, door shut? Several readings with commas between.',
  why: 'The pressure in the box tells how fast the air goes through its opening.',
  brief: 'Pressure in the flow box, each reading',
  kind: pressureOf({
    bare: { 'inch-pound': 'Pa', metric: 'Pa' },
    least: pascals(0),
    most: pascals(250),
    example: '4 Pa or 0.016 in. w.g.',
  }),
  placeholder: '3.9, 4.1, 4.0 Pa',
});

export const grilleVelocities = readings({
  id: 'grille-velocities',
  words: { spanish: measuringQuestions['grille-velocities'] },
  prompt:
    'What air speeds were read over the face of the grille, door shut? At least five places, with commas between.',
  why: 'The air does not come in evenly; the mean over the face counts.',
  brief: 'Air speeds over the face of the grille',
  kind: airSpeed,
  placeholder: '180, 220, 200, 190, 210 fpm',
});

export const grilleArea = optional({
  id: 'grille-area',
  words: { spanish: measuringQuestions['grille-area'] },
  prompt: 'How large is the face of the grille over which the speeds were read?',
  why: 'Speed times open area is the airflow.',
  brief: 'Face area of the fan’s grille',
  kind: openingArea,
  because: 'Without the area, speeds tell no airflow.',
});

const { openShare } = fieldMethods.traverse;

export const freeShare = estimated({
  id: 'free-share',
  words: { spanish: measuringQuestions['free-share'] },
  prompt: 'How much of that face is open? 100 % if the area given is the open area itself.',
  why: 'The bars of the grille take their share.',
  brief: 'Open share of the fan’s grille',
  kind: percentage,
  whenUnknown: {
    value: openShare.estimate,
    because: 'Stamped bath grilles are mostly 50 to 70 % open; from common practice.',
  },
});

export const hoodReading = readings({
  id: 'hood-reading',
  words: { spanish: measuringQuestions['hood-reading'] },
  prompt: 'What does the hood show, door shut? Several readings with commas between.',
  why: 'The mean of a few readings evens out the gusts.',
  brief: 'Airflow the hood shows, each reading',
  kind: airflow,
  placeholder: '72, 74, 73 cfm',
});

export const hoodPowered = yesNo({
  id: 'hood-powered',
  words: { spanish: measuringQuestions['hood-powered'] },
  prompt: 'Does the hood have a fan of its own that makes up for its resistance?',
  why: 'Hoods without one misread bath fans by up to a quarter; with one, by a few percent.',
  brief: 'Hood with a fan of its own',
  whenUnknown: { value: 'no', because: 'Taken as a hood without a fan of its own, which errs more.' },
});
