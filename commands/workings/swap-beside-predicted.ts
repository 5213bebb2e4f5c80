import type { Desk } from '#chat/command.ts';
import type { GrilleReadings } from '#engine/measuring/measured-airflow.ts';
import type { Finding } from '#findings/finding.ts';
import { ask, type Interview, take } from '#interview/interview.ts';
import type { Estimate } from '#quantity/estimate.ts';
import type { CubicMetresPerSecond, SquareMetres } from '#quantity/units.ts';
import { doorGap, doorWidth } from '../questions/door.ts';
import { ductRun } from '../questions/duct.ts';
import { fanCurve, fanSetting, fanSettings } from '../questions/fan.ts';
import { boxOpening } from '../questions/measuring.ts';
import type { AirPath } from './delivery.ts';
import { fanSettingsOf } from './fan-model.ts';
import { assumedRemark, fromSheet, lacksRemark } from './from-sheet.ts';
import type { DoorAnswer } from './makeup-way-in.ts';
import { predictedAirflow } from './measure.ts';
import { againstPredictedFinding } from './measure-comparison.ts';
import { pathOnSheet } from './path-on-sheet.ts';
import { remark } from './plain-replies.ts';
import { predictedRetold } from './swap-retold.ts';
import { recallFor } from './swap-sheet.ts';
import { besideTold, type OpenWalk } from './swap-walk.ts';

/** The way of the air as the sheet has it, while somebody measures at the grille. */
interface OnSheet {
  readonly path: AirPath | null;
  readonly door: DoorAnswer | null;
  /** Of the flow box, where one was used. */
  readonly opening: SquareMetres | null;
  /** How many speeds the fan has, and whether the sheet says which it runs at. */
  readonly settings: number;
  readonly settingKnown: boolean;
}

function* onSheet(): Interview<OnSheet> {
  const fan = yield* ask(fanCurve);
  yield* ask(ductRun);
  const path = yield* pathOnSheet();
  const width = yield* take(doorWidth);
  const gap = yield* take(doorGap);
  const opening = yield* take(boxOpening);
  const selector = yield* take(fanSettings);
  const setting = yield* take(fanSetting);
  return {
    path,
    door: width.known && gap.known ? { width: width.value, gap: gap.value } : null,
    opening: opening.value,
    settings: fan.known ? fanSettingsOf(fan.value, selector.value).length : 0,
    settingKnown: setting.known,
  };
}

/** A mean as the comparison takes it: through a box where one stood over the grille, else without anything in the way. */
export const readWith = ({ typical }: Estimate<CubicMetresPerSecond>, box: SquareMetres | null): GrilleReadings =>
  box === null
    ? { method: 'hood', powered: true, airflows: [typical] }
    : { method: 'box', opening: box, pressures: [] };

/** What was measured beside what this fan and duct should give, at the setting in use. */
export function predictedBeside(
  desk: Desk,
  walk: OpenWalk,
  measured: {
    readonly airflow: Estimate<CubicMetresPerSecond>;
    readonly withBox: boolean;
    readonly tooLittle: boolean;
    readonly short: boolean;
  },
): readonly Finding[] {
  const { units } = desk.telling;
  const { language } = walk.checklist;
  const told = besideTold(walk);
  const { airflow, withBox, tooLittle, short } = measured;
  const look = short ? [remark('where-to-look', 'advice', told.whereToLook)] : [];
  const known = fromSheet(onSheet, recallFor(desk, walk));
  if ('lacks' in known) return [lacksRemark(told.notCompared, known.lacks, { command: 'duct', language }), ...look];
  const { path, door, opening, settings, settingKnown } = known.inputs;
  if (path === null) return [remark('not-predicted', 'advice', told.notPredicted), ...look];
  const readings = readWith(airflow, withBox ? opening : null);
  const predicted = predictedAirflow(path, door, readings);
  const finding = predictedRetold(
    againstPredictedFinding({ readings, airflow, limits: [] }, predicted, { tooLittle, units }),
    airflow,
    { expected: predicted.airflow, tooLittle, units, language },
  );
  const at = path.setting.name(units);
  const setting = settingKnown ? told.atSetting(at) : told.atFastest(at);
  const box = withBox && opening === null ? [remark('box-left-out', 'advice', told.boxLeftOut)] : [];
  return [
    settings > 1 ? { ...finding, says: `${finding.says}${setting}` } : finding,
    ...(door ? [] : [remark('door-not-known', 'advice', told.doorUnknown)]),
    ...box,
    ...assumedRemark(known.assumed, { command: 'duct', language }),
    ...(finding.weight === 'caution' ? [] : look),
  ];
}
