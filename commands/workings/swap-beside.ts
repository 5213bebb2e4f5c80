import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import { replay } from '#interview/replay.ts';
import { ownWorking } from '#knowledge/sources.ts';
import { airflow } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond } from '#quantity/units.ts';
import { airflowNeeded } from '../questions/fan.ts';
import { citations } from './citations.ts';
import { delivery } from './delivery.ts';
import { pathOnSheet } from './path-on-sheet.ts';

const meanOf = (value: unknown): CubicMetresPerSecond | null =>
  typeof value === 'object' && value !== null && 'mean' in value && typeof value.mean === 'number'
    ? cubicMetresPerSecond(value.mean)
    : null;

/** What was measured at the grille beside what the room needs and what this fan and duct should give. */
export function measuredBeside(desk: Desk, value: unknown): readonly Finding[] {
  const mean = meanOf(value);
  if (mean === null) return [];
  const { units } = desk.telling;
  const said = (flow: CubicMetresPerSecond) => airflow.showShort(flow, units);
  const needed = desk.recall(airflowNeeded);
  const need = needed?.known ? (needed.value as CubicMetresPerSecond) : null;
  const path = replay(pathOnSheet(), desk.recall, 'one-shot');
  const band = path.complete && path.inputs ? delivery(path.inputs).airflow : null;
  const predicted = band && { low: cubicMetresPerSecond(band.low), high: cubicMetresPerSecond(band.high) };
  return [
    ...(need === null
      ? []
      : [
          compared('against-needed', meets(mean, need), {
            says: meets(mean, need)
              ? `${said(mean)} meets the ${said(need)} needed. The low end of the reading is what proves it.`
              : `Too little: ${said(need)} is needed and ${said(mean)} was measured.`,
            working: [
              { what: 'Measured', value: said(mean) },
              { what: 'Needed', value: said(need) },
            ],
          }),
        ]),
    ...(predicted === null
      ? []
      : [
          compared('against-predicted', meets(mean, predicted.low), {
            says: meets(mean, predicted.low)
              ? `This fan and duct should give ${airflow.showRangeShort(predicted, units)}.`
              : `This fan and duct should give ${airflow.showRangeShort(predicted, units)}. Look for a crushed or slack duct, a flap that sticks, or tape left on the damper.`,
            working: [
              { what: 'Measured', value: said(mean) },
              { what: 'Worked out for this fan and duct', value: airflow.showRange(predicted, units) },
            ],
          }),
        ]),
  ];
}

const compared = (id: string, fine: boolean, rest: Pick<Finding, 'says' | 'working'>): Finding => ({
  id,
  weight: fine ? 'good' : 'caution',
  ...rest,
  sources: citations(ownWorking),
});
