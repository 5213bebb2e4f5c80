import type { Checklist } from '#knowledge/checklist.ts';
import type { Bound, Condition, Limit } from '#knowledge/checklist-evidence.ts';
import type { WalkFactId } from '#knowledge/checklist-facts.ts';
import { maySign } from './signing.ts';
import type { Standing } from './walk-event.ts';

/** What is known of a job: one answer or several for each fact. Absent or `unknown` means that nobody knows. */
export type WalkFacts = Readonly<Partial<Record<string, string | readonly string[] | undefined>>>;

/** The answers to one fact, `unknown` where there is none that it can have. An empty list of several is `none`. */
export function answersTo(fact: WalkFactId, facts: WalkFacts, known: Checklist['facts']): readonly string[] {
  const said = facts[fact];
  if (said === undefined) return notKnown;
  const { options } = known[fact];
  if (typeof said === 'string') return options.some(({ id }) => id === said) ? [said] : notKnown;
  if (said.length === 0) return options.some(({ id }) => id === 'none') ? ['none'] : notKnown;
  return said.map((answer) => (options.some(({ id }) => id === answer) ? answer : 'unknown'));
}

const notKnown: readonly string[] = ['unknown'];

/** Whether one of the answers that count is among those given; not knowing counts where the condition lists it. */
export const conditionHolds = ({ fact, is }: Condition, facts: WalkFacts, known: Checklist['facts']): boolean =>
  answersTo(fact, facts, known).some((answer) => is.includes(answer));

/** A limit under what is known. */
export function limitUnder({ by, values, otherwise }: Limit, facts: WalkFacts, known: Checklist['facts']): Bound {
  if (by === null) return otherwise;
  return values[answersTo(by, facts, known)[0] ?? 'unknown'] ?? otherwise;
}

/** A fact of the job sheet, with what the person was who recorded it. */
export interface SheetFact {
  readonly fact: string;
  readonly value: string | readonly string[];
  readonly standing: Standing;
}

/**
 * The sheet's facts as a list may read them. An answer that takes a precaution off the list counts only from somebody whose
 * word counts for it; from anyone else it stays unknown.
 */
export function factsFromSheet(sheet: readonly SheetFact[], { facts }: Checklist, day: string): WalkFacts {
  const counting = sheet
    .filter(({ fact }) => Object.hasOwn(facts, fact))
    .map(({ fact, value, standing }) => {
      const { safe, clearedBy } = facts[fact as WalkFactId];
      const answers = answersTo(fact as WalkFactId, { [fact]: value }, facts);
      const counts = maySign(clearedBy, standing, day) || answers.some((answer) => !safe.includes(answer));
      return [fact, counts ? value : 'unknown'] as const;
    });
  return Object.fromEntries(counting);
}
