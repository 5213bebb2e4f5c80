import type { Evidence, Understood } from './answers.ts';
import { type Column, none, priorWeights, type Reasoning, shares } from './reasoning.ts';

/**
 * How likely each hypothesis is, given what was told: log prior + Σ log likelihood, scaled to sum to one.
 *
 * Signs of one group say much the same thing. Of those that speak for a hypothesis the strongest counts in full and the rest
 * for a share, and likewise of those that speak against it; what a hypothesis rules out counts in full always. Sums and
 * greatest values do not care about order, so neither does the result. Adding a sign can then lower a hypothesis by no more than
 * the sign alone would, which is least of all for one that rules it out: that keeps the ranking fair between the two.
 */
export function weighed({ evidence, contexts }: Understood, reasoning: Reasoning): Float64Array {
  const total = relevantWeights({ evidence, contexts }, reasoning);
  for (let at = 0; at < total.length; at += 1) total[at] = Math.log(total[at] as number);
  const byGroup = new Map<string, Evidence[]>();
  for (const item of evidence) {
    const key = item.group ?? `alone ${item.id}`;
    byGroup.set(key, [...(byGroup.get(key) ?? []), item]);
  }
  for (const items of byGroup.values()) addGroup(items);
  let most = Number.NEGATIVE_INFINITY;
  for (const value of total) most = Math.max(most, value);
  for (let at = 0; at < total.length; at += 1) total[at] = Math.exp((total[at] as number) - most);
  return shares(total);

  function addGroup(items: readonly Evidence[]): void {
    const spoken = items.map((item) => ({ says: likelihoods(item, reasoning), excluded: exclusions(item, reasoning) }));
    const share = reasoning.knowledge.scale.figures['group-share'].value;
    for (let at = 0; at < total.length; at += 1) {
      let [full, best, worst, sumFor, sumAgainst] = [0, 0, 0, 0, 0];
      for (const { says, excluded } of spoken) {
        const value = says[at] as number;
        if (excluded?.[at]) full += value;
        else if (value > 0) {
          best = Math.max(best, value);
          sumFor += value;
        } else {
          worst = Math.min(worst, value);
          sumAgainst += value;
        }
      }
      const weighted = best + share * (sumFor - best) + worst + share * (sumAgainst - worst);
      total[at] = (total[at] as number) + full + weighted;
    }
  }
}

/**
 * The weights before the evidence, less for every cause that brings nothing of what was seen: nobody calls about a fault that
 * shows nothing they speak of. What a hypothesis rules out speaks for neither of its causes.
 */
function relevantWeights({ evidence, contexts }: Pick<Understood, 'evidence' | 'contexts'>, reasoning: Reasoning) {
  const isTrouble = (at: number) => !reasoning.knowledge.findings[(reasoning.columns[at] as Column).id].ordinary;
  const weights = priorWeights(reasoning, contexts);
  const seen = evidence
    .filter(({ seen: isSeen, columns }) => isSeen && columns.length === 1 && isTrouble(columns[0] as number))
    .map(({ columns: [at] }) => ({
      excluded: (reasoning.columns[at as number] as Column).excluded,
      broughtBy: reasoning.causeIds.map((_, cause) => brings(cause, at as number, reasoning)),
    }));
  if (seen.length === 0) return weights;
  const share = reasoning.knowledge.scale.figures['silent-cause'].value;
  const { first, second } = reasoning.hypotheses;
  const factor = (cause: number, row: number): number => {
    for (const { excluded, broughtBy } of seen) if (broughtBy[cause] && !excluded[row]) return 1;
    return share;
  };
  for (let row = 0; row < weights.length; row += 1) {
    const [one, other] = [first[row] as number, second[row] as number];
    weights[row] = (weights[row] as number) * factor(one, row) * (other === none ? 1 : factor(other, row));
  }
  return weights;
}

/** Whether a cause alone brings a finding clearly more often than it is met anyway. */
export function brings(cause: number, column: number, { columns }: Reasoning): boolean {
  const { chance, usual } = columns[column] as Column;
  return (chance[cause] as number) > 1.5 * usual;
}

/** The chance of one piece of evidence under one hypothesis. */
export function chanceOf({ columns, seen }: Evidence, hypothesis: number, reasoning: Reasoning): number {
  let sum = 0;
  for (const at of columns) sum += reasoning.columns[at]?.chance[hypothesis] ?? 0;
  return seen ? Math.min(1, sum) : 1 - sum;
}

function likelihoods(item: Evidence, reasoning: Reasoning): Float64Array {
  const [only, ...others] = item.columns.map((at) => reasoning.columns[at]);
  if (only === undefined) return new Float64Array(reasoning.hypotheses.count);
  if (others.length === 0) return item.seen ? only.seen : only.notSeen;
  const usual = [only, ...others].reduce((sum, column) => sum + (column?.usual ?? 0), 0);
  return new Float64Array(reasoning.hypotheses.count).map((_, at) => Math.log(chanceOf(item, at, reasoning) / usual));
}

const exclusions = ({ columns, seen }: Evidence, reasoning: Reasoning): Uint8Array | undefined =>
  seen && columns.length === 1 ? reasoning.columns[columns[0] as number]?.excluded : undefined;

/** How likely each cause is to be there, alone or beside another. */
export function presentChances(posterior: Float64Array, { causeIds, hypotheses }: Reasoning): Float64Array {
  const { first, second } = hypotheses;
  const present = new Float64Array(causeIds.length);
  for (let row = 0; row < posterior.length; row += 1) {
    const chance = posterior[row] as number;
    const [one, other] = [first[row] as number, second[row] as number];
    present[one] = (present[one] as number) + chance;
    if (other !== none) present[other] = (present[other] as number) + chance;
  }
  return present;
}
