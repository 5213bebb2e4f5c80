import { oneOf } from '#interview/choices.ts';
import type { AnyQuestion, Question } from '#interview/question.ts';
import { worded } from '#interview/worded.ts';
import {
  type CallbackFindingId,
  callbackFindings,
  callbackVariables,
  isVariable,
  type VariableId,
} from '#knowledge/callback-findings.ts';
import { type ContextId, callbackDangers, type DangerId } from '#knowledge/callback-scale.ts';
import { callbackTexts } from '#knowledge/callback-texts.ts';
import type { Language } from '#words/language.ts';
import type { QuestionWords } from '#words/question-words.ts';
import { callbackWords } from '../words/callback.ts';
import { callbackAsking } from '../words/callback-checks.ts';
import { short } from './short-label.ts';

/**
 * "Don't know" stands for "can't check that", or, where a danger was wondered about, for yes. Where the check may tell of a
 * danger it counts as there until somebody knows, and what to do until then is said at once.
 */
type Unknown = 'cannot' | 'yes';

/** One check as a question: yes or no, or which of several. */
export function checkQuestion(id: CallbackFindingId | VariableId, unknown: Unknown = 'cannot'): Question<string> {
  const values = valuesOf(id);
  const { choices = {}, because, prompt, why, brief } = checkIn('english', { id, values, unknown });
  const question = oneOf<string>({
    id: `check-${id}`,
    prompt,
    why,
    brief,
    words: { spanish: checkIn('spanish', { id, values, unknown }) },
    choices: Object.entries(choices).map(([choice, label]) => ({
      id: choice,
      label,
      ...(alsoSaid[choice] === undefined ? {} : { also: alsoSaid[choice] }),
    })),
    whenUnknown: { value: unknown, because },
  });
  return {
    ...question,
    // A bare yes or no answers none of several, though "no" begins "nothing at the switch".
    read: (text, units) =>
      values.length > 0 && /^\s*(?:yes|no|y|n|nope|yep|yeah)\s*[.!]?\s*$/i.test(text)
        ? { rejected: 'Yes or no does not say which. Pick one of them, or don’t know.' }
        : question.read(text, units),
    show: (value, units) =>
      value !== 'cannot'
        ? question.show(value, units)
        : dangerOfCheck(id) === undefined
          ? callbackAsking.english.couldNot
          : 'not known',
  };
}

/** The danger an answer to this check may tell of. */
export const dangerOfCheck = (id: CallbackFindingId | VariableId): DangerId | undefined =>
  (isVariable(id) ? valuesOf(id) : [id]).flatMap((each) => callbackFindings[each].danger ?? [])[0];

const alsoSaid: Readonly<Record<string, readonly string[]>> = {
  yes: ['y', 'yep', 'yeah'],
  no: ['n', 'nope'],
  enough: ['answer now', 'stop asking', 'causes'],
};

function checkIn(
  language: Language,
  {
    id,
    values,
    unknown,
  }: {
    readonly id: CallbackFindingId | VariableId;
    readonly values: readonly CallbackFindingId[];
    readonly unknown: Unknown;
  },
): QuestionWords {
  const { findings, variables, dangers } = callbackTexts[language];
  const { prompt, oneOf: oneOfThese, enough, notAskedAgain, countsAsThere, couldNot } = callbackAsking[language];
  const { places, powers } = callbackWords[language];
  const told = isVariable(id) ? variables[id] : findings[id];
  const danger = dangerOfCheck(id);
  // Where not knowing stops, the reply that follows says what to do; where the asking goes on, it is said before the next question.
  const heldBack = (id: DangerId) => (callbackDangers[id].unknownStops ? countsAsThere : dangers[id].untilKnown);
  const unsaid = danger === undefined ? notAskedAgain : heldBack(danger);
  const { from, power } = isVariable(id) ? callbackVariables[id] : callbackFindings[id];
  const yesNo = language === 'english' ? { yes: 'Yes', no: 'No' } : { yes: 'Sí', no: 'No' };
  const choices: Readonly<Record<string, string>> = {
    ...(values.length > 0 ? Object.fromEntries(values.map((value) => [value, short(findings[value].short)])) : yesNo),
    enough,
  };
  return {
    prompt: prompt(told.question, places[from]),
    why: `${told.how}${powers[power]}`,
    brief: short(told.short),
    accepts: oneOfThese(Object.values(choices).join(', ')),
    because: unknown === 'cannot' ? unsaid : countsAsThere,
    choices,
    also: { enough: ['responder ya', 'no preguntar más', 'causas'] },
    shown: { [callbackAsking.english.couldNot]: couldNot },
  };
}

