import { closest } from 'fastest-levenshtein';
import { severalOf, type Wording, yesNo } from '#interview/choices.ts';
import type { Question, Reading } from '#interview/question.ts';
import {
  type CallbackFindingId,
  callbackFindings,
  callbackVariables,
  type VariableId,
} from '#knowledge/callback-findings.ts';
import { type ContextId, callbackContexts } from '#knowledge/callback-scale.ts';
import { callbackTexts } from '#knowledge/callback-texts.ts';
import { type CauseId, causes } from '#knowledge/causes.ts';
import { echoed } from '#quantity/reading-text.ts';
import { callbackQuestions } from '../words/callback-questions.ts';
import { short } from './short-label.ts';

/** Nobody types more on a phone. */
const longestComplaint = 2000;

export const complaint: Question<string> = {
  id: 'complaint',
  words: { spanish: callbackQuestions.complaint },
  prompt: 'What did the customer say, or what do you see and hear? In your own words.',
  why: 'The words are matched to signs the trade knows, so that only what is still unknown is asked.',
  accepts: 'plain words, such as loud hum since Tuesday and the mirror stays fogged',
  brief: 'The complaint in plain words',
  widget: { kind: 'text', placeholder: 'loud hum since Tuesday, the mirror stays fogged' },
  whenUnknown: { value: '', because: 'No complaint was given.' },
  read(text) {
    const said = [...text]
      .filter((character) => character >= ' ' || character === '\n')
      .join('')
      .trim();
    if (said === '') return { rejected: 'Nothing was said. Tell it in plain words, such as loud hum since Tuesday.' };
    if (said.length > longestComplaint) {
      return {
        rejected: 'That is too long to take in at once. Tell it in a few sentences, such as loud hum since Tuesday.',
      };
    }
    return { value: said };
  },
  show: (value) => (value === '' ? 'nothing' : value),
};

/** A list of ids typed with commas; each that is not known is named with the nearest that is. */
function idList<Id extends string>(
  definition: Wording,
  known: readonly Id[],
  example: string,
): Question<readonly Id[]> {
  const knownIds = new Set<string>(known);
  return {
    ...definition,
    accepts: `ids with commas between, such as ${example}, or none`,
    widget: { kind: 'text', placeholder: example },
    whenUnknown: { value: [], because: 'Nothing was named.' },
    read(text): Reading<readonly Id[]> {
      const words = text
        .slice(0, 2000)
        .toLowerCase()
        .replace(/_/g, '-')
        .split(/[\s,;]+/)
        .filter(Boolean);
      if (words.length === 1 && words[0] === 'none') return { value: [] };
      if (words.length === 0) return { rejected: `Nothing was given. Give ids, such as ${example}, or none.` };
      const strange = words.filter((word) => !knownIds.has(word));
      if (strange.length === 0) return { value: [...new Set(words)] as Id[] };
      const hints = strange.slice(0, 6).map((word) => `“${echoed(word)}” (did you mean ${closest(word, [...known])}?)`);
      return { rejected: `There is no ${hints.join(', ')}.` };
    },
    show: (value) => (value.length === 0 ? 'none' : value.join(', ')),
  };
}

const findingIds = Object.keys(callbackFindings) as CallbackFindingId[];
const checkIds = [...findingIds, ...(Object.keys(callbackVariables) as VariableId[])];

export const seen = idList(
  {
    id: 'seen',
    safety: true,
    words: { spanish: callbackQuestions.seen },
    prompt: 'Which signs are there?',
    why: 'Each sign makes some causes likelier and others less so.',
    brief: 'Signs that are there, by id',
  },
  findingIds,
  'fog, flow-low',
);
export const notSeen = idList(
  {
    id: 'not-seen',
    safety: true,
    words: { spanish: callbackQuestions['not-seen'] },
    prompt: 'Which signs are not there?',
    why: 'What is not there rules causes out.',
    brief: 'Signs that are not there, by id',
  },
  findingIds,
  'rattle',
);
export const cannotCheck = idList(
  {
    id: 'cannot-check',
    safety: true,
    words: { spanish: callbackQuestions['cannot-check'] },
    prompt: 'What cannot be checked?',
    why: 'It is not asked again.',
    brief: 'Checks that cannot be made, by id',
  },
  checkIds,
  'tissue',
);

