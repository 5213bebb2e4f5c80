import { beforeAll, describe, expect, it } from 'vitest';
import type { Checklist } from '#knowledge/checklist.ts';
import { checklists } from '#knowledge/checklists.ts';
import { enter } from '#walkthrough/replay.ts';
import { copyOf, newWalk, recordOf, type Walk } from '#walkthrough/walk.ts';
import type { WalkEvent } from '#walkthrough/walk-event.ts';
import { walkList } from '#walkthrough/walk-list.ts';
import { event, person, type Role } from './crew.ts';
import { honestAnswer } from './honest-walk.ts';

/** Locking, proving, working, signing, power and close: the steps of the swap on which lives hang, as a list of their own. */
const kept = [
  'find-breaker',
  'lock-on',
  'breaker-locked',
  'open-cover',
  'prove-tester-before',
  'test-dead-controls-on',
  'test-dead-controls-off',
  'prove-tester-after',
  'sign-dead',
  'strip-fan',
  'ground-first',
  'wiring-signed',
  'ready-for-power',
  'lock-off',
  'power-on',
  'close-job',
];

const core: Checklist = {
  ...checklists.swap,
  steps: checklists.swap.steps
    .filter(({ id }) => kept.includes(id))
    .map((step) => ({ ...step, needs: step.needs.filter((need) => kept.includes(need)), stricter: [] })),
};

/**
 * What a state comes down to: where each step stands, who is there, and whether the job is paused. Open and open again are
 * one, but for the holds of locking and proving, where time alone shuts less than a change does.
 */
const keyOf = (walk: Walk): string =>
  [
    walk.list.steps
      .map(({ id, step }) => {
        const { status, lapse } = recordOf(walk, id);
        if (status === 'closed' || status === 'stopped') return status[0];
        return step.hold && step.isolation && lapse === 'expired' ? 'e' : 'o';
      })
      .join(''),
    walk.people.map(({ who }) => who),
    walk.paused ? 'paused' : '',
  ].join('|');

/** Everything that can be entered in a state: every step answered well, answered badly and taken back, by every person. */
/** What can be tried beside answering and taking back. */
interface Trouble {
  /** Steps at which somebody stops the job. */
  readonly stops: readonly string[];
  readonly people: boolean;
}

function* moves(
  walk: Walk,
  { stops, people }: Trouble,
): Generator<Omit<WalkEvent, 'id' | 'at' | 'enteredAt' | 'standing'> & { who: Role }> {
  for (const listed of walk.list.steps) {
    const { value } = honestAnswer(walk, listed, {});
    const step = listed.id;
    for (const who of ['qualified', 'apprentice'] as const) {
      yield { what: listed.step.hold ? 'signed' : 'done', step, value, who };
      yield { what: 'undone', step, value: null, who };
    }
    const stop = listed.parts.flatMap((part) =>
      part.kind === 'choice' ? part.options.filter(({ stops }) => stops).map(({ id }) => ({ [part.id]: id })) : [],
    )[0];
    if (stop && stops.includes(listed.step.id)) yield { what: 'done', step, value: stop, who: 'apprentice' };
    yield { what: 'overridden', step, value: { reason: 'it will do' }, who: 'qualified' };
  }
  yield { what: 'paused', step: null, value: null, who: 'apprentice' };
  yield { what: 'resumed', step: null, value: null, who: 'qualified' };
  if (!people) return;
  yield { what: 'joined', step: null, value: null, who: 'apprentice' };
  yield { what: 'left', step: null, value: null, who: 'apprentice' };
}

interface Reached {
  readonly walk: Walk;
  readonly to: string[];
}

/** Every state that any order of events leads to. */
function everyState(trouble: Trouble): ReadonlyMap<string, Reached> {
  const start = newWalk(walkList({ checklist: core, facts: {}, boxes: [], crew: [person('qualified')] }));
  const states = new Map<string, Reached>([[keyOf(start), { walk: start, to: [] }]]);
  for (const [from, { walk, to }] of states) {
    let next = copyOf(walk);
    for (const { what, step, value, who } of moves(walk, trouble)) {
      const entered = event(`${what} ${step} ${who} ${next.seen.size}`, who, 60, { what, step, value });
      const verdict = enter(next, entered);
      if ('refused' in verdict) continue;
      check(walk, entered, verdict.closes);
      const key = keyOf(next);
      if (key !== from) {
        to.push(key);
        if (!states.has(key)) states.set(key, { walk: next, to: [] });
      }
      next = copyOf(walk);
    }
  }
  return states;
}

const proof = [
  'prove-tester-before',
  'test-dead-controls-on',
  'test-dead-controls-off',
  'prove-tester-after',
  'sign-dead',
];
const hands = ['strip-fan', 'ground-first'];

function check(walk: Walk, { what, step, who }: WalkEvent, closes: boolean): void {
  const listed = step === null ? undefined : walk.list.byId.get(step);
  if (!listed || !closes) return;
  const already = recordOf(walk, listed.id).status === 'closed';
  if (what === 'signed') expect(who, listed.id).not.toBe('apprentice');
  expect(what, `${listed.id} passed over`).not.toBe('overridden');
  if (already) return;
  const status = (id: string) => recordOf(walk, id).status;
  if (hands.includes(listed.step.id))
    expect(proof.map((link) => status(`${link}@fan`))).toEqual(proof.map(() => 'closed'));
  const holds = walk.list.steps.filter((each) => each.step.hold && each.index < listed.index);
  for (const hold of holds) {
    const { lapse } = recordOf(walk, hold.id);
    const fine = status(hold.id) === 'closed' || (status(hold.id) === 'lapsed' && lapse === 'expired');
    expect(fine, `${listed.id} got past ${hold.id}`).toBe(true);
  }
}

const troubles: readonly [string, Trouble][] = [
  ['with people coming and going', { stops: [], people: true }],
  [
    'with an apprentice stopping the job',
    { stops: ['find-breaker', 'test-dead-controls-on', 'ground-first', 'power-on'], people: false },
  ],
];

describe.each(troubles)('every order of events on the steps where lives hang, %s', (_, trouble) => {
  let states: ReadonlyMap<string, Reached> = new Map();
  beforeAll(() => {
    states = everyState(trouble);
  }, 30_000);

  it('leads to no state in which a hand touches a box that is not proven dead, or a hold is passed', () => {
    expect(states.size).toBeGreaterThan(500);
    const hands = [...states.values()].filter(({ walk }) => recordOf(walk, 'strip-fan').status === 'closed');
    expect(hands.length).toBeGreaterThan(100);
  });

  it('leaves no state from which the job cannot be closed', () => {
    const from = new Map<string, string[]>();
    for (const [key, { to }] of states) for (const next of to) from.set(next, [...(from.get(next) ?? []), key]);
    const closing = [...states].filter(([, { walk }]) => walk.closed).map(([key]) => key);
    const canClose = new Set(closing);
    for (const key of canClose) for (const before of from.get(key) ?? []) canClose.add(before);
    expect(closing.length).toBeGreaterThan(0);
    expect([...states.keys()].filter((key) => !canClose.has(key))).toEqual([]);
  });
});
