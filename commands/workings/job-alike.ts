import type { Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { plain } from '#interview/words.ts';
import type { Language } from '#words/language.ts';
import { jobWords } from '../words/job.ts';
import { jobCalled, type Sheet } from './job-sheets.ts';
import { remark, saying } from './plain-replies.ts';

/** Ways of writing the same street, the short one first. */
const streets: Readonly<Record<string, string>> = {
  street: 'st',
  avenue: 'ave',
  road: 'rd',
  drive: 'dr',
  lane: 'ln',
  court: 'ct',
  boulevard: 'blvd',
};

/** The words of an address, without points and letters' size: "14 Maple St." is 14, maple, st. */
const wordsOf = (name: string): readonly string[] =>
  plain(name)
    .replace(/[^\p{L}\p{M}\d]+/gu, ' ')
    .trim()
    .split(' ')
    .filter((word) => word !== '')
    .map((word) => streets[word] ?? word);

/** More than this on a phone is a list, and /job list is one. */
const mostMeant = 3;

/** How many of the newest jobs are looked through. */
const mostSearched = 500;

/**
 * Jobs that may be the one meant: every word said stands in the name, or every word of a name with a house number stands in
 * what was said. Open ones first, then the newest.
 */
export function calledAlike({ store }: Desk, wanted: string): readonly Sheet[] {
  const said = new Set(wordsOf(wanted));
  if (said.size === 0) return [];
  const alike = store.listSheets({ limit: mostSearched }).filter(({ name }) => {
    const known = new Set(wordsOf(name ?? ''));
    const isPart = [...said].every((word) => known.has(word));
    const hasNumber = [...known].some((word) => /\d/.test(word));
    return isPart || (hasNumber && known.size > 1 && [...known].every((word) => said.has(word)));
  });
  return [...alike].sort((a, b) => Number(b.state === 'open') - Number(a.state === 'open')).slice(0, mostMeant);
}

/** Nothing is opened: the one meant is a press away, and a new one is said in so many words. */
export const whichMeant = (alike: readonly Sheet[], language: Language): Reply => ({
  ...saying(jobWords[language].didYouMean(alike.map((sheet) => jobCalled(sheet, language))), {
    language,
    findings: [remark('another-job', 'advice', jobWords[language].isItAnother)],
  }),
  presses: alike.map((sheet) => ({
    label: jobWords[language].openJob(sheet.number),
    command: 'job',
    action: 'open',
    given: { name: String(sheet.number) },
  })),
});

/** When something was last said on it; when it was opened, where nothing was. */
export function lastUsed({ store }: Desk, { number, openedAt }: Sheet): string {
  const said = [...store.newestFacts(number).values()].map(({ enteredAt }) => enteredAt);
  return [openedAt, ...said].sort().at(-1) ?? openedAt;
}
