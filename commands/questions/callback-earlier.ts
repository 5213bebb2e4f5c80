import { oneOf } from '#interview/choices.ts';
import type { Question } from '#interview/question.ts';
import type { CallbackFindingId } from '#knowledge/callback-findings.ts';
import type { DangerId } from '#knowledge/callback-scale.ts';
import { callbackTexts } from '#knowledge/callback-texts.ts';
import type { Language } from '#words/language.ts';
import { callbackAsking } from '../words/callback-checks.ts';
import { callbackQuestions } from '../words/callback-questions.ts';

/** A danger told on an earlier day, that nobody has said is over. */
export interface EarlierDanger {
  /** The row it stands in, so that an answer to it is of this telling and of no other. */
  readonly row: number;
  /** The id of the fact that told it. */
  readonly fact: string;
  readonly danger: DangerId;
  readonly findings: readonly CallbackFindingId[];
  readonly typed: string;
  /** Nobody has said anything else since: the sheet's own complaint or signs are of that day. */
  readonly stands: boolean;
  readonly who: string;
  /** Where the crew works: 2026-03-03. */
  readonly day: string;
}

/** Never asked: the records of the job say it. */
export const earlierDangers: Question<readonly EarlierDanger[]> = {
  id: 'dangers-before',
  words: { spanish: callbackQuestions['dangers-before'] },
  prompt: 'Which dangers were told on an earlier day?',
  why: 'A danger is not forgotten because a day has passed.',
  accepts: 'what the job sheet holds',
  brief: 'Dangers told on an earlier day',
  widget: { kind: 'text', placeholder: 'none' },
  whenUnknown: { value: [], because: 'None is on the sheet.' },
  read: () => ({ rejected: 'The job sheet says this itself.' }),
  show: (value) => value.map(({ day, who, typed }) => `${day}, ${who}: ${typed}`).join('; ') || 'none',
};

/** "November 23, 2026". */
export const dayInWords = (day: string, language: Language): string =>
  new Intl.DateTimeFormat(language === 'english' ? 'en-US' : 'es-419', { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${day}T00:00:00Z`),
  );

export const stillSoPrefix = 'danger-still-';

/** Whether a danger of an earlier day is still so. Nobody knowing counts as yes. */
export function stillSo(earlier: EarlierDanger): Question<'yes' | 'no'> {
  const inWords = (language: Language) => {
    const { toldBefore, stillBrief, countsAsThere } = callbackAsking[language];
    const { says, untilKnown } = callbackTexts[language].dangers[earlier.danger];
    const { who, typed, day } = earlier;
    return {
      prompt: `${toldBefore(dayInWords(day, language), who, typed)} ${untilKnown}`,
      why: says,
      brief: stillBrief(dayInWords(day, language)),
      because: countsAsThere,
    };
  };
  const { because, ...wording } = inWords('english');
  return oneOf({
    id: `${stillSoPrefix}${earlier.row}`,
    safety: true,
    ...wording,
    words: { spanish: { ...inWords('spanish'), choices: { yes: 'Sí', no: 'No' } } },
    choices: [
      { id: 'yes', label: 'Yes', also: ['y', 'yep', 'yeah'] },
      { id: 'no', label: 'No', also: ['n', 'nope'] },
    ],
    whenUnknown: { value: 'yes', because },
  });
}
