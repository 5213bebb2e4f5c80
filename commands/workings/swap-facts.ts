import { checklistWords, type WalkFactId, walkFacts } from '#knowledge/checklist-facts.ts';
import { eitherOf } from '#walkthrough/signing.ts';
import type { OpenWalk } from './swap-walk.ts';

/** Facts that nobody counts as known and that decide steps of this list, those that decide most first. */
export function openFacts({ checklist, state }: OpenWalk): readonly WalkFactId[] {
  const decides = new Map<WalkFactId, number>();
  for (const { fact } of checklist.steps.flatMap(({ when }) => when)) decides.set(fact, (decides.get(fact) ?? 0) + 1);
  return [...decides]
    .filter(([fact]) => (state.facts[fact] ?? 'unknown') === 'unknown')
    .sort(([, one], [, other]) => other - one)
    .map(([fact]) => fact);
}

const labelOf = (fact: WalkFactId, value: string): string =>
  walkFacts[fact].options.find(({ id }) => id === value)?.label ?? 'not known';

/** "Does the hole have to grow? No, it stays as it is" */
export const factText = (fact: string, value: string): string =>
  Object.hasOwn(walkFacts, fact)
    ? `${walkFacts[fact as WalkFactId].prompt} ${labelOf(fact as WalkFactId, value)}`
    : `${fact}: ${value}`;

/** Whose word takes a precaution off the list: "a lead". */
export const whoClears = (fact: string): string =>
  Object.hasOwn(walkFacts, fact)
    ? eitherOf(walkFacts[fact as WalkFactId].clearedBy, checklistWords.signers)
    : checklistWords.signers.lead;
