import type { WalkFactId } from '#knowledge/checklist-facts.ts';
import type { Judged } from './evidence.ts';
import type { Moment } from './judgement.ts';
import type { ListedStep } from './listed-step.ts';
import { relist, reopen, reopenAbove } from './reopening.ts';
import { maySign } from './signing.ts';
import { type Answer, recordOf, type StepRecord, type Walk, wordsOf } from './walk.ts';
import { nameOf, type StepValue } from './walk-event.ts';

/** An answer, when it was given, and what it says about its step. */
export interface Given {
  readonly moment: Moment;
  readonly value: StepValue;
  readonly found: Pick<Judged, 'outside' | 'advice' | 'stops'>;
}

const answerOf = ({ moment: { event, day }, value }: Given, what: Answer['what']): Answer => ({
  event: event.id,
  what,
  value,
  who: event.who,
  name: nameOf(event),
  at: event.at,
  enteredAt: event.enteredAt,
  day,
});

function answered(
  walk: Walk,
  { id }: ListedStep,
  answer: Answer,
  change: Pick<StepRecord, 'status' | 'because' | 'outside' | 'advice'>,
): void {
  const record = recordOf(walk, id);
  const counted = record.status === 'closed' || record.status === 'skipped' ? record.answer : null;
  walk.records.set(id, { ...record, ...change, answer, lapse: null, history: [...record.history, answer] });
  if (counted === null) return;
  walk.corrections.push({ step: id, before: counted, after: answer });
  reopenAbove(walk, id, {
    kind: 'basis',
    because: wordsOf(walk).answeredAnew(answer.name, counted.name),
  });
}

/** Closes the step and does what closing it brings: facts, confirmations, locks that no longer count. */
export function closing(walk: Walk, listed: ListedStep, given: Given): void {
  const answer = answerOf(given, listed.step.hold ? 'signed' : 'done');
  const { outside, advice } = given.found;
  answered(walk, listed, answer, { status: 'closed', because: null, outside, advice });
  endProofs(walk, listed);
  if (listed.step.closes) walk.closed = answer;
  recordFacts(walk, listed, given);
}

/** Keeps a value that does not close its step. A step that was closed is opened again by it. */
export function keptOpen(walk: Walk, listed: ListedStep, given: Given): void {
  const { outside, advice } = given.found;
  answered(walk, listed, answerOf(given, 'done'), { status: 'open', because: null, outside, advice });
  voidProof(walk, listed);
}

/** Stops the job at this step. */
export function stopping(walk: Walk, listed: ListedStep, given: Given): void {
  const { outside, advice, stops } = given.found;
  answered(walk, listed, answerOf(given, 'done'), { status: 'stopped', because: stops, outside, advice });
  if (listed.step.restoresPower) endProofs(walk, listed);
  voidProof(walk, listed);
  recordFacts(walk, listed, given);
}

/** Passes the step with a reason, by a lead's word. */
export function skipping(
  walk: Walk,
  listed: ListedStep,
  { moment, because }: { moment: Moment; because: string },
): void {
  const record = recordOf(walk, listed.id);
  const answer = answerOf(
    { moment, value: record.answer?.value ?? {}, found: { ...record, stops: null } },
    'overridden',
  );
  const { outside, advice } = record;
  walk.records.set(listed.id, {
    ...record,
    status: 'skipped',
    because,
    lapse: null,
    answer,
    history: [...record.history, answer],
    outside,
    advice,
  });
}

/** Takes back what the step says, the facts it recorded, and whatever rests on it. */
export function undoing(walk: Walk, listed: ListedStep, by: string): void {
  const record = recordOf(walk, listed.id);
  const signature = record.answer?.event ?? null;
  walk.records.set(listed.id, {
    ...record,
    status: 'open',
    answer: null,
    because: wordsOf(walk).takenBackBy(by),
    outside: [],
    advice: [],
  });
  reopenAbove(walk, listed.id, { kind: 'basis', because: wordsOf(walk).hasTakenBack(by, listed.title) });
  voidProof(walk, listed);
  if (listed.step.closes) walk.closed = null;
  walk.facts = walk.facts
    .filter(({ step }) => step !== listed.id)
    .map((entry) => (entry.confirmedBy === signature ? { ...entry, confirmedBy: null } : entry));
  relist(walk);
}

function endProofs(walk: Walk, listed: ListedStep): void {
  for (const id of listed.reopens) reopen(walk, id, { kind: 'expired', because: wordsOf(walk).hasEnded(listed.title) });
}

/** A test that failed, or was taken back, is worth nothing in part: the whole proof of that box starts again. */
function voidProof(walk: Walk, { step, box, title }: ListedStep): void {
  if (step.lapses.length === 0 || box === null) return;
  for (const other of walk.list.lapsing) {
    if (other.box?.id !== box.id) continue;
    reopen(walk, other.id, { kind: 'basis', because: wordsOf(walk).didNotHold(title) });
  }
}

function recordFacts(walk: Walk, { id, parts, step }: ListedStep, { moment: { event, day }, value }: Given): void {
  const { facts } = walk.list.checklist;
  const fresh = parts.flatMap((part) => {
    const said = value[part.id];
    if (part.kind !== 'choice' || part.records === undefined || typeof said !== 'string') return [];
    const confirmed = maySign(facts[part.records].clearedBy, event.standing, day);
    const { who, at } = event;
    const entry = { event: event.id, step: id, fact: part.records, value: said, who, name: nameOf(event), at };
    return [{ ...entry, confirmed, confirmedBy: null }];
  });
  if (fresh.length === 0 && !step.confirms) return;
  walk.facts = [...walk.facts, ...fresh];
  if (step.confirms) {
    walk.facts = walk.facts.map((entry) =>
      facts[entry.fact as WalkFactId].clearedBy.includes('lead') && !entry.confirmed && entry.confirmedBy === null
        ? { ...entry, confirmedBy: event.id }
        : entry,
    );
  }
  relist(walk);
}
