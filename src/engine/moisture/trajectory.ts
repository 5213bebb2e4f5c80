import { relativeHumidity } from '#engine/psychrometrics/humidity.ts';
import { type Ratio, ratio, type Seconds } from '#quantity/units.ts';
import type { Bathroom } from './bathroom.ts';
import { followWater } from './drying.ts';
import { dryingRoom, named, roomFog, roomVapour } from './drying-room.ts';

/** The room at one moment, for a chart. The end of the shower is time zero; the shower itself lies below it. */
export interface RoomMoment {
  readonly at: Seconds;
  /** 0 to 1. */
  readonly relativeHumidity: Ratio;
  /** In the air, and hanging in it as fog: kg for each kg of dry air. */
  readonly vapour: Ratio;
  readonly fog: number;
  /** kg/m². */
  readonly wallFilm: number;
  readonly mirrorFilm: number;
  readonly splashFilm: number;
}

/**
 * Air and films from the first minute of the shower to a chosen time after it, at least `every` apart.
 *
 * The same equations and steps as `runTime`.
 *
 * @source own working, model RT-1
 */
export function roomTrajectory(
  bathroom: Bathroom,
  { every, until }: { readonly every: Seconds; readonly until: Seconds },
): readonly RoomMoment[] {
  const room = dryingRoom(bathroom);
  const { roomTemperature: temperature, pressure } = bathroom;
  const moments: RoomMoment[] = [];
  let due = Number.NEGATIVE_INFINITY;
  followWater({
    room,
    longest: until,
    onMoment: (at, row) => {
      if (at < due && at !== 0) return false;
      due = at + every;
      const water = named(row);
      const vapour = ratio(roomVapour(room, water.store));
      moments.push({
        at,
        vapour,
        relativeHumidity: ratio(Math.min(1, relativeHumidity({ temperature, humidityRatio: vapour, pressure }))),
        fog: roomFog(room, water.store),
        wallFilm: water.cool,
        mirrorFilm: water.mirror,
        splashFilm: water.splash,
      });
      return at >= until;
    },
  });
  return moments;
}
