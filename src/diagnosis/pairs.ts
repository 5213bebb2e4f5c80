import type { CallbackFindingId } from '#knowledge/callback-findings.ts';
import type { CauseId } from '#knowledge/causes.ts';
import type { Understood } from './answers.ts';
import type { Reasoning } from './reasoning.ts';
import { brings } from './weighing.ts';

/** Two causes that explain together what neither does alone. */
export interface Together {
  readonly causes: readonly [CauseId, CauseId];
  /** What each explains and the other does not. */
  readonly explains: readonly [readonly CallbackFindingId[], readonly CallbackFindingId[]];
}

/** The few pairs worth saying: not far behind the likeliest single cause, each half with something of its own to explain. */
export function pairsSaid(
  posterior: Float64Array,
  { seen }: Understood,
  reasoning: Reasoning,
): readonly (Together & { readonly hypothesis: number })[] {
  const { causeIds, hypotheses, knowledge } = reasoning;
  let best = 0;
  for (let row = 0; row < causeIds.length; row += 1) best = Math.max(best, posterior[row] as number);
  const worthSaying = best * knowledge.scale.figures['second-fault-said'].value;
  const telling = [...seen].filter((id) => knowledge.findings[id].anyOf === undefined);
  const explainedBy = (cause: number, id: CallbackFindingId) =>
    brings(cause, reasoning.columnOf.get(id) as number, reasoning);
  const found: (Together & { readonly hypothesis: number })[] = [];
  for (let row = causeIds.length; row < hypotheses.count; row += 1) {
    if ((posterior[row] as number) < worthSaying) continue;
    const [one, other] = [hypotheses.first[row] as number, hypotheses.second[row] as number];
    const only = (mine: number, theirs: number) =>
      telling.filter((id) => explainedBy(mine, id) && !explainedBy(theirs, id));
    const explains = [only(one, other), only(other, one)] as const;
    if (explains.some((findings) => findings.length === 0)) continue;
    found.push({ causes: [causeIds[one] as CauseId, causeIds[other] as CauseId], explains, hypothesis: row });
  }
  return found.sort((a, b) => (posterior[b.hypothesis] as number) - (posterior[a.hypothesis] as number)).slice(0, 2);
}
