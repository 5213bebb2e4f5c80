import { metres, type SquareMetreKelvinsPerWatt, squareMetreKelvinsPerWatt } from '#quantity/units.ts';
import { wallTemperature } from './duct-cooling.ts';
import { type DuctPiece, piecesInPlace } from './duct-pieces.ts';
import { type ExhaustDuct, exhaustDewPoint } from './exhaust-duct.ts';

const mostSteps = 60;
/** Insulation is found to this, m²·K/W: far finer than any label. */
const closeEnough = 1e-6;
/** Coldest wall and dew point this near are the same, K, where nothing is said. */
const usualTolerance = 1e-6;
/** Air within this many kelvin of its dew point counts as saturated. */
const saturatedWithin = 0.01;

export type InsulationToStayDry =
  | { readonly found: true; readonly insulation: SquareMetreKelvinsPerWatt }
  | { readonly found: false; readonly why: 'the air arrives saturated' | 'more than can be fitted' };

interface InsulationSearch {
  readonly pieces?: readonly DuctPiece[];
  readonly tolerance?: number;
}

/**
 * The least insulation that keeps the whole duct above the dew point.
 *
 * T_w(R) = T_d at the coldest place, solved for R between none and the most that can be fitted by false position (Illinois);
 * the coldest wall warms steadily with R.
 *
 * T_w wall temperature, T_d dew point. Saturated air wets any duct colder than itself, whatever the wrap. Steady state: a
 * few minutes of drier air after the shower matter as much as insulation.
 *
 * @param pieces the run piece by piece where its width changes; the duct's own width and length where nothing is said.
 * @param tolerance how near the coldest wall must come to the dew point, K. For sampling, 1e-3.
 * @source own working, exponential cooling and the dew point
 */
export function insulationToStayDry(
  duct: ExhaustDuct,
  most: SquareMetreKelvinsPerWatt,
  { pieces = [duct], tolerance = usualTolerance }: InsulationSearch = {},
): InsulationToStayDry {
  const dew = exhaustDewPoint(duct);
  const none = squareMetreKelvinsPerWatt(0);
  if (!dew.found || duct.surroundings > dew.temperature) return { found: true, insulation: none };
  if (dew.temperature > duct.exhaustTemperature - saturatedWithin)
    return { found: false, why: 'the air arrives saturated' };
  // One duct in which the wrap is changed: another for each try takes as long as all the physics.
  const tried: { -readonly [Part in keyof ExhaustDuct]: ExhaustDuct[Part] } = { ...duct };
  const margin = (insulation: number) => {
    tried.insulation = squareMetreKelvinsPerWatt(insulation);
    return coldestWall(tried, pieces) - dew.temperature;
  };
  let [low, high]: [number, number] = [none, most];
  let [atLow, atHigh] = [margin(low), margin(high)];
  if (atLow > 0) return { found: true, insulation: none };
  if (!(atHigh > 0)) return { found: false, why: 'more than can be fitted' };
  let kept: 'low' | 'high' | undefined;
  for (let step = 0; step < mostSteps && high - low > closeEnough; step++) {
    const between = low - (atLow * (high - low)) / (atHigh - atLow);
    const at = margin(between);
    if (Math.abs(at) < tolerance) return { found: true, insulation: squareMetreKelvinsPerWatt(between) };
    if (at > 0) {
      [high, atHigh] = [between, at];
      if (kept === 'low') atLow /= 2;
      kept = 'low';
    } else {
      [low, atLow] = [between, at];
      if (kept === 'high') atHigh /= 2;
      kept = 'high';
    }
  }
  return { found: true, insulation: squareMetreKelvinsPerWatt(high) };
}

/** Exhaust cools along the duct where it is cold outside, but a wider piece has a colder wall than the one before it ends with. */
function coldestWall(duct: ExhaustDuct, pieces: readonly DuctPiece[]): number {
  return piecesInPlace(duct, pieces).reduce(
    (coldest, { duct: piece, cooling }) =>
      Math.min(coldest, wallTemperature(piece, metres(0), cooling), wallTemperature(piece, piece.length, cooling)),
    Number.POSITIVE_INFINITY,
  );
}
