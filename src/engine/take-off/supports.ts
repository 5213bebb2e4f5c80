import { type Metres, metres } from '#quantity/units.ts';
import { wholePieces } from './whole-pieces.ts';

/**
 * The hangers between the two ends of a run. Both end connections carry the duct too and are not counted.
 *
 * n = max(0, ⌈L / s⌉ − 1)
 *
 * L the run and s the widest spacing, in m.
 *
 * @source Building America Solution Center, support intervals for flexible duct
 */
export function hangersBetweenEnds(length: Metres, spacing: Metres): number {
  return Math.max(0, wholePieces(length, spacing) - 1);
}

/**
 * How far flexible duct may sag between two hangers.
 *
 * sag = sag per length × spacing
 *
 * In m; half an inch per foot is 1/24.
 *
 * @source Building America Solution Center, support intervals for flexible duct
 */
export function allowedSag(spacing: Metres, sagPerLength: number): Metres {
  return metres(sagPerLength * spacing);
}

/**
 * The flexible duct to cut for a run pulled straight: the run and a little to trim at each end. Slack left in it costs air.
 *
 * L_cut = L + 2 × trim
 *
 * In m.
 *
 * @source common practice, no source
 */
export function flexToCut(stretchedRun: Metres, trim: Metres): Metres {
  return metres(stretchedRun + 2 * trim);
}
