import { oneOf, severalOf, yesNo } from '#interview/choices.ts';
import { estimated, optional } from '#interview/quantities.ts';
import type { Answer, AnyQuestion } from '#interview/question.ts';
import type { Recall } from '#interview/replay.ts';
import { exactly } from '#quantity/estimate.ts';
import { ductDiameter, ductLength } from '#quantity/kinds.ts';

const wording = (id: string) => ({ id, prompt: `What of the ${id}?`, why: `The ${id} matters.`, brief: `The ${id}` });

export const kind = oneOf({
  ...wording('kind'),
  choices: [
    { id: 'smooth', label: 'Smooth pipe', also: ['rigid', 'hard pipe'] },
    { id: 'flex', label: 'Flex', also: ['flexible'] },
    { id: 'foil-flex', label: 'Foil flex', hint: 'shiny, stays where it is bent' },
  ],
  whenUnknown: { value: 'flex', because: 'Most old runs are flex.' },
});

export const ends = severalOf({
  ...wording('ends'),
  choices: [
    { id: 'wall-cap', label: 'Wall cap', also: ['hood'] },
    { id: 'roof-cap', label: 'Roof cap' },
    { id: 'damper', label: 'Damper' },
  ],
  whenUnknown: { value: ['wall-cap'], because: 'Most ducts end in a wall.' },
});

export const insulated = yesNo({
  ...wording('wrap'),
  whenUnknown: { value: 'no', because: 'Bare is the worse case.' },
});

const feet = (number: number) => ductLength.from(number, 'ft');

export const length = estimated({
  ...wording('length'),
  kind: ductLength,
  whenUnknown: { value: { low: feet(6), typical: feet(12), high: feet(25) }, because: 'Runs are 6 to 25 ft.' },
});

export const width = estimated({
  ...wording('width'),
  kind: ductDiameter,
  whenUnknown: { value: exactly(ductDiameter.from(4, 'in')), because: 'Most are 4 in.' },
});

export const collar = optional({ ...wording('collar'), kind: ductDiameter, because: 'Taken as wide as the duct.' });

export const told = (value: unknown): Answer<unknown> => ({ value, known: true });

/** What is known, as a sheet would recall it. */
export const knowing =
  (answers: Readonly<Record<string, Answer<unknown>>>): Recall =>
  ({ id }: AnyQuestion) =>
    Object.hasOwn(answers, id) ? answers[id] : undefined;
