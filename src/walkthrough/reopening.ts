import type { ChecklistStep } from '#knowledge/checklist.ts';
import type { WalkFactId } from '#knowledge/checklist-facts.ts';
import type { LapseCause } from '#knowledge/checklist-steps.ts';
import { type FactEntry, recordOf, type Walk, wordsOf } from './walk.ts';
import { answersTo, type WalkFacts } from './walk-facts.ts';
import { relisted, type WalkList } from './walk-list.ts';

interface Lapse {
  readonly kind: 'expired' | 'basis';
  readonly because: string;
}

/** Opens a closed step again, and with it every step that rests on it. */
export function reopen(walk: Walk, id: string, lapse: Lapse): void {
  const record = recordOf(walk, id);
  if (record.status !== 'closed' && record.status !== 'skipped') return;
  walk.records.set(id, { ...record, status: 'lapsed', lapse: lapse.kind, because: lapse.because });
  reopenAbove(walk, id, lapse);
}

/** Opens again what rests on a step that was taken back or answered otherwise. */
export function reopenAbove(walk: Walk, id: string, lapse: Lapse): void {
  for (const above of walk.list.byId.get(id)?.neededBy ?? []) reopen(walk, above, lapse);
}

/** Ends every proof that this ends. */
export function lapse(walk: Walk, cause: LapseCause, because: string): void {
  for (const { id, step } of walk.list.lapsing) {
    if (step.lapses.includes(cause)) reopen(walk, id, { kind: 'expired', because });
  }
}

/** A clock may be set right by so much, in milliseconds, without a proof being doubted. */
const setRight = 60_000;

/** Ends the proofs that did not outlast the time since the last event, or the day; and those a clock set back would keep alive. */
export function passTime(walk: Walk, now: { readonly milliseconds: number; readonly day: string }): void {
  const { idle, age } = walk.list.checklist.rules;
  const told = wordsOf(walk);
  const quiet = walk.lastOnSite !== null && now.milliseconds - walk.lastOnSite > idle.milliseconds;
  for (const { id, step } of walk.list.lapsing) {
    const { status, answer } = recordOf(walk, id);
    if (status !== 'closed' || answer === null) continue;
    const since = now.milliseconds - Date.parse(answer.enteredAt);
    const old = since > age.milliseconds;
    const wentBack = since < -setRight;
    const because =
      (answer.day !== now.day && step.lapses.includes('new-day') && told.newDay) ||
      (quiet && step.lapses.includes('idle') && told.lapsed(idle.says)) ||
      (old && step.lapses.includes('age') && told.lapsed(age.says)) ||
      (wentBack && step.lapses.includes('age') && told.clockWentBack);
    if (because) reopen(walk, id, { kind: 'expired', because });
  }
}

/**
 * What is known now: the sheet's facts at the start, then whatever was recorded since. An answer that takes a precaution
 * off the list counts once somebody whose word counts has given or confirmed it; until then nobody knows.
 */
function knownFacts(walk: Pick<Walk, 'start' | 'facts'>): WalkFacts {
  const known: Record<string, string | readonly string[] | undefined> = { ...walk.start.facts };
  for (const entry of walk.facts) known[entry.fact] = believed(entry, known, walk.start.checklist.facts);
  return known;
}

function believed(
  { fact, value, confirmed, confirmedBy }: FactEntry,
  known: WalkFacts,
  facts: Walk['start']['checklist']['facts'],
): string {
  if (confirmed || confirmedBy !== null || !facts[fact as WalkFactId].safe.includes(value)) return value;
  return answersTo(fact as WalkFactId, known, facts).every((answer) => answer === value) ? value : 'unknown';
}

/**
 * Makes the list again from what is known now. Closed steps that hang on a fact whose answer has changed are opened again,
 * but for the step that recorded it.
 */
export function relist(walk: Walk): void {
  const { list, boxes, people } = walk;
  const facts = knownFacts(walk);
  const changed = changedFacts(list, facts);
  if (changed.length === 0 && list.named === boxes && list.crew === people) return;
  walk.list = relisted(list, { checklist: list.checklist, facts, boxes, crew: people }, changed);
  if (changed.length === 0) return;
  for (const { id, step, behind } of walk.list.steps) {
    const moved = changed.find((fact) => behind.has(fact) && !recordsFact(step, fact));
    const because = moved && wordsOf(walk).factChanged(list.checklist.facts[moved].prompt);
    if (because) reopen(walk, id, { kind: 'basis', because });
  }
}

function changedFacts({ checklist, facts: before }: WalkList, now: WalkFacts): WalkFactId[] {
  const { facts } = checklist;
  return (Object.keys(facts) as WalkFactId[]).filter((fact) => {
    if (before[fact] === now[fact]) return false;
    const [old, fresh] = [answersTo(fact, before, facts), answersTo(fact, now, facts)];
    return old.length !== fresh.length || old.some((answer, index) => answer !== fresh[index]);
  });
}

const recordsFact = ({ evidence }: ChecklistStep, fact: WalkFactId): boolean =>
  evidence.some((part) => part.kind === 'choice' && part.records === fact);
