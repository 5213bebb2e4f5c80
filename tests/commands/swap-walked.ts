import type { Desk } from '#chat/command.ts';
import { enter } from '#walkthrough/replay.ts';
import type { WalkEvent } from '#walkthrough/walk-event.ts';
import { walkState } from '#walkthrough/walk-state.ts';
import { nextFor } from '../../commands/workings/swap-steps.ts';
import { walkerOf, walkOn } from '../../commands/workings/swap-walk.ts';
import { honestAnswer } from '../walkthrough/honest-walk.ts';

/** What an invented crew says at some steps where it is not the plainest answer. */
export type Instead = Readonly<Record<string, Readonly<Record<string, string | number | boolean>>>>;

/** Walks the list of the first job up to a step, the first free one each time, by one person who may sign everything. */
export function walkedTo(desk: Desk, as: string, until: string, instead: Instead = {}): void {
  const walker = walkerOf(desk, as);
  const open = walkOn(desk, 1, 'swap');
  if ('rejected' in walker || !open) throw new Error('nobody of that name, or no list');
  const { who, standing } = walker.value;
  const { now } = open.clock;
  const { walk } = open.state;
  const events: WalkEvent[] = [];
  for (;;) {
    const state = walkState(walk, now);
    const listed = nextFor({ ...open, state }, walker.value);
    if (!listed || events.length > 300) throw new Error(`${until} was never reached`);
    if (listed.step.id === until) break;
    const value = { ...honestAnswer(walk, listed, state.facts).value, ...instead[listed.step.id] };
    const what = listed.step.hold ? 'signed' : 'done';
    const id = `walked-${open.events.length + events.length}`;
    const event = { id, step: listed.id, what, value, who, standing, at: now, enteredAt: now };
    const verdict = enter(walk, event);
    if ('refused' in verdict) throw new Error(`${listed.title}: ${verdict.refused}`);
    events.push(event);
  }
  desk.store.addWalkEvents(
    1,
    events.map(({ id, step, what, value }) => ({ id, step, what, value, who, list: 'swap' })),
  );
}
