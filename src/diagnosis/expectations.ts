import type { CauseLayout, Distribution, Gate, Layout, VariableLayout } from './layout.ts';

/** What one cause, or two at once, leads one to expect. */
export interface Expectations {
  /** Chance of each finding, in the order of the findings. */
  readonly chances: Float64Array;
  /** 1 where a finding cannot be, whatever else is wrong. */
  readonly excluded: Uint8Array;
}

/** Nothing is certain enough for a single mistaken answer to settle the matter. */
const mostCertain = 0.99;
const noise = 1e-9;

/**
 * What to expect of one cause, or of two together.
 *
 * Airflow, pressure and the wheel come first: of two causes the worse prevails. Whatever follows from them, such as a fogged
 * mirror, is worked out of them. A sign either cause brings is brought by both together, each with its own chance:
 * p = 1 − (1 − b)(1 − e₁)(1 − e₂), with b the chance of finding it anyway and e = (p₁ − b)/(1 − b). What cannot be true beside
 * one of them cannot be true beside both.
 */
export function expectationsOf(causes: readonly CauseLayout[], layout: Layout): Expectations {
  const { findings, variables, least } = layout;
  const distributions: Distribution[] = [];
  for (const [at, variable] of variables.entries()) distributions.push(distributionOf(variable, at));
  const chances = new Float64Array(findings.length);
  const excluded = new Uint8Array(findings.length);

  for (const [at, variable] of variables.entries()) {
    const open = openness(variable.onlyWhile, distributions);
    for (const [value, place] of variable.places.entries()) settle(place, (distributions[at]?.[value] ?? 0) * open);
  }
  for (const [at, finding] of findings.entries()) {
    if (!finding.isValue && !finding.anyOf) settle(at, ownChance(at) * openness(finding.onlyWhile, distributions));
  }
  for (const [at, { anyOf }] of findings.entries()) {
    if (!anyOf) continue;
    const none = anyOf.reduce((share, member) => share * (1 - (chances[member] as number)), 1);
    settle(at, anyOf.every((member) => excluded[member] === 1) ? least : 1 - none);
  }
  return { chances, excluded };

  function settle(at: number, chance: number): void {
    const held = Math.min(mostCertain, Math.max(least, chance));
    chances[at] = held;
    excluded[at] = Number(held <= least + noise);
  }

  function distributionOf(variable: VariableLayout, at: number): Distribution {
    if (variable.follows) {
      const { from, table } = variable.follows;
      const source = distributions[from] ?? [];
      return variable.values.map((_, value) =>
        table.reduce((sum, row, given) => sum + (source[given] ?? 0) * (row[value] ?? 0), 0),
      );
    }
    const stated = causes.flatMap(({ distributions: own }) => (own[at] ? [own[at]] : []));
    return bothPulling(stated, variable.worst, least) ?? variable.background ?? [];
  }

  function ownChance(at: number): number {
    const finding = findings[at];
    if (finding === undefined || causes.some(({ ruledOut }) => ruledOut.has(at))) return least;
    const follows = finding.follows;
    const anyway =
      finding.background ??
      follows?.chances.reduce((sum, chance, value) => sum + chance * (distributions[follows.from]?.[value] ?? 0), 0) ??
      least;
    let [lowest, spared] = [anyway, 1];
    for (const { stated } of causes) {
      const chance = stated.get(at);
      if (chance === undefined) continue;
      lowest = Math.min(lowest, chance);
      spared *= 1 - Math.max(0, (chance - anyway) / (1 - anyway));
    }
    return 1 - (1 - lowest) * spared;
  }
}

const openness = (gate: Gate | undefined, distributions: readonly Distribution[]): number =>
  gate === undefined ? 1 : gate.values.reduce((sum, value) => sum + (distributions[gate.variable]?.[value] ?? 0), 0);

/** Two causes pulling at one variable: the worse value prevails, or neither does and they meet half way. */
function bothPulling(
  stated: readonly Distribution[],
  worst: 'first' | 'last' | 'none',
  least: number,
): Distribution | undefined {
  const [one, other] = stated;
  if (one === undefined || other === undefined) return one;
  const met = worst === 'none' ? one.map((chance, at) => (chance + (other[at] ?? 0)) / 2) : worse(one, other, worst);
  const barred = one.map((chance, at) => Math.min(chance, other[at] ?? 0) <= least + noise);
  const kept = met.reduce((sum, chance, at) => sum + (barred[at] ? 0 : chance), 0);
  const left = 1 - least * barred.filter(Boolean).length;
  return kept <= 0 ? met : met.map((chance, at) => (barred[at] ? least : (chance / kept) * left));
}

function worse(one: Distribution, other: Distribution, worst: 'first' | 'last'): Distribution {
  const result = one.map(() => 0);
  let [oneBetter, otherBetter, before] = [1, 1, 0];
  for (let step = 0; step < one.length; step += 1) {
    const at = worst === 'first' ? step : one.length - 1 - step;
    oneBetter -= one[at] ?? 0;
    otherBetter -= other[at] ?? 0;
    const reached = 1 - Math.max(0, oneBetter) * Math.max(0, otherBetter);
    result[at] = reached - before;
    before = reached;
  }
  return result;
}
