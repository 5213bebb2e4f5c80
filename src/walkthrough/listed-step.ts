import type { Checklist, ChecklistStep } from '#knowledge/checklist.ts';
import type { Bound, ChoiceOption, Part, PartOf } from '#knowledge/checklist-evidence.ts';
import type { BoxKind, Signer } from '#knowledge/checklist-facts.ts';
import type { Box, Person } from './walk-event.ts';
import { conditionHolds, limitUnder, type WalkFacts } from './walk-facts.ts';

/** A number with the limits that hold for this job. */
export interface ListedNumber extends Omit<PartOf<'number'>, 'least' | 'most'> {
  readonly least?: Bound;
  readonly most?: Bound;
}

export interface ListedChoice extends Omit<PartOf<'choice'>, 'options'> {
  readonly options: readonly ChoiceOption[];
}

export type ListedPart = Exclude<Part, { kind: 'number' | 'choice' }> | ListedNumber | ListedChoice;

/** A step at its place: for one box or one person where it is done for each. */
export interface Place {
  /** Step id, with the box or the person behind an @. */
  readonly id: string;
  readonly step: ChecklistStep;
  readonly box: Box<BoxKind> | null;
  readonly person: Person | null;
}

/** A step as this job needs it. */
export interface ListedStep extends Place {
  /** Its place in the order of every step there could be. */
  readonly index: number;
  /** A few words: "Sign dead (E06), switch by the door". */
  readonly title: string;
  readonly parts: readonly ListedPart[];
  readonly signers: readonly Signer[];
  /** Those of them that are on the list have to be closed before. */
  readonly needs: readonly string[];
  /** Steps that need this one. */
  readonly neededBy: readonly string[];
  readonly reopens: readonly string[];
  /** Ids of the boxes that have to be proven dead while it is done. */
  readonly touches: readonly string[];
  /** Done while the breaker is locked: only by somebody on site whose own lock is on. */
  readonly betweenLocks: boolean;
  /** Facts that decide whether it is on the list, who signs it or what it allows. */
  readonly behind: ReadonlySet<string>;
}

/** What is known of the job, and how to read it. */
export interface Known {
  readonly facts: WalkFacts;
  readonly checklist: Checklist;
}

export function titleOf({ step, box, person }: Place): string {
  const where = box?.name ?? person?.name;
  return `${step.title} (${step.code})${where ? `, ${where}` : ''}`;
}

/** Who may sign the step: where stricter rules apply, only those that all of them name. */
export const signersUnder = ({ signers, stricter }: ChecklistStep, { facts, checklist }: Known): readonly Signer[] =>
  stricter
    .filter(({ when }) => when.every((each) => conditionHolds(each, facts, checklist.facts)))
    .reduce<readonly Signer[]>((some, rule) => some.filter((signer) => rule.signers.includes(signer)), signers);

/** Parts that no fact changes are the same on every list. */
const unchanging = new WeakMap<Part, ListedPart>();

/** A part of the evidence with the limits and the answers that this job allows. */
export function partUnder(part: Part, known: Known): ListedPart {
  const kept = unchanging.get(part);
  if (kept) return kept;
  const made = partMade(part, known);
  if (factsBehindPart(part).length === 0) unchanging.set(part, made);
  return made;
}

function partMade(part: Part, { facts, checklist }: Known): ListedPart {
  if (part.kind === 'choice') {
    const offered = ({ onlyWhen }: ChoiceOption) =>
      (onlyWhen ?? []).every((each) => conditionHolds(each, facts, checklist.facts));
    return { ...part, options: part.options.filter(offered) };
  }
  if (part.kind !== 'number') return part;
  const { least, most, ...rest } = part;
  return {
    ...rest,
    ...(least ? { least: limitUnder(least, facts, checklist.facts) } : {}),
    ...(most ? { most: limitUnder(most, facts, checklist.facts) } : {}),
  };
}

function factsBehindPart(part: Part): readonly string[] {
  if (part.kind === 'choice') return part.options.flatMap(({ onlyWhen }) => (onlyWhen ?? []).map(({ fact }) => fact));
  return part.kind === 'number' ? [part.least?.by, part.most?.by].filter((fact) => typeof fact === 'string') : [];
}

/** Every fact that changes whether the step is on the list, who signs it or what it allows. */
export function factsBehind({ when, stricter, evidence }: ChecklistStep): ReadonlySet<string> {
  const conditions = [...when, ...stricter.flatMap((rule) => rule.when)];
  return new Set([...conditions.map(({ fact }) => fact), ...evidence.flatMap(factsBehindPart)]);
}
