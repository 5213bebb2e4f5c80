import { type Celsius, celsius, type Pascals, type Ratio, ratio } from '#quantity/units.ts';
import { dewPoint } from './dew-point.ts';
import { type AirByHumidityRatio, saturationHumidityRatio, vapourPressure } from './humidity.ts';

const halvings = 50;

export type WetBulb =
  | { readonly found: true; readonly temperature: Celsius }
  | { readonly found: false; readonly why: 'no vapour' | 'outside the correlation' };

/** A reading from two thermometers, one of them with a wet sock on its bulb. */
export interface WetBulbReading {
  readonly dryBulb: Celsius;
  /** No higher than the dry bulb. */
  readonly wetBulb: Celsius;
  readonly pressure: Pascals;
}

/**
 * Water carried by each kilogram of dry air, from a dry and a wet thermometer.
 *
 * Above freezing: W = ((2501 − 2.326 t*) W_s* − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*)
 * Below freezing: W = ((2830 − 0.24 t*) W_s* − 1.006 (t − t*)) / (2830 + 1.86 t − 2.1 t*)
 *
 * t dry bulb and t* wet bulb in °C, W_s* the saturation humidity ratio at t*. A wet bulb far under the dry bulb gives a
 * negative number, which no air can have: the reading is then wrong.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equations 33 and 35
 */
export function humidityRatioFromWetBulb({ dryBulb: t, wetBulb, pressure }: WetBulbReading): Ratio {
  const saturated = saturationHumidityRatio(wetBulb, pressure);
  const cooling = 1.006 * (t - wetBulb);
  return ratio(
    wetBulb >= 0
      ? ((2501 - 2.326 * wetBulb) * saturated - cooling) / (2501 + 1.86 * t - 4.186 * wetBulb)
      : ((2830 - 0.24 * wetBulb) * saturated - cooling) / (2830 + 1.86 * t - 2.1 * wetBulb),
  );
}

/**
 * The temperature a wet thermometer would show in this air.
 *
 * The wet-bulb equation solved for t* by halving the span between the dew point and the dry bulb.
 *
 * t* in °C. −100 °C to 200 °C, where the air holds some vapour.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equations 33 and 35
 */
export function wetBulb(air: AirByHumidityRatio): WetBulb {
  const dew = dewPoint(vapourPressure(air));
  if (!dew.found) return dew;
  let [low, high] = [Math.min(dew.temperature, air.temperature), air.temperature];
  for (let halving = 0; halving < halvings; halving++) {
    const middle = celsius((low + high) / 2);
    const carried = humidityRatioFromWetBulb({ dryBulb: air.temperature, wetBulb: middle, pressure: air.pressure });
    if (carried < air.humidityRatio) low = middle;
    else high = middle;
  }
  return { found: true, temperature: celsius((low + high) / 2) };
}
