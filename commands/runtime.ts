import type { AnswerCommand, Telling } from '#chat/command.ts';
import { runTime } from '#engine/moisture/run-time.ts';
import { runTimeAdvice } from '#engine/moisture/run-time-advice.ts';
import type { Reply } from '#findings/reply.ts';
import { type Interview, offer, take, together } from '#interview/interview.ts';
import { recoveryLimits, runTimeSteps } from '#knowledge/moisture.ts';
import { airflow, minutes } from '#quantity/kinds.ts';
import { leading, metres } from '#quantity/units.ts';
import { doorGap, doorWidth } from './questions/door.ts';
import { altitude } from './questions/duct.ts';
import {
  bathroomTemperature,
  fanDuringShower,
  houseHumidity,
  houseTemperature,
  mirrorWall,
  showerMinutes,
  wipeDown,
} from './questions/moisture.ts';
import { ceilingHeight, roomArea, roomLength, roomWidth } from './questions/room.ts';
import { deliveredInterview, deliveredTakes } from './workings/delivered.ts';
import type { AirPath } from './workings/delivery.ts';
import { pathOnSheet } from './workings/path-on-sheet.ts';
import { areaOf } from './workings/room-need.ts';
import { runTimeBands } from './workings/runtime-bands.ts';
import { runTimeChart } from './workings/runtime-chart.ts';
import { customerFinding } from './workings/runtime-customer.ts';
import {
  airFinding,
  measureNextFinding,
  mirrorFinding,
  runTimeFinding,
  runTimeRemarks,
  surfacesFinding,
} from './workings/runtime-findings.ts';
import { type RunTimeInputs, unsureBathroom, withAirflow } from './workings/runtime-room.ts';
import { shortensFinding } from './workings/runtime-shortens.ts';
import { type FollowedRoom, minuteByMinute } from './workings/runtime-working.ts';

function* runTimeInterview(): Interview<RunTimeInputs> {
  const area = yield* take(roomArea);
  const [length, width] = area.known ? [null, null] : yield* together('need', roomLength, roomWidth);
  const height = yield* offer(ceilingHeight);
  const delivered = yield* deliveredInterview();
  const path = delivered.from === 'worked out from the duct' ? yield* pathWithDoor() : null;
  const [shower, humidity, warmth] = yield* together('offer', showerMinutes, houseHumidity, houseTemperature);
  const fanOn = yield* offer(fanDuringShower);
  const wiped = yield* offer(wipeDown);
  const bathroom = yield* take(bathroomTemperature);
  const mirror = yield* take(mirrorWall);
  const high = yield* take(altitude);
  return {
    area: length && width ? areaOf(length.value, width.value) : area.value,
    ceilingHeight: height.value,
    delivered,
    path,
    altitude: high.value ?? metres(0),
    showerDuration: shower.value,
    houseHumidity: humidity.value,
    houseTemperature: warmth.value,
    bathroomTemperature: bathroom.known ? bathroom.value : null,
    fanDuringShower: fanOn,
    wipeDown: wiped,
    mirrorWall: mirror,
  };
}

/** The way of the air, door and all, so that a wider gap under it can be tried. */
function* pathWithDoor(): Interview<AirPath | null> {
  const path = yield* pathOnSheet();
  const width = yield* take(doorWidth);
  const gap = yield* take(doorGap);
  if (!path || !width.known || !gap.known) return path;
  return { ...path, door: { width: width.value.typical, height: gap.value.typical } };
}

/** The run that is told, by the low end of the airflow, with all that its findings need. */
function followedRoom(inputs: RunTimeInputs): FollowedRoom {
  const room = unsureBathroom(inputs);
  const result = runTime(room.cautious, recoveryLimits);
  const { low, typical } = inputs.delivered.airflow;
  const likely = typical > low * 1.05 ? runTime(withAirflow(room.cautious, typical), recoveryLimits) : null;
  return { inputs, room, result, likely, moments: minuteByMinute(room, result) };
}

function answer(inputs: RunTimeInputs, { units }: Telling): Reply {
  const followed = followedRoom(inputs);
  const bands = runTimeBands(followed.room, followed.result);
  const advice = runTimeAdvice(followed.result.fanMayStop, runTimeSteps);
  const likely = followed.likely && runTimeAdvice(followed.likely.fanMayStop, runTimeSteps);
  const { low, high } = inputs.delivered.airflow;
  const headlines = {
    run: () =>
      `Run the fan about ${minutes.showShort(advice.kind === 'run' ? advice.for : runTimeSteps.least, units)} after the shower.`,
    'more air': () =>
      likely?.kind === 'run'
        ? `Find out the airflow: at its low end more than an hour is needed, at the likeliest about ${minutes.showShort(likely.for, units)}.`
        : 'This fan needs more than an hour after a shower: more air, not more time.',
    never: () => 'No run time will dry this room as things are.',
  };
  return {
    headline: headlines[advice.kind](),
    findings: [
      runTimeFinding(followed, bands, units),
      customerFinding(followed, units),
      airFinding(followed, bands, units),
      mirrorFinding(followed, bands, units),
      surfacesFinding(followed, bands, units),
      shortensFinding(followed, units),
      measureNextFinding(followed, units),
      ...runTimeRemarks(),
    ].filter((finding) => finding !== undefined),
    get chart() {
      return runTimeChart(followed, advice.kind === 'run' ? advice.for : null, leading(units));
    },
    assumed:
      low === high
        ? []
        : [
            `Airflow: every time is told by the low end of ${airflow.showRangeShort({ low, high }, units)}; more air dries sooner.`,
          ],
    suggestions:
      advice.kind === 'run'
        ? [{ label: 'Does the duct sweat?', command: 'sweat' }]
        : [
            { label: 'What does the fan deliver?', command: 'duct' },
            { label: 'Can the room let air in?', command: 'makeup' },
          ],
  };
}

const runtime: AnswerCommand<RunTimeInputs> = {
  kind: 'answer',
  name: 'runtime',
  summary: 'How long to run the fan after a shower, when air, mirror and walls are back, and what shortens it.',
  example: 'room-length="8 ft" room-width="5 ft" delivered-airflow="60 cfm" shower-minutes=10 house-humidity=45',
  takes: [
    roomLength,
    roomWidth,
    roomArea,
    ceilingHeight,
    ...deliveredTakes,
    showerMinutes,
    houseHumidity,
    houseTemperature,
    fanDuringShower,
    wipeDown,
    bathroomTemperature,
    mirrorWall,
    altitude,
    doorWidth,
    doorGap,
  ],
  interview: runTimeInterview,
  answer,
};

export default runtime;
