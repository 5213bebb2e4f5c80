import { skipping, undoing } from './closing.ts';
import { accepted, type Judgement, type Moment, refused } from './judgement.ts';
import type { ListedStep } from './listed-step.ts';
import { eitherOf, isApprentice, isLead, maySign } from './signing.ts';
import { isClosed, recordOf, type Walk } from './walk.ts';
import { nameOf, words } from './walk-event.ts';
import { waitsFor } from './way-free.ts';

/** `undone`: taking back what a step says. A stop is not taken back: the step is answered anew once it is put right. */
export function judgeUndoing(walk: Walk, listed: ListedStep, { event, day }: Moment): Judgement {
  const { status, answer } = recordOf(walk, listed.id);
  if (status === 'stopped') return refused(`${listed.title} stopped the job. Put it right, then answer it anew.`);
  if (answer === null || !isClosed(walk, listed.id)) return refused(`${listed.title} is open already.`);
  const mayTakeBack = listed.step.hold
    ? maySign(listed.signers, event.standing, day) || (answer.who === event.who && !isApprentice(event.standing))
    : answer.who === event.who ||
      isLead(event.standing) ||
      (!listed.signers.includes('anyone') && maySign(listed.signers, event.standing, day));
  if (mayTakeBack) return accepted((onto) => undoing(onto, listed, nameOf(event)));
  const others = eitherOf(listed.signers, walk.list.checklist.words.signers);
  return refused(
    `${answer.name} recorded this. It is taken back by ${listed.step.hold ? others : 'the same person or a lead'}.`,
  );
}

/** `overridden`: a lead passes a step with a reason. Never a hold, never where somebody can be hurt. */
export function judgeOverriding(walk: Walk, listed: ListedStep, moment: Moment): Judgement {
  const { event } = moment;
  if (!listed.step.overridable) return refused(`${listed.title} cannot be passed over. It is done, or the job stops.`);
  if (!isLead(event.standing)) return refused('Only a lead passes a step over, with a reason.');
  if (walk.paused) return refused(`The job is paused by ${walk.paused.name}. Resume it first.`);
  const because = words(event.value, 'reason');
  if (because === null) return refused('Give the reason in a few words.');
  const { status } = recordOf(walk, listed.id);
  if (status === 'stopped') return refused(`${listed.title} stopped the job. Put it right, then answer it anew.`);
  if (isClosed(walk, listed.id)) return refused(`${listed.title} is closed already.`);
  const waiting = waitsFor(walk, listed);
  if (waiting) return refused(waiting);
  return accepted((onto) => skipping(onto, listed, { moment, because }), { closes: true, says: because });
}
