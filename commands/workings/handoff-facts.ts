import type { Desk } from '#chat/command.ts';
import type { Interview } from '#interview/interview.ts';
import { take } from '#interview/interview.ts';
import { replay } from '#interview/replay.ts';
import { measuredAirflow } from '../questions/airflow.ts';
import { doorGap } from '../questions/door.ts';
import { airflowNeeded } from '../questions/fan.ts';
import { saidIn } from './swap-values.ts';
import { listsOf, type OpenWalk, walkOn, zoneOf } from './swap-walk.ts';

/** What the papers are made from. */
export interface HandOff {
  readonly sheet: { readonly number: number; readonly name: string | null };
  readonly walks: readonly OpenWalk[];
  readonly day: (instant: string) => string;
  readonly moment: (instant: string) => string;
  readonly zone: string;
  readonly made: Date;
}

/** Every list of a job, with dates told where the crew works. */
export function handOffOf(desk: Desk, number: number): HandOff {
  const zone = zoneOf(desk) ?? 'UTC';
  const days = new Intl.DateTimeFormat('en-US', { timeZone: zone, dateStyle: 'long' });
  const moments = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    month: 'short',
    day: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  const walks = listsOf(desk, number).flatMap((list) => walkOn(desk, number, list) ?? []);
  return {
    sheet: { number, name: desk.store.findSheet(number)?.name ?? null },
    walks,
    day: (instant) => days.format(new Date(instant)),
    moment: (instant) => moments.format(new Date(instant)),
    zone: zoneOf(desk) ?? 'UTC, since the crew has set no time zone',
    made: new Date(desk.now()),
  };
}

/** What a closed step recorded, in words, with who and when; nothing while it is open. */
export function recorded(desk: Desk, { walks }: HandOff, step: string) {
  for (const { state } of walks.toReversed()) {
    const view = state.steps.get(step);
    if (view?.status !== 'closed' || !view.answer) continue;
    const { value, name, at } = view.answer;
    return { value, name, at, said: saidIn(view.listed, value, desk.telling.units) };
  }
  return undefined;
}

/** What the sheet says of the airflow and the door, as the crew writes it. */
export function onSheet(desk: Desk) {
  const { units } = desk.telling;
  function* taking(): Interview<{ needed: string | null; gap: string | null; measured: string | null }> {
    const needed = yield* take(airflowNeeded);
    const gap = yield* take(doorGap);
    const measured = yield* take(measuredAirflow);
    return {
      needed: needed.known ? airflowNeeded.show(needed.value, units) : null,
      gap: gap.known ? doorGap.show(gap.value, units) : null,
      measured: measured.known ? measuredAirflow.show(measured.value, units) : null,
    };
  }
  const outcome = replay(taking(), desk.recall, 'one-shot');
  return outcome.complete ? outcome.inputs : { needed: null, gap: null, measured: null };
}
