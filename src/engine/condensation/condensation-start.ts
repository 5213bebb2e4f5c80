import { type Celsius, celsius, type Metres, metres } from '#quantity/units.ts';
import { airTemperature, ductCooling, wallTemperature } from './duct-cooling.ts';
import { type DuctPiece, piecesInPlace } from './duct-pieces.ts';
import { type ExhaustDuct, exhaustDewPoint } from './exhaust-duct.ts';

/** 0 °C. */
const freezingPoint = celsius(0);

export type CondensationStart =
  | { readonly found: true; readonly distance: Metres }
  | { readonly found: false; readonly why: 'wall stays above the dew point' };

/**
 * How far from the fan the wall of a duct of any length first reaches the dew point.
 *
 * x₀ = −ln((T_d − T_a) / ((T₀ − T_a)(1 − R_in/R_total))) / K,  0 where the wall is under the dew point at once
 *
 * T_d dew point, T_a surroundings, T₀ exhaust in °C; R_in and R_total in m²·K/W, K in 1/m from `ductCooling`. Steady
 * state: the first minutes of a shower wet any cold duct. Compare with the length of the duct to say wet or dry.
 *
 * @source own working, exponential cooling and the dew point
 */
export function condensationStart(duct: ExhaustDuct, cooling = ductCooling(duct)): CondensationStart {
  const dry = { found: false, why: 'wall stays above the dew point' } as const;
  const dew = exhaustDewPoint(duct);
  if (!dew.found) return dry;
  if (wallTemperature(duct, metres(0), cooling) <= dew.temperature) return { found: true, distance: metres(0) };
  const { insideFilm, overall, perMetre } = cooling;
  const wallSpread = (duct.exhaustTemperature - duct.surroundings) * (1 - insideFilm / overall);
  const dewSpread = dew.temperature - duct.surroundings;
  if (dewSpread <= 0 || wallSpread <= dewSpread) return dry;
  return { found: true, distance: metres(Math.log(wallSpread / dewSpread) / perMetre) };
}

/** What happens inside the duct that is there. */
export type DuctVerdict =
  | {
      readonly wet: true;
      /** From the fan to the first wet wall. */
      readonly startsAt: Metres;
      /** Some of the wet wall lies below freezing: frost builds up and melts later. */
      readonly freezes: boolean;
      readonly exitTemperature: Celsius;
      readonly coldestWall: Celsius;
    }
  | {
      readonly wet: false;
      /** Where water would start in a longer duct; no value when it would not at any length. */
      readonly wouldStartAt: Metres | null;
      readonly exitTemperature: Celsius;
      readonly coldestWall: Celsius;
    };

/**
 * Whether a run of duct sweats or stays dry, where it starts, and whether it freezes.
 *
 * Wet when x₀ from `condensationStart` lies within a piece; freezing when the wall anywhere is at 0 °C or less. Air that
 * stands still cools at once: a fan that moves none is judged by that limit.
 *
 * @param pieces the run piece by piece where its width changes; the duct's own width and length where nothing is said.
 * @source own working, exponential cooling and the dew point
 */
export function ductVerdict(duct: ExhaustDuct, pieces: readonly DuctPiece[] = [duct]): DuctVerdict {
  let startsAt: Metres | undefined;
  let wouldStartAt: Metres | null = null;
  let exitTemperature = duct.exhaustTemperature;
  let coldest = Number.POSITIVE_INFINITY;
  for (const { from, duct: piece, cooling } of piecesInPlace(duct, pieces)) {
    const start = condensationStart(piece, cooling);
    wouldStartAt = start.found ? metres(from + start.distance) : null;
    if (start.found && start.distance <= piece.length) startsAt ??= metres(from + start.distance);
    exitTemperature = airTemperature(piece, piece.length, cooling);
    coldest = Math.min(
      coldest,
      wallTemperature(piece, metres(0), cooling),
      wallTemperature(piece, piece.length, cooling),
    );
  }
  const atExit = { exitTemperature, coldestWall: celsius(coldest) };
  if (startsAt === undefined) return { wet: false, wouldStartAt, ...atExit };
  return { wet: true, startsAt, freezes: coldest <= freezingPoint, ...atExit };
}
