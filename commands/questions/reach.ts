import { oneOf } from '#interview/choices.ts';
import { estimated } from '#interview/quantities.ts';
import { count } from '#quantity/kinds.ts';
import { ductQuestions } from '../words/duct-questions.ts';

export const ductKind = oneOf({
  id: 'duct-kind',
  words: { spanish: ductQuestions['duct-kind'] },
  prompt: 'What kind of duct?',
  why: 'Flex takes twice the pressure of smooth pipe when pulled tight, and many times more when slack.',
  brief: 'Kind of duct',
  choices: [
    { id: 'smooth', label: 'Smooth pipe', also: ['rigid', 'metal', 'pvc', 'hard'] },
    { id: 'spiral', label: 'Spiral pipe' },
    { id: 'flex', label: 'Flex', hint: 'plastic on a wire', also: ['flexible'] },
    { id: 'foil-flex', label: 'Foil flex', hint: 'or semi-rigid aluminum', also: ['foil', 'semi-rigid'] },
  ],
  whenUnknown: { value: 'flex', because: 'Flex is the common duct, and the worse one to reckon with.' },
});

export const elbows = estimated({
  id: 'elbows',
  words: { spanish: ductQuestions.elbows },
  prompt: 'How many elbows will it have?',
  why: 'Each elbow costs as much as several feet of duct.',
  brief: 'Elbows in the run',
  kind: count,
  whenUnknown: {
    value: { low: 1, typical: 2, high: 3 },
    because: 'Two elbows are common: one at the fan, one at the outlet.',
  },
});
