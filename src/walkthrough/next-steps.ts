import type { ListedStep } from './listed-step.ts';
import { eitherOf, isApprentice, maySign } from './signing.ts';
import { recordOf } from './walk.ts';
import type { Standing } from './walk-event.ts';
import type { WalkState } from './walk-state.ts';
import { lockIsOn } from './way-free.ts';

/** Who is asking, and the day it is where the crew works. */
export interface Asking {
  readonly who: string;
  readonly standing: Standing;
  readonly day: string;
}

export interface NextSteps {
  /** The stage the job is in: that of the first step that is not done. `null` when nothing is left. */
  readonly stage: string | null;
  /** Steps this person can do now, in order, those of the stage first. */
  readonly yours: readonly ListedStep[];
  /** Steps whose way is free, that wait for somebody else. */
  readonly others: readonly { readonly listed: ListedStep; readonly waitsFor: string }[];
}

/** What comes next for one person. */
export function nextSteps(state: WalkState, { who, standing, day }: Asking): NextSteps {
  const open = [...state.steps.values()].filter(
    ({ status, waitsFor }) => ['open', 'lapsed', 'stopped'].includes(status) && waitsFor === null,
  );
  const stage = firstOpenStage(state);
  const free = open.map(({ listed }) => listed);
  const yours = free.filter((listed) => isFor(state, listed, { who, standing, day }));
  return {
    stage,
    yours: [...yours.filter(({ step }) => step.stage === stage), ...yours.filter(({ step }) => step.stage !== stage)],
    others: free
      .filter((listed) => !yours.includes(listed))
      .map((listed) => ({
        listed,
        waitsFor: listed.person?.name ?? eitherOf(listed.signers, state.list.checklist),
      })),
  };
}

function firstOpenStage(state: WalkState): string | null {
  const open = [...state.steps.values()].find(({ status }) => !['closed', 'skipped', 'served'].includes(status));
  return open?.listed.step.stage ?? null;
}

function isFor({ walk }: WalkState, listed: ListedStep, { who, standing, day }: Asking): boolean {
  if (listed.person) return listed.person.who === who;
  if (recordOf(walk, listed.id).status === 'stopped' && isApprentice(standing)) return false;
  const special = listed.parts.flatMap((part) =>
    part.kind === 'choice' ? part.options.flatMap(({ signers }) => signers ?? []) : [],
  );
  if (!maySign([...listed.signers, ...special], standing, day)) return false;
  return !(listed.betweenLocks && !listed.step.hold) || lockIsOn(walk, who);
}

/** What a phone shows one person: the ticks of the stage together, everything else one at a time. */
export interface StageScreen {
  readonly stage: string | null;
  /** Steps that need nothing but a tick, to be ticked off together. */
  readonly ticks: readonly ListedStep[];
  /** The next step with an answer or a signature. */
  readonly step: ListedStep | null;
  /** Who is waited for, where this person can do nothing. */
  readonly waitsFor: string | null;
}

export function stageScreen(state: WalkState, asking: Asking): StageScreen {
  const { stage, yours, others } = nextSteps(state, asking);
  const here = yours.filter(({ step }) => step.stage === stage);
  const isTick = ({ step, parts }: ListedStep) =>
    !step.hold && parts.length > 0 && parts.every(({ kind }) => kind === 'tick');
  return {
    stage,
    ticks: here.filter(isTick),
    step: here.find((listed) => !isTick(listed)) ?? yours.find((listed) => !isTick(listed)) ?? null,
    waitsFor: yours.length > 0 ? null : (others[0]?.waitsFor ?? null),
  };
}
