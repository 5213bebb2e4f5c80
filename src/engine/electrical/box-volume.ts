import { type CubicInches, cubicInches, type Ratio } from '#quantity/units.ts';

export type BarrierMaterial = 'metal' | 'nonmetallic';

/** A wall across the box: its marked volume, or what it is made of when it carries no mark. */
type Barrier = { readonly marked: CubicInches } | { readonly material: BarrierMaterial };

/** A box with what is fixed to it: extension rings, marked plaster rings and domed covers all add room. */
export interface BoxAssembly {
  readonly parts: readonly CubicInches[];
  readonly barriers: readonly Barrier[];
}

/**
 * The room in a box with its rings and covers, less the barriers in it.
 *
 * V = Σ parts − Σ barriers
 *
 * Cubic inches as marked or listed. Printed volumes have at most two decimals; the sum is rounded to four so that adding
 * them leaves no dust of arithmetic for the comparison to trip over.
 *
 * @source NFPA 70 (National Electrical Code), 314.16(A)
 */
export function boxVolume(
  { parts, barriers }: BoxAssembly,
  unmarkedBarrier: Readonly<Record<BarrierMaterial, CubicInches>>,
): CubicInches {
  const taken = barriers.map((barrier) => ('marked' in barrier ? barrier.marked : unmarkedBarrier[barrier.material]));
  const sum = parts.reduce((a, b) => a + b, 0) - taken.reduce((a, b) => a + b, 0);
  return cubicInches(Math.round(sum * 1e4) / 1e4);
}

/**
 * The room on each side of the barriers, shared out by the size of each side.
 *
 * V_i = V × share_i / Σ share
 *
 * Shares in any unit, such as the width of each side in inches; each over zero.
 *
 * @source NFPA 70 (National Electrical Code), 314.16(A), apportioning by barriers
 */
export function volumeOfEachSide(volume: CubicInches, shares: readonly Ratio[]): CubicInches[] {
  const whole = shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share) => cubicInches((volume * share) / whole));
}
