import type { CallbackFindingId } from '#knowledge/callback-findings.ts';
import type { CauseId } from '#knowledge/causes.ts';
import { type Answers, understood } from './answers.ts';
import { checksLeft, type ProposedCheck, proposal, type State, type ValuedCheck, valued, wordingOf } from './checks.ts';
import { type Danger, dangersOpen, dangersSeen, type OpenDanger } from './dangers.ts';
import { type MindChanger, mindChangers } from './mind-changers.ts';
import type { Reasoning } from './reasoning.ts';
import { presentChances, weighed } from './weighing.ts';

export type NextCheck =
  | {
      /** A danger was told, or is not known and stops while it is not. */
      readonly kind: 'stopped';
      readonly dangers: readonly Danger[];
      readonly open: readonly OpenDanger[];
    }
  | {
      readonly kind: 'check';
      readonly check: ProposedCheck;
      /** `danger`: asked first because the answer may call for a stop. */
      readonly because: 'danger' | 'tells most';
      /** The next best ones, to offer beside it. */
      readonly others: readonly ProposedCheck[];
    }
  | {
      /** `clear`: asking more would change nothing that is done. `nothing left`: no cheap check would tell enough. */
      readonly kind: 'clear' | 'nothing left';
      readonly leading: CauseId;
      readonly mindChangers: readonly MindChanger[];
      /** Checks that would tell something and must wait for the box to be proven dead. */
      readonly waiting: readonly ProposedCheck[];
    };

/**
 * The next check: the one that tells most for its effort and risk, so that a question on the phone goes before a look from the
 * floor, and that before ladder, attic and instruments, unless the farther one tells several times as much. A question that may
 * uncover a danger goes before all others, and after a danger nothing is asked; after one nobody could say anything to, nothing
 * that has the fan run or touched.
 */
export function nextCheck(reasoning: Reasoning, answers: Answers): NextCheck {
  const dangers = dangersSeen(answers, reasoning);
  const told = understood(answers, reasoning);
  const open = dangersOpen(answers, told, reasoning);
  if (dangers.length > 0 || open.some(({ stops }) => stops)) return { kind: 'stopped', dangers, open };
  const state: State = { told, posterior: weighed(told, reasoning), reasoning };
  const { figures } = reasoning.knowledge.scale;
  const left = valued(checksLeft(answers, state), state);
  const worthy = worthwhile(left, reasoning);
  const put = (check: ValuedCheck) => proposal(check, state);

  const dangerous = dangerFirst(left, state);
  if (dangerous) {
    const others = worthy.filter((check) => check !== dangerous).slice(0, 2);
    return { kind: 'check', check: put(dangerous), because: 'danger', others: others.map(put) };
  }
  const present = presentChances(state.posterior, reasoning);
  const leading = present.reduce((most, chance, at) => (chance > (present[most] as number) ? at : most), 0);
  const isClear = told.evidence.length > 0 && (present[leading] as number) >= figures['clear-from'].value;
  const [first, ...others] = worthy;
  if (!isClear && first) {
    return { kind: 'check', check: put(first), because: 'tells most', others: others.slice(0, 2).map(put) };
  }

  const withProof = checksLeft({ ...answers, deadProven: true }, state);
  const waiting = worthwhile(valued(withProof, state), reasoning).filter(
    ({ check }) => answers.deadProven !== true && wordingOf(check.id, reasoning).power === 'off and proven',
  );
  return {
    kind: isClear ? 'clear' : 'nothing left',
    leading: reasoning.causeIds[leading] as CauseId,
    mindChangers: mindChangers(leading, withProof, state),
    waiting: waiting.slice(0, 2).map(put),
  };
}

function worthwhile(checks: readonly ValuedCheck[], { knowledge }: Reasoning): ValuedCheck[] {
  const { figures } = knowledge.scale;
  return checks
    .filter(
      ({ tells, effort }) =>
        tells >= figures['worth-asking'].value && tells / effort >= figures['worth-the-effort'].value,
    )
    .sort((a, b) => b.tells / b.effort - a.tells / a.effort);
}

/**
 * The question that may uncover a danger: one a vague answer left open ("it smells": hot or burnt?), or the sign of a cause that
 * can hurt and is not unlikely enough to leave for later. Only what can be asked or seen from the floor.
 */
function dangerFirst(open: readonly ValuedCheck[], { told, posterior, reasoning }: State): ValuedCheck | undefined {
  const { knowledge, columns, columnOf, causeIds } = reasoning;
  const present = presentChances(posterior, reasoning);
  const feared = causeIds.flatMap((id, at) =>
    knowledge.causes[id].lifeSafety && (present[at] as number) >= knowledge.scale.figures['rule-out-from'].value
      ? [at]
      : [],
  );
  const vague = new Set([...told.seen].flatMap((id) => knowledge.findings[id].anyOf ?? []));
  const isSign = (id: CallbackFindingId) => {
    const column = columns[columnOf.get(id) as number];
    return feared.some((cause) => (column?.chance[cause] ?? 0) >= knowledge.scale.tiers.sometimes.chance);
  };
  const candidates = open.flatMap((valuation) => {
    const { check, tells, effort } = valuation;
    const { from } = wordingOf(check.id, reasoning);
    if (from !== 'phone' && from !== 'floor') return [];
    const dangers = check.columns
      .map((at) => reasoning.findingIds[at] as CallbackFindingId)
      .filter((id) => knowledge.findings[id].danger !== undefined);
    const isVague = dangers.some((id) => vague.has(id));
    const isWorthIt = tells / effort >= knowledge.scale.figures['worth-the-effort'].value;
    return isVague || (isWorthIt && dangers.some(isSign)) ? [{ valuation, rank: isVague ? 1 : 0 }] : [];
  });
  return candidates.sort((a, b) => b.rank - a.rank || b.valuation.tells - a.valuation.tells)[0]?.valuation;
}
