import type { Signer } from '#knowledge/checklist-facts.ts';
import { closing, type Given as GivenAnswer, keptOpen, stopping } from './closing.ts';
import { type Judged, judged } from './evidence.ts';
import { accepted, type Judgement, type Moment, refused, sameAgain } from './judgement.ts';
import type { ListedStep } from './listed-step.ts';
import { eitherOf, isApprentice, maySign } from './signing.ts';
import { isClosed, recordOf, standingPhotos, type Walk, wordsOf } from './walk.ts';
import { type StepValue, stepValue } from './walk-event.ts';
import { lockIsOn, waitsFor } from './way-free.ts';

/** `done` and `signed`: an answer to a step. */
export function judgeAnswer(walk: Walk, listed: ListedStep, moment: Moment): Judgement {
  const { event } = moment;
  const value = stepValue(event.value);
  const told = wordsOf(walk);
  if (value === null) return refused(told.answerUnread);
  const found = judged(listed.parts, value, {
    told,
    photos: standingPhotos(recordOf(walk, listed.id)).length,
    recorded: (step, part) => recorded(walk, step, part),
  });
  if (found.misread) return refused(found.misread);
  if (found.stops) return judgeStop(walk, listed, { moment, value, found });

  const forbidden = notThisWay(walk, listed, moment) ?? notThisPerson(walk, listed, { moment, value, found });
  if (forbidden) return refused(forbidden);
  const record = recordOf(walk, listed.id);
  const counting = record.status === 'closed' ? record.answer : null;
  if (counting && same(counting.value, value)) return sameAgain(true);
  if (counting && listed.step.hold) {
    return refused(told.signedAlready(counting.name, listed.title));
  }
  if (counting && listed.step.lapses.length > 0) {
    return refused(told.testNotCorrected);
  }
  const because = notNow(walk, listed, { moment, value, found });
  if (because) return refused(because);
  const answer = { moment, value, found };
  if (found.outside.length > 0) {
    const says = [...found.outside.map((each) => each.says), listed.step.onFail ?? told.staysOpen].join(' ');
    return accepted((onto) => keptOpen(onto, listed, answer), { says });
  }
  const says = found.advice.join(' ') || null;
  return accepted((onto) => closing(onto, listed, answer), { closes: true, says });
}

interface Given extends GivenAnswer {
  readonly found: Judged;
}

/** Anyone of the crew may stop a job, at any step and at any time. It needs no signature and no free way. */
function judgeStop(walk: Walk, listed: ListedStep, given: Given): Judgement {
  const { status, answer } = recordOf(walk, listed.id);
  const isTest = listed.step.lapses.length > 0;
  if (status === 'stopped' && answer && !isTest && same(answer.value, given.value)) return sameAgain(false);
  return accepted((onto) => stopping(onto, listed, given), { says: given.found.stops });
}

function notThisWay(walk: Walk, { step, title }: ListedStep, { event }: Moment): string | null {
  if (step.hold === (event.what === 'signed')) return null;
  return step.hold ? wordsOf(walk).signedNotTicked(title) : wordsOf(walk).tickedNotSigned(title);
}

function notNow(walk: Walk, listed: ListedStep, { moment, found }: Given): string | null {
  const told = wordsOf(walk);
  if (walk.paused) return told.paused(walk.paused.name);
  const stopped = recordOf(walk, listed.id).status === 'stopped';
  if (stopped && isApprentice(moment.event.standing)) return told.apprenticeStop;
  return (
    lateProblem(walk, listed, moment) ??
    waitsFor(walk, listed) ??
    notOnSite(walk, listed, moment) ??
    (found.missing.length > 0 ? told.stillToSay(found.missing.join(', ')) : null)
  );
}

/** Who may give this very answer: some answers of a step are for certain people only. */
function signersOf(listed: ListedStep, value: StepValue): readonly Signer[] {
  const special = listed.parts
    .flatMap((part) => (part.kind === 'choice' ? part.options.filter(({ id }) => id === value[part.id]) : []))
    .flatMap(({ signers }) => (signers ? [signers] : []));
  return special[0] ?? listed.signers;
}

const forOthers = (listed: ListedStep, value: StepValue): boolean =>
  listed.parts.some(
    (part) => part.kind === 'choice' && part.options.some(({ id, byOthers }) => byOthers && id === value[part.id]),
  );

function notThisPerson(walk: Walk, listed: ListedStep, { moment, value }: Given): string | null {
  const { event, day } = moment;
  const { person } = listed;
  const told = wordsOf(walk);
  if (person && !forOthers(listed, value)) {
    return person.who === event.who ? null : told.ownLock(person.name);
  }
  if (person?.who === event.who) return told.yourOwnLock;
  const signers = signersOf(listed, value);
  if (maySign(signers, event.standing, day)) return null;
  const needed = eitherOf(signers, walk.list.checklist);
  if (isApprentice(event.standing)) return told.apprenticeCannot(needed);
  return told.takesQualified(needed);
}

/** What was done without signal may be entered later, but never where somebody's life hangs on the order of things. */
/** Two clocks may differ by this much. Milliseconds. */
const clockSlack = 60_000;

function lateProblem(walk: Walk, listed: ListedStep, { event, milliseconds }: Moment): string | null {
  const at = Date.parse(event.at);
  const told = wordsOf(walk);
  if (!(at <= milliseconds + clockSlack)) return told.liesAhead;
  const late = milliseconds - at;
  if (late > clockSlack && listed.step.risk === 'electrical') {
    return told.wiringAtOnce;
  }
  if (late <= walk.list.checklist.rules.late.milliseconds) return null;
  const before = walk.list.steps.filter(({ index, step }) => index < listed.index && step.hold);
  const needed = listed.needs.flatMap((id) => walk.list.byId.get(id) ?? []);
  const after = [...before, ...needed].find(({ id }) => Date.parse(recordOf(walk, id).answer?.at ?? '') > at);
  return after ? told.closedAfter(after.title) : null;
}

/** Between the locks everybody who works stands under a lock of their own. */
function notOnSite(walk: Walk, { step, person, betweenLocks }: ListedStep, { event }: Moment): string | null {
  const atWires = step.touches.length > 0 || step.treatAsLive || step.isolation;
  if (!(atWires || (betweenLocks && !step.hold)) || person) return null;
  if (!walk.people.some(({ who }) => who === event.who)) {
    return wordsOf(walk).joinFirst;
  }
  return lockIsOn(walk, event.who) ? null : wordsOf(walk).lockFirst;
}

/** What a closed step recorded, in SI. */
function recorded(walk: Walk, id: string, part: string): number | undefined {
  const value = isClosed(walk, id) ? recordOf(walk, id).answer?.value[part] : undefined;
  return typeof value === 'number' ? value : undefined;
}

/** Whether two answers say the same. */
function same(one: StepValue, other: StepValue): boolean {
  const keys = Object.keys(one);
  return keys.length === Object.keys(other).length && keys.every((key) => one[key] === other[key]);
}
