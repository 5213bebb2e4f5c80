import type { AnswerCommand, Telling } from '#chat/command.ts';
import type { DoorGap } from '#engine/pressure/door-gap.ts';
import type { Finding } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import { ask, type Interview, offer, take } from '#interview/interview.ts';
import { ratingPressures } from '#knowledge/fans.ts';
import { airflow, ductDiameter } from '#quantity/kinds.ts';
import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  leading,
  type Metres,
  metres,
  type Sones,
} from '#quantity/units.ts';
import { doorGap, doorWidth } from './questions/door.ts';
import { altitude, ductRun } from './questions/duct.ts';
import { diameterAt } from './questions/duct-run-reading.ts';
import {
  airflowNeeded,
  collar,
  type FanAnswer,
  fanCurve,
  fanSetting,
  fanSettings,
  ratedSones,
  type SettingAnswer,
} from './questions/fan.ts';
import { running } from './questions/room.ts';
import type { DuctRun } from './questions/run-parts.ts';
import { codeLengthFinding } from './workings/code-length.ts';
import { type AirPath, delivery } from './workings/delivery.ts';
import { deliveryAssumed } from './workings/delivery-assumed.ts';
import {
  deliveredFinding,
  measureNextFinding,
  sharesFinding,
  staticPressureFinding,
  velocityFinding,
} from './workings/delivery-findings.ts';
import { ductChart } from './workings/duct-chart.ts';
import { remediesFinding, settingsFinding, soundFinding } from './workings/fan-findings.ts';
import { type FanSetting, fanSettingsOf, settingInUse } from './workings/fan-model.ts';
import { type Needed, neededInterview, neededOnSheet, neededTakes } from './workings/needed.ts';
import { endsInOpen, startOf } from './workings/run-pieces.ts';

/** Everything that decides what a fan delivers. */
export interface DuctInputs {
  readonly fan: FanAnswer;
  readonly setting: SettingAnswer;
  readonly selector: readonly CubicMetresPerSecond[];
  readonly collar: Metres | null;
  readonly run: DuctRun;
  readonly needed: CubicMetresPerSecond | null;
  /** How the need is known; left out where nobody asks. */
  readonly neededFrom?: Needed['from'];
  readonly altitude: Metres;
  readonly door: DoorGap | undefined;
  readonly sones: Sones | null;
  readonly continuous: boolean;
}

export function* ductInterview(): Interview<DuctInputs> {
  const fan = yield* ask(fanCurve);
  const wide = yield* ask(collar);
  const run = yield* ask(ductRun);
  const needed = yield* neededInterview();
  const several = fan.value.kind === 'points' && fan.value.settings.length > 1;
  const selector = several ? { value: [] } : yield* offer(fanSettings);
  const sones = yield* offer(ratedSones);
  const setting = yield* take(fanSetting);
  const height = yield* take(altitude);
  const width = yield* take(doorWidth);
  const gap = yield* take(doorGap);
  const runs = yield* take(running);
  return {
    fan: fan.value,
    setting: setting.value,
    selector: selector.value,
    collar: wide.value,
    run: run.value,
    needed: needed.airflow,
    neededFrom: needed.from,
    altitude: height.value ?? metres(0),
    door: width.known && gap.known ? { width: width.value.typical, height: gap.value.typical } : undefined,
    sones: sones.value,
    continuous: runs.value === 'continuous',
  };
}

/** Widths nearer than this are one trade size, m. */
const sameWidth = 0.003;