const contextIds = Object.keys(callbackContexts) as ContextId[];

const labelsIn = (contexts: typeof callbackTexts.spanish.contexts): Readonly<Record<string, string>> =>
  Object.fromEntries(contextIds.map((id) => [id, short(contexts[id].name)]));

export const context = severalOf({
  id: 'context',
  words: { spanish: { ...callbackQuestions.context, choices: labelsIn(callbackTexts.spanish.contexts) } },
  prompt: 'What is true of this job? Pick any.',
  why: 'A fan swapped last week fails in other ways than one of thirty years.',
  brief: 'What is true of the job',
  choices: contextIds.map((id) => ({ id, label: short(callbackContexts[id].name) })),
  whenUnknown: { value: [], because: 'Nothing special is known of the job.' },
});

const narrowed = new Map<string, typeof context>();

/** The same question with only these to pick from; the others can still be typed. */
export function contextAmong(ids: readonly ContextId[]): typeof context {
  const key = ids.join();
  const before = narrowed.get(key);
  if (before) return before;
  const { widget } = context;
  const choices =
    widget.kind === 'several' ? widget.choices.filter(({ id }) => (ids as readonly string[]).includes(id)) : [];
  const question = { ...context, widget: { kind: 'several' as const, choices } };
  // The same few lists come again and again; a strange run of them is not kept.
  if (narrowed.size > 200) narrowed.clear();
  narrowed.set(key, question);
  return question;
}

export const deadProven = yesNo({
  id: 'dead-proven',
  safety: true,
  words: { spanish: callbackQuestions['dead-proven'] },
  prompt: 'Is the circuit locked off and proven dead at this box, right now?',
  why: 'Nothing inside the grille is ever proposed before that.',
  brief: 'Circuit proven dead right now',
  whenUnknown: { value: 'no', because: 'Taken as live: nothing inside the grille is proposed.' },
});

export const confirmedCause: Question<CauseId | null> = {
  id: 'confirmed-cause',
  words: { spanish: callbackQuestions['confirmed-cause'] },
  prompt: 'What was the cause in the end?',
  why: 'Recorded on the sheet, so that the crew learns what its callbacks really were.',
  accepts: 'the name or id of a cause, such as bearing',
  brief: 'Cause found in the end',
  widget: { kind: 'text', placeholder: 'bearing' },
  whenUnknown: { value: null, because: 'Not closed yet.' },
  read(text) {
    if (text.length > 200) return { rejected: 'That is too long for the name of a cause. Name one, such as bearing.' };
    const said = text.trim().toLowerCase();
    const ids = Object.keys(causes) as CauseId[];
    const found = ids.find((id) => id === said.replace(/[\s_]+/g, '-') || causes[id].name.toLowerCase() === said);
    const part = said.length > 3 ? ids.filter((id) => causes[id].name.toLowerCase().includes(said)) : [];
    const only = found ?? (part.length === 1 ? part[0] : undefined);
    if (only) return { value: only };
    if (said === '') return { rejected: 'Nothing was given. Name the cause, such as bearing.' };
    return { rejected: `There is no cause “${echoed(said)}”. The nearest is ${closest(said, ids)}.` };
  },
  show: (value) => (value === null ? 'not closed' : causes[value].name),
};

export const whatFixedIt: Question<string> = {
  ...complaint,
  id: 'what-fixed-it',
  words: { spanish: callbackQuestions['what-fixed-it'] },
  prompt: 'What fixed it?',
  why: 'The next callback of the kind starts from it.',
  accepts: 'plain words, such as new backdraft damper',
  brief: 'What fixed it',
  widget: { kind: 'text', placeholder: 'new backdraft damper' },
  whenUnknown: { value: '', because: 'Not closed yet.' },
};
