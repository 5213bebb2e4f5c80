import type { Checklist } from '#knowledge/checklist.ts';
import type { Signer } from '#knowledge/checklist-facts.ts';
import { walkWords } from '#words/walkthrough.ts';
import type { Standing } from './walk-event.ts';

const isDay = (text: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(text);

/** Whether a qualification counts on a day: known by number and last day, and not past it. */
const counts = ({ number, expires, lapsed }: Standing['qualifications'][number], day: string): boolean =>
  !lapsed && number.trim() !== '' && isDay(expires) && expires >= day;

const holds = (standing: Standing, kind: string, day: string): boolean =>
  standing.qualifications.some((each) => each.kind === kind && counts(each, day));

/** An apprentice stays one whatever else stands beside the name: never signs, never lifts a stop, never overrides. */
export const isApprentice = ({ kinds }: Standing): boolean => kinds.includes('apprentice');

export const isLead = (standing: Standing): boolean => standing.kinds.includes('lead') && !isApprentice(standing);

/** Nobody the crew knows. */
export const isStranger = ({ kinds, qualifications }: Standing): boolean =>
  kinds.length === 0 && qualifications.length === 0;

/** Somebody who works on jobs, as opposed to the office. */
const isAtWork = (standing: Standing, day: string): boolean =>
  isApprentice(standing) || isLead(standing) || standing.qualifications.some((each) => counts(each, day));

/** Whether a person may sign for any of these, on that day. */
export function maySign(signers: readonly Signer[], standing: Standing, day: string): boolean {
  if (signers.includes('anyone') && isAtWork(standing, day)) return true;
  if (isApprentice(standing)) return false;
  return signers.some((signer) => (signer === 'lead' ? isLead(standing) : holds(standing, signer, day)));
}

/** "a lead or a certified renovator" */
export const eitherOf = (
  signers: readonly Signer[],
  { words, language }: Pick<Checklist, 'words' | 'language'>,
): string => signers.map((signer) => words.signers[signer]).join(` ${walkWords[language].or} `);
