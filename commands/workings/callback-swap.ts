import type { JobRecords } from '#chat/command.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, type Seconds, seconds } from '#quantity/units.ts';
import type { WalkState } from '#walkthrough/walk-state.ts';
import { listsOf, type OpenWalk, walkOn } from './swap-walk.ts';

/** What the list of a swap recorded, as far as a callback asks. */
export interface SwapOnRecord {
  /** Where the crew works: 2026-03-03. */
  readonly day: string;
  /** The instant up to which everything belongs to the swap. */
  readonly until: string;
  readonly airflow: Estimate<CubicMetresPerSecond> | null;
  readonly runTime: Seconds | null;
  /** Advice that remained, steps passed over, and how many were never closed, in one line. */
  readonly left: string;
}

/** The swap a job was opened for: of several lists the last one that got as far as the tests. Nothing where none did. */
export function swapOnRecord({ store, sheet }: JobRecords): SwapOnRecord | null {
  const records = { store, now: () => store.now() };
  const walks = listsOf(records, sheet)
    .filter((list) => list.split('~')[0] === 'swap')
    .flatMap((list) => walkOn(records, sheet, list) ?? []);
  const walk = walks.findLast(({ state }) => state.closed !== null || closedAnswer(state, 'power-on') !== null);
  if (walk === undefined) return null;
  const until = walk.state.closed?.at ?? walk.events.at(-1)?.at ?? walk.clock.now;
  return {
    day: walk.clock.dayOf?.(until) ?? until.slice(0, 10),
    until,
    airflow: airflowIn(walk.state),
    runTime: runTimeIn(walk.state),
    left: leftBy(walk),
  };
}

const closedAnswer = (state: WalkState, step: string) => {
  const view = state.steps.get(step);
  return view?.status === 'closed' || view?.status === 'skipped' ? view.answer : null;
};

const numberIn = (state: WalkState, step: string, part: string): number | null => {
  const said = closedAnswer(state, step)?.value[part];
  return typeof said === 'number' ? said : null;
};

/** The mean and the low end were written down; the band is taken as even on both sides. */
function airflowIn(state: WalkState): Estimate<CubicMetresPerSecond> | null {
  const mean = numberIn(state, 'measured-airflow', 'mean');
  if (mean === null) return null;
  const low = Math.min(mean, numberIn(state, 'measured-airflow', 'low-end') ?? mean);
  return {
    low: cubicMetresPerSecond(low),
    typical: cubicMetresPerSecond(mean),
    high: cubicMetresPerSecond(2 * mean - low),
  };
}

const runTimeIn = (state: WalkState): Seconds | null => {
  const set = numberIn(state, 'run-time-set', 'minutes');
  return set === null ? null : seconds(set);
};

function leftBy({ state }: OpenWalk): string {
  const views = [...state.steps.values()];
  const passed = views.filter(({ status }) => status === 'skipped').map(({ listed }) => `${listed.title} passed over`);
  const never = views.filter(({ status }) => ['open', 'blocked', 'lapsed', 'stopped'].includes(status)).length;
  return [
    ...state.stops.map(({ listed }) => `stopped at ${listed.title}`),
    ...state.advice.map(({ says }) => says.replace(/\.$/, '')),
    ...passed,
    ...(never > 0 ? [`${never} ${never === 1 ? 'step' : 'steps'} never closed`] : []),
  ].join('; ');
}
