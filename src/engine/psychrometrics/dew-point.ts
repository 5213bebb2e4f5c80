import { type Celsius, celsius, type Pascals } from '#quantity/units.ts';
import { absoluteZeroOffset, saturationPressure } from './saturation-pressure.ts';

const coldest = -100;
const hottest = 200;
/** Six are enough but close to the triple point, where the two correlations do not quite meet. */
const mostLooks = 60;
/** Vapour pressures this near are the same, as a share: under a billionth of a kelvin. */
const closeEnough = 1e-13;

export type DewPoint =
  | { readonly found: true; readonly temperature: Celsius }
  | { readonly found: false; readonly why: 'no vapour' | 'outside the correlation' };

/**
 * The temperature at which air with this vapour pressure starts to leave water on a surface, or frost below freezing.
 *
 * p_ws(t_d) = p_w, solved for t_d from −100 °C to 200 °C by false position (Illinois) in ln p over 1/T, nearly a straight line
 *
 * t_d dew point in °C, p_w vapour pressure in Pa. The saturation correlation is turned round instead of the printed
 * regression for dew point, which strays by up to 0.3 K.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equations 5, 6 and 36
 */
export function dewPoint(vapour: Pascals): DewPoint {
  if (!(vapour > 0)) return { found: false, why: 'no vapour' };
  const excess = (inverse: number): number =>
    Math.log(saturationPressure(celsius(1 / inverse - absoluteZeroOffset)) / vapour);
  let [cold, hot] = [1 / (coldest + absoluteZeroOffset), 1 / (hottest + absoluteZeroOffset)];
  let [atCold, atHot] = [excess(cold), excess(hot)];
  if (atCold > 0 || atHot < 0) return { found: false, why: 'outside the correlation' };
  let inverse = cold;
  let keptSide = 0;
  for (let look = 0; look < mostLooks; look += 1) {
    inverse = cold - (atCold * (hot - cold)) / (atHot - atCold);
    const at = excess(inverse);
    if (Math.abs(at) < closeEnough) break;
    // An end that stays twice counts half, so that it too comes nearer.
    if (at < 0) {
      [cold, atCold] = [inverse, at];
      if (keptSide === 1) atHot /= 2;
      keptSide = 1;
    } else {
      [hot, atHot] = [inverse, at];
      if (keptSide === -1) atCold /= 2;
      keptSide = -1;
    }
  }
  return { found: true, temperature: celsius(1 / inverse - absoluteZeroOffset) };
}
