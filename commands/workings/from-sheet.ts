import type { Finding } from '#findings/finding.ts';
import type { Interview } from '#interview/interview.ts';
import type { AnyQuestion } from '#interview/question.ts';
import { type Assumption, missing, type Recall, replay } from '#interview/replay.ts';
import { worded } from '#interview/worded.ts';
import type { Language } from '#words/language.ts';
import { besideWords } from '../words/swap-beside.ts';
import { remark } from './plain-replies.ts';

/** What an interview comes to over what a sheet knows, or the questions the sheet has no answer to. */
export type FromSheet<Inputs> =
  | { readonly inputs: Inputs; readonly assumed: readonly Assumption[] }
  | { readonly lacks: readonly AnyQuestion[] };

/** Goes through an interview over what is known. Asks nobody. */
export function fromSheet<Inputs>(interview: () => Interview<Inputs>, recall: Recall): FromSheet<Inputs> {
  const outcome = replay(interview(), recall, 'one-shot');
  return outcome.complete ? outcome : { lacks: missing(interview(), recall) };
}

/** The command that asks for what is missing, and the language it is told in. */
interface ToAsk {
  readonly command: string;
  readonly language?: Language;
}

const briefs = (questions: readonly AnyQuestion[], language: Language): string =>
  questions
    .map((question) => worded(question, language))
    .map(({ brief }) => brief.replace(/\s*\(.*\)$/, ''))
    .map((brief) => (/^\p{Lu}\p{Ll}/u.test(brief) ? brief.charAt(0).toLowerCase() + brief.slice(1) : brief))
    .join(', ');

/** That something could not be worked out, what the sheet lacks, and the command that asks for it. */
export const lacksRemark = (
  what: string,
  lacks: readonly AnyQuestion[],
  { command, language = 'english' }: ToAsk,
): Finding => remark('not-worked-out', 'advice', besideWords[language].lacks(what, briefs(lacks, language), command));

/** What was taken for granted on the way, in one line; nothing where everything was known. */
export function assumedRemark(
  assumed: readonly Assumption[],
  { command, language = 'english' }: ToAsk,
): readonly Finding[] {
  if (assumed.length === 0) return [];
  const named = briefs(
    assumed.map(({ question }) => question),
    language,
  );
  return [remark('taken-for-granted', 'advice', besideWords[language].granted(named, command))];
}
