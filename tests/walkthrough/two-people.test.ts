import fc from 'fast-check';
import { expect, it } from 'vitest';
import { accepts, replayWalk } from '#walkthrough/replay.ts';
import type { WalkEvent } from '#walkthrough/walk-event.ts';
import type { WalkState } from '#walkthrough/walk-state.ts';
import { event, instant } from './crew.ts';
import { dayOn } from './day.ts';
import { honestAnswer } from './honest-walk.ts';

const day = dayOn({ until: 'duct-clear' });
const start = day.state();
const { walk } = start;

/** Steps of the duct that hang on nothing but the holds before them. */
const duct = walk.list.steps.filter(({ step }) => step.stage === 'duct' && !step.hold);
const half = Math.ceil(duct.length / 2);
const shares = { apprentice: duct.slice(0, half), qualified: duct.slice(half) } as const;

const share = (who: keyof typeof shares): WalkEvent[] =>
  shares[who].flatMap((listed, index) => {
    const step = listed.id;
    const { value } = honestAnswer(walk, listed, {});
    return [
      event(`${who}-photo-${index}`, who, 4000, { what: 'photo', step, value: { reference: `${who} ${index}` } }),
      event(`${who}-${index}`, who, 4000, { what: 'done', step, value }),
    ];
  });

/** Where the steps stand, without the order in which that came about. */
const where = (state: WalkState) =>
  [...state.steps.values()].map(({ listed, status, answer, photos, waitsFor }) => [
    listed.id,
    status,
    answer?.value,
    answer?.who,
    photos,
    waitsFor,
  ]);

it('two people on one list end at the same state, in whatever order their entries arrive', () => {
  const [ben, cleo] = [share('apprentice'), share('qualified')];
  const inTurn = replayWalk(day.list, [...day.events, ...ben, ...cleo], { now: instant(4000) });
  expect(inTurn.refused).toEqual([]);
  fc.assert(
    fc.property(fc.array(fc.boolean(), { minLength: ben.length + cleo.length, maxLength: 80 }), (turns) => {
      const queues: [WalkEvent[], WalkEvent[]] = [[...ben], [...cleo]];
      const mixed = turns.flatMap((first) => queues[first ? 0 : 1].shift() ?? queues[first ? 1 : 0].shift() ?? []);
      const state = replayWalk(day.list, [...day.events, ...mixed], { now: instant(4000) });
      expect(where(state)).toEqual(where(inTurn));
    }),
    { seed: 1, numRuns: 200 },
  );
});

it('what a button promises is what the records then say', () => {
  const offered = fc.constantFrom(...share('apprentice'), ...share('qualified'));
  fc.assert(
    fc.property(fc.array(offered, { maxLength: 15 }), (events) => {
      const kept: WalkEvent[] = [...day.events];
      for (const each of events) {
        const state = replayWalk(day.list, kept, { now: instant(4000) });
        const before = JSON.stringify(where(state));
        const verdict = accepts(state, each, { now: instant(4000) });
        expect(JSON.stringify(where(state))).toBe(before);
        const after = replayWalk(day.list, [...kept, each], { now: instant(4000) });
        expect(after.refused.length === 0).toBe('accepted' in verdict);
        if ('accepted' in verdict) kept.push(each);
      }
    }),
    { seed: 1, numRuns: 8 },
  );
});

it('of two who answer the same step at once the first counts and the second sees who was first', () => {
  const step = 'slope';
  const first = event('first', 'apprentice', 4000, { what: 'done', step, value: { fall: 0.02 } });
  const second = event('second', 'qualified', 4000, { what: 'done', step, value: { fall: 0.02 } });
  const other = event('other', 'qualified', 4000, { what: 'done', step, value: { fall: 0.015 } });
  const same = replayWalk(day.list, [...day.events, first, second], { now: instant(4000) });
  expect(same.steps.get(step)?.answer?.who).toBe('apprentice');
  expect(same.corrections).toEqual([]);
  const changed = replayWalk(day.list, [...day.events, first, other], { now: instant(4000) });
  expect(changed.corrections.map(({ before, after }) => [before.name, after.name])).toEqual([['Ben', 'Cleo']]);
});
