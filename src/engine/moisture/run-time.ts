import { relativeHumidity } from '#engine/psychrometrics/humidity.ts';
import { type Kilograms, kilograms, type Ratio, ratio, seconds } from '#quantity/units.ts';
import type { Bathroom, RecoveryLimits } from './bathroom.ts';
import { carefulPace, followWater, type Pace } from './drying.ts';
import {
  type DryingRoom,
  dryingRoom,
  named,
  type RoomWater,
  roomFog,
  roomVapour,
  type WaterRow,
  waterFlowOf,
} from './drying-room.ts';
import { type LevelWatch, levelWatch, type RecoveryTime, recoveryLevels } from './recovery-level.ts';

/** The room at the moment the water is turned off. */
interface EndOfShower {
  readonly humidityRatio: Ratio;
  /** 0 to 1; at 1 the room is fogged. */
  readonly relativeHumidity: Ratio;
  /** Water hanging in the air as fog, kg for each kg of dry air. */
  readonly fog: number;
  /** Water on the cool walls. */
  readonly condensed: Kilograms;
  /** Water on the mirror, kg/m². */
  readonly mirrorFilm: number;
}

export interface RunTime {
  readonly endOfShower: EndOfShower;
  /** Room air back at its limit, for good. */
  readonly airRecovers: RecoveryTime;
  /** Zero means usable as the water stops. Every mirror fogs in a shower: never print "does not fog". */
  readonly mirrorClears: RecoveryTime;
  /** From here on, switching the fan off and letting the rest dry into a shut room keeps the walls under their limit. */
  readonly reboundHeld: RecoveryTime;
  /** Splashed walls and curtain dry to the share that may be left. Standing water on a floor takes longer. */
  readonly surfacesDry: RecoveryTime;
  /** The latest of air, mirror and rebound. */
  readonly fanMayStop: RecoveryTime;
}

/**
 * How long the fan must run after a shower, and when air, mirror and walls are back to normal.
 *
 * The water in the room (`waterFlow`) is followed through the shower and the drying after it; each time is the last
 * moment at which its level (`recoveryLevels`) is still passed. The fan may stop at the latest of air, mirror and rebound.
 *
 * One room at one temperature, mixed apart from the mixing share. Its constants were chosen with a published drying
 * test in view: a fit, not a proof, so print "about". No airflow and a humid house are answers, not errors.
 *
 * @source own working, model RT-1
 */
export function runTime(bathroom: Bathroom, limits: RecoveryLimits, pace: Pace = carefulPace): RunTime {
  const room = dryingRoom(bathroom);
  const levels = recoveryLevels(room, limits);
  const watches = {
    air: levelWatch(levels.air),
    mirror: levelWatch(levels.mirror),
    rebound: levelWatch(levels.rebound),
    splash: levelWatch(levels.splash),
  };
  const { air, mirror, rebound, splash } = watches;
  const falls = fallsEverywhere(room);
  let whenWaterStops: RoomWater | undefined;
  followWater({
    room,
    longest: limits.longest,
    pace,
    onMoment: (at, water) => {
      if (at < 0) return false;
      whenWaterStops ??= named(water);
      air.see(at, levels.air.excess(water));
      mirror.see(at, levels.mirror.excess(water));
      rebound.see(at, levels.rebound.excess(water));
      splash.see(at, levels.splash.excess(water));
      return air.settled() && mirror.settled() && rebound.settled() && splash.settled() && falls(water);
    },
  });
  const airRecovers = recoveryTime(room, watches.air);
  const mirrorClears = recoveryTime(room, watches.mirror);
  const reboundHeld = recoveryTime(room, watches.rebound);
  return {
    endOfShower: endOfShower(room, whenWaterStops),
    airRecovers,
    mirrorClears,
    reboundHeld,
    surfacesDry: recoveryTime(room, watches.splash),
    fanMayStop: latest([airRecovers, mirrorClears, reboundHeld]),
  };
}

/** Once every store of water is on its way down none of them rises again, for each feeds the others only by falling. */
function fallsEverywhere(room: DryingRoom): (water: WaterRow) => boolean {
  const flowInto = waterFlowOf(room);
  const flow = new Float64Array(4);
  return (water) => {
    flowInto(flow, water, false);
    return flow.every((each) => each <= 0);
  };
}

function recoveryTime(room: DryingRoom, watch: LevelWatch): RecoveryTime {
  if (room.dryAirDrawn <= 0) return { found: false, why: 'no air moves' };
  if (watch.level.outOfReach) return { found: false, why: 'house air too humid' };
  if (!watch.settled()) return { found: false, why: 'longer than followed' };
  return { found: true, after: watch.crossing() };
}

function latest(times: readonly RecoveryTime[]): RecoveryTime {
  const reasons = times.flatMap((time) => (time.found ? [] : [time.why]));
  const why = (['no air moves', 'house air too humid', 'longer than followed'] as const).find((each) =>
    reasons.includes(each),
  );
  if (why !== undefined) return { found: false, why };
  return { found: true, after: seconds(Math.max(...times.map((time) => (time.found ? time.after : 0)))) };
}

function endOfShower(room: DryingRoom, water: RoomWater | undefined): EndOfShower {
  const { store, cool, mirror } = water ?? { store: room.bathroom.storage * room.houseHumidity, cool: 0, mirror: 0 };
  const { roomTemperature: temperature, pressure, coolArea } = room.bathroom;
  const vapour = ratio(roomVapour(room, store));
  const full = relativeHumidity({ temperature, humidityRatio: vapour, pressure });
  return {
    humidityRatio: vapour,
    relativeHumidity: ratio(Math.min(1, full)),
    fog: roomFog(room, store),
    condensed: kilograms(cool * coolArea),
    mirrorFilm: mirror,
  };
}
