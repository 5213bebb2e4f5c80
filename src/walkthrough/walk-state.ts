import type { Signer } from '#knowledge/checklist-facts.ts';
import { type DeadProof, deadProofs } from './dead-proofs.ts';
import type { OutOfRange } from './evidence.ts';
import type { ListedStep } from './listed-step.ts';
import {
  type Answer,
  type Correction,
  type FactEntry,
  type Note,
  type Refusal,
  recordOf,
  type StepRecord,
  type Walk,
} from './walk.ts';
import type { Person } from './walk-event.ts';
import type { WalkFacts } from './walk-facts.ts';
import type { WalkList } from './walk-list.ts';
import { barrier, hasServed, isBarrier, locksAreWanted, waitsFor } from './way-free.ts';

/** A step as it stands. */
export interface StepView extends Omit<StepRecord, 'status'> {
  readonly listed: ListedStep;
  /**
   * `blocked`: open, and something else comes first. `stopped`: its answer stopped the job. `lapsed`: it was closed and is
   * open again. `served`: locking and proving that ended when the power came back on purpose.
   */
  readonly status: 'open' | 'blocked' | 'closed' | 'skipped' | 'stopped' | 'lapsed' | 'served';
  /** What comes first, in one sentence; `null` when the way is free or the step is closed. */
  readonly waitsFor: string | null;
}

export interface OpenHold {
  readonly listed: ListedStep;
  readonly waitsFor: readonly Signer[];
  /** Whether it could be signed now. */
  readonly reached: boolean;
}

export interface WalkState {
  /** The list as it is now: facts recorded on the way may have changed it. */
  readonly list: WalkList;
  readonly now: string;
  readonly steps: ReadonlyMap<string, StepView>;
  /** "18 of 71, next hold: …" */
  readonly progress: { readonly done: number; readonly of: number; readonly nextHold: ListedStep | null };
  readonly holds: readonly OpenHold[];
  readonly stops: readonly { readonly listed: ListedStep; readonly says: string; readonly answer: Answer }[];
  readonly outOfRange: readonly (OutOfRange & { readonly listed: ListedStep; readonly passed: boolean })[];
  readonly advice: readonly { readonly listed: ListedStep; readonly says: string }[];
  readonly deadProofs: ReadonlyMap<string, DeadProof>;
  readonly facts: WalkFacts;
  /** Facts somebody reported that count only once a lead confirms them. */
  readonly reported: readonly FactEntry[];
  readonly people: readonly Person[];
  readonly paused: Walk['paused'];
  readonly closed: Answer | null;
  readonly corrections: readonly Correction[];
  readonly notes: readonly Note[];
  readonly refused: readonly Refusal[];
  /** Milliseconds between events: at work, and away (paused, or a long silence). */
  readonly spent: { readonly working: number; readonly away: number };
  /** What the next event is judged against. */
  readonly walk: Walk;
}

/** The state of a walk as everyone may read it. */
export function walkState(walk: Walk, now: string): WalkState {
  const { list } = walk;
  const at = { first: barrier(walk), wanted: locksAreWanted(walk) };
  const steps = new Map(list.steps.map((listed) => [listed.id, viewOf(walk, listed, at)]));
  const views = [...steps.values()];
  const open = views.filter(
    ({ listed, status }) => listed.step.hold && (isBarrier(walk, listed) || status === 'lapsed'),
  );
  return {
    list,
    now,
    steps,
    progress: {
      done: views.filter(({ status }) => isDone(status)).length,
      of: list.count,
      nextHold: open[0]?.listed ?? null,
    },
    holds: open.map(({ listed, waitsFor: waiting }) => ({
      listed,
      waitsFor: listed.signers,
      reached: waiting === null,
    })),
    stops: views.flatMap(({ status, listed, because, answer }) =>
      status === 'stopped' && answer ? [{ listed, says: because ?? '', answer }] : [],
    ),
    outOfRange: views.flatMap(({ listed, outside, status }) =>
      outside.map((each) => ({ ...each, listed, passed: status === 'skipped' })),
    ),
    advice: views.flatMap(({ listed, advice }) => advice.map((says) => ({ listed, says }))),
    deadProofs: deadProofs(walk),
    facts: list.facts,
    reported: reportedOnly(walk),
    people: walk.people,
    paused: walk.paused,
    closed: walk.closed,
    corrections: walk.corrections,
    notes: walk.notes,
    refused: walk.refused,
    spent: { working: walk.working, away: walk.away },
    walk,
  };
}

const isDone = (status: StepView['status']): boolean =>
  status === 'closed' || status === 'skipped' || status === 'served';

interface Standing {
  readonly first: ListedStep | undefined;
  readonly wanted: boolean;
}

function viewOf(walk: Walk, listed: ListedStep, { first, wanted }: Standing): StepView {
  const { status, answer, because, lapse, history, photos, outside, advice } = recordOf(walk, listed.id);
  const done = status === 'closed' || status === 'skipped';
  const served = !done && hasServed(walk, listed, wanted);
  const waiting = done || served ? null : waitsFor(walk, listed, first);
  return {
    listed,
    status: served ? 'served' : status === 'open' && waiting !== null ? 'blocked' : status,
    waitsFor: waiting,
    answer,
    because,
    lapse,
    history,
    photos,
    outside,
    advice,
  };
}

/** The newest word on each fact that does not count yet. */
function reportedOnly({ facts, list }: Walk): FactEntry[] {
  const newest = new Map(facts.map((entry) => [entry.fact, entry]));
  const specs: Readonly<Record<string, { readonly safe: readonly string[] }>> = list.checklist.facts;
  return [...newest.values()].filter(
    ({ fact, value, confirmed, confirmedBy }) =>
      !confirmed &&
      confirmedBy === null &&
      specs[fact]?.safe.includes(value) &&
      (list.facts[fact] ?? 'unknown') === 'unknown',
  );
}
