import type { CallbackFindingId, VariableId } from '#knowledge/callback-findings.ts';
import type { DangerId } from '#knowledge/callback-scale.ts';
import type { Answers, Understood } from './answers.ts';
import type { Reasoning } from './reasoning.ts';

export interface Danger {
  readonly danger: DangerId;
  /** What was told that makes it one. */
  readonly findings: readonly CallbackFindingId[];
  /** What to do now, in one sentence. */
  readonly says: string;
}

/** A danger somebody was asked about and could not say. It counts as there until somebody can. */
export interface OpenDanger {
  readonly danger: DangerId;
  /** The checks nobody had an answer to. */
  readonly checks: readonly CheckId[];
  /** Nothing more is asked at all while it is not known; otherwise nothing that has the fan run or touched. */
  readonly stops: boolean;
}

type CheckId = CallbackFindingId | VariableId;

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

/** The danger an answer to this check may tell of; nothing where none of its answers does. */
export function dangerOf(id: string, { knowledge, valuesOf }: Reasoning): DangerId | undefined {
  const findings = valuesOf.get(id as VariableId) ?? (Object.hasOwn(knowledge.findings, id) ? [id] : []);
  return findings.flatMap((each) => knowledge.findings[each as CallbackFindingId].danger ?? [])[0];
}

/**
 * The dangers that were asked about and stayed unknown, the gravest first, as listed. One that was told is not among them: its
 * own order stands.
 */
export function dangersOpen(
  answers: Answers,
  { settled }: Pick<Understood, 'settled'>,
  reasoning: Reasoning,
): readonly OpenDanger[] {
  const { dangers } = reasoning.knowledge;
  const seen = new Set(dangersSeen(answers, reasoning).map(({ danger }) => danger));
  const unsaid = [...new Set(answers.cannotCheck ?? [])].filter((id) => !settled.has(id));
  return (Object.keys(dangers) as DangerId[]).flatMap((danger) => {
    const checks = unsaid.filter((id) => dangerOf(id, reasoning) === danger) as CheckId[];
    return checks.length === 0 || seen.has(danger) ? [] : [{ danger, checks, stops: dangers[danger].unknownStops }];
  });
}
