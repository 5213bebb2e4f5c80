import { type DewPoint, dewPoint } from '#engine/psychrometrics/dew-point.ts';
import {
  type AirByHumidityRatio,
  type AirByRelativeHumidity,
  humidityRatio,
  vapourPressure,
} from '#engine/psychrometrics/humidity.ts';
import type {
  Celsius,
  CubicMetresPerSecond,
  Metres,
  Pascals,
  Ratio,
  SquareMetreKelvinsPerWatt,
} from '#quantity/units.ts';

/**
 * How damp the exhaust is, and which of the two stays put when its temperature is in doubt: a hygrometer in the room holds
 * the relative humidity, a shower's worth of water holds the moisture. A warmer guess wets the duct sooner in the first
 * case and later in the second.
 */
type ExhaustDampness =
  | { readonly held: 'relative humidity'; readonly relativeHumidity: Ratio }
  | { readonly held: 'moisture'; readonly humidityRatio: Ratio };

/** An exhaust duct through a cold place, and the air in it. */
export interface ExhaustDuct {
  readonly diameter: Metres;
  readonly length: Metres;
  /** As installed: squeezed wrap gives less than its label. Zero for bare duct. */
  readonly insulation: SquareMetreKelvinsPerWatt;
  /** Film of still air, radiation counted in, on the outside of the duct or its wrap. */
  readonly outsideFilm: SquareMetreKelvinsPerWatt;
  /** What the fan delivers. */
  readonly airflow: CubicMetresPerSecond;
  readonly exhaustTemperature: Celsius;
  readonly exhaustDampness: ExhaustDampness;
  readonly surroundings: Celsius;
  /** Air pressure at the site's altitude. */
  readonly pressure: Pascals;
}

/**
 * The air that enters the duct, by its humidity ratio, whichever way it was described.
 *
 * W as in `humidityRatio`.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equation 20
 */
export function exhaustAir({
  exhaustTemperature: temperature,
  exhaustDampness: dampness,
  pressure,
}: ExhaustDuct): AirByHumidityRatio {
  if (dampness.held === 'moisture') return { temperature, humidityRatio: dampness.humidityRatio, pressure };
  const air: AirByRelativeHumidity = { temperature, relativeHumidity: dampness.relativeHumidity, pressure };
  return { temperature, humidityRatio: humidityRatio(air), pressure };
}

/**
 * The wall temperature at which the exhaust starts to leave water in the duct.
 *
 * t_d as in `dewPoint`. It stays put along a dry duct, for cooling air loses no vapour until it touches the dew point.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equation 36
 */
export function exhaustDewPoint(duct: ExhaustDuct): DewPoint {
  return dewPoint(vapourPressure(exhaustAir(duct)));
}
