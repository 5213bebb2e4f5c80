import type { Language } from '#words/language.ts';
import type { BoxKind, checklistWords, WalkFact, WalkFactId } from './checklist-facts.ts';
import type { StepEntry } from './checklist-steps.ts';

/** One step of one list. */
export interface ChecklistStep extends StepEntry {
  readonly id: string;
  /** A few words it is called by: "Sign dead". */
  readonly title: string;
  /** Id of its stage. */
  readonly stage: string;
}

/** A span of time after which something no longer counts, and how people say it. */
export interface Span {
  readonly milliseconds: number;
  readonly says: string;
}

/** How long proofs last, when an entry is late, and what to do before leaving. */
export interface WalkRules {
  readonly idle: Span;
  readonly age: Span;
  readonly late: Span;
  readonly leaving: string;
}

/** A list as it is kept, before the facts of a job have decided which of its steps are needed. */
export interface Checklist {
  readonly id: string;
  /** What its texts are in, and so what is told of a walk along it. */
  readonly language: Language;
  readonly name: string;
  readonly says: string;
  /** Boxes this job always opens. */
  readonly opens: readonly BoxKind[];
  readonly stages: readonly { readonly id: string; readonly title: string }[];
  /** In the order they are done. */
  readonly steps: readonly ChecklistStep[];
  readonly rules: WalkRules;
  readonly facts: Readonly<Record<WalkFactId, WalkFact>>;
  readonly words: typeof checklistWords;
}

/** What is wrong with the order of a list and with what its steps ask of each other. */
export function problemsOfList(list: Checklist, leftOut: readonly string[]): string[] {
  const at = new Map(list.steps.map(({ id }, index) => [id, index]));
  const last = list.steps.at(-1);
  return [
    ...list.steps.filter(({ id }, index) => at.get(id) !== index).map(({ id }) => `${id} is on the list twice`),
    ...list.steps.flatMap((step, index) => problemsOfNeeds(step, index, at)),
    ...list.steps.flatMap((step) => problemsOfTouch(step, list)),
    ...list.steps.flatMap((step) => problemsOfIsolation(step, list)),
    ...list.steps
      .filter((step) => step.closes !== (step === last))
      .map(({ id }) => `${id}: the last step, and no other, closes the list`),
    ...leftOut.filter((id) => at.has(id)).map((id) => `${id} is on the list and cannot be left out as a need`),
  ];
}

function problemsOfNeeds(step: ChecklistStep, index: number, at: ReadonlyMap<string, number>): string[] {
  const late = step.needs
    .filter((need) => !((at.get(need) ?? Number.POSITIVE_INFINITY) < index))
    .map(
      (need) =>
        `${step.id} needs ${need}, which does not come before it; name it in "without" if it is left out on purpose`,
    );
  const unread = step.evidence
    .flatMap((part) => (part.kind === 'number' && part.leastOf ? [part.leastOf.step] : []))
    .filter((source) => !step.needs.includes(source))
    .map((source) => `${step.id} reads ${source} and has to need it`);
  return [...late, ...unread];
}

function problemsOfTouch(step: ChecklistStep, { steps }: Checklist): string[] {
  const before = steps.slice(0, steps.indexOf(step));
  const problems: string[] = [];
  if (step.touches.length > 0 && !before.some(({ proves }) => proves))
    problems.push(`${step.id} touches a box that no step proves dead`);
  if (step.per === 'person' && step.reopens.length === 0)
    problems.push(`${step.id}: a lock that goes on has to come off, and the other way round`);
  return problems;
}

/** What is done under a proof stays done when the proof ends, so it must not rest on it. */
const problemsOfIsolation = ({ id, isolation, needs }: ChecklistStep, { steps }: Checklist): string[] =>
  isolation
    ? []
    : steps
        .filter((step) => step.isolation && needs.includes(step.id))
        .map((step) => `${id} may touch what ${step.id} proves, but not need it`);
