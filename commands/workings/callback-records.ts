import type { JobRecords } from '#chat/command.ts';
import type { Answer, AnyQuestion } from '#interview/question.ts';
import type { Recall } from '#interview/replay.ts';
import { checklists } from '#knowledge/checklists.ts';
import { measuredAirflow } from '../questions/airflow.ts';
import {
  cannotCheck,
  complaint,
  confirmedCause,
  context,
  deadProven,
  notSeen,
  seen,
  whatFixedIt,
} from '../questions/callback.ts';
import { earlierDangers, stillSoPrefix } from '../questions/callback-earlier.ts';
import {
  airflowAtSwap,
  collarPressure,
  fittedLately,
  hoodAirflow,
  leftAtSwap,
  runTimeSet,
  swapDay,
} from '../questions/callback-measured.ts';
import { doorOpenAirflow } from '../questions/door.ts';
import { dangersBefore, dayIn } from './callback-earlier.ts';
import { swapOnRecord } from './callback-swap.ts';

const ids = (...questions: readonly AnyQuestion[]): ReadonlySet<string> => new Set(questions.map(({ id }) => id));

/** What tells that a new complaint has come in. */
const openings = ids(complaint, seen);
const measurements = ids(measuredAirflow, hoodAirflow, collarPressure, doorOpenAirflow);
const tellings = ids(complaint, seen, notSeen, context, cannotCheck, deadProven, confirmedCause, whatFixedIt);

/** What is said of one callback and of no later one. */
const isOfOneCallback = (id: string): boolean =>
  tellings.has(id) || measurements.has(id) || id.startsWith('heard') || id.startsWith('check-');

/** As the question puts it: the last 30 days. */
const lately = 30 * 24 * 3600 * 1000;

/** A box is proven dead for the moment: after this much quiet the lists ask for the test again, and so does this. */
const proofLasts = checklists.swap.rules.idle.milliseconds;

/**
 * What a callback may build on. The swap walked on this sheet stands behind it: its day, the airflow measured, the time set,
 * what it left open. What was measured before the swap was done is the airflow then, not now. What was said of an earlier
 * callback that has been closed says nothing of a new one, and a proof that the box is dead does not keep.
 */
export function recallingCallback(recall: Recall, { store, sheet }: JobRecords): Recall {
  const facts = store.newestFacts(sheet);
  const swap = swapOnRecord({ store, sheet });
  const closing = facts.get(confirmedCause.id)?.id ?? 0;
  const isNew = [...openings].some((id) => (facts.get(id)?.id ?? 0) > closing);
  const now = Date.parse(store.now());
  const dayOf = dayIn({ store });
  const before = dangersBefore({ store, sheet }, closing);
  const isPast = (id: string): boolean => {
    const fact = facts.get(id);
    if (!fact) return false;
    if (isNew && isOfOneCallback(id) && fact.id <= closing) return true;
    // That a danger is over is said once; that it is not is asked again on another day.
    if (id.startsWith(stillSoPrefix) && fact.value !== 'no') return dayOf(fact.at) < dayOf(store.now());
    if (id === deadProven.id) return now - Date.parse(fact.enteredAt) > proofLasts;
    return swap !== null && measurements.has(id) && fact.at <= swap.until;
  };
  return (question) => (isPast(question.id) ? undefined : recall(question)) ?? derived(question);

  function derived({ id }: AnyQuestion): Answer<unknown> | undefined {
    if (id === earlierDangers.id) return before.length === 0 ? undefined : { value: before, known: true };
    if (swap === null) return undefined;
    const known = {
      [swapDay.id]: swap.day,
      [fittedLately.id]: now - Date.parse(swap.until) <= lately ? 'yes' : 'no',
      [airflowAtSwap.id]: swap.airflow,
      [runTimeSet.id]: swap.runTime,
      [leftAtSwap.id]: swap.left,
    }[id];
    return known === undefined || known === null || known === '' ? undefined : { value: known, known: true };
  }
}
