import type { Checklist } from '#knowledge/checklist.ts';
import type { WalkFactId } from '#knowledge/checklist-facts.ts';
import { eitherOf } from '#walkthrough/signing.ts';
import { type OpenWalk, toldOf } from './swap-walk.ts';

/** Facts that nobody counts as known and that decide steps of this list, those that decide most first. */
export function openFacts({ checklist, state }: OpenWalk): readonly WalkFactId[] {
  const decides = new Map<WalkFactId, number>();
  for (const { fact } of checklist.steps.flatMap(({ when }) => when)) decides.set(fact, (decides.get(fact) ?? 0) + 1);
  return [...decides]
    .filter(([fact]) => (state.facts[fact] ?? 'unknown') === 'unknown')
    .sort(([, one], [, other]) => other - one)
    .map(([fact]) => fact);
}

const isFact = (checklist: Checklist, id: string): id is WalkFactId => Object.hasOwn(checklist.facts, id);

/** "Does the hole have to grow? No, it stays as it is" */
export function factText({ checklist }: Pick<OpenWalk, 'checklist'>, fact: string, value: string): string {
  if (!isFact(checklist, fact)) return `${fact}: ${value}`;
  const { prompt, options } = checklist.facts[fact];
  return `${prompt} ${options.find(({ id }) => id === value)?.label ?? toldOf({ checklist }).unknownValue}`;
}

/** Whose word takes a precaution off the list: "a lead". */
export const whoClears = ({ checklist }: Pick<OpenWalk, 'checklist'>, fact: string): string =>
  eitherOf(isFact(checklist, fact) ? checklist.facts[fact].clearedBy : ['lead'], checklist);
