import { type CubicMetres, cubicMetres, type Metres } from '#quantity/units.ts';
import { circumference } from './round-duct.ts';

/**
 * The mastic one round joint takes.
 *
 * V = π D × band × thickness
 *
 * V in m³, lengths in m.
 *
 * @source own working: geometry, with common practice for the band and thickness
 */
export function jointMastic({
  diameter,
  band,
  thickness,
}: {
  readonly diameter: Metres;
  readonly band: Metres;
  readonly thickness: Metres;
}): CubicMetres {
  return cubicMetres(circumference(diameter) * band * thickness);
}
