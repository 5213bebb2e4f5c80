import { type Seconds, seconds } from '#quantity/units.ts';
import { type DryingRoom, inARow, type WaterRow, waterFlowOf } from './drying-room.ts';

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

export interface Run {
  readonly room: DryingRoom;
  /** How long after the shower to follow the room. */
  readonly longest: Seconds;
  /** The careful one where nothing is said. */
  readonly pace?: Pace;
  /**
   * Called at the start, after each step and once more when the shower stops; answer true to stop the run. The time is counted
   * from the end of the shower; the shower itself lies below zero. The row is the same each time: copy what is kept.
   */
  readonly onMoment: (at: Seconds, water: WaterRow) => boolean;
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
    if (onMoment(seconds((done / showerSteps - 1) * showerDuration), water)) return;
    advance(showerDuration / showerSteps, true);
  }

  water[3] = splashFilm;
  const dryingSteps = Math.ceil(longest / step);
  for (let done = 0; done <= dryingSteps; done++) {
    if (onMoment(seconds(done * step), water)) return;
    advance(step, false);
  }
}

/** Short beside the quickest thing that happens in the room: its air being swept out, or a thin film going. */
function longestStep(room: DryingRoom, { coarsestStep, stepShare }: Pace): number {
  const sweep = room.dryAir / Math.max(room.dryAirDrawn, Number.MIN_VALUE);
  const film = room.mirror.patchyFilm / (room.mirror.transfer * room.mirror.saturation);
  return Math.min(coarsestStep, Math.max(finestStep, stepShare * Math.min(sweep, film)));
}

/** How the four slopes of a step count, and how far into the step the next is taken. Fourth-order Runge–Kutta. */
const weights = [1 / 6, 2 / 6, 2 / 6, 1 / 6] as const;
const reaches = [1 / 2, 1 / 2, 1] as const;

/** Moves the water on by one step. A film cannot be thinner than none; the store comes first in its row. */
function stepper(room: DryingRoom, water: WaterRow): (step: number, showering: boolean) => void {
  const row = (): WaterRow => new Float64Array(water.length);
  const [slope, sum, trial] = [row(), row(), row()] as const;
  const flowInto = waterFlowOf(room);
  return (step, showering) => {
    sum.fill(0);
    trial.set(water);
    for (let stage = 0; stage < weights.length; stage++) {
      flowInto(slope, trial, showering);
      const weight = weights[stage] as number;
      const reach = step * (reaches[stage] ?? 0);
      for (let each = 0; each < slope.length; each++) {
        const change = slope[each] as number;
        sum[each] = (sum[each] as number) + weight * change;
        const there = (water[each] as number) + reach * change;
        trial[each] = each === 0 ? there : Math.max(0, there);
      }
    }
    for (let each = 0; each < sum.length; each++) {
      const there = (water[each] as number) + step * (sum[each] as number);
      water[each] = each === 0 ? there : Math.max(0, there);
    }
  };
}
