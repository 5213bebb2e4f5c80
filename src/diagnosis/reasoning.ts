import type { CallbackFindingId, VariableId } from '#knowledge/callback-findings.ts';
import type { ContextId } from '#knowledge/callback-scale.ts';
import type { CallbackKnowledge, CauseId } from '#knowledge/causes.ts';
import { type Expectations, expectationsOf } from './expectations.ts';
import { layoutOf } from './layout.ts';

/** One finding under every hypothesis, in the order of the hypotheses. */
export interface Column {
  readonly id: CallbackFindingId;
  readonly chance: Float64Array;
  /** Evidence, as a natural logarithm, when it is seen and when it is looked for and not seen. */
  readonly seen: Float64Array;
  readonly notSeen: Float64Array;
  /** 1 where it cannot be. */
  readonly excluded: Uint8Array;
  /** Its chance over all hypotheses, before anything is known. */
  readonly usual: number;
  readonly group: string | undefined;
}

/** A finding or a variable as something to look into: how unsure its answer is under each hypothesis, in bits. */
export interface Check {
  readonly id: CallbackFindingId | VariableId;
  /** Places of its possible answers; one place means yes or no. */
  readonly columns: readonly number[];
  readonly doubt: Float64Array;
  readonly group: string | undefined;
}

/** Each hypothesis by the places of its causes; `second` is `none` for one cause alone. Flat, for speed. */
interface Hypotheses {
  readonly count: number;
  readonly first: Uint16Array;
  readonly second: Uint16Array;
}

/** The place of a cause that is not there. */
export const none = 0xffff;

/** Everything that does not depend on the answers, worked out once. */
export interface Reasoning {
  readonly knowledge: CallbackKnowledge;
  readonly findingIds: readonly CallbackFindingId[];
  readonly variableIds: readonly VariableId[];
  readonly valuesOf: ReadonlyMap<VariableId, readonly CallbackFindingId[]>;
  readonly causeIds: readonly CauseId[];
  /** One cause alone, in the order of `causeIds`, then two at once, each by its place there. */
  readonly hypotheses: Hypotheses;
  readonly columns: readonly Column[];
  readonly columnOf: ReadonlyMap<string, number>;
  readonly checks: readonly Check[];
}

/**
 * Prepares the reasoning: every cause alone and every two together, with the chance of each finding under each.
 *
 * Takes some tens of milliseconds, once; every question after that is answered from its tables.
 */
export function preparedReasoning(knowledge: CallbackKnowledge): Reasoning {
  const layout = layoutOf(knowledge);
  const causeIds = layout.causes.map(({ id }) => id);
  const hypotheses = hypothesesOver(causeIds.length);
  const expected: Expectations[] = [];
  for (let row = 0; row < hypotheses.count; row += 1) {
    const causes = [hypotheses.first[row], hypotheses.second[row]].flatMap((at) => layout.causes[at as number] ?? []);
    expected.push(expectationsOf(causes, layout));
  }
  const weights = priorWeights({ knowledge, causeIds, hypotheses }, []);
  const columns = layout.findings.map(({ id }, at) => columnFrom(expected, { at, id, weights, group: groupOf(id) }));
  const { variables } = layout;
  return {
    knowledge,
    findingIds: layout.findings.map(({ id }) => id),
    variableIds: variables.map(({ id }) => id),
    valuesOf: new Map(variables.map(({ id, values }) => [id, values])),
    causeIds,
    hypotheses,
    columns,
    columnOf: layout.findingPlace,
    checks: [
      ...variables.map(({ id, places }) => checkOf(id, places, knowledge.variables[id].group)),
      ...layout.findings.flatMap(({ id, isValue }, at) => (isValue ? [] : [checkOf(id, [at], groupOf(id))])),
    ],
  };

  function groupOf(id: CallbackFindingId): string | undefined {
    const { group, variable } = knowledge.findings[id];
    return group ?? (variable === undefined ? undefined : knowledge.variables[variable].group);
  }

  function checkOf(id: Check['id'], places: readonly number[], group: string | undefined): Check {
    const answers = places.map((place) => (columns[place] as Column).chance);
    const doubt = new Float64Array(hypotheses.count);
    for (let row = 0; row < doubt.length; row += 1) doubt[row] = answerDoubt(answers, row);
    return { id, columns: places, doubt, group };
  }
}

/**
 * How likely each hypothesis is before any finding: a cause by its prior times what the contexts make of it; two causes by the
 * product of both, as faults that come independently, times the odds that a second is there at all. They sum to one.
 */
export function priorWeights(
  { knowledge, causeIds, hypotheses }: Pick<Reasoning, 'knowledge' | 'causeIds' | 'hypotheses'>,
  contexts: readonly ContextId[],
): Float64Array {
  const own = causeIds.map((id) => {
    const cause = knowledge.causes[id];
    return contexts.reduce((weight, context) => weight * (cause.contexts[context] ?? 1), cause.prior);
  });
  const sum = own.reduce((total, weight) => total + weight, 0);
  const second = knowledge.scale.figures['second-fault'].value;
  const weights = new Float64Array(hypotheses.count);
  for (let row = 0; row < hypotheses.count; row += 1) {
    const first = (own[hypotheses.first[row] as number] as number) / sum;
    const other = own[hypotheses.second[row] as number];
    weights[row] = other === undefined ? first : (second * first * other) / sum;
  }
  return shares(weights);
}

function hypothesesOver(causes: number): Hypotheses {
  const count = causes + (causes * (causes - 1)) / 2;
  const [first, second] = [new Uint16Array(count), new Uint16Array(count).fill(none)];
  let row = causes;
  for (let one = 0; one < causes; one += 1) {
    first[one] = one;
    for (let other = one + 1; other < causes; other += 1) {
      first[row] = one;
      second[row] = other;
      row += 1;
    }
  }
  return { count, first, second };
}

/** The same weights, scaled to sum to one. */
export function shares(weights: Float64Array): Float64Array {
  let sum = 0;
  for (const weight of weights) sum += weight;
  return weights.map((weight) => weight / sum);
}

function columnFrom(
  expected: readonly Expectations[],
  { at, id, weights, group }: { at: number; id: CallbackFindingId; weights: Float64Array; group: string | undefined },
): Column {
  const rows = expected.length;
  const [chance, seen, notSeen] = [new Float64Array(rows), new Float64Array(rows), new Float64Array(rows)];
  const excluded = new Uint8Array(rows);
  let usual = 0;
  for (let row = 0; row < rows; row += 1) {
    const { chances, excluded: out } = expected[row] as Expectations;
    chance[row] = chances[at] as number;
    excluded[row] = out[at] as number;
    usual += (chances[at] as number) * (weights[row] as number);
  }
  for (let row = 0; row < rows; row += 1) {
    seen[row] = Math.log((chance[row] as number) / usual);
    notSeen[row] = Math.log((1 - (chance[row] as number)) / (1 - usual));
  }
  return { id, chance, seen, notSeen, excluded, usual, group };
}

/** H = −Σ p log₂ p over the possible answers, in bits; what they leave over is one more: "no" or "cannot be told". */
function answerDoubt(answers: readonly Float64Array[], row: number): number {
  let [doubt, left] = [0, 1];
  for (const answer of answers) {
    const chance = answer[row] as number;
    left -= chance;
    if (chance > 0) doubt -= chance * Math.log2(chance);
  }
  return left > 1e-12 ? doubt - left * Math.log2(left) : doubt;
}