/** Cautions that stand beside the numbers whatever they are. */
function remarks(inputs: DuctInputs, { units }: Telling): Finding[] {
  const found: Finding[] = [];
  const plain = { working: [], sources: [{ source: 'common-practice', verified: false }] } as const;
  const start = startOf(inputs.run);
  if (!endsInOpen(inputs.run)) {
    found.push({
      ...plain,
      id: 'no-end',
      weight: 'caution',
      says: 'Say how the duct ends outdoors: a bare end was taken, and a duct must never end in an attic or a soffit.',
    });
  }
  if (inputs.collar !== null && start < inputs.collar * 0.99) {
    found.push({
      ...plain,
      id: 'necked-down',
      weight: 'caution',
      says: `The collar is ${ductDiameter.showShort(inputs.collar, units)} but the duct starts at ${ductDiameter.showShort(start, units)}: it throttles the fan from the first inch. Half of what the carton says, or less, is common where the duct is small and long.`,
    });
  }
  const { parts } = inputs.run;
  parts.forEach((part, index) => {
    if (part.part !== 'transition') return;
    const before = index === 0 ? inputs.collar : diameterAt(parts, index - 1);
    if (before === null || before === undefined || Math.abs(before - part.from) < sameWidth) return;
    const size = (width: Metres) => ductDiameter.showShort(width, units);
    found.push({
      ...plain,
      id: 'run-order',
      weight: 'caution',
      says: `Look at the order of the parts: the change from ${size(part.from)} to ${size(part.to)} stands behind a width of ${size(before)}. Name the parts as the air meets them, from the collar outwards.`,
    });
  });
  return found;
}

/** The path the air takes. */
function airPath(inputs: DuctInputs, settings: readonly FanSetting[]): AirPath {
  return {
    setting: settingInUse(settings, inputs.setting, inputs.fan),
    run: inputs.run,
    collar: inputs.collar,
    altitude: inputs.altitude,
    door: inputs.door,
  };
}

/** The findings alone, without the picture: what the bench counts. */
export function ductFindings(inputs: DuctInputs, telling: Telling) {
  const { units } = telling;
  const settings = fanSettingsOf(inputs.fan, inputs.selector);
  const path = airPath(inputs, settings);
  const result = delivery(path);
  const findings = [
    deliveredFinding(result, inputs.needed, units),
    ...remarks(inputs, telling),
    sharesFinding(result, units),
    staticPressureFinding(result, units),
    velocityFinding(result, units),
    codeLengthFinding(result.ready, units),
    soundFinding(result, inputs.sones, inputs.continuous, units),
    settingsFinding(path, settings, inputs.needed, units),
    remediesFinding(path, settings, inputs.needed, units),
    measureNextFinding(result, units),
  ].filter((finding) => finding !== undefined);
  return { result, settings, findings };
}

/** What the fan is sold as: the airflow at the lower rating pressure. */
function cartonNumber(fan: FanAnswer): CubicMetresPerSecond | undefined {
  if (fan.kind !== 'points') return fan.airflow;
  const atRating = (pressure: number) => Math.abs(pressure - ratingPressures.low) < 0.05 * ratingPressures.low;
  return fan.settings.at(-1)?.points.find((point) => atRating(point.staticPressure))?.airflow;
}

function answer(inputs: DuctInputs, telling: Telling): Reply {
  const { units } = telling;
  const { result, settings, findings } = ductFindings(inputs, telling);
  const flow = cubicMetresPerSecond(result.airflow.typical);
  const promised = cartonNumber(inputs.fan);
  return {
    headline:
      promised === undefined
        ? `About ${airflow.show(flow, units)} will come out of this duct.`
        : `About ${airflow.show(flow, units)} will come out of this duct, not the label’s ${airflow.showShort(promised, units)}.`,
    findings,
    chart: ductChart(result, settings, inputs.needed, leading(units)),
    assumed: [
      ...deliveryAssumed(result, units),
      ...neededOnSheet({ airflow: inputs.needed, from: inputs.neededFrom ?? 'told' }, units),
      ...(inputs.door
        ? []
        : [
            'Make-up air: the room is taken to let in all the air asked of it. Give door-width and door-gap to reckon with the door',
          ]),
    ],
    suggestions: inputs.needed === null ? [{ label: 'What does the room need?', command: 'size' }] : [],
  };
}

const duct: AnswerCommand<DuctInputs> = {
  kind: 'answer',
  name: 'duct',
  summary: 'What a fan really delivers through its duct, where the pressure goes, and what would help.',
  example:
    'fan-curve="96@0 84@0.1 66@0.25 0@0.5" collar="4 in" duct-run="14 ft 4 in flex compressed 4 %; 2 x elbow 90; wall cap"',
  takes: [
    fanCurve,
    collar,
    ductRun,
    airflowNeeded,
    fanSettings,
    ratedSones,
    fanSetting,
    altitude,
    doorWidth,
    doorGap,
    ...neededTakes.filter((question) => question !== airflowNeeded),
  ],
  interview: ductInterview,
  answer,
};

export default duct;
