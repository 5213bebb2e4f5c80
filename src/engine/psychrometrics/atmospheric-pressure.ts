import { type Metres, type Pascals, pascals } from '#quantity/units.ts';

const seaLevelPressure = 101_325;

/**
 * How hard the air presses at a given height above the sea, on a standard day.
 *
 * p = 101325 (1 − 2.25577·10⁻⁵ z)^5.2559
 *
 * p pressure in Pa, z height above sea level in m. Holds from −5000 m to 11 000 m; the weather moves it by about 3 %.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equation 3
 */
export function atmosphericPressure(altitude: Metres): Pascals {
  return pascals(seaLevelPressure * (1 - 2.25577e-5 * altitude) ** 5.2559);
}
