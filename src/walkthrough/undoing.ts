import { skipping, undoing } from './closing.ts';
import { accepted, type Judgement, type Moment, refused } from './judgement.ts';
import type { ListedStep } from './listed-step.ts';
import { eitherOf, isApprentice, isLead, maySign } from './signing.ts';
import { isClosed, recordOf, type Walk, wordsOf } from './walk.ts';
import { nameOf, words } from './walk-event.ts';
import { waitsFor } from './way-free.ts';

/** `undone`: taking back what a step says. A stop is not taken back: the step is answered anew once it is put right. */
export function judgeUndoing(walk: Walk, listed: ListedStep, { event, day }: Moment): Judgement {
  const { status, answer } = recordOf(walk, listed.id);
  const told = wordsOf(walk);
  if (status === 'stopped') return refused(told.stoppedJob(listed.title));
  if (answer === null || !isClosed(walk, listed.id)) return refused(told.openAlready(listed.title));
  const mayTakeBack = listed.step.hold
    ? maySign(listed.signers, event.standing, day) || (answer.who === event.who && !isApprentice(event.standing))
    : answer.who === event.who ||
      isLead(event.standing) ||
      (!listed.signers.includes('anyone') && maySign(listed.signers, event.standing, day));
  if (mayTakeBack) return accepted((onto) => undoing(onto, listed, nameOf(event)));
  const others = eitherOf(listed.signers, walk.list.checklist);
  return refused(told.recordedThis(answer.name, listed.step.hold ? others : null));
}

/** `overridden`: a lead passes a step with a reason. Never a hold, never where somebody can be hurt. */
export function judgeOverriding(walk: Walk, listed: ListedStep, moment: Moment): Judgement {
  const { event } = moment;
  const told = wordsOf(walk);
  if (!listed.step.overridable) return refused(told.notPassedOver(listed.title));
  if (!isLead(event.standing)) return refused(told.onlyLeadPasses);
  if (walk.paused) return refused(told.paused(walk.paused.name));
  const because = words(event.value, 'reason');
  if (because === null) return refused(told.giveReason);
  const { status } = recordOf(walk, listed.id);
  if (status === 'stopped') return refused(told.stoppedJob(listed.title));
  if (isClosed(walk, listed.id)) return refused(told.closedAlready(listed.title));
  const waiting = waitsFor(walk, listed);
  if (waiting) return refused(waiting);
  return accepted((onto) => skipping(onto, listed, { moment, because }), { closes: true, says: because });
}
