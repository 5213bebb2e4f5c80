import { type Celsius, type Pascals, pascals } from '#quantity/units.ts';

/** 0 °C on the absolute scale, K. */
export const absoluteZeroOffset = 273.15;

/** Water, ice and vapour meet here; below it the surface is ice, °C. */
const triplePoint = 0.01;

/**
 * The most vapour pressure air can carry at a temperature before water settles out of it.
 *
 * Over water: ln p = C8/T + C9 + C10 T + C11 T² + C12 T³ + C13 ln T
 * Over ice:   ln p = C1/T + C2 + C3 T + C4 T² + C5 T³ + C6 T⁴ + C7 ln T
 *
 * p in Pa, T in K. Ice from −100 °C to 0.01 °C, water from there to 200 °C; agrees with the printed table to 0.03 %.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equations 5 and 6
 */
export function saturationPressure(temperature: Celsius): Pascals {
  const T = temperature + absoluteZeroOffset;
  const logarithm = temperature < triplePoint ? overIce(T) : overWater(T);
  return pascals(Math.exp(logarithm));
}

function overIce(T: number): number {
  return (
    -5.6745359e3 / T +
    6.3925247 +
    T * (-9.677843e-3 + T * (6.2215701e-7 + T * (2.0747825e-9 - T * 9.484024e-13))) +
    4.1635019 * Math.log(T)
  );
}

function overWater(T: number): number {
  return (
    -5.8002206e3 / T + 1.3914993 + T * (-4.8640239e-2 + T * (4.1764768e-5 - T * 1.4452093e-8)) + 6.5459673 * Math.log(T)
  );
}
