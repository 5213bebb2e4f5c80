import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import { minutes } from '#quantity/kinds.ts';
import { seconds } from '#quantity/units.ts';
import type { StepValue } from '#walkthrough/walk-event.ts';
import runtime from '../runtime.ts';
import { assumedRemark, fromSheet, lacksRemark } from './from-sheet.ts';
import { remark } from './plain-replies.ts';
import { measuredIn, recallFor, saidAt } from './swap-sheet.ts';
import type { OpenWalk } from './swap-walk.ts';

interface RunTime {
  /** Seconds to set; `null` where no time will do. Absent where it could not be worked out. */
  readonly advised?: number | null;
  readonly findings: readonly Finding[];
}

/** Which airflow it was reckoned with. */
function airflowSays(walk: OpenWalk, from: string): string {
  if (measuredIn(saidAt(walk, 'measured-airflow'))) return 'Reckoned with the airflow measured on this list.';
  if (from === 'measured') return 'Reckoned with the airflow measured on the sheet.';
  if (from === 'told') return 'Reckoned with the airflow given on the sheet, until it is measured.';
  if (from === 'not known') return 'The airflow is not known: reckoned with what such fans mostly move. Measure it.';
  return 'Reckoned with the airflow worked out from fan and duct, until it is measured.';
}

/** How long this fan has to run on in this room. */
export function runTimeFor(desk: Desk, walk: OpenWalk): RunTime {
  const worked = fromSheet(runtime.interview, recallFor(desk, walk));
  if ('lacks' in worked) return { findings: [lacksRemark('Run time not worked out', worked.lacks, 'runtime')] };
  const { findings } = runtime.answer(worked.inputs, desk.telling);
  const told = findings.filter(({ id }) => id === 'run-time');
  return {
    advised: told[0]?.value?.number ?? null,
    findings: [
      ...told,
      remark('reckoned-with', 'advice', airflowSays(walk, worked.inputs.delivered.from)),
      ...assumedRemark(worked.assumed, 'runtime'),
    ],
  };
}

/** What was set in the control beside what was worked out. */
export function runTimeSet(desk: Desk, walk: OpenWalk, value: StepValue | undefined): readonly Finding[] {
  const set = value?.['minutes'];
  const { advised, findings } = runTimeFor(desk, walk);
  if (typeof set !== 'number' || advised === undefined) return findings;
  const { units } = desk.telling;
  const shown = minutes.showShort(seconds(set), units);
  if (advised === null)
    return [remark('run-time-set', 'caution', `Set to ${shown}; no time will do here.`), ...findings];
  const wanted = minutes.showShort(seconds(advised), units);
  return set + 30 < advised
    ? [
        remark(
          'run-time-set',
          'caution',
          `Set to ${shown}, and about ${wanted} is needed. Set it longer, or find out why less must do.`,
        ),
        ...findings,
      ]
    : [remark('run-time-set', 'good', `Set to ${shown}; about ${wanted} was worked out.`)];
}
