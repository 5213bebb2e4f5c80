import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import { fieldMethods } from '#knowledge/field-methods.ts';
import { ownWorking } from '#knowledge/sources.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { airflow, percentage } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond } from '#quantity/units.ts';
import type { StepValue } from '#walkthrough/walk-event.ts';
import { citations } from './citations.ts';
import { assumedRemark, fromSheet } from './from-sheet.ts';
import { againstNeededFinding } from './measure-comparison.ts';
import { neededInterview } from './needed.ts';
import { remark } from './plain-replies.ts';
import { predictedBeside, readWith } from './swap-beside-predicted.ts';
import { measuredIn, recallFor, saidAt } from './swap-sheet.ts';
import type { OpenWalk } from './swap-walk.ts';

/** The least that each way of measuring errs, as a share of the reading. A bag's error hangs on the bag and the watch. */
const leastErrors: Readonly<Record<string, { readonly by: string } & (typeof fieldMethods)['hood']['powered']>> = {
  hood: { by: 'A flow hood', ...fieldMethods.hood.powered },
  'flow-box': { by: 'A flow box', ...fieldMethods.box.error },
  traverse: { by: 'Reading speeds over the grille', ...fieldMethods.traverse.error },
};

const wordsFor: Readonly<Record<string, string>> = {
  hood: 'a flow hood',
  'flow-box': 'a flow box',
  traverse: 'readings across the grille',
  bag: 'a timed bag',
};

const flowIn = (value: StepValue | undefined, part: string): CubicMetresPerSecond | undefined => {
  const said = value?.[part];
  return typeof said === 'number' ? cubicMetresPerSecond(said) : undefined;
};

/** How it was measured: as the answer says, else as before the swap. */
function methodOf(walk: OpenWalk, value: StepValue): string | undefined {
  const said = value['method'] ?? saidAt(walk, 'old-airflow')?.['method'];
  return typeof said === 'string' && Object.hasOwn(wordsFor, said) ? said : undefined;
}

/** What was measured at the grille beside the need, the prediction, and what the fan before it moved. */
export function measuredBeside(desk: Desk, walk: OpenWalk, value: StepValue): readonly Finding[] {
  const { units } = desk.telling;
  const typed = measuredIn(value);
  if (typed === undefined) return [];
  const method = methodOf(walk, value);
  const { estimate, optimistic } = withLeastError(typed, method, desk);
  const needs = needsOf(desk, walk);
  const needed = needs.airflow;
  const measured = { readings: readWith(estimate, null), airflow: estimate, limits: [] };
  return [
    ...optimistic,
    ...(needed === null ? [] : [againstNeededFinding(measured, needed, units)]),
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

/** A range narrower than the method can give is widened to it, and that is said. */
function withLeastError(
  typed: Estimate<CubicMetresPerSecond>,
  method: string | undefined,
  { telling: { units } }: Desk,
): { readonly estimate: Estimate<CubicMetresPerSecond>; readonly optimistic: readonly Finding[] } {
  const least = method === undefined ? undefined : leastErrors[method];
  const { typical } = typed;
  const low = cubicMetresPerSecond(typical * (1 - (least?.value ?? 0)));
  if (typed.low >= typical && least === undefined) {
    const says = 'No way of measuring is without error: give a low end below the mean. /measure works it out.';
    return { estimate: typed, optimistic: [remark('no-error-given', 'caution', says)] };
  }
  if (least === undefined || meets(low, typed.low)) return { estimate: typed, optimistic: [] };
  const shown = (flow: CubicMetresPerSecond) => airflow.showShort(flow, units);
  const share = percentage.showShort(least.value, units);
  return {
    estimate: { low, typical, high: cubicMetresPerSecond(typical * (1 + least.value)) },
    optimistic: [
      {
        id: 'low-end-too-high',
        weight: 'caution',
        says: `${least.by} errs by ${share} or more: the low end of ${shown(typical)} is ${shown(low)} at best. Compared with that; /measure works it out.`,
        working: [
          {
            what: 'Low end at best',
            how: `${shown(typical)} × (1 − ${share})`,
            value: shown(low),
            source: least.citation,
          },
        ],
        sources: citations(least.citation),
      },
    ],
  };
}

/** The airflow that must be shown: what was agreed, and no less than the room needs where the sheet knows the room. */
export function needsOf(
  desk: Desk,
  walk: OpenWalk,
): { readonly airflow: CubicMetresPerSecond | null; readonly remarks: readonly Finding[] } {
  const { units } = desk.telling;
  const agreed = flowIn(saidAt(walk, 'target-airflow'), 'airflow');
  const worked = fromSheet(neededInterview, recallFor(desk, walk));
  const room = 'inputs' in worked ? worked.inputs.airflow : null;
  const remarks = 'inputs' in worked && room !== null ? assumedRemark(worked.assumed, 'size') : [];
  if (room === null) {
    const says = 'What the room needs is not on the sheet, only what was agreed counts. /size works it out.';
    return { airflow: agreed ?? null, remarks: [remark('need-not-known', 'advice', says)] };
  }
  if (agreed === undefined || meets(agreed, room)) return { airflow: agreed ?? room, remarks };
  const says = `${airflow.showShort(agreed, units)} was agreed, and the room needs ${airflow.showShort(room, units)}.`;
  return { airflow: room, remarks: [remark('agreed-too-little', 'caution', says), ...remarks] };
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
  const earlier = old?.['method'];
  const otherWay =
    method !== undefined && typeof earlier === 'string' && earlier !== method && Object.hasOwn(wordsFor, earlier)
      ? ` Measured then with ${wordsFor[earlier]} and now with ${wordsFor[method]}, so both errors stand between them.`
      : '';
  return [
    {
      id: 'before-and-after',
      weight: meets(now, before) ? 'good' : 'caution',
      says: `Before the work it moved ${shown(before)}, now ${shown(now)}.${otherWay}`,
      working: [],
      sources: citations(ownWorking),
    },
  ];
}
