import { type ChecklistId, checklists } from '#knowledge/checklists.ts';
import type { Verdict } from '#walkthrough/judgement.ts';
import { accepts, replayWalk } from '#walkthrough/replay.ts';
import type { Box, WalkEvent } from '#walkthrough/walk-event.ts';
import type { WalkFacts } from '#walkthrough/walk-facts.ts';
import { type WalkList, walkList } from '#walkthrough/walk-list.ts';
import type { WalkState } from '#walkthrough/walk-state.ts';
import { event, instant, type Role } from './crew.ts';
import { honestWalk, siteCrew } from './honest-walk.ts';

/** A plain swap: nothing unusual in the house, reached from the attic. */
export const plainHouse: WalkFacts = {
  'house-built': '1981-on',
  access: 'attic',
  'ceiling-opening': 'as-it-is',
  'rated-ceiling': 'no',
  'duct-serves': 'this-fan-only',
  'duct-ending': 'wall-hood',
  'new-hood': 'no',
  'roof-work': 'none',
  'duct-against-collar': 'same-or-larger',
  'duct-material': 'metal',
  'duct-space': 'heated-only',
  'duct-garage': 'clear-of-garage',
  'fan-role': 'bath-only',
  'fuel-appliances': 'none',
  'unit-kind': 'fan-only',
  'fan-place': 'elsewhere',
  'insulation-near': 'clear',
  'control-wanted': 'keep',
  'wiring-kind': 'copper-cable',
  'who-wires': 'crew-by-local-law',
  'assisted-housing': 'no',
};

interface Job {
  readonly list?: ChecklistId;
  readonly facts?: WalkFacts;
  readonly boxes?: readonly Box<'fan' | 'switch-box' | 'junction-box'>[];
  /** The step before which the honest part of the day ends. */
  readonly until?: string;
}

type Entry = Pick<WalkEvent, 'what'> & {
  readonly step?: string | null;
  readonly value?: unknown;
  /** Seconds since the entry before; a minute when left out. */
  readonly after?: number;
  /** Seconds before it was entered that it was done. */
  readonly late?: number;
  readonly id?: string;
};

export interface Day {
  readonly list: WalkList;
  readonly events: readonly WalkEvent[];
  /** Enters an event and says what became of it. What is refused is not kept. */
  enter(role: Role, entry: Entry): Verdict;
  /** Goes on honestly up to a step, or to the close. */
  goOn(until?: string): void;
  /** The state some seconds after the last entry. */
  state(later?: number): WalkState;
  status(step: string, later?: number): string | undefined;
}

/** A day on a job: honest up to a step, then whatever the test enters. */
export function dayOn({ list: id = 'swap', facts = plainHouse, boxes = [], until }: Job = {}): Day {
  const list = walkList({ checklist: checklists[id], facts, boxes, crew: siteCrew });
  const events = until === undefined ? [] : [...honestWalk(list, { until }).events];
  let seconds = Math.max(0, events.length - 1) * 60;
  const state = (later = 0) => replayWalk(list, events, { now: instant(seconds + later) });
  return {
    list,
    events,
    state,
    status: (step, later) => state(later).steps.get(step)?.status,
    enter(role, { what, step = null, value = null, after = 60, late = 0, id: given }) {
      seconds += after;
      const name = given ?? `${events.length}-${role}-${seconds}`;
      const entered = event(name, role, seconds, { what, step, value, at: seconds - late });
      const verdict = accepts(state(), entered, { now: entered.enteredAt });
      if ('accepted' in verdict) events.push(entered);
      return verdict;
    },
    goOn(end) {
      const { walk } = state();
      const more = honestWalk(list, { from: walk, seconds: seconds + 60, until: end }).events;
      events.push(...more);
      seconds += more.length * 60;
    },
  };
}

/** The sentence of a refusal, or that there was none. */
export const why = (verdict: Verdict): string => ('refused' in verdict ? verdict.refused : 'accepted');
