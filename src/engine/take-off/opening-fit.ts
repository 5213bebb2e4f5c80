import { meets, within } from '#quantity/meets.ts';
import { type Metres, metres } from '#quantity/units.ts';

/**
 * The clear width between two joists.
 *
 * clear = spacing − width of the member
 *
 * In m; the spacing is centre to centre and the member its actual width, not its name.
 *
 * @source own working: geometry
 */
export function clearBay(spacing: Metres, memberWidth: Metres): Metres {
  return metres(spacing - memberWidth);
}

export interface HousingInBay {
  readonly housingWidth: Metres;
  readonly clear: Metres;
  /** Room for brackets and screws, wanted on each side. */
  readonly besideEach: Metres;
}

export interface BayFit {
  /** The housing goes in at all. */
  readonly goesIn: boolean;
  /** It goes in with the room wanted on each side. */
  readonly withRoom: boolean;
  /** What is left on each side when it sits in the middle; negative when it does not go in. */
  readonly eachSide: Metres;
}

/**
 * Whether a housing goes between two joists, and with room to fix it.
 *
 * beside = (clear − W) / 2
 *
 * In m. No joist, truss or flange is ever cut to make it fit.
 *
 * @source own working: geometry, with common practice for the room at the sides
 */
export function bayFit({ housingWidth, clear, besideEach }: HousingInBay): BayFit {
  const eachSide = metres((clear - housingWidth) / 2);
  return { goesIn: within(housingWidth, clear), withRoom: meets(eachSide, besideEach), eachSide };
}

/**
 * Whether a housing and whatever covers it fit in the depth of a joist with a floor above.
 *
 * H + cover ≤ depth
 *
 * In m. Under an open attic the housing may stand higher, as far as its insulation clearance allows.
 *
 * @source own working: geometry
 */
export function fitsUnderFloor({
  housingHeight,
  cover,
  joistDepth,
}: {
  readonly housingHeight: Metres;
  readonly cover: Metres;
  readonly joistDepth: Metres;
}): boolean {
  return within(housingHeight + cover, joistDepth);
}

/**
 * The opening to cut in the ceiling for a housing.
 *
 * opening = housing + 2 × gap
 *
 * In m, the same for both directions of the opening.
 *
 * @source own working: geometry
 */
export function openingToCut(housing: Metres, gap: Metres): Metres {
  return metres(housing + 2 * gap);
}

/**
 * Whether the flange or grille of the new fan hides an opening, on each side.
 *
 * (flange − opening) / 2 ≥ overlap
 *
 * In m. When the old opening is larger than that, the ceiling is patched before the fan goes in.
 *
 * @source common practice, no source
 */
export function flangeCovers({
  flange,
  opening,
  overlapEach,
}: {
  readonly flange: Metres;
  readonly opening: Metres;
  readonly overlapEach: Metres;
}): boolean {
  return meets((flange - opening) / 2, overlapEach);
}
