import { type Interview, take } from '#interview/interview.ts';
import { metres } from '#quantity/units.ts';
import { altitude, ductRun } from '../questions/duct.ts';
import { collar, fanCurve, fanSetting, fanSettings } from '../questions/fan.ts';
import type { AirPath } from './delivery.ts';
import { fanSettingsOf, settingInUse } from './fan-model.ts';

/** Every question this may take, for the list of a command's options. */
export const pathTakes = [fanCurve, collar, ductRun, fanSettings, fanSetting, altitude] as const;

/** The fan and its duct as the sheet has them, without any door; nothing where one of them is not there. Asks nothing. */
export function* pathOnSheet(): Interview<AirPath | null> {
  const fan = yield* take(fanCurve);
  const run = yield* take(ductRun);
  if (!fan.known || !run.known) return null;
  const wide = yield* take(collar);
  const selector = yield* take(fanSettings);
  const setting = yield* take(fanSetting);
  const height = yield* take(altitude);
  return {
    setting: settingInUse(fanSettingsOf(fan.value, selector.value), setting.value, fan.value),
    run: run.value,
    collar: wide.value,
    altitude: height.value ?? metres(0),
  };
}
