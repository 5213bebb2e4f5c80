import type { CallbackFinding, CallbackFindingId, CallbackVariable, VariableId } from '#knowledge/callback-findings.ts';
import { type CheckPlace, type CheckPower, checkPlaces } from '#knowledge/callback-scale.ts';
import type { CauseId } from '#knowledge/causes.ts';
import type { Answers, Understood } from './answers.ts';
import { dangerOf, dangersOpen } from './dangers.ts';
import { pairsSaid } from './pairs.ts';
import { type Check, type Column, none, type Reasoning } from './reasoning.ts';
import { presentChances } from './weighing.ts';

/** One thing to ask or to look at. */
export interface ProposedCheck {
  /** A finding (yes or no), or a variable with one finding for each of its answers. */
  readonly id: CallbackFindingId | VariableId;
  /** Empty for yes or no. */
  readonly answers: readonly CallbackFindingId[];
  readonly from: CheckPlace;
  readonly power: CheckPower;
  /** What it is expected to tell, in bits. */
  readonly tells: number;
  /** What it costs in place, power and risk, as a number of phone questions. */
  readonly effort: number;
  /** The cause each answer speaks for most, in the order of `answers`; yes and then no where there are none. */
  readonly pointsTo: readonly CauseId[];
}

/** A check with what it is expected to tell, in bits, and what it costs. */
export interface ValuedCheck {
  readonly check: Check;
  readonly tells: number;
  readonly effort: number;
}

export interface State {
  readonly told: Understood;
  readonly posterior: Float64Array;
  readonly reasoning: Reasoning;
}

/** Chances below this leave no mark on a result and are skipped. */
const negligible = 1e-5;

/** The words of a check, whether it is a finding or a variable. */
export const wordingOf = (
  id: CallbackFindingId | VariableId,
  { knowledge }: Reasoning,
): CallbackFinding | CallbackVariable =>
  Object.hasOwn(knowledge.variables, id)
    ? knowledge.variables[id as VariableId]
    : knowledge.findings[id as CallbackFindingId];

/**
 * What may still be asked: not answered, within reach, not another trade's, and inside the grille only when proven dead. While
 * a danger is not known the fan is left alone, proven dead or not.
 */
export function checksLeft(answers: Answers, { told, reasoning }: Pick<State, 'told' | 'reasoning'>): readonly Check[] {
  const isDanger = (id: string) => dangerOf(id, reasoning) !== undefined;
  const cannot = new Set(answers.cannotCheck ?? []);
  for (const id of answers.cannotCheck ?? []) {
    const place = reasoning.columnOf.get(id);
    const members = place === undefined ? [] : (reasoning.knowledge.findings[id as CallbackFindingId].anyOf ?? []);
    // "Cannot say whether it smells" has not answered whether it smells burnt.
    for (const member of members) if (isDanger(id) || !isDanger(member)) cannot.add(member);
  }
  const isLeftAlone = dangersOpen(answers, told, reasoning).length > 0;
  const farthest = checkPlaces.indexOf(answers.upTo ?? 'instrument');
  return reasoning.checks.filter((check) => {
    const wording = wordingOf(check.id, reasoning);
    const who = 'who' in wording ? wording.who : undefined;
    return (
      wording.offered &&
      (who === undefined || who === 'lead' || who === 'apprentice-under-lead') &&
      checkPlaces.indexOf(wording.from) <= farthest &&
      !cannot.has(wording.from) &&
      (wording.power !== 'off and proven' || answers.deadProven === true) &&
      (wording.leavesAlone || !isLeftAlone) &&
      !told.settled.has(check.id) &&
      ![check.id, ...check.columns.map((at) => reasoning.findingIds[at] as string)].some((id) => cannot.has(id))
    );
  });
}

/**
 * What each check is expected to tell and what it costs.
 *
 * I = H(Σ P(h) p_h) − Σ P(h) H(p_h)
 *
 * The doubt the answer is expected to remove, in bits, over the hypotheses h. Of a group that has already spoken only the
 * share is news.
 */