/** What a check is called, by the id its answer stands under on a sheet; nothing where it is none. */
export function checkCalled(fact: string, language?: Language): string | undefined {
  const id = fact.startsWith('check-') ? fact.slice('check-'.length) : '';
  return isVariable(id) || Object.hasOwn(callbackFindings, id)
    ? worded(checkQuestion(id as CallbackFindingId) as AnyQuestion, language).brief
    : undefined;
}

function valuesOf(id: CallbackFindingId | VariableId): readonly CallbackFindingId[] {
  if (!isVariable(id)) return [];
  const { background, follows = {} } = callbackVariables[id];
  const first = Object.values(Object.values(follows)[0] ?? {})[0] ?? {};
  return Object.keys(background ?? first) as CallbackFindingId[];
}

/** One thing taken from the complaint. */
export type HeardSign =
  | { readonly kind: 'seen' | 'not seen'; readonly id: CallbackFindingId }
  | { readonly kind: 'context'; readonly id: ContextId };

/** More than this to put right is a complaint to tell anew. */
const mostSigns = 20;

/** What was understood of the complaint, each to be put right with one press. */
export function heardQuestion(
  signs: readonly HeardSign[],
  notUnderstood: readonly string[],
  turn: number,
): Question<string> {
  const { choices = {}, because, prompt, why, brief } = heardIn('english', signs, notUnderstood);
  return oneOf<string>({
    id: turn === 1 ? 'heard' : `heard-${turn}`,
    prompt,
    why,
    brief,
    words: {
      spanish: {
        ...heardIn('spanish', signs, notUnderstood),
        also: { right: ['sí', 'si', 'correcto', 'está bien', 'ok'] },
      },
    },
    choices: Object.entries(choices).map(([id, label]) => ({
      id,
      label,
      ...(id === 'right' ? { also: ['yes', 'y', 'ok', 'right'] } : {}),
    })),
    whenUnknown: { value: 'right', because },
  });
}

function heardIn(language: Language, signs: readonly HeardSign[], notUnderstood: readonly string[]): QuestionWords {
  const texts = callbackAsking[language];
  const { findings, contexts } = callbackTexts[language];
  const inWords = (sign: HeardSign): string =>
    sign.kind === 'context' ? contexts[sign.id].name : findings[sign.id].short;
  const listed = (kind: HeardSign['kind']): string =>
    signs
      .filter((sign) => sign.kind === kind)
      .map(inWords)
      .join('; ');
  const [there, absent, job] = [listed('seen'), listed('not seen'), listed('context')];
  // "I understood: a rattle. Not there: a smell. The job: an exposed windy site."
  const understood = [
    there === '' ? texts.noSign : texts.understood(there),
    ...(absent === '' ? [] : [texts.notThere(absent)]),
    ...(job === '' ? [] : [texts.theJob(job)]),
  ].join(' ');
  const lost = notUnderstood.length > 0 ? texts.lost(notUnderstood.map((said) => `“${said}”`).join(', ')) : '';
  const choices = Object.fromEntries([
    ['right', texts.right],
    ...signs
      .slice(0, mostSigns)
      .map((sign) => [sign.id, short((sign.kind === 'not seen' ? texts.maybeThere : texts.notSo)(inWords(sign)))]),
  ]) as Readonly<Record<string, string>>;
  return {
    prompt: texts.isThatRight(`${understood}${lost}`),
    why: texts.heardWhy,
    brief: texts.heardBrief,
    accepts: texts.oneOf(Object.values(choices).join(', ')),
    because: texts.asUnderstood,
    choices,
  };
}
