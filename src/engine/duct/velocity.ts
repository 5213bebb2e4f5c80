import type { Air } from '#engine/air/air.ts';
import {
  type CubicMetresPerSecond,
  type KilogramsPerCubicMetre,
  type Metres,
  type MetresPerSecond,
  metresPerSecond,
  type Pascals,
  pascals,
  type SquareMetres,
  squareMetres,
} from '#quantity/units.ts';

/**
 * The opening of a round duct.
 *
 * A = π D² / 4
 *
 * @source own working, geometry
 */
export function ductArea(diameter: Metres): SquareMetres {
  return squareMetres((Math.PI * diameter * diameter) / 4);
}

/**
 * How fast the air moves in a round duct, on average over its width.
 *
 * V = Q / A
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design, continuity
 */
export function ductVelocity({
  airflow,
  diameter,
}: {
  readonly airflow: CubicMetresPerSecond;
  readonly diameter: Metres;
}): MetresPerSecond {
  return metresPerSecond(airflow / ductArea(diameter));
}

/**
 * Velocity pressure: what the moving air would give up if it stopped.
 *
 * p_v = ρ V² / 2
 *
 * ρ in kg/m³, V in m/s.
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design, velocity pressure
 */
export function velocityPressure(velocity: MetresPerSecond, density: KilogramsPerCubicMetre): Pascals {
  return pascals((density * velocity * velocity) / 2);
}

/**
 * Velocity pressure at a diameter for each squared unit of airflow, Pa/(m³/s)²: multiply by Q². A fan rated by static
 * pressure is credited with this at its collar, because the rating already took the speed of the leaving air off.
 *
 * p_v / Q² = ρ / (2 A²)
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design, velocity pressure and continuity
 */
export function velocityPressureCoefficient(diameter: Metres, air: Pick<Air, 'density'>): number {
  const area = ductArea(diameter);
  return air.density / (2 * area * area);
}

/**
 * Reynolds number: below 2300 the air slides in layers, above 4000 it tumbles. A bath fan in a 4-inch duct runs near 30 000.
 *
 * Re = V D / ν
 *
 * V in m/s, D in m, ν in m²/s.
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design, Reynolds number
 */
export function reynoldsNumber({
  velocity,
  diameter,
  kinematicViscosity,
}: {
  readonly velocity: MetresPerSecond;
  readonly diameter: Metres;
  readonly kinematicViscosity: number;
}): number {
  return (velocity * diameter) / kinematicViscosity;
}
