import type { Signer } from '#knowledge/checklist-facts.ts';
import type { Verdict } from '#walkthrough/judgement.ts';
import type { ListedPart, ListedStep } from '#walkthrough/listed-step.ts';
import { passTime } from '#walkthrough/reopening.ts';
import { enter } from '#walkthrough/replay.ts';
import { maySign } from '#walkthrough/signing.ts';
import { copyOf, isClosed, newWalk, recordOf, type Walk } from '#walkthrough/walk.ts';
import type { StepValue, WalkEvent } from '#walkthrough/walk-event.ts';
import type { WalkFacts } from '#walkthrough/walk-facts.ts';
import type { WalkList } from '#walkthrough/walk-list.ts';
import { hasServed, lockIsOn, locksAreWanted, waitsFor } from '#walkthrough/way-free.ts';
import { crew, event, instant, person, type Role, roles } from './crew.ts';

/** Those who stand on the site with a lock of their own, in the order in which they are asked. */
const onSite: readonly Role[] = ['apprentice', 'qualified', 'electrician'];
const callable: readonly Role[] = [...onSite, 'renovator', 'tester'];
export const siteCrew = onSite.map(person);

interface Plan {
  readonly value: StepValue;
  readonly signers: readonly Signer[];
}

/** An answer that closes the step, as an honest crew would give it on a job like this one. */
export function honestAnswer(walk: Walk, listed: ListedStep, facts: WalkFacts): Plan {
  const value: Record<string, string | number | boolean> = {};
  let { signers } = listed;
  for (const part of listed.parts) {
    if (part.optional || (part.onlyIf && !part.onlyIf.is.includes(String(value[part.onlyIf.part])))) continue;
    if (part.kind === 'choice') {
      const fitting = part.options.filter(({ stops, byOthers }) => stops === undefined && !byOthers);
      const option = fitting.find(({ id }) => part.records && id === facts[part.records]) ?? fitting[0];
      if (option === undefined) continue;
      value[part.id] = option.id;
      signers = option.signers ?? signers;
    } else Object.assign(value, plainAnswer(walk, part));
  }
  return { value, signers };
}

function plainAnswer(walk: Walk, part: Exclude<ListedPart, { kind: 'choice' }>): StepValue {
  switch (part.kind) {
    case 'tick':
      return { [part.id]: true };
    case 'photo':
      return { [part.id]: `photo of ${part.id}` };
    case 'text':
      return { [part.id]: `words on ${part.id}` };
    case 'tester-proof':
      return { [part.id]: 'proving-unit' };
    case 'pair':
      return { [part.first.id]: 0.05, [part.second.id]: 0.049 };
    case 'number': {
      const recorded = part.leastOf ? recordOf(walk, part.leastOf.step).answer?.value[part.leastOf.part] : undefined;
      return { [part.id]: Number(recorded ?? part.least?.si ?? part.most?.si ?? 0) };
    }
  }
}

/** Somebody of the crew who can give the answer now. */
export function whoCan(walk: Walk, listed: ListedStep, { signers }: Plan): Role | undefined {
  if (listed.person) return roles.find((role) => role === listed.person?.who);
  const { step } = listed;
  const underLock =
    step.touches.length > 0 || step.treatAsLive || step.isolation || (listed.betweenLocks && !step.hold);
  const lifts = recordOf(walk, listed.id).status === 'stopped';
  return callable.find(
    (role) =>
      maySign(signers, crew[role], day) && (!underLock || lockIsOn(walk, role)) && !(lifts && role === 'apprentice'),
  );
}

const day = '2027-03-01';

export interface HonestWalk {
  readonly walk: Walk;
  readonly events: readonly WalkEvent[];
  /** Titles of what could not be done, where the walk came to a dead end. */
  readonly stuck: readonly string[];
}

interface Manner {
  /** How many steps at most. */
  readonly most?: number;
  readonly from?: Walk;
  /** The step before which it halts. */
  readonly until?: string | undefined;
  /** Seconds into the job at which the next step is done; a minute for each after that. */
  readonly seconds?: number;
  readonly watch?: (before: Walk, event: WalkEvent, verdict: Verdict) => void;
}

/** Walks a list to its close: always the first step whose way is free, by somebody who may do it. */
export function honestWalk(list: WalkList, manner: Manner = {}): HonestWalk {
  const { most = 400, from: walk = newWalk(list), watch } = manner;
  let seconds = manner.seconds ?? 0;
  const events: WalkEvent[] = [];
  for (let count = 0; count < most && !walk.closed; count += 1) {
    const next = nextEvent(walk, list.facts, seconds);
    if (next === undefined || (manner.until && next.step === manner.until)) break;
    const before = watch && asOf(walk, next);
    const verdict = enter(walk, next);
    if (before) watch?.(before, next, verdict);
    if ('refused' in verdict) throw new Error(`${next.step} by ${next.who}: ${verdict.refused}`);
    events.push(next);
    seconds += 60;
  }
  const open = walk.list.steps.filter((each) => !isClosed(walk, each.id) && !hasServed(walk, each));
  return { walk, events, stuck: open.map(({ title }) => title) };
}

/** The walk as it stands when an event comes in: a copy, with the time that has passed. */
export function asOf(walk: Walk, { enteredAt }: Pick<WalkEvent, 'enteredAt'>): Walk {
  const copy = copyOf(walk);
  passTime(copy, { milliseconds: Date.parse(enteredAt), day: enteredAt.slice(0, 10) });
  return copy;
}

function nextEvent(walk: Walk, facts: WalkFacts, seconds: number): WalkEvent | undefined {
  const id = `honest-${walk.seen.size}-${seconds}`;
  if (walk.paused) return event(id, 'qualified', seconds, { what: 'resumed', step: null });
  const now = asOf(walk, { enteredAt: instant(seconds) });
  const next = firstPossible(now, facts);
  const gone = onSite.find((role) => !walk.people.some(({ who }) => who === role));
  if (next === undefined && gone) return event(id, gone, seconds, { what: 'joined', step: null });
  const what = next?.listed.step.hold ? 'signed' : 'done';
  return next && event(id, next.role, seconds, { what, step: next.listed.id, value: next.plan.value });
}

function firstPossible(walk: Walk, facts: WalkFacts) {
  const wanted = locksAreWanted(walk);
  for (const listed of walk.list.steps) {
    const takesLockOff = listed.step.per === 'person' && !listed.step.isolation;
    if (takesLockOff && wanted) continue;
    if (isClosed(walk, listed.id) || hasServed(walk, listed) || waitsFor(walk, listed) !== null) continue;
    const plan = honestAnswer(walk, listed, facts);
    const role = whoCan(walk, listed, plan);
    if (role) return { listed, plan, role };
  }
  return undefined;
}
