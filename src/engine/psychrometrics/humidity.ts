import { type Celsius, type Pascals, pascals, type Ratio, ratio } from '#quantity/units.ts';
import { saturationPressure } from './saturation-pressure.ts';

/** Molar mass of water over that of dry air. ASHRAE Handbook, Fundamentals 2017, chapter 1. */
const molarMassRatio = 0.621945;

/** Air as people describe it: how warm and how damp, with the pressure it is under. */
export interface AirByRelativeHumidity {
  readonly temperature: Celsius;
  /** 0 to 1. */
  readonly relativeHumidity: Ratio;
  readonly pressure: Pascals;
}

/** Air as a water balance describes it. */
export interface AirByHumidityRatio {
  readonly temperature: Celsius;
  /** Kilograms of water vapour for each kilogram of dry air. */
  readonly humidityRatio: Ratio;
  readonly pressure: Pascals;
}

/**
 * Water carried by each kilogram of dry air, from its temperature and relative humidity.
 *
 * W = 0.621945 p_w / (p − p_w),  p_w = φ p_ws(t)
 *
 * W in kg/kg of dry air, φ relative humidity, p_w vapour pressure and p total pressure in Pa. Perfect gas: reads about
 * 0.5 % under the printed table at saturation. Needs p_w well under p, as it is anywhere people live.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equations 12 and 20
 */
export function humidityRatio({ temperature, relativeHumidity, pressure }: AirByRelativeHumidity): Ratio {
  const vapour = relativeHumidity * saturationPressure(temperature);
  return ratio((molarMassRatio * vapour) / (pressure - vapour));
}

/**
 * The most water a kilogram of dry air can carry as vapour at a temperature.
 *
 * W_s = 0.621945 p_ws / (p − p_ws)
 *
 * W_s in kg/kg of dry air, p_ws saturation pressure and p total pressure in Pa. −100 °C to about 90 °C.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equation 21
 */
export function saturationHumidityRatio(temperature: Celsius, pressure: Pascals): Ratio {
  return humidityRatio({ temperature, relativeHumidity: ratio(1), pressure });
}

/**
 * The share of the air's pressure that its water vapour makes up.
 *
 * p_w = p W / (0.621945 + W)
 *
 * p_w and p in Pa, W in kg/kg of dry air, zero or more.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equation 20 turned round
 */
export function vapourPressure({ humidityRatio: W, pressure }: Omit<AirByHumidityRatio, 'temperature'>): Pascals {
  return pascals((pressure * W) / (molarMassRatio + W));
}

/**
 * How full of water the air is, as a share of the most it can carry. Over 1 means that some of the water is fog.
 *
 * φ = p_w / p_ws(t)
 *
 * φ a share, p_w vapour pressure and p_ws saturation pressure in Pa. −100 °C to 200 °C.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equation 12
 */
export function relativeHumidity(air: AirByHumidityRatio): Ratio {
  return ratio(vapourPressure(air) / saturationPressure(air.temperature));
}
