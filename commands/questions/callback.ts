import { closest } from 'fastest-levenshtein';
import { oneOf, severalOf, yesNo } from '#interview/choices.ts';
import type { Choice, Question, Reading } from '#interview/question.ts';
import {
  type CallbackFindingId,
  callbackFindings,
  callbackVariables,
  isVariable,
  type VariableId,
} from '#knowledge/callback-findings.ts';
import { type ContextId, callbackContexts } from '#knowledge/callback-scale.ts';
import { type CauseId, causes } from '#knowledge/causes.ts';
import { echoed } from '#quantity/reading-text.ts';

/** Nobody types more on a phone. */
const longestComplaint = 2000;

export const complaint: Question<string> = {
  id: 'complaint',
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
  definition: Pick<Question, 'id' | 'prompt' | 'why' | 'brief'>,
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
    prompt: 'What cannot be checked?',
    why: 'It is not asked again.',
    brief: 'Checks that cannot be made, by id',
  },
  checkIds,
  'tissue',
);

const contextIds = Object.keys(callbackContexts) as ContextId[];

export const context = severalOf({
  id: 'context',
  prompt: 'What is true of this job? Pick any.',
  why: 'A fan swapped last week fails in other ways than one of thirty years.',
  brief: 'What is true of the job',
  choices: contextIds.map((id) => ({ id, label: short(callbackContexts[id].name) })),
  whenUnknown: { value: [], because: 'Nothing special is known of the job.' },
});

export const deadProven = yesNo({
  id: 'dead-proven',
  prompt: 'Is the circuit locked off and proven dead at this box, right now?',
  why: 'Nothing inside the grille is ever proposed before that.',
  brief: 'Circuit proven dead right now',
  whenUnknown: { value: 'no', because: 'Taken as live: nothing inside the grille is proposed.' },
});

export const confirmedCause: Question<CauseId | null> = {
  id: 'confirmed-cause',
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
  prompt: 'What fixed it?',
  why: 'The next callback of the kind starts from it.',
  accepts: 'plain words, such as new backdraft damper',
  brief: 'What fixed it',
  widget: { kind: 'text', placeholder: 'new backdraft damper' },
  whenUnknown: { value: '', because: 'Not closed yet.' },
};

function short(text: string): string {
  return text.length <= 80 ? text : `${text.slice(0, 79)}…`;
}

const enough: Choice & { readonly id: 'enough' } = { id: 'enough', label: 'Answer now' };

const places = {
  phone: 'on the phone',
  floor: 'from the floor',
  outside: 'outside, from the ground',
  ladder: 'on the ladder',
  attic: 'in the attic',
  instrument: 'with an instrument',
} as const;

const powers = {
  any: '',
  'on, hands off': ' Fan running: hands off.',
  'off and proven': ' Only with the circuit proven dead.',
} as const;

const cannotSay = { value: 'cannot', because: 'It is not asked again.' };

/** One check as a question: yes or no, or which of several. "Don't know" stands for "can't check that". */
export function checkQuestion(id: CallbackFindingId | VariableId, whenUnknown = cannotSay): Question<string> {
  const wording = isVariable(id) ? callbackVariables[id] : callbackFindings[id as CallbackFindingId];
  const values = isVariable(id)
    ? (Object.keys(callbackVariables[id].background ?? firstFollow(id)) as CallbackFindingId[])
    : [];
  const choices =
    values.length > 0
      ? values.map((value) => ({ id: value as string, label: short(callbackFindings[value].short) }))
      : [
          { id: 'yes', label: 'Yes', also: ['y', 'yep', 'yeah'] },
          { id: 'no', label: 'No', also: ['n', 'nope'] },
        ];
  const question = oneOf<string>({
    id: `check-${id}`,
    prompt: `${wording.question} (${places[wording.from]})`,
    why: `${wording.how}${powers[wording.power]}`,
    brief: short(wording.short),
    choices: [...choices, enough],
    whenUnknown,
  });
  return {
    ...question,
    // A bare yes or no answers none of several, though "no" begins "nothing at the switch".
    read: (text, units) =>
      values.length > 0 && /^\s*(?:yes|no|y|n|nope|yep|yeah)\s*[.!]?\s*$/i.test(text)
        ? { rejected: 'Yes or no does not say which. Pick one of them, or don’t know.' }
        : question.read(text, units),
    show: (value, units) => (value === 'cannot' ? 'could not be checked' : question.show(value, units)),
  };
}

/** What a check is called, by the id its answer stands under on a sheet; nothing where it is none. */
export function checkCalled(fact: string): string | undefined {
  const id = fact.startsWith('check-') ? fact.slice('check-'.length) : '';
  return isVariable(id) || Object.hasOwn(callbackFindings, id)
    ? checkQuestion(id as CallbackFindingId).brief
    : undefined;
}

const firstFollow = (id: VariableId): Readonly<Record<string, number>> => {
  const follows = Object.values(callbackVariables[id].follows ?? {})[0] ?? {};
  return (Object.values(follows)[0] ?? {}) as Readonly<Record<string, number>>;
};

/** One thing taken from the complaint. */
export type HeardSign =
  | { readonly kind: 'seen' | 'not seen'; readonly id: CallbackFindingId }
  | { readonly kind: 'context'; readonly id: ContextId };

const signInWords = (sign: HeardSign): string =>
  sign.kind === 'context' ? callbackContexts[sign.id].name : callbackFindings[sign.id].short;

/** "I understood: a rattle. Not there: a smell. The job: an exposed windy site." */
function understoodAs(signs: readonly HeardSign[]): string {
  const listed = (kind: HeardSign['kind']) => signs.filter((sign) => sign.kind === kind).map(signInWords);
  const [there, absent, job] = [listed('seen'), listed('not seen'), listed('context')];
  return [
    ...(there.length > 0 ? [`I understood: ${there.join('; ')}.`] : ['I understood no sign that is there.']),
    ...(absent.length > 0 ? [`Not there: ${absent.join('; ')}.`] : []),
    ...(job.length > 0 ? [`The job: ${job.join('; ')}.`] : []),
  ].join(' ');
}

/** More than this to put right is a complaint to tell anew. */
const mostSigns = 20;

/** What was understood of the complaint, each to be put right with one press. */
export function heardQuestion(
  signs: readonly HeardSign[],
  notUnderstood: readonly string[],
  turn: number,
): Question<string> {
  const lost =
    notUnderstood.length > 0 ? ` Not understood: ${notUnderstood.map((said) => `“${said}”`).join(', ')}.` : '';
  return oneOf<string>({
    id: turn === 1 ? 'heard' : `heard-${turn}`,
    prompt: `${understoodAs(signs)}${lost} Is that right?`,
    why: 'A word taken wrongly would lead to the wrong cause. Pick what is wrong and it is left out.',
    brief: 'What was understood',
    choices: [
      { id: 'right', label: 'That is right', also: ['yes', 'y', 'ok', 'right'] },
      ...signs.slice(0, mostSigns).map((sign) => ({
        id: sign.id,
        label: short(`${sign.kind === 'not seen' ? 'There may be' : 'Not'}: ${signInWords(sign)}`),
      })),
    ],
    whenUnknown: { value: 'right', because: 'Taken as understood.' },
  });
}
