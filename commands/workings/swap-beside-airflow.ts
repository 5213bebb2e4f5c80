import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { Recall } from '#interview/replay.ts';
import { ownWorking } from '#knowledge/sources.ts';
import { airflow } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond } from '#quantity/units.ts';
import type { StepValue } from '#walkthrough/walk-event.ts';
import { airflowNeeded } from '../questions/fan.ts';
import { citations } from './citations.ts';
import { assumedRemark, fromSheet } from './from-sheet.ts';
import { againstNeededFinding } from './measure-comparison.ts';
import { neededInterview } from './needed.ts';
import { remark } from './plain-replies.ts';
import { predictedBeside, readWith } from './swap-beside-predicted.ts';
import { methodOf } from './swap-low-end.ts';
import { enoughRetold } from './swap-retold.ts';
import { measuredIn, recallFor, saidAt } from './swap-sheet.ts';
import { besideTold, type OpenWalk } from './swap-walk.ts';

const flowIn = (value: StepValue | undefined, part: string): CubicMetresPerSecond | undefined => {
  const said = value?.[part];
  return typeof said === 'number' ? cubicMetresPerSecond(said) : undefined;
};

/** What was measured at the grille beside the need, the prediction, and what the fan before it moved. */
export function measuredBeside(desk: Desk, walk: OpenWalk, value: StepValue): readonly Finding[] {
  const { units } = desk.telling;
  const estimate = measuredIn(value);
  if (estimate === undefined) return [];
  const method = methodOf(walk, value);
  const needs = needsOf(desk, walk);
  const needed = needs.airflow;
  const measured = { readings: readWith(estimate, null), airflow: estimate, limits: [] };
  return [
    ...(needed === null
      ? []
      : [
          enoughRetold(againstNeededFinding(measured, needed, units), estimate, {
            needed,
            units,
            language: walk.checklist.language,
          }),
        ]),
    ...needs.remarks,
    ...predictedBeside(desk, walk, {
      airflow: estimate,
      withBox: method === 'flow-box',
      tooLittle: needed !== null && !meets(estimate.high, needed),
      short: needed !== null && !meets(estimate.low, needed),
    }),
    ...beforeAndAfter(desk, walk, { now: estimate.typical, method }),
  ];
}

/** The need the sheet comes to. */
function neededBy(recall: Recall) {
  const worked = fromSheet(neededInterview, recall);
  return 'inputs' in worked ? { airflow: worked.inputs.airflow, assumed: worked.assumed } : null;
}

/**
 * What the room needs: the larger of what somebody said and what its size on the sheet comes to, so that no word makes a
 * room smaller. Where the sheet has lost it, as it was when the airflow was agreed.
 */
function roomNeed(desk: Desk, walk: OpenWalk) {
  const recall = recallFor(desk, walk);
  const told = neededBy(recall);
  const bySize = neededBy((question) => (question.id === airflowNeeded.id ? undefined : recall(question)));
  const airflows = [told, bySize].flatMap((each) => (each?.airflow ? [each.airflow] : []));
  const largest = airflows.length > 0 ? cubicMetresPerSecond(Math.max(...airflows)) : undefined;
  return {
    airflow: largest ?? flowIn(saidAt(walk, 'target-airflow'), 'need') ?? null,
    assumed: (largest === bySize?.airflow ? bySize?.assumed : told?.assumed) ?? [],
  };
}

/** The airflow that must be shown: what was agreed, and no less than the room needs where the sheet knows the room. */
export function needsOf(
  desk: Desk,
  walk: OpenWalk,
): { readonly airflow: CubicMetresPerSecond | null; readonly remarks: readonly Finding[] } {
  const { units } = desk.telling;
  const told = besideTold(walk);
  const agreed = flowIn(saidAt(walk, 'target-airflow'), 'airflow');
  const { airflow: room, assumed } = roomNeed(desk, walk);
  if (room === null) {
    const says = agreed === undefined ? told.needUnknown : told.onlyAgreed;
    return { airflow: agreed ?? null, remarks: [remark('need-not-known', 'advice', says)] };
  }
  const remarks = assumedRemark(assumed, { command: 'size', language: walk.checklist.language });
  if (agreed === undefined || meets(agreed, room)) return { airflow: agreed ?? room, remarks };
  const says = told.agreedAndNeed(airflow.showShort(agreed, units), airflow.showShort(room, units));
  return { airflow: room, remarks: [remark('agreed-too-little', 'caution', says), ...remarks] };
}

/** The need beside an answer, as it is at this moment, so that the answer is held against it and the papers can tell it. */
export function withNeed(desk: Desk, walk: OpenWalk, value: StepValue): StepValue {
  const { airflow: need } = roomNeed(desk, walk);
  return need === null ? value : { ...value, need };
}

/** What an airflow agreed on is short of, before it is recorded. */
export function agreedBeside({ telling: { units } }: Desk, walk: OpenWalk, value: StepValue): readonly Finding[] {
  const [agreed, need] = [flowIn(value, 'airflow'), flowIn(value, 'need')];
  if (agreed === undefined || need === undefined || meets(agreed, need)) return [];
  const says = besideTold(walk).agreedLess(airflow.showShort(agreed, units), airflow.showShort(need, units));
  return [remark('agreed-too-little', 'caution', says)];
}

/** What the fan before it moved, where that was measured on this list. */
function beforeAndAfter(
  { telling: { units } }: Desk,
  walk: OpenWalk,
  { now, method }: { readonly now: CubicMetresPerSecond; readonly method: string | undefined },
): readonly Finding[] {
  const old = saidAt(walk, 'old-airflow');
  const before = flowIn(old, 'airflow');
  if (before === undefined) return [];
  const shown = (flow: CubicMetresPerSecond) => airflow.showShort(flow, units);
  const told = besideTold(walk);
  const earlier = old?.['method'];
  const otherWay =
    method !== undefined && typeof earlier === 'string' && earlier !== method && Object.hasOwn(told.methods, earlier)
      ? told.otherWay(told.methods[earlier] ?? '', told.methods[method] ?? '')
      : '';
  return [
    {
      id: 'before-and-after',
      weight: meets(now, before) ? 'good' : 'caution',
      says: `${told.beforeAndNow(shown(before), shown(now))}${otherWay}`,
      working: [],
      sources: citations(ownWorking),
    },
  ];
}
