import { type Seconds, seconds } from '#quantity/units.ts';
import { type DryingRoom, inARow, named, type RoomWater, type WaterRow, waterFlowOf } from './drying-room.ts';

/** Finest step, s, so that the number of steps has an end. */
const finestStep = 1;

/** How finely a run is followed. */
export interface Pace {
  /** Coarsest step, s. */
  readonly coarsestStep: number;
  /** Share of the quickest change in the room that one step may span. */
  readonly stepShare: number;
}

/** For the times that are told: the tests hold them within five seconds of those by half-second steps of another kind. */
export const carefulPace: Pace = { coarsestStep: 10, stepShare: 0.25 };
/** For bands, which take a hundred runs: a second or two from the careful times, and in the tests never a minute. */
export const quickPace: Pace = { coarsestStep: 90, stepShare: 1 };

/** One moment of a run, counted from the end of the shower; the shower itself has times below zero. */
export interface Moment {
  readonly at: Seconds;
  readonly water: RoomWater;
}

export interface Run {
  readonly room: DryingRoom;
  /** How long after the shower to follow the room. */
  readonly longest: Seconds;
  /** The careful one where nothing is said. */
  readonly pace?: Pace;
  /** Called at the start, after each step and once more when the shower stops; answer true to stop the run. */
  readonly onMoment: (moment: Moment) => boolean;
}

/**
 * Follows the water in a bathroom from the first minute of a shower until the watcher has seen enough.
 *
 * Fourth-order Runge–Kutta over `waterFlow`, in steps of 1 to 10 s (to 90 s at the quick pace) that fit the shower exactly.
 * When the shower stops the splashed surfaces hold their full film.
 *
 * @source own working, model RT-1
 */
export function followWater({ room, longest, pace = carefulPace, onMoment }: Run): void {
  const { showerDuration, storage, splashFilm } = room.bathroom;
  const water = inARow({ store: storage * room.houseHumidity, cool: 0, mirror: 0, splash: 0 });
  const step = longestStep(room, pace);
  const advance = stepper(room, water);

  const showerSteps = Math.ceil(showerDuration / step);
  for (let done = 0; done < showerSteps; done++) {
    if (onMoment({ at: seconds((done / showerSteps - 1) * showerDuration), water: named(water) })) return;
    advance(showerDuration / showerSteps, true);
  }

  water[3] = splashFilm;
  const dryingSteps = Math.ceil(longest / step);
  for (let done = 0; done <= dryingSteps; done++) {
    if (onMoment({ at: seconds(done * step), water: named(water) })) return;
    advance(step, false);
  }
}

/** Short beside the quickest thing that happens in the room: its air being swept out, or a thin film going. */
function longestStep(room: DryingRoom, { coarsestStep, stepShare }: Pace): number {
  const sweep = room.dryAir / Math.max(room.dryAirDrawn, Number.MIN_VALUE);
  const film = room.mirror.patchyFilm / (room.mirror.transfer * room.mirror.saturation);
  return Math.min(coarsestStep, Math.max(finestStep, stepShare * Math.min(sweep, film)));
}

/** Moves the water on by one step of fourth-order Runge–Kutta. */
function stepper(room: DryingRoom, water: WaterRow): (step: number, showering: boolean) => void {
  const row = (): WaterRow => new Float64Array(water.length);
  const [first, second, third, fourth, trial] = [row(), row(), row(), row(), row()] as const;
  const flowInto = waterFlowOf(room);
  return (step, showering) => {
    flowInto(first, water, showering);
    move(trial, water, first, step / 2);
    flowInto(second, trial, showering);
    move(trial, water, second, step / 2);
    flowInto(third, trial, showering);
    move(trial, water, third, step);
    flowInto(fourth, trial, showering);
    for (let each = 0; each < first.length; each++) {
      const [start, end] = [first[each] as number, fourth[each] as number];
      first[each] = (start + 2 * (second[each] as number) + 2 * (third[each] as number) + end) / 6;
    }
    move(water, water, first, step);
  };
}

/** Where the water is after flowing for a time. A film cannot be thinner than none; the store comes first in its row. */
function move(to: WaterRow, from: WaterRow, flow: WaterRow, time: number): void {
  to[0] = (from[0] as number) + (flow[0] as number) * time;
  for (let film = 1; film < to.length; film++) {
    to[film] = Math.max(0, (from[film] as number) + (flow[film] as number) * time);
  }
}
