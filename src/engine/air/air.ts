import { type KilogramsPerCubicMetre, metres } from '#quantity/units.ts';
import { airDensity, type Surroundings, standardAirTemperature } from './density.ts';
import { kinematicViscosity } from './viscosity.ts';

/** The two things a duct needs to know of the air in it. */
export interface Air {
  readonly density: KilogramsPerCubicMetre;
  /** m²/s. */
  readonly kinematicViscosity: number;
}

/**
 * The air in a duct, from how high the house stands and how warm the air is.
 *
 * ρ and ν as in {@link airDensity} and {@link kinematicViscosity}. Dry air below 11 000 m.
 *
 * @source U.S. Standard Atmosphere 1976
 */
export function airAt(surroundings: Surroundings): Air {
  const density = airDensity(surroundings);
  return { density, kinematicViscosity: kinematicViscosity({ temperature: surroundings.temperature, density }) };
}

/** Air at sea level and 70 °F. */
export const standardAir: Air = airAt({ altitude: metres(0), temperature: standardAirTemperature });
