import { dryAirSpecificHeat } from '#engine/psychrometrics/moist-air.ts';
import type { Ratio } from '#quantity/units.ts';

/** Thermal over mass diffusivity of moist air at room temperature. Heat and mass transfer texts, from memory. */
const lewisNumber = 0.865;

/**
 * How readily water moves between the air and a wet surface, kg/(m²·s) for each unit of humidity ratio.
 *
 * h_m = h_c / (c_p Le^(2/3))
 *
 * h_c convective coefficient at the surface in W/(m²·K), c_p = 1006 J/(kg·K), Le = 0.865. Room air over walls and glass.
 *
 * @source Lewis analogy, standard heat and mass transfer texts, from memory
 */
export function moistureTransfer(convection: number): number {
  return convection / (dryAirSpecificHeat * lewisNumber ** (2 / 3));
}

/** How water comes and goes at a surface of one temperature. */
export interface WetSurface {
  /** Saturation humidity ratio at the temperature of the surface. */
  readonly saturation: number;
  /** Film under which the surface is wet only in patches and gives up its water in proportion, kg/m². */
  readonly patchyFilm: number;
  /** From `moistureTransfer`, kg/(m²·s). */
  readonly transfer: number;
}

/**
 * How fast the film on a surface grows, kg/(m²·s); below zero it dries.
 *
 * dm/dt = h_m f (W − W_s),  f = 1 while water settles, else min(1, m / m_p)
 *
 * m film in kg/m², m_p the patchy film, W humidity ratio of the air, W_s saturation humidity ratio at the surface.
 *
 * @source own working, model RT-1
 */
export function filmGrowth(surface: WetSurface, film: number, air: Ratio): number {
  const drive = air - surface.saturation;
  const wetted = drive > 0 ? 1 : Math.min(1, Math.max(0, film) / surface.patchyFilm);
  return surface.transfer * wetted * drive;
}
