import { type Celsius, type Metres, metres } from '#quantity/units.ts';
import { airTemperature, wallTemperature } from './duct-cooling.ts';
import type { ExhaustDuct } from './exhaust-duct.ts';

/** One place along a duct, for a chart. */
export interface DuctStation {
  readonly distance: Metres;
  readonly air: Celsius;
  readonly wall: Celsius;
}

/**
 * Air and wall temperature at even steps from the fan to the end of the duct. Draw the dew point across it as a line.
 *
 * T and T_w as in `airTemperature` and `wallTemperature`.
 *
 * @source own working, exponential cooling
 */
export function ductProfile(duct: ExhaustDuct, steps: number): readonly DuctStation[] {
  return Array.from({ length: steps + 1 }, (_, step) => {
    const distance = metres((duct.length * step) / steps);
    return { distance, air: airTemperature(duct, distance), wall: wallTemperature(duct, distance) };
  });
}
