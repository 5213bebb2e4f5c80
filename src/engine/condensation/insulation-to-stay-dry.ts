import { metres, type SquareMetreKelvinsPerWatt, squareMetreKelvinsPerWatt } from '#quantity/units.ts';
import { wallTemperature } from './duct-cooling.ts';
import { type ExhaustDuct, exhaustDewPoint } from './exhaust-duct.ts';

const halvings = 50;
/** Air within this many kelvin of its dew point counts as saturated. */
const saturatedWithin = 0.01;

export type InsulationToStayDry =
  | { readonly found: true; readonly insulation: SquareMetreKelvinsPerWatt }
  | { readonly found: false; readonly why: 'the air arrives saturated' | 'more than can be fitted' };

/**
 * The least insulation that keeps the whole duct above the dew point.
 *
 * T_w(L) = T_d, solved for R by halving between none and the most that can be fitted; the wall at the far end warms
 * steadily with R.
 *
 * T_w wall temperature at the length L, T_d dew point. Saturated air wets any duct colder than itself, whatever the
 * wrap. Steady state: a few minutes of drier air after the shower matter as much as insulation.
 *
 * @source own working, exponential cooling and the dew point
 */
export function insulationToStayDry(duct: ExhaustDuct, most: SquareMetreKelvinsPerWatt): InsulationToStayDry {
  const dew = exhaustDewPoint(duct);
  const none = squareMetreKelvinsPerWatt(0);
  if (!dew.found || duct.surroundings > dew.temperature) return { found: true, insulation: none };
  if (dew.temperature > duct.exhaustTemperature - saturatedWithin)
    return { found: false, why: 'the air arrives saturated' };
  const staysDry = (insulation: number) =>
    coldestWall({ ...duct, insulation: squareMetreKelvinsPerWatt(insulation) }) > dew.temperature;
  if (staysDry(none)) return { found: true, insulation: none };
  if (!staysDry(most)) return { found: false, why: 'more than can be fitted' };
  let [low, high]: [number, number] = [none, most];
  for (let halving = 0; halving < halvings; halving++) {
    const middle = (low + high) / 2;
    if (staysDry(middle)) high = middle;
    else low = middle;
  }
  return { found: true, insulation: squareMetreKelvinsPerWatt(high) };
}

/** Exhaust cools along the duct where it is cold outside, so the far end is the coldest; a hot attic is never cold. */
function coldestWall(duct: ExhaustDuct): number {
  return Math.min(wallTemperature(duct, metres(0)), wallTemperature(duct, duct.length));
}
