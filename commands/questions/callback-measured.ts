import { yesNo } from '#interview/choices.ts';
import { estimated, optional } from '#interview/quantities.ts';
import type { Question } from '#interview/question.ts';
import { airflow, minutes, staticPressure } from '#quantity/kinds.ts';
import { callbackQuestions } from '../words/callback-questions.ts';
import { deliveredAirflow } from './airflow.ts';

/** What an instrument, a control or the records can say of a callback. Taken where known, never asked. */

export const collarPressure = optional({
  id: 'collar-pressure',
  words: { spanish: callbackQuestions['collar-pressure'] },
  prompt: 'What pressure was measured in the duct at the fan’s collar, fan running?',
  why: 'High with little air: something is in the way. Low with little air: the fan itself is weak.',
  brief: 'Static pressure measured at the collar, fan running',
  kind: staticPressure,
  because: 'No pressure was measured.',
});

export const hoodAirflow = estimated({
  id: 'hood-airflow',
  words: { spanish: callbackQuestions['hood-airflow'] },
  prompt: 'What airflow was measured outside, at the hood?',
  why: 'Less air at the hood than at the grille is air lost on the way.',
  brief: 'Airflow measured outside, at the hood',
  kind: airflow,
  whenUnknown: { ...deliveredAirflow.whenUnknown, because: 'Nothing was measured at the hood.' },
});

export const runTimeSet = optional({
  id: 'run-time-set',
  words: { spanish: callbackQuestions['run-time-set'] },
  prompt: 'How long does the control let the fan run on after a shower?',
  why: 'A good fan that stops too soon leaves the room wet.',
  brief: 'Run-on time set on the control',
  kind: minutes,
  because: 'The setting of the control is not known.',
});

export const airflowAtSwap = estimated({
  id: 'airflow-at-swap',
  words: { spanish: callbackQuestions['airflow-at-swap'] },
  prompt: 'What airflow was measured when the fan was fitted?',
  why: 'Less now than then means that something has changed since.',
  brief: 'Airflow measured when the fan was fitted',
  kind: airflow,
  whenUnknown: { ...deliveredAirflow.whenUnknown, because: 'No measurement from the swap is at hand.' },
});

/** The day as the crew's calendar has it: 2026-03-03. */
export const swapDay: Question<string | null> = {
  id: 'swap-day',
  words: { spanish: callbackQuestions['swap-day'] },
  prompt: 'On what day was the fan fitted?',
  why: 'A fan fitted last week fails in other ways than one of ten years.',
  accepts: 'a day, such as 2026-03-03',
  brief: 'Day the fan was fitted',
  widget: { kind: 'text', placeholder: '2026-03-03' },
  whenUnknown: { value: null, because: 'Nobody has the day of the swap.' },
  read(text) {
    const said = text.trim();
    const day = /^\d{4}-\d{2}-\d{2}$/.test(said) ? new Date(`${said}T00:00:00Z`) : undefined;
    return day && !Number.isNaN(day.valueOf()) && day.toISOString().startsWith(said)
      ? { value: said }
      : { rejected: 'That is not a day. Give year, month and day, such as 2026-03-03.' };
  },
  show: (value) => value ?? 'not known',
};

export const fittedLately = yesNo({
  id: 'fitted-lately',
  words: { spanish: callbackQuestions['fitted-lately'] },
  prompt: 'Was the fan fitted in the last 30 days?',
  why: 'A fan fitted last week fails in other ways than one of ten years.',
  brief: 'Fan fitted in the last 30 days',
  whenUnknown: { value: 'no', because: 'Nothing on record says so.' },
});

const longestLeft = 600;

/** What the swap left behind: advice not followed, steps passed over or never closed. */
export const leftAtSwap: Question<string> = {
  id: 'left-at-swap',
  words: { spanish: callbackQuestions['left-at-swap'] },
  prompt: 'What was left open or advised when the fan was fitted?',
  why: 'What was left then is the first thing to look at now.',
  accepts: 'plain words, such as door still to be cut',
  brief: 'What the swap left open or advised',
  widget: { kind: 'text', placeholder: 'door still to be cut' },
  whenUnknown: { value: '', because: 'Nothing is on record as left open.' },
  read(text) {
    const said = text.replace(/\s+/g, ' ').trim();
    if (said === '') return { rejected: 'Nothing was said. Tell it in plain words, such as door still to be cut.' };
    return said.length > longestLeft
      ? { rejected: 'That is too long. Tell it in a few sentences, such as door still to be cut.' }
      : { value: said };
  },
  show: (value) => (value === '' ? 'nothing' : value),
};
