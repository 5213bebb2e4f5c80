import { dryingRoom } from '#engine/moisture/drying-room.ts';
import type { RecoveryTime } from '#engine/moisture/recovery-level.ts';
import type { RoomMoment } from '#engine/moisture/trajectory.ts';
import type { Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { bathroomDefaults, moistureMethods, recoveryLimits, runTimeSteps } from '#knowledge/moisture.ts';
import { airflow, minutes } from '#quantity/kinds.ts';
import { celsius, ratio } from '#quantity/units.ts';
import { filmMinuteStep, ledgerSteps } from './runtime-by-hand.ts';
import { carried, crossing, type FollowedRoom, grams, inMinutes, neverWords, percent } from './runtime-working.ts';

const film = (share: number): string => `${(1000 * share).toFixed(2)} g/m²`;

/** When the fog leaves the mirror. */
export function mirrorSteps(followed: FollowedRoom): Step[] {
  const { result, moments, room } = followed;
  return [
    {
      what: 'Fog on the mirror when the water stops',
      how: `glass ${room.cautious.mirrorChill} K under the room air`,
      value: film(result.endOfShower.mirrorFilm),
      source: bathroomDefaults.mirrorChill.citation,
    },
    {
      what: 'A mirror can be used under',
      value: film(recoveryLimits.mirrorFilm),
      source: moistureMethods['run-time'].citation,
    },
    crossing('The fog on the mirror falls under that', {
      time: result.mirrorClears,
      moments,
      level: ({ mirrorFilm }) => film(mirrorFilm),
    }),
    ...filmMinuteStep(followed, {
      time: result.mirrorClears,
      surface: (dry) => dry.mirror,
      film: ({ mirrorFilm }) => mirrorFilm,
      name: 'the glass',
    }),
  ];
}

/** When the splashed walls and curtain are dry. */
export function surfaceSteps(followed: FollowedRoom): Step[] {
  const { result, moments, room } = followed;
  const { splashFilm, splashArea } = room.cautious;
  return [
    {
      what: 'Water left on walls, floor and curtain',
      how: `${film(splashFilm)} × ${splashArea} m²`,
      value: `${(1000 * splashFilm * splashArea).toFixed(0)} g`,
      source: bathroomDefaults.splashFilm.citation,
    },
    {
      what: 'They count as dry with this share left',
      value: percent(recoveryLimits.splashLeft),
      source: moistureMethods['run-time'].citation,
    },
    crossing('The share left falls under that', {
      time: result.surfacesDry,
      moments,
      level: (moment) => percent(moment.splashFilm / splashFilm),
    }),
    ...filmMinuteStep(followed, {
      time: result.surfacesDry,
      surface: (dry) => dry.walls,
      film: (moment) => moment.splashFilm,
      name: 'a splashed wall',
    }),
  ];
}

/** What the walls would do if the fan stopped, just after it may. */
export function reboundSteps(followed: FollowedRoom, units: UnitSystem): Step[] {
  const { room, result, moments } = followed;
  const { cautious } = room;
  const { reboundHeld } = result;
  const temperature = celsius(cautious.roomTemperature - cautious.surfaceChill);
  const limit = carried(
    'Air at the cool walls at their limit',
    { relativeHumidity: recoveryLimits.surface, temperature },
    { room, units, source: recoveryLimits.citations.surface },
  );
  return [
    limit,
    ...ledgerSteps(followed, units),
    crossing('If the fan stopped now and every gram left went into the shut room, the air would carry', {
      time: reboundHeld,
      moments,
      level: (moment) => grams(shutRoom(followed, moment)),
    }),
  ];
}

function shutRoom({ room }: FollowedRoom, moment: RoomMoment): number {
  const { cautious } = room;
  const { dryAir } = dryingRoom(cautious);
  const films =
    moment.wallFilm * cautious.coolArea +
    moment.mirrorFilm * cautious.mirrorArea +
    moment.splashFilm * cautious.splashArea;
  return ratio(moment.vapour + (moment.fog + films / dryAir) / cautious.storage);
}

/** The lines that end in the run time itself. */
export function adviceSteps({ result, likely, inputs }: FollowedRoom, advised: string, units: UnitSystem): Step[] {
  const time = (each: RecoveryTime): string => (each.found ? inMinutes(each.after) : neverWords[each.why]);
  return [
    { what: 'Air back at its limit after', value: time(result.airRecovers) },
    { what: 'Mirror clear after', value: time(result.mirrorClears) },
    { what: 'Walls safe with the fan off after', value: time(result.reboundHeld) },
    { what: 'The fan may stop at the latest of these', value: time(result.fanMayStop) },
    ...(likely
      ? [
          {
            what: `At the most likely airflow, ${airflow.showShort(inputs.delivered.airflow.typical, units)}, it would be`,
            value: time(likely.fanMayStop),
          },
        ]
      : []),
    {
      what: `Rounded up to ${minutes.showShort(runTimeSteps.step, units)}, told from ${minutes.showShort(runTimeSteps.least, units)} to ${minutes.showShort(runTimeSteps.most, units)}`,
      value: advised,
      source: moistureMethods['run-time'].citation,
    },
  ];
}
