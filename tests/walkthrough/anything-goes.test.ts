import { describe, expect, it } from 'vitest';
import { walkFacts } from '#knowledge/checklist-facts.ts';
import { type ChecklistId, checklists } from '#knowledge/checklists.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { enter } from '#walkthrough/replay.ts';
import { newWalk, type Walk } from '#walkthrough/walk.ts';
import type { WalkEvent } from '#walkthrough/walk-event.ts';
import { walkList } from '#walkthrough/walk-list.ts';
import { waitsFor } from '#walkthrough/way-free.ts';
import { event, happenings, type Role, roles } from './crew.ts';
import { asOf, honestAnswer, honestWalk, siteCrew, whoCan } from './honest-walk.ts';
import { secondOpinion } from './oracle.ts';

/** A small generator of chance that gives the same run every time. */
function dice(seed: number) {
  let state = seed;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    chance: (share: number) => next() < share,
    below: (count: number) => Math.floor(next() * count),
    oneOf: <Item>(items: readonly Item[]): Item => items[Math.floor(next() * items.length)] as Item,
  };
}

type Dice = ReturnType<typeof dice>;

/** An answer that is wrong in some way: it stops the job, is out of range, half said, or nonsense. */
function wrongAnswer(walk: Walk, listed: ListedStep, { oneOf, chance }: Dice): unknown {
  const value: Record<string, string | number | boolean> = {
    ...honestAnswer(walk, listed, { 'inside-look': 'yes' }).value,
  };
  for (const part of listed.parts) {
    if (part.kind === 'choice') value[part.id] = oneOf(part.options).id;
    if (part.kind === 'number' && chance(0.5)) value[part.id] = oneOf([-1, 0, 1e6]);
    if (part.kind === 'tester-proof') value[part.id] = oneOf<string | number>([0, 120, 'proving-unit']);
    if (chance(0.1)) delete value[part.id];
  }
  return oneOf<unknown>([value, value, value, {}, null, 'yes', { nonsense: 1 }, [], 7]);
}

const sites: readonly Role[] = ['apprentice', 'qualified', 'electrician', 'lead', 'carded', 'expired'];

function jobEvent(walk: Walk, { oneOf }: Dice): Pick<WalkEvent, 'what' | 'value'> {
  const fact = oneOf(Object.keys(walkFacts) as (keyof typeof walkFacts)[]);
  return oneOf([
    { what: 'paused', value: null },
    { what: 'resumed', value: null },
    { what: 'resumed', value: null },
    { what: 'joined', value: null },
    { what: 'left', value: oneOf<unknown>([null, { who: oneOf(walk.people)?.who ?? 'nobody' }]) },
    { what: 'fact', value: { fact, value: oneOf([...walkFacts[fact].options.map(({ id }) => id), 'unknown', 'odd']) } },
    { what: 'box', value: { id: oneOf(['attic-box', 'fan']), kind: oneOf(['junction-box', 'odd']), name: 'box' } },
    { what: oneOf(happenings), value: null },
    { what: 'odd', value: null },
  ]);
}

interface Turn {
  readonly id: string;
  readonly seconds: number;
  /** The share of events that nobody honest would enter. */
  readonly wild: number;
}

function randomEvent(walk: Walk, { id, seconds, wild }: Turn, luck: Dice): WalkEvent {
  const { chance, oneOf, below } = luck;
  const role = oneOf(chance(0.7) ? sites : roles);
  if (chance(wild / 6)) return event(id, role, seconds, { step: null, ...jobEvent(walk, luck) });
  const free = walk.list.steps.filter((each) => waitsFor(walk, each) === null);
  const listed = oneOf(!chance(wild) && free.length > 0 ? free : walk.list.all);
  const honest = honestAnswer(walk, listed, { 'inside-look': 'yes' });
  const value: unknown = !chance(wild) ? honest.value : wrongAnswer(walk, listed, luck);
  const who = !chance(wild) ? (whoCan(walk, listed, honest) ?? role) : role;
  const usual = listed.step.hold ? 'signed' : 'done';
  const what = !chance(wild / 2)
    ? usual
    : oneOf(['done', 'signed', 'overridden', 'undone', 'undone', 'photo', 'noted']);
  const late = chance(0.03) ? { at: seconds - below(7200) } : {};
  const told = what === 'overridden' ? { reason: 'it will do' } : what === 'noted' ? { says: 'a note' } : value;
  return event(id, who, seconds, { what, step: listed.id, value: told, ...late });
}

/** One random day on a list, begun somewhere along an honest walk, watched by the second opinion. */
function randomDay(list: ChecklistId, { seed, events }: { seed: number; events: number }) {
  const luck = dice(seed);
  const start = walkList({ checklist: checklists[list], facts: { 'inside-look': 'yes' }, boxes: [], crew: siteCrew });
  const oracle = secondOpinion();
  const { watch } = oracle;
  const { walk } = honestWalk(start, { from: newWalk(start), most: luck.below(Math.ceil(start.count * 0.75)), watch });
  let seconds = walk.seen.size * 60;
  const wild = luck.oneOf([0.03, 0.1, 0.3, 0.6]);
  const counts = { kept: 0, refused: 0, touched: 0 };
  let last: WalkEvent | undefined;
  for (let count = 0; count < events && !walk.closed; count += 1) {
    seconds += luck.chance(0.015) ? 1800 + luck.below(70_000) : 5 + luck.below(60);
    const id = luck.chance(0.02) && last ? last.id : `${seed}-${count}`;
    const entered = randomEvent(walk, { id, seconds, wild }, luck);
    const before = asOf(walk, entered);
    const verdict = enter(walk, entered);
    watch(before, entered, verdict);
    last = entered;
    if ('refused' in verdict) counts.refused += 1;
    else counts.kept += 1;
    const touches = entered.step ? (before.list.byId.get(entered.step)?.touches ?? []) : [];
    if ('accepted' in verdict && verdict.closes && touches.length > 0) counts.touched += 1;
  }
  return { walk, oracle, counts, seconds, watch };
}

/** How many days are tried on each list. Thousands were, with the same end, when this was written. */
const days = { swap: 25, 'control-only': 25, 'duct-only': 10, 'callback-visit': 20, 'before-leaving-the-shop': 5 };

/** Lists on which boxes are opened. */
const boxes: readonly ChecklistId[] = ['swap', 'control-only', 'callback-visit'];

describe('whatever anybody enters, in whatever order', () => {
  for (const [list, count] of Object.entries(days) as [ChecklistId, number][]) {
    it(`nobody gets past a hold or a live box on the list ${list}, and the job can still be finished honestly`, () => {
      const sum = { kept: 0, refused: 0, touched: 0, closed: 0 };
      for (let seed = 1; seed <= count; seed += 1) {
        const { walk, oracle, counts, seconds, watch } = randomDay(list, { seed, events: 150 });
        sum.kept += counts.kept;
        sum.refused += counts.refused;
        sum.touched += counts.touched;
        const { stuck } = honestWalk(walk.list, { from: walk, seconds: seconds + 60, watch });
        expect(oracle.complaints, `seed ${seed}`).toEqual([]);
        expect(walk.closed === null ? stuck : [], `seed ${seed} ends here`).toEqual([]);
        if (walk.closed) sum.closed += 1;
      }
      expect(sum.closed).toBe(count);
      expect(sum.kept).toBeGreaterThan(count);
      expect(sum.refused).toBeGreaterThan(count);
      expect(sum.touched > 0).toBe(boxes.includes(list));
    }, 30_000);
  }
});
