import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import { minutes } from '#quantity/kinds.ts';
import { seconds } from '#quantity/units.ts';
import type { StepValue } from '#walkthrough/walk-event.ts';
import runtime from '../runtime.ts';
import { assumedRemark, fromSheet, lacksRemark } from './from-sheet.ts';
import { remark } from './plain-replies.ts';
import { runTimeRetold } from './swap-retold.ts';
import { measuredIn, recallFor, saidAt } from './swap-sheet.ts';
import { besideTold, type OpenWalk } from './swap-walk.ts';

interface RunTime {
  /** Seconds to set; `null` where no time will do. Absent where it could not be worked out. */
  readonly advised?: number | null;
  readonly findings: readonly Finding[];
}

/** Which airflow it was reckoned with. */
function airflowSays(walk: OpenWalk, from: string): string {
  const { reckoned } = besideTold(walk);
  if (measuredIn(saidAt(walk, 'measured-airflow'))) return reckoned.list;
  return from === 'measured' || from === 'told' || from === 'not known' ? reckoned[from] : reckoned.computed;
}

/** How long this fan has to run on in this room. */
export function runTimeFor(desk: Desk, walk: OpenWalk): RunTime {
  const { language } = walk.checklist;
  const worked = fromSheet(runtime.interview, recallFor(desk, walk));
  if ('lacks' in worked)
    return { findings: [lacksRemark(besideTold(walk).runTimeNot, worked.lacks, { command: 'runtime', language })] };
  const { findings } = runtime.answer(worked.inputs, desk.telling);
  const told = findings.filter(({ id }) => id === 'run-time');
  return {
    advised: told[0]?.value?.number ?? null,
    findings: [
      ...told.map((finding) => runTimeRetold(finding, { language, units: desk.telling.units })),
      remark('reckoned-with', 'advice', airflowSays(walk, worked.inputs.delivered.from)),
      ...assumedRemark(worked.assumed, { command: 'runtime', language }),
    ],
  };
}

/** What was set in the control beside what was worked out. */
export function runTimeSet(desk: Desk, walk: OpenWalk, value: StepValue | undefined): readonly Finding[] {
  const set = value?.['minutes'];
  const { advised, findings } = runTimeFor(desk, walk);
  if (typeof set !== 'number' || advised === undefined) return findings;
  const { units } = desk.telling;
  const told = besideTold(walk);
  const shown = minutes.showShort(seconds(set), units);
  if (advised === null) return [remark('run-time-set', 'caution', told.setNoTime(shown)), ...findings];
  const wanted = minutes.showShort(seconds(advised), units);
  return set + 30 < advised
    ? [remark('run-time-set', 'caution', told.setTooShort(shown, wanted)), ...findings]
    : [remark('run-time-set', 'good', told.setRight(shown, wanted))];
}
