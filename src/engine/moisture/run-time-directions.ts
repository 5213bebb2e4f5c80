import type { Bathroom } from './bathroom.ts';
import type { RunTime } from './run-time.ts';

/**
 * Which way an answer moves as one input grows. `up` and `down` are bounded by their ends; `hump` turns somewhere
 * inside and must be searched; `class` is a yes or no, to be tried both ways and never "in between".
 */
export type Direction = 'up' | 'down' | 'hump' | 'class';

type Answer = Exclude<keyof RunTime, 'endOfShower'>;
type Directions = Readonly<Record<Answer, Direction>>;

const all = (direction: Direction): Directions => ({
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
export const runTimeDirections: Readonly<Record<keyof Bathroom, Directions>> = {
  roomVolume: all('hump'),
  roomTemperature: all('down'),
  deliveredAirflow: all('down'),
  mixing: all('down'),
  fanDuringShower: all('class'),
  showerDuration: all('up'),
  moistureRelease: all('up'),
  houseTemperature: all('up'),
  houseRelativeHumidity: all('up'),
  pressure: all('hump'),
  storage: all('hump'),
  convection: all('hump'),
  coolArea: { ...all('hump'), airRecovers: 'up', reboundHeld: 'up' },
  surfaceChill: { ...all('hump'), reboundHeld: 'up', surfacesDry: 'up' },
  mirrorArea: { ...all('hump'), reboundHeld: 'up' },
  mirrorChill: { ...all('hump'), mirrorClears: 'up', reboundHeld: 'up', fanMayStop: 'hump' },
  splashArea: { ...all('up'), mirrorClears: 'hump' },
  splashFilm: all('up'),
  patchyFilm: { ...all('hump'), reboundHeld: 'up' },
  fogForms: all('class'),
};
