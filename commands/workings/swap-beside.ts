import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { airflow } from '#quantity/kinds.ts';
import type { CubicMetresPerSecond } from '#quantity/units.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import type { StepValue } from '#walkthrough/walk-event.ts';
import { amountIn } from '#words/amounts.ts';
import { remark } from './plain-replies.ts';
import { agreedBeside, measuredBeside, needsOf, withNeed } from './swap-beside-airflow.ts';
import { boxCounted, roomToRecord } from './swap-beside-box.ts';
import { ductBeside, isDuctStep } from './swap-beside-duct.ts';
import { runTimeFor, runTimeSet } from './swap-beside-run-time.ts';
import { lowEndToRecord, methodOnSheet } from './swap-low-end.ts';
import { measuredOnSheet, saidAt } from './swap-sheet.ts';
import { besideTold, type OpenWalk } from './swap-walk.ts';

/** What is worked out for a step from what the job's sheet knows, shown before it is answered. */
export function besideStep(desk: Desk, walk: OpenWalk, listed: ListedStep): readonly Finding[] {
  const { id } = listed.step;
  const { units } = desk.telling;
  if (isDuctStep(id)) return ductBeside(desk, walk, id);
  switch (id) {
    case 'box-fill':
    case 'close-box':
      return boxCounted(desk, walk, listed).findings;
    case 'run-time-set':
      return runTimeFor(desk, walk).findings;
    case 'target-airflow':
    case 'measured-airflow': {
      const { airflow: needed, remarks } = needsOf(desk, walk);
      const says = needed && besideTold(walk).needed(airflow.show(needed, units));
      return [...(says ? [remark('needed', 'advice', says)] : []), ...remarks, ...measuredRemark(desk, walk, id)];
    }
    default:
      return [];
  }
}

function measuredRemark(desk: Desk, walk: OpenWalk, step: string): readonly Finding[] {
  if (step !== 'measured-airflow' || saidAt(walk, step)) return [];
  const measured = measuredOnSheet(desk, walk);
  const told = besideTold(walk);
  const { language } = walk.checklist;
  const shown = (moved: Estimate<CubicMetresPerSecond>) =>
    amountIn(language, airflow.showEstimate(moved, desk.telling.units));
  const says = measured?.known
    ? told.measuredOnSheet(shown(measured.value as Estimate<CubicMetresPerSecond>))
    : told.measureIt;
  return [remark('measured-on-sheet', 'advice', says)];
}

/** What goes into a step by itself where nothing else is said. */
export function workedOut(desk: Desk, walk: OpenWalk, listed: ListedStep): StepValue {
  if (listed.step.id === 'box-fill') {
    const { left } = boxCounted(desk, walk, listed);
    return left === undefined ? {} : { spare: left };
  }
  if (listed.step.id !== 'measured-airflow') return {};
  const measured = measuredOnSheet(desk, walk);
  if (!measured?.known) return {};
  const { low, typical } = measured.value as Estimate<CubicMetresPerSecond>;
  return { mean: typical, 'low-end': low, ...methodOnSheet(desk, walk) };
}

/** The answer as it is recorded, and what is told beside it. */
export function completed(
  desk: Desk,
  walk: OpenWalk,
  listed: ListedStep,
  value: StepValue,
): { readonly value: StepValue; readonly findings: readonly Finding[] } {
  switch (listed.step.id) {
    case 'box-fill':
      return roomToRecord(desk, walk, listed, value);
    case 'target-airflow': {
      const beside = withNeed(desk, walk, value);
      return { value: beside, findings: agreedBeside(desk, walk, beside) };
    }
    case 'measured-airflow': {
      const said = value['mean'] !== undefined || value['low-end'] !== undefined;
      return lowEndToRecord(
        desk,
        walk,
        withNeed(desk, walk, said ? value : { ...workedOut(desk, walk, listed), ...value }),
      );
    }
    default:
      return { value, findings: [] };
  }
}

/** What an answer means, once it is recorded: `walk` is the list as it stands after it. */
export function besideAnswer(desk: Desk, walk: OpenWalk, listed: ListedStep, value: StepValue): readonly Finding[] {
  switch (listed.step.id) {
    case 'measured-airflow': {
      const set = saidAt(walk, 'run-time-set');
      return [...measuredBeside(desk, walk, value), ...(set ? runTimeSet(desk, walk, set) : [])];
    }
    case 'run-time-set':
      return runTimeSet(desk, walk, value);
    case 'target-airflow':
      // A shortfall was told already, when it was taken.
      return needsOf(desk, walk).remarks.filter(({ id }) => id !== 'agreed-too-little');
    default:
      return [];
  }
}
