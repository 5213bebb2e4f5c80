import type { ListedStep } from './listed-step.ts';
import { eitherOf } from './signing.ts';
import { isClosed, recordOf, type Walk, wordsOf } from './walk.ts';

/** Whether a step keeps everything behind it shut: a hold that nobody has signed, or an answer that stops the job. */
export function isBarrier(walk: Walk, { id, step }: ListedStep): boolean {
  const { status, lapse } = recordOf(walk, id);
  if (status === 'stopped') return true;
  if (!step.hold || status === 'closed') return false;
  // A proof that time has ended shuts only what needs it: duct work goes on while the box waits to be tested again.
  return !(status === 'lapsed' && lapse === 'expired' && step.isolation);
}

/** The first step that keeps everything behind it shut. */
export const barrier = (walk: Walk): ListedStep | undefined => walk.list.steps.find((each) => isBarrier(walk, each));

/** Whether somebody's own lock hangs on the breaker. */
export const lockIsOn = (walk: Walk, who: string): boolean =>
  walk.list.steps.some(
    ({ id, step, person }) => step.per === 'person' && step.isolation && person?.who === who && isClosed(walk, id),
  );

/** Whether a step asks for nothing more: closed, or a lock to come off that does not hang there. */
function isSatisfied(walk: Walk, listed: ListedStep): boolean {
  if (isClosed(walk, listed.id)) return true;
  const { step, person } = listed;
  return step.per === 'person' && !step.isolation && person !== null && !lockIsOn(walk, person.who);
}

/** Whether anything is left to do that stands under the locks, or a box that was never proven dead. */
export const locksAreWanted = (walk: Walk): boolean =>
  walk.list.steps.some(({ id, step, touches, betweenLocks }) => {
    if (isClosed(walk, id)) return false;
    return step.isolation ? keepsShut(walk, id, step.hold) : touches.length > 0 || (betweenLocks && !step.hold);
  });

function keepsShut(walk: Walk, id: string, hold: boolean): boolean {
  const { status, lapse } = recordOf(walk, id);
  return status === 'stopped' || (hold && !(status === 'lapsed' && lapse === 'expired'));
}

/** Whether locking and proving have served: only time or power has ended them, and nothing is left to do under them. */
export function hasServed(walk: Walk, { id, step }: ListedStep, wanted = locksAreWanted(walk)): boolean {
  if (!step.isolation || wanted) return false;
  const { status, lapse } = recordOf(walk, id);
  return step.hold ? lapse === 'expired' : status !== 'stopped';
}

/** Boxes whose proof of being dead is not current. */
const notProvenDead = (walk: Walk, { touches }: ListedStep): readonly string[] =>
  touches.filter(
    (box) =>
      !walk.list.steps.some(
        ({ id, step, box: its }) => step.proves && its?.id === box && recordOf(walk, id).status === 'closed',
      ),
  );

const signersOf = (walk: Walk, { signers }: ListedStep): string => eitherOf(signers, walk.list.checklist);

/** What a step waits for, whoever does it, in one sentence; `null` when its way is free. */
export function waitsFor(walk: Walk, listed: ListedStep, first = barrier(walk)): string | null {
  const told = wordsOf(walk);
  if (first && first.index < listed.index) {
    const { status, because } = recordOf(walk, first.id);
    return status === 'stopped'
      ? told.stoppedAt(first.title, because ?? '')
      : told.holdFirst(first.title, signersOf(walk, first));
  }
  const need = listed.needs
    .map((id) => walk.list.byId.get(id))
    .find((needed) => needed !== undefined && !isSatisfied(walk, needed));
  if (need) return told.first(need.title);
  const live = notProvenDead(walk, listed)[0];
  if (live === undefined) return listed.step.closes ? leftToDo(walk) : null;
  const name = walk.list.boxes.find(({ id }) => id === live)?.name ?? live;
  return told.handsOff(name);
}

function leftToDo(walk: Walk): string | null {
  const open = stillOpen(walk).map(({ title }) => title);
  if (open.length === 0) return null;
  return wordsOf(walk).leftToDo(open.length, open.slice(0, 3).join('; '), open.length > 3);
}

/** Every step that keeps the list from being closed. */
function stillOpen(walk: Walk): readonly ListedStep[] {
  const wanted = locksAreWanted(walk);
  return walk.list.steps.filter(
    (each) => !each.step.closes && !isSatisfied(walk, each) && !hasServed(walk, each, wanted),
  );
}
