import type { Finding } from '#findings/finding.ts';
import type { Interview } from '#interview/interview.ts';
import type { AnyQuestion } from '#interview/question.ts';
import { type Assumption, missing, type Recall, replay } from '#interview/replay.ts';
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

const briefs = (questions: readonly AnyQuestion[]): string =>
  questions
    .map(({ brief }) => brief.replace(/\s*\(.*\)$/, ''))
    .map((brief) => (/^\p{Lu}\p{Ll}/u.test(brief) ? brief.charAt(0).toLowerCase() + brief.slice(1) : brief))
    .join(', ');

/** That something could not be worked out, what the sheet lacks, and the command that asks for it. */
export const lacksRemark = (what: string, lacks: readonly AnyQuestion[], command: string): Finding =>
  remark('not-worked-out', 'advice', `${what}: the sheet lacks ${briefs(lacks)}. /${command} asks for it.`);

/** What was taken for granted on the way, in one line; nothing where everything was known. */
export function assumedRemark(assumed: readonly Assumption[], command: string): readonly Finding[] {
  if (assumed.length === 0) return [];
  const says = `Not on the sheet, and taken for granted: ${briefs(assumed.map(({ question }) => question))}. /${command} shows what each is taken as.`;
  return [remark('taken-for-granted', 'advice', says)];
}
