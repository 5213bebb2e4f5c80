import type { Metres } from '#quantity/units.ts';
import { circumference } from './round-duct.ts';
import { wholePieces } from './whole-pieces.ts';

/**
 * The screws one joint of metal duct takes.
 *
 * n = max(least, ⌈π D / spacing⌉)
 *
 * D and spacing in m. They stand into the airstream and catch lint, so no more than that.
 *
 * @source NREL Standard Work Specifications 6.6002.4
 */
export function screwsPerJoint(
  diameter: Metres,
  { least, spacing }: { readonly least: number; readonly spacing: Metres },
): number {
  return Math.max(least, wholePieces(circumference(diameter), spacing));
}

/**
 * The bands (clamps) that hold the ends of flexible duct: for each end one on the inner core and one on the outer jacket.
 *
 * n = ends × bands per end
 *
 * @source NREL Standard Work Specifications 6.6002.4
 */
export function flexBands(ends: number, bandsPerEnd: number): number {
  return ends * bandsPerEnd;
}
