import type { CallbackNumbers } from '#diagnosis/numbers.ts';
import { comparedWithNeeded, comparedWithPredicted } from '#engine/measuring/comparison.ts';
import { type Interview, take } from '#interview/interview.ts';
import { fieldMethods } from '#knowledge/field-methods.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, metres } from '#quantity/units.ts';
import { measuredAirflow } from '../questions/airflow.ts';
import { altitude, ductRun } from '../questions/duct.ts';
import { airflowNeeded, collar, fanCurve, fanSetting, fanSettings } from '../questions/fan.ts';
import { delivery } from './delivery.ts';
import { fanSettingsOf, settingInUse } from './fan-model.ts';

/** What the sheet may hold that a callback can reckon with. */
export const callbackNumbersTake = [measuredAirflow, airflowNeeded, fanCurve, collar, ductRun] as const;

/**
 * What was measured and what the fan and duct on the sheet should move, for the reasoning: physics as evidence. Nothing is
 * asked; what the sheet lacks says nothing.
 */
export function* callbackNumbers(): Interview<CallbackNumbers> {
  const measured = yield* take(measuredAirflow);
  const needed = yield* take(airflowNeeded);
  const fan = yield* take(fanCurve);
  const run = yield* take(ductRun);
  const wide = yield* take(collar);
  const selector = yield* take(fanSettings);
  const setting = yield* take(fanSetting);
  const height = yield* take(altitude);
  const rating: CubicMetresPerSecond | undefined =
    fan.known && fan.value.kind !== 'points' ? fan.value.airflow : undefined;
  const rated =
    rating !== undefined && needed.known && needed.value !== null ? { rated: { rating, needed: needed.value } } : {};
  if (!measured.known) return rated;
  const atGrille = measured.value;
  const need =
    needed.known && needed.value !== null
      ? { needed: { airflow: needed.value, outcome: comparedWithNeeded(atGrille, needed.value) } }
      : {};
  if (!fan.known || !run.known) return { ...rated, airflow: { atGrille, ...need } };
  const { airflow } = delivery({
    setting: settingInUse(fanSettingsOf(fan.value, selector.value), setting.value, fan.value),
    run: run.value,
    collar: wide.value,
    altitude: height.value ?? metres(0),
  });
  const predicted = {
    low: cubicMetresPerSecond(airflow.low),
    typical: cubicMetresPerSecond(airflow.typical),
    high: cubicMetresPerSecond(airflow.high),
  };
  const comparison = comparedWithPredicted({
    measured: atGrille,
    predicted,
    widestTelling: fieldMethods.comparison.widestTelling.value,
  });
  return { ...rated, airflow: { atGrille, ...need, predicted: { airflow: predicted, comparison } } };
}
