import { meets } from '#quantity/meets.ts';
import { type Metres, metres } from '#quantity/units.ts';

/**
 * The length around a round duct.
 *
 * C = π D
 *
 * C and D in m. Take the outside diameter of whatever the tape or strap goes around.
 *
 * @source own working: geometry
 */
export function circumference(diameter: Metres): Metres {
  return metres(Math.PI * diameter);
}

/**
 * How far the outer end of a run lies below its fan end, so that water runs out and not back.
 *
 * drop = slope × L
 *
 * drop and L in m, slope a plain fall per length (a quarter inch per foot is 1/48).
 *
 * @source own working: geometry
 */
export function dropOverRun(length: Metres, slope: number): Metres {
  return metres(slope * length);
}

export type BendsTooTight = 'straight-before-bend-too-short' | 'radius-too-small';

/**
 * What is too tight about the first bend of a run: too close to the collar, or turned too sharply. Nothing when it is well.
 *
 * straight ≥ n_s D and r ≥ n_r D
 *
 * Lengths in m; r is the radius of the centre line, n_s and n_r the diameters asked for.
 *
 * @source NREL Standard Work Specifications and the Building America Solution Center, which ask for one diameter of each
 */
export function bendsTooTight(
  { diameter, straight, radius }: { readonly diameter: Metres; readonly straight: Metres; readonly radius: Metres },
  asked: { readonly straightDiameters: number; readonly radiusDiameters: number },
): BendsTooTight[] {
  return [
    ...(!meets(straight, asked.straightDiameters * diameter) ? (['straight-before-bend-too-short'] as const) : []),
    ...(!meets(radius, asked.radiusDiameters * diameter) ? (['radius-too-small'] as const) : []),
  ];
}
