import { shutOffPressure } from '#engine/fan/fan-curve.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflow, ductDiameter, staticPressure } from '#quantity/kinds.ts';
import type { Pascals } from '#quantity/units.ts';
import type { Delivery } from './delivery.ts';
import { isPastLastPoint, lastPointOf } from './fan-working.ts';

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** What was taken for granted about the duct and the fan because nobody said it. */
export const deliveryAssumed = (delivery: Delivery, units: UnitSystem): readonly string[] => [
  ...slackAssumed(delivery, units),
  ...fanAssumed(delivery, units),
];

function slackAssumed({ ready }: Delivery, units: UnitSystem): readonly string[] {
  const lines = ready.pieces.flatMap(({ slack, diameter }) => {
    if (!slack || slack.told || slack.amount.high === 0) return [];
    const { low, typical, high } = slack.amount;
    const size = ductDiameter.showShort(diameter, units);
    const taken = typical === 0 ? 'none' : percent(typical);
    return [
      `Slack of the ${size} ${slack.kind.replace('-', ' ')}: ${taken}, ${percent(low)} to ${percent(high)} may be. In a duct-run "tight" or "compressed 10 %" says it`,
    ];
  });
  return [...new Set(lines)];
}

function fanAssumed(delivery: Delivery, units: UnitSystem): readonly string[] {
  if (!isPastLastPoint(delivery)) return [];
  const { ready } = delivery;
  const { airflow: flow, staticPressure: at } = lastPointOf(ready);
  const shown = (pressure: Pascals) => staticPressure.showShort(pressure, units);
  const { low, high } = ready.fan.shutOffRange();
  const stops = shown(shutOffPressure(ready.curve(ready.typical)));
  return [
    `The fan past ${airflow.showShort(flow, units)} at ${shown(at)}, its last known point: guessed, moving nothing at ${stops} (${shown(low)} to ${shown(high)} may be). A rated point at a higher pressure settles it`,
  ];
}
