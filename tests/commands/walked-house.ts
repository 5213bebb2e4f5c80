import { onTestFinished } from 'vitest';
import type { Command } from '#chat/command.ts';
import crew from '#commands/crew.ts';
import handoff from '#commands/handoff.ts';
import job from '#commands/job.ts';
import size from '#commands/size.ts';
import swap from '#commands/swap.ts';
import { checklists } from '#knowledge/checklists.ts';
import type { NewMember } from '#store/members.ts';
import { openStore } from '#store/store.ts';
import { walkList } from '#walkthrough/walk-list.ts';
import { answer } from '../store/workbench.ts';
import { instant, crew as people } from '../walkthrough/crew.ts';
import { plainHouse } from '../walkthrough/day.ts';
import { honestWalk } from '../walkthrough/honest-walk.ts';
import { done } from './at-a-desk.ts';

const commands: readonly Command[] = [swap, handoff, crew, job, size];
const atWork = ['lead', 'apprentice', 'qualified', 'electrician', 'renovator', 'tester'] as const;

/**
 * An invented house whose fan was swapped by an invented crew on 1 March 2027, as it stands in the records: the list walked
 * up to a step, or to its close, at one minute a step.
 */
export function walkedHouse(
  {
    until,
    facts = plainHouse,
    zone = 'America/Denver',
  }: { until?: string; facts?: typeof plainHouse; zone?: string } = {},
  whenOver: (close: () => void) => void = onTestFinished,
) {
  let now = new Date(instant(-3600));
  const whole = openStore(':memory:', { now: () => now });
  whenOver(() => whole.close());
  const store = whole.scoped('crew');
  for (const who of atWork) store.saveMember({ who, ...people[who] } as NewMember, { who: 'office' });
  const speaking = { store, commands, who: 'office' };
  done(crew, 'set', { 'time-zone': zone }, speaking);
  done(job, 'open', { name: '14 Maple St' }, speaking);
  store.addFacts(1, [
    answer('room-length', '9 ft', { who: 'lead' }),
    answer('room-width', '6 ft', { who: 'lead' }),
    answer('ceiling-height', '8 ft', { who: 'lead', how: 'told' }),
    answer('airflow-needed', '50 cfm', { who: 'lead', how: 'told' }),
    answer('door-gap', '3/4 in', { who: 'apprentice' }),
    answer('dwelling-leakage', 'don’t know', { who: 'apprentice', how: 'unknown', value: null }),
  ]);
  store.addWalkEvent(1, {
    id: 'begun',
    list: 'swap',
    step: null,
    what: 'started',
    value: { facts: Object.fromEntries(Object.entries(facts).map(([id, said]) => [id, [said].flat()])) },
    who: 'lead',
  });
  const list = walkList({ checklist: checklists.swap, facts, boxes: [], crew: [] });
  const { events } = honestWalk(list, { until });
  for (const { standing: _, enteredAt, at, ...event } of events) {
    now = new Date(enteredAt);
    store.addWalkEvent(1, { ...event, list: 'swap', at: new Date(at) });
  }
  const later = (minutes: number) => {
    now = new Date(now.getTime() + minutes * 60_000);
  };
  return {
    store,
    later,
    say: (action: string, options: Readonly<Record<string, string>>) => {
      later(1);
      return done(swap, action, options, speaking);
    },
    papers: () => done(handoff, '', {}, speaking).papers ?? [],
    status: (who: string) => done(swap, 'status', { as: who }, speaking),
  };
}
