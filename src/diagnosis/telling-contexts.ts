import type { ContextId } from '#knowledge/callback-scale.ts';
import type { Answers } from './answers.ts';
import { diagnose } from './diagnose.ts';
import type { Reasoning } from './reasoning.ts';

/** Above any change of chances: the chances of all causes together move by less. */
const first = 1000;

/**
 * The contexts that would change the answer most, given what was told, in the order they are kept: those that bring up a cause
 * that can hurt somebody, however many they are; then, up to `most` in all, those that move the chances of the causes most.
 * Nobody reads a long list on a phone, and the rest would change little.
 */
export function tellingContexts(reasoning: Reasoning, answers: Answers, most: number): readonly ContextId[] {
  const told = answers.context ?? [];
  const now = diagnose(reasoning, answers);
  const chances = new Map(now.ranking.map(({ cause, chance }) => [cause, chance]));
  const known = new Set(now.ruleOutFirst.map(({ cause }) => cause));
  const changes = (id: ContextId): number => {
    const then = diagnose(reasoning, { ...answers, context: [...told, id] });
    const moved = then.ranking.reduce(
      (sum, { cause, chance }) => sum + Math.abs(chance - (chances.get(cause) ?? 0)),
      0,
    );
    return then.ruleOutFirst.some(({ cause }) => !known.has(cause)) ? first + moved : moved;
  };
  const ids = Object.keys(reasoning.knowledge.contexts) as ContextId[];
  const ranked = ids
    .filter((id) => !told.includes(id))
    .map((id) => ({ id, by: changes(id) }))
    .sort((one, other) => other.by - one.by);
  const best = new Set(ranked.filter(({ by }, place) => by >= first || place < most).map(({ id }) => id));
  return ids.filter((id) => best.has(id));
}
