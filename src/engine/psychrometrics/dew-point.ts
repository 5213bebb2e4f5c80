import { type Celsius, celsius, type Pascals } from '#quantity/units.ts';
import { saturationPressure } from './saturation-pressure.ts';

const coldest = -100;
const hottest = 200;
const halvings = 60;

export type DewPoint =
  | { readonly found: true; readonly temperature: Celsius }
  | { readonly found: false; readonly why: 'no vapour' | 'outside the correlation' };

/**
 * The temperature at which air with this vapour pressure starts to leave water on a surface, or frost below freezing.
 *
 * p_ws(t_d) = p_w, solved for t_d by halving the span from −100 °C to 200 °C
 *
 * t_d dew point in °C, p_w vapour pressure in Pa. The saturation correlation is turned round instead of the printed
 * regression for dew point, which strays by up to 0.3 K.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equations 5, 6 and 36
 */
export function dewPoint(vapour: Pascals): DewPoint {
  if (!(vapour > 0)) return { found: false, why: 'no vapour' };
  if (vapour < saturationPressure(celsius(coldest)) || vapour > saturationPressure(celsius(hottest))) {
    return { found: false, why: 'outside the correlation' };
  }
  let [low, high] = [coldest, hottest];
  for (let halving = 0; halving < halvings; halving++) {
    const middle = (low + high) / 2;
    if (saturationPressure(celsius(middle)) < vapour) low = middle;
    else high = middle;
  }
  return { found: true, temperature: celsius((low + high) / 2) };
}
