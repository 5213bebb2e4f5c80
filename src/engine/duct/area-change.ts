import { type Metres, type Ratio, ratio } from '#quantity/units.ts';

/** All the velocity pressure is lost when air leaves into the open, whatever the shape of the end. Textbook; Crane TP-410. */
export const exitCoefficient = ratio(1);

/** Crane's two branches meet at this included angle, radians (45°). */
const slimCone = Math.PI / 4;

/** Two round ends joined by a step or a cone. `small` is never the wider of the two. */
export interface AreaChange {
  readonly large: Metres;
  readonly small: Metres;
}

export interface Cone extends AreaChange {
  /** Between opposite walls, radians; π is a flat step. */
  readonly includedAngle: number;
}

/** β², the ratio of the two areas. */
const areaRatio = ({ large, small }: AreaChange): number => (small / large) ** 2;

/**
 * Included angle of a cone from its two ends and its length, in radians.
 *
 * θ = 2 arctan( (D₁ − D₂) / 2l )
 *
 * @source own working, geometry
 */
export function coneAngle({ large, small, length }: AreaChange & { readonly length: Metres }): number {
  return 2 * Math.atan2(large - small, 2 * length);
}

/**
 * Loss coefficient of a flat step down to a narrower duct, on the velocity pressure of the narrow end.
 *
 * K₂ = 0.5 (1 − β²),  β = D₂/D₁
 *
 * Another school (Rennels & Hudson) reads a third higher.
 *
 * @source Crane TP-410, sudden contraction
 */
export function suddenContraction(change: AreaChange): Ratio {
  return ratio(0.5 * (1 - areaRatio(change)));
}

/**
 * Loss coefficient of a cone down to a narrower duct, on the velocity pressure of the narrow end.
 *
 * θ ≤ 45°: K₂ = 0.8 sin(θ/2) (1 − β²).  Above: K₂ = 0.5 √sin(θ/2) (1 − β²)
 *
 * θ included angle, β = D₂/D₁. Schools differ by two to four times at the same cone; the duct after it outweighs that.
 *
 * @source Crane TP-410, gradual contraction
 */
export function conicalContraction(cone: Cone): Ratio {
  const half = Math.sin(cone.includedAngle / 2);
  const slope = cone.includedAngle <= slimCone ? 0.8 * half : 0.5 * Math.sqrt(half);
  return ratio(slope * (1 - areaRatio(cone)));
}

/**
 * Loss coefficient of a flat step up to a wider duct, on the velocity pressure of the narrow end.
 *
 * K₁ = (1 − β²)²,  β = D₁/D₂
 *
 * @source Borda–Carnot; Crane TP-410, sudden enlargement
 */
export function suddenExpansion(change: AreaChange): Ratio {
  return ratio((1 - areaRatio(change)) ** 2);
}

/**
 * Loss coefficient of a cone up to a wider duct, on the velocity pressure of the narrow end. Past 45° it is no better than a
 * flat step.
 *
 * θ ≤ 45°: K₁ = 2.6 sin(θ/2) (1 − β²)².  Above: K₁ = (1 − β²)²
 *
 * @source Crane TP-410, gradual enlargement
 */
export function conicalExpansion(cone: Cone): Ratio {
  const slope = cone.includedAngle <= slimCone ? 2.6 * Math.sin(cone.includedAngle / 2) : 1;
  return ratio(slope * (1 - areaRatio(cone)) ** 2);
}

/**
 * The same loss told on the velocity pressure of another diameter.
 *
 * K_b = K_a (D_b / D_a)⁴
 *
 * @source Crane TP-410, change of reference diameter
 */
export function coefficientOnDiameter({
  coefficient,
  from,
  to,
}: {
  readonly coefficient: Ratio;
  readonly from: Metres;
  readonly to: Metres;
}): Ratio {
  return ratio(coefficient * (to / from) ** 4);
}
