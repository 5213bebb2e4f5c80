import { judgeAnswer } from './answering.ts';
import { jobEvents } from './job-events.ts';
import { type Judgement, type Moment, refused, type Verdict } from './judgement.ts';
import { passTime } from './reopening.ts';
import { isStranger } from './signing.ts';
import { judgeOverriding, judgeUndoing } from './undoing.ts';
import { copyOf, newWalk, type Walk, wordsOf } from './walk.ts';
import type { WalkEvent } from './walk-event.ts';
import type { WalkList } from './walk-list.ts';
import { type WalkState, walkState } from './walk-state.ts';

export interface WalkClock {
  /** The moment the walk is looked at, as an ISO instant. */
  readonly now: string;
  /** The day of an instant where the crew works, such as 2027-03-31. The day in UTC where it is not given. */
  readonly dayOf?: ((instant: string) => string) | undefined;
}

const utcDay = (instant: string): string => instant.slice(0, 10);

/** What still may happen to a list that is closed. */
const afterwards = ['noted', 'photo', 'undone'];

/**
 * The state a list is in after everything that happened, at the moment given. Every event is judged as it was when it was
 * entered; those that do not count are kept apart with the reason, so that nothing gets past a hold by way of the records.
 */
export function replayWalk(
  list: WalkList,
  events: readonly WalkEvent[],
  { now, dayOf = utcDay }: WalkClock,
): WalkState {
  const walk = newWalk(list);
  for (const event of events) enter(walk, event, dayOf);
  passTime(walk, { milliseconds: Date.parse(now), day: dayOf(now) });
  return walkState(walk, now);
}

/** Whether an event would count if it were entered now: what a button or a typed answer is checked with. */
export function accepts(
  state: WalkState,
  event: Omit<WalkEvent, 'enteredAt'> & { readonly enteredAt?: string },
  { now, dayOf = utcDay }: WalkClock,
): Verdict {
  const walk = copyOf(state.walk);
  const moment = momentOf({ ...event, enteredAt: event.enteredAt ?? now }, dayOf);
  passTime(walk, moment);
  const judgement = judge(walk, moment);
  return 'refused' in judgement ? judgement : judgement.verdict;
}

/** Enters one event: it changes the walk where it counts, and is kept apart with the reason where it does not. */
export function enter(walk: Walk, event: WalkEvent, dayOf = utcDay): Verdict {
  const moment = momentOf(event, dayOf);
  passTime(walk, moment);
  const judgement = judge(walk, moment);
  if ('refused' in judgement) {
    walk.refused.push({ event, because: judgement.refused });
    return judgement;
  }
  keep(walk, moment, judgement);
  return judgement.verdict;
}

const momentOf = (event: WalkEvent, dayOf: (instant: string) => string): Moment => ({
  event,
  milliseconds: Date.parse(event.enteredAt),
  day: dayOf(event.enteredAt),
});

function judge(walk: Walk, moment: Moment): Judgement {
  const { event } = moment;
  const told = wordsOf(walk);
  const before = walk.seen.get(event.id);
  if (before !== undefined) {
    return before === fingerprint(event)
      ? { verdict: { accepted: true, closes: false, says: null }, change: () => {} }
      : refused(told.noSuchEntry);
  }
  if (!Number.isFinite(moment.milliseconds) || !Number.isFinite(Date.parse(event.at))) {
    return refused(told.timeUnread);
  }
  if (isStranger(event.standing)) return refused(told.stranger);
  if (walk.closed && !afterwards.includes(event.what)) return refused(told.listClosed);
  const onJob = jobEvents[event.what];
  if (onJob && Object.hasOwn(jobEvents, event.what)) return onJob(walk, moment);
  const listed = event.step === null ? undefined : walk.list.byId.get(event.step);
  if (listed === undefined) return refused(told.notListed);
  switch (event.what) {
    case 'done':
    case 'signed':
      return judgeAnswer(walk, listed, moment);
    case 'overridden':
      return judgeOverriding(walk, listed, moment);
    case 'undone':
      return walk.closed && !listed.step.closes ? refused(told.listClosed) : judgeUndoing(walk, listed, moment);
    default:
      return refused(told.noSuchKind);
  }
}

const fingerprint = ({ what, step, who, value }: WalkEvent): string => JSON.stringify([what, step, who, value]);

function keep(walk: Walk, { event, milliseconds }: Moment, judgement: Exclude<Judgement, { refused: string }>): void {
  if (walk.seen.has(event.id)) return;
  walk.seen.set(event.id, fingerprint(event));
  if (walk.lastEvent !== null) {
    const passed = Math.max(0, milliseconds - walk.lastEvent);
    const resting = walk.paused !== null || passed > walk.list.checklist.rules.idle.milliseconds;
    if (resting) walk.away += passed;
    else walk.working += passed;
  }
  walk.firstEvent ??= milliseconds;
  walk.lastEvent = Math.max(walk.lastEvent ?? milliseconds, milliseconds);
  judgement.change(walk);
  if (walk.people.some(({ who }) => who === event.who)) walk.lastOnSite = walk.lastEvent;
}
