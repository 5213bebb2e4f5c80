import { ask, type Interview, take } from '#interview/interview.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, metres } from '#quantity/units.ts';
import { deliveredAirflow, measuredAirflow } from '../questions/airflow.ts';
import { doorGap, doorWidth } from '../questions/door.ts';
import { altitude, ductRun } from '../questions/duct.ts';
import { collar, fanCurve, fanSetting, fanSettings } from '../questions/fan.ts';
import { type AirPath, type Delivery, delivery } from './delivery.ts';
import { fanSettingsOf, settingInUse } from './fan-model.ts';

/** The air that really moves, and how it is known. */
export interface Delivered {
  readonly airflow: Estimate<CubicMetresPerSecond>;
  /** With everything unknown at its worst and best: for safety. */
  readonly outer: { readonly low: CubicMetresPerSecond; readonly high: CubicMetresPerSecond };
  readonly from: 'measured' | 'told' | 'worked out from the duct' | 'not known';
}

/** Every question this may take, for the list of a command's options. */
export const deliveredTakes = [
  measuredAirflow,
  deliveredAirflow,
  fanCurve,
  collar,
  ductRun,
  fanSettings,
  fanSetting,
] as const;

/**
 * The delivered airflow a later command builds on: the measurement, else the number given, else the duct on the sheet worked
 * out afresh, so that a corrected duct is never answered with a stale airflow. Asked for only where none of these is there; where
 * nobody knows it, the fan and the duct as far as they are known say more than the range of any bath fan.
 */
export function* deliveredInterview(): Interview<Delivered> {
  const measured = yield* take(measuredAirflow);
  if (measured.known) return { airflow: measured.value, outer: measured.value, from: 'measured' };
  const told = yield* take(deliveredAirflow);
  if (told.known) return { airflow: told.value, outer: told.value, from: 'told' };
  const fan = yield* take(fanCurve);
  const run = yield* take(ductRun);
  if (!fan.known || !run.known) {
    const asked = yield* ask(deliveredAirflow);
    if (asked.known) return { airflow: asked.value, outer: asked.value, from: 'told' };
    // Where nobody has been asked about fan and duct there is nothing to work it out from.
    if (fan.asked === false || run.asked === false)
      return { airflow: asked.value, outer: asked.value, from: 'not known' };
  }
  const wide = yield* take(collar);
  const selector = yield* take(fanSettings);
  const setting = yield* take(fanSetting);
  const height = yield* take(altitude);
  const width = yield* take(doorWidth);
  const gap = yield* take(doorGap);
  const { airflow, outer } = deliveryOnce({
    setting: settingInUse(fanSettingsOf(fan.value, selector.value), setting.value, fan.value),
    run: run.value,
    collar: wide.value,
    altitude: height.value ?? metres(0),
    door: width.known && gap.known ? { width: width.value.typical, height: gap.value.typical } : undefined,
  });
  const at = (value: number) => cubicMetresPerSecond(value);
  if (!fan.known) {
    // The fan that stands in is one of many: the range is at least that of fans found in lived-in houses.
    const { low, high } = deliveredAirflow.whenUnknown.value;
    const widened = { low: at(Math.min(low, airflow.low)), high: at(Math.max(high, airflow.high)) };
    return {
      airflow: { ...widened, typical: at(airflow.typical) },
      outer: { low: at(Math.min(low, outer.low)), high: at(Math.max(high, outer.high)) },
      from: 'not known',
    };
  }
  return {
    airflow: { low: at(airflow.low), typical: at(airflow.typical), high: at(airflow.high) },
    outer: { low: at(outer.low), high: at(outer.high) },
    from: 'worked out from the duct',
  };
}

/** Answers of several commands on one sheet rest on one and the same duct; working it out for each would be waste. */
const remembered = new Map<string, Pick<Delivery, 'airflow' | 'outer'>>();
const mostRemembered = 64;

export function deliveryOnce(path: AirPath): Pick<Delivery, 'airflow' | 'outer'> {
  const { setting, ...rest } = path;
  const key = JSON.stringify([setting.description, setting.slowedTo, rest]);
  const known = remembered.get(key);
  if (known) return known;
  const { airflow, outer } = delivery(path);
  if (remembered.size >= mostRemembered) remembered.clear();
  remembered.set(key, { airflow, outer });
  return { airflow, outer };
}
