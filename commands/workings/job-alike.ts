import type { Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { wordsOfName } from '#interview/named-places.ts';
import type { Language } from '#words/language.ts';
import { jobWords } from '../words/job.ts';
import { jobCalled, type Sheet } from './job-sheets.ts';
import { remark, saying } from './plain-replies.ts';

/** More than this on a phone is a list, and /job list is one. */
const mostMeant = 3;

/** How many of the newest jobs are looked through. */
const mostSearched = 500;

/**
 * Jobs that may be the one meant: every word said stands in the name, or every word of a name with a house number stands in
 * what was said. Open ones first, then the newest.
 */
export function calledAlike({ store }: Desk, wanted: string): readonly Sheet[] {
  const said = new Set(wordsOfName(wanted));
  if (said.size === 0) return [];
  const alike = store.listSheets({ limit: mostSearched }).filter(({ name }) => {
    const known = new Set(wordsOfName(name ?? ''));
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
