import { within } from '#quantity/meets.ts';
import type { CubicInches } from '#quantity/units.ts';

export type BoxThatFits<Box> =
  | { readonly found: true; readonly box: Box }
  | { readonly found: false; readonly why: 'needs-more-than-any-listed' };

/**
 * The smallest listed box with room enough. Of boxes alike in volume, the first in the list.
 *
 * smallest V with V ≥ needed
 *
 * @source NFPA 70 (National Electrical Code), 314.16: the box may not have less room than its contents need
 */
export function boxThatFits<Box extends { readonly volume: CubicInches }>(
  needed: CubicInches,
  boxes: readonly Box[],
): BoxThatFits<Box> {
  const [box] = boxes.filter(({ volume }) => within(needed, volume)).toSorted((a, b) => a.volume - b.volume);
  return box ? { found: true, box } : { found: false, why: 'needs-more-than-any-listed' };
}

/**
 * How many more wires of one size the room left will take. None when nothing is left.
 *
 * n = ⌊left / free space of one wire⌋
 *
 * With the whole volume of an empty box as `left` this is the printed count for wires of one size.
 *
 * @source NFPA 70 (National Electrical Code), tables 314.16(A) and 314.16(B)
 */
export function furtherConductors(left: CubicInches, freeSpaceOfOne: CubicInches): number {
  return Math.max(0, Math.floor(left / freeSpaceOfOne));
}
