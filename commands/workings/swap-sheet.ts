import type { Desk } from '#chat/command.ts';
import type { Answer } from '#interview/question.ts';
import type { Recall } from '#interview/replay.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond } from '#quantity/units.ts';
import type { StepValue } from '#walkthrough/walk-event.ts';
import { measuredAirflow } from '../questions/airflow.ts';
import type { OpenWalk } from './swap-walk.ts';

/** What a step of this list recorded: nothing where it says nothing now. */
export function saidAt({ state }: OpenWalk, step: string): StepValue | undefined {
  const view = state.steps.get(step);
  return view?.answer && view.status !== 'lapsed' ? view.answer.value : undefined;
}

/** A mean with the low end of its range; the other end is taken to be as far above. */
export function measuredIn(value: StepValue | undefined): Estimate<CubicMetresPerSecond> | undefined {
  const { mean, 'low-end': low } = value ?? {};
  if (typeof mean !== 'number' || typeof low !== 'number' || low > mean) return undefined;
  const at = cubicMetresPerSecond;
  return { low: at(low), typical: at(mean), high: at(2 * mean - low) };
}

/** When the new fan was fixed; `null` where this list fits none, so that the fan is the one that was there. */
function fanFixedAt({ state }: OpenWalk): number | null {
  if (!state.list.checklist.steps.some(({ id }) => id === 'housing-fixed')) return null;
  const view = state.steps.get('housing-fixed');
  return view?.status === 'closed' && view.answer ? Date.parse(view.answer.enteredAt) : Number.POSITIVE_INFINITY;
}

/** A measurement on the sheet, if it is of the fan that hangs there now. */
export function measuredOnSheet(desk: Desk, walk: OpenWalk): Answer<unknown> | undefined {
  const fact = desk.store.newestFacts(walk.sheet).get(measuredAirflow.id);
  const fixed = fanFixedAt(walk);
  const ofThisFan = fact !== undefined && (fixed === null || Date.parse(fact.at) >= fixed);
  return ofThisFan ? desk.recallOn(walk.sheet)(measuredAirflow) : undefined;
}

/**
 * What the job's sheet knows, with the airflow measured on this list in place of one measured before. What the old fan moved
 * says nothing of the new one.
 */
export function recallFor(desk: Desk, walk: OpenWalk): Recall {
  const onSheet = desk.recallOn(walk.sheet);
  const measured = measuredIn(saidAt(walk, 'measured-airflow'));
  return (question) => {
    if (question.id !== measuredAirflow.id) return onSheet(question);
    return measured ? { value: measured, known: true } : measuredOnSheet(desk, walk);
  };
}
