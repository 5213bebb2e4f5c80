import type { Finding } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import { commonPractice } from '#knowledge/sources.ts';

/** What is said about things kept: one sentence, and what goes with it. */
export const saying = (headline: string, more: Partial<Reply> = {}): Reply => ({ headline, findings: [], ...more });

/** Something to mind about what was kept; nothing was worked out for it. */
export const remark = (id: string, weight: Finding['weight'], says: string): Finding => ({
  id,
  weight,
  says,
  working: [],
  sources: [commonPractice],
});

export const notUnderstood = (problems: readonly string[]): readonly Finding[] =>
  problems.map((says) => remark('not-understood', 'caution', says));

export const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
