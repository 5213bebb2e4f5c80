import type { CallbackFindingId } from '#knowledge/callback-findings.ts';
import type { DangerId } from '#knowledge/callback-scale.ts';
import type { Answers } from './answers.ts';
import type { Reasoning } from './reasoning.ts';

export interface Danger {
  readonly danger: DangerId;
  /** What was told that makes it one. */
  readonly findings: readonly CallbackFindingId[];
  /** What to do now, in one sentence. */
  readonly says: string;
}

/**
 * Every danger among what was told, the gravest first, as listed. A finding both seen and denied still counts: a contradiction
 * about a danger is not an all-clear.
 */
export function dangersSeen({ seen }: Answers, { knowledge, findingIds }: Reasoning): readonly Danger[] {
  const told = new Set(seen ?? []);
  const findings = findingIds.filter((id) => told.has(id));
  return (Object.keys(knowledge.dangers) as DangerId[]).flatMap((danger) => {
    const meant = findings.filter((id) => knowledge.findings[id].danger === danger);
    return meant.length === 0 ? [] : [{ danger, findings: meant, says: knowledge.dangers[danger].says }];
  });
}
