import type { GrilleReadings } from '#engine/measuring/measured-airflow.ts';
import type { MeasuringLimit } from '#engine/measuring/reading.ts';
import { mostAirflowForBag } from '#engine/measuring/timed-bag.ts';
import type { Finding, Value } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { fieldMethods } from '#knowledge/field-methods.ts';
import { doorPressureLimits, makeUpSentences } from '#knowledge/make-up.ts';
import { commonPractice } from '#knowledge/sources.ts';
import { type Estimate, isExact } from '#quantity/estimate.ts';
import { airflow, percentage, roomPressure } from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, ratio } from '#quantity/units.ts';
import { citations } from './citations.ts';
import { fineFlow } from './fine.ts';
import { measuringSteps, methodCitations } from './measure-working.ts';

export interface Measured {
  readonly readings: GrilleReadings;
  readonly airflow: Estimate<CubicMetresPerSecond>;
  readonly limits: readonly MeasuringLimit[];
}

const measuredValue = (estimate: Estimate<CubicMetresPerSecond>, units: UnitSystem): Value => ({
  number: estimate.typical,
  unit: airflow.siUnit,
  ...(isExact(estimate) ? {} : { low: estimate.low, high: estimate.high }),
  shown: airflow.showEstimate(estimate, units),
});

/** A way of measuring, as a sentence names it. */
export const methodWords: Readonly<Record<GrilleReadings['method'], string>> = {
  bag: 'a bag',
  box: 'a flow box',
  traverse: 'speeds over the grille',
  hood: 'a flow hood',
};

/** What was measured, with the error of the method. */
export function measuredFinding({ readings, airflow: moved, limits }: Measured, units: UnitSystem): Finding {
  return {
    id: 'measured-airflow',
    weight: limits.length === 0 ? 'good' : 'advice',
    says: `Measured with ${methodWords[readings.method]}: ${airflow.show(moved.typical, units)}, somewhere from ${airflow.showRangeShort(moved, units)}.`,
    value: measuredValue(moved, units),
    working: measuringSteps(readings, moved, units),
    sources: citations(methodCitations[readings.method]),
  };
}

const unread = {
  'no readings': 'Nothing is measured yet: there are no readings.',
  'not a positive reading':
    'Nothing is measured: every reading must be more than nothing. Is the fan running, and the gauge the right way round?',
  'too quick to time':
    'Nothing is measured: the bag fills faster than a hand can stop a watch. Use a larger bag or a flow box.',
} as const;

export const nothingMeasuredFinding = (says: string): Finding => ({
  id: 'measured-airflow',
  weight: 'caution',
  says,
  value: { number: null, unit: airflow.siUnit, shown: 'not measured' },
  working: [],
  sources: citations(commonPractice),
});

export const whyUnread = (why: keyof typeof unread): string => unread[why];

/** What these readings should not be trusted for. */
export function doubtFinding({ readings, limits }: Measured, units: UnitSystem): Finding | undefined {
  if (limits.length === 0) return undefined;
  const { bag, box } = fieldMethods;
  const says: Readonly<Record<MeasuringLimit, () => string>> = {
    'bag fills too fast': () => {
      const most = readings.method === 'bag' ? mostAirflowForBag(readings.volume.typical, bag.shortestTime.value) : 0;
      return `The bag is too small: above ${airflow.showShort(cubicMetresPerSecond(most), units)} it takes under ${bag.shortestTime.value} s, and the watch decides. Use 55 gal or larger.`;
    },
    'too few readings': () => `Take ${bag.fewestReadings.value} readings; the mean of fewer is worth less.`,
    'readings disagree': () =>
      'The readings disagree more than the watch explains. Look for wind at the hood or a bag held crooked, and do it again.',
    'box pressure too low': () =>
      `Under ${roomPressure.showShort(box.pressure.low, units)} the gauge mostly shows its own error. Use a smaller opening.`,
    'box pressure too high': () =>
      `Over ${roomPressure.showShort(box.pressure.high, units)} the box itself throttles the fan. Use a larger opening.`,
  };
  return {
    id: 'reading-doubt',
    weight: 'caution',
    says: limits.map((limit) => says[limit]()).join(' '),
    working: [],
    sources: citations(
      ...limits.map((limit) => {
        if (limit === 'bag fills too fast') return bag.shortestTime.citation;
        return limit.startsWith('box') ? box.pressure.citation : bag.fewestReadings.citation;
      }),
    ),
  };
}

/** What shutting the door costs, by two readings taken the same way: the error of the method cancels. */
export function doorDropFinding({ airflow: moved }: Measured, open: CubicMetresPerSecond, units: UnitSystem): Finding {
  const drop = 1 - moved.typical / open;
  const { value: allowed, citation } = doorPressureLimits['door-drop'];
  const shown = percentage.showShort(ratio(Math.max(0, drop)), units);
  const most = percentage.showShort(allowed, units);
  const starved = drop >= allowed;
  return {
    id: 'door-drop',
    weight: starved ? 'caution' : 'good',
    says: starved
      ? `Shutting the door costs ${shown}, more than the ${most} it may: the fan is starved of air. Open the way in; makeup tells how far.`
      : `Shutting the door costs ${shown}, under ${most}: the way in is wide enough.`,
    value: { number: drop, unit: percentage.siUnit, shown },
    working: [
      {
        what: 'What shutting the door costs',
        how: `1 − ${fineFlow(moved.typical, units)} ÷ ${fineFlow(open, units)}`,
        value: `${(100 * drop).toFixed(1)} %`,
        source: citation,
      },
    ],
    sources: citations(citation, makeUpSentences['measure-the-drop'].citation),
  };
}