export function valued(checks: readonly Check[], { told, posterior, reasoning }: State): readonly ValuedCheck[] {
  const live = liveHypotheses({ told, posterior, reasoning });
  const heard = new Set(told.evidence.map(({ group }) => group));
  const { effort, powerEffort, figures } = reasoning.knowledge.scale;
  return checks.map((check) => {
    const { from, power } = wordingOf(check.id, reasoning);
    const news = check.group !== undefined && heard.has(check.group) ? figures['group-share'].value : 1;
    const tells = news * doubtRemoved(check);
    return { check, tells, effort: effort[from].value + powerEffort[power].value };
  });

  function doubtRemoved({ columns, doubt }: Check): number {
    let [left, overall, within] = [1, 0, 0];
    for (const at of columns) {
      const { chance } = reasoning.columns[at] as Column;
      let mean = 0;
      for (const { row, weight } of live) mean += weight * (chance[row] as number);
      left -= mean;
      if (mean > 0) overall -= mean * Math.log2(mean);
    }
    if (left > 0) overall -= left * Math.log2(left);
    for (const { row, weight } of live) within += weight * (doubt[row] as number);
    return Math.max(0, overall - within);
  }
}

/**
 * The hypotheses a check is to choose among: each cause alone, and the few pairs worth saying. Whether there is some further
 * fault nobody spoke of is not what a callback asks.
 */
function liveHypotheses({ told, posterior, reasoning }: State) {
  const rows = [
    ...reasoning.causeIds.map((_, row) => row),
    ...pairsSaid(posterior, told, reasoning).map(({ hypothesis }) => hypothesis),
  ].filter((row) => (posterior[row] as number) > negligible);
  const sum = rows.reduce((total, row) => total + (posterior[row] as number), 0);
  return rows.map((row) => ({ row, weight: (posterior[row] as number) / sum }));
}

/** How likely each cause is to be there once a finding is seen, or looked for and not seen. */
export function presentAfter(
  { chance }: Column,
  isSeen: boolean,
  { posterior, reasoning }: Omit<State, 'told'>,
): { readonly likelihood: number; readonly present: Float64Array } {
  const { first, second } = reasoning.hypotheses;
  const present = new Float64Array(reasoning.causeIds.length);
  let likelihood = 0;
  for (let row = 0; row < posterior.length; row += 1) {
    const before = posterior[row] as number;
    if (before < negligible) continue;
    const weight = before * (isSeen ? (chance[row] as number) : 1 - (chance[row] as number));
    const [one, other] = [first[row] as number, second[row] as number];
    likelihood += weight;
    present[one] = (present[one] as number) + weight;
    if (other !== none) present[other] = (present[other] as number) + weight;
  }
  for (let at = 0; at < present.length; at += 1) present[at] = (present[at] as number) / likelihood;
  return { likelihood, present };
}

/** A check ready to be put to a person. */
export function proposal({ check, tells, effort }: ValuedCheck, { posterior, reasoning }: State): ProposedCheck {
  const { id, columns } = check;
  const { from, power } = wordingOf(id, reasoning);
  const before = presentChances(posterior, reasoning);
  const [only, ...more] = columns;
  const isYesOrNo = more.length === 0;
  return {
    id,
    answers: isYesOrNo ? [] : columns.map((at) => reasoning.findingIds[at] as CallbackFindingId),
    from,
    power,
    tells,
    effort,
    pointsTo: isYesOrNo
      ? [gainer(only as number, true), gainer(only as number, false)]
      : columns.map((at) => gainer(at, true)),
  };

  function gainer(at: number, isSeen: boolean): CauseId {
    const { present } = presentAfter(reasoning.columns[at] as Column, isSeen, { posterior, reasoning });
    const gain = (cause: number) => (present[cause] as number) - (before[cause] as number);
    const most = reasoning.causeIds.reduce((best, _, cause) => (gain(cause) > gain(best) ? cause : best), 0);
    return reasoning.causeIds[most] as CauseId;
  }
}
