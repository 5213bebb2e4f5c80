import type { Bathroom } from './bathroom.ts';
import type { RunTime } from './run-time.ts';

/**
 * Which way a time moves as one input grows. `up` and `down` are bounded by the ends of the input; `hump` turns somewhere
 * inside and must be searched.
 */
type RunTimeDirection = 'up' | 'down' | 'hump';

/** The times of a run, each of which has its own directions. */
type RunTimeAnswer = Exclude<keyof RunTime, 'endOfShower'>;

/** The inputs that are numbers. The rest are yes or no: try both, never "in between". */
export type RunTimeInput = Exclude<keyof Bathroom, 'fanDuringShower' | 'fogForms'>;

type Directions = Readonly<Record<RunTimeAnswer, RunTimeDirection>>;

const all = (direction: RunTimeDirection): Directions => ({
  airRecovers: direction,
  mirrorClears: direction,
  reboundHeld: direction,
  surfacesDry: direction,
  fanMayStop: direction,
});

/**
 * How each time of `runTime` answers to each input. "No time" counts as later than any time.
 *
 * More water and damper supply air lengthen everything and more air shortens everything, because every store of water
 * in the model feeds the others only by falling. Where opposing effects meet (a bigger room fogs less but takes longer
 * to sweep) the direction turns with the rest of the case. The tests sample the inside of each range.
 */
export const runTimeDirections: Readonly<Record<RunTimeInput, Directions>> = {
  roomVolume: all('hump'),
  roomTemperature: all('down'),
  deliveredAirflow: all('down'),
  mixing: all('down'),
  showerDuration: all('up'),
  moistureRelease: all('up'),
  houseTemperature: all('up'),
  houseRelativeHumidity: all('up'),
  pressure: all('hump'),
  storage: all('hump'),
  convection: all('hump'),
  coolArea: { ...all('hump'), reboundHeld: 'up' },
  surfaceChill: { ...all('hump'), reboundHeld: 'up', surfacesDry: 'up' },
  mirrorArea: all('hump'),
  mirrorChill: { ...all('hump'), mirrorClears: 'up', reboundHeld: 'up' },
  splashArea: { ...all('up'), mirrorClears: 'hump' },
  splashFilm: all('up'),
  patchyFilm: { ...all('hump'), reboundHeld: 'up' },
};
