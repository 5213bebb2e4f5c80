import fc from 'fast-check';
import type { Bathroom, RecoveryLimits } from '#engine/moisture/bathroom.ts';
import type { RecoveryTime } from '#engine/moisture/recovery-level.ts';
import type { RunTimeInput } from '#engine/moisture/run-time-directions.ts';
import { celsius, cubicMetres, cubicMetresPerSecond, pascals, ratio, seconds, squareMetres } from '#quantity/units.ts';

/** An ordinary small bathroom with an ordinary fan. */
export const smallBathroom: Bathroom = {
  roomVolume: cubicMetres(9),
  roomTemperature: celsius(23),
  deliveredAirflow: cubicMetresPerSecond(0.035),
  mixing: ratio(0.6),
  fanDuringShower: true,
  showerDuration: seconds(480),
  moistureRelease: 0.0007,
  houseTemperature: celsius(21),
  houseRelativeHumidity: ratio(0.4),
  pressure: pascals(101_325),
  storage: ratio(1.5),
  convection: 4,
  coolArea: squareMetres(12),
  surfaceChill: 2,
  mirrorArea: squareMetres(0.7),
  mirrorChill: 3,
  splashArea: squareMetres(4),
  splashFilm: 0.035,
  patchyFilm: 0.005,
  fogForms: true,
};

export const limits: RecoveryLimits = {
  air: ratio(0.6),
  surface: ratio(0.8),
  mirrorFilm: 0.001,
  splashLeft: ratio(0.05),
  longest: seconds(4 * 3600),
};

/** How far each input goes in the houses the model is meant for. */
export const ranges: Readonly<Record<RunTimeInput, readonly [low: number, high: number]>> = {
  roomVolume: [5, 30],
  roomTemperature: [20, 25],
  deliveredAirflow: [0.008, 0.06],
  mixing: [0.4, 1],
  showerDuration: [240, 1200],
  moistureRelease: [0.0004, 0.001],
  houseTemperature: [19, 22],
  houseRelativeHumidity: [0.25, 0.5],
  pressure: [80_000, 101_325],
  storage: [1, 4],
  convection: [2.5, 6.5],
  coolArea: [5, 20],
  surfaceChill: [1, 4],
  mirrorArea: [0.3, 2],
  mirrorChill: [1, 5],
  splashArea: [1, 6],
  splashFilm: [0.01, 0.05],
  patchyFilm: [0.002, 0.01],
};

export const inputs = Object.keys(ranges) as readonly RunTimeInput[];

/** A number anywhere inside the range of an input. */
export const within = (input: RunTimeInput) => {
  const [min, max] = ranges[input];
  return fc.double({ min, max, noNaN: true });
};

/** Any bathroom of those houses. */
export const anyBathroom: fc.Arbitrary<Bathroom> = fc
  .record({
    numbers: fc.record(Object.fromEntries(inputs.map((input) => [input, within(input)]))),
    fanDuringShower: fc.boolean(),
  })
  .map(({ numbers, fanDuringShower }) => ({ ...smallBathroom, ...numbers, fanDuringShower }) as Bathroom);

/** A bathroom with one input changed. */
export const changed = (bathroom: Bathroom, input: RunTimeInput, to: number): Bathroom =>
  ({ ...bathroom, [input]: to }) as Bathroom;

/** Seconds after the shower; no time at all counts as later than any. */
export const lateness = (time: RecoveryTime): number => (time.found ? time.after : Number.POSITIVE_INFINITY);

export const answers = ['airRecovers', 'mirrorClears', 'reboundHeld', 'surfacesDry', 'fanMayStop'] as const;
