import {
  type CubicMetresPerSecond,
  type KilogramsPerCubicMetre,
  type Metres,
  type MetresPerSecond,
  metres,
  metresPerSecond,
  type Pascals,
  squareMetres,
} from '#quantity/units.ts';
import { type Opening, openingNeeded, openingPressure, sharpEdgedDischargeCoefficient } from './orifice.ts';

/** The slot under a shut door. */
export interface DoorGap {
  readonly width: Metres;
  /** From the finished floor, or the top of the carpet pile, to the door. */
  readonly height: Metres;
}

/**
 * A door gap as an opening: as wide as the door, as high as it clears the floor.
 *
 * A = w h, C_d = 0.60
 *
 * @source own working
 */
export function doorGapOpening({ width, height }: DoorGap): Opening {
  return { area: squareMetres(width * height), dischargeCoefficient: sharpEdgedDischargeCoefficient };
}

/**
 * How far the shut bathroom falls below the hall.
 *
 * Δp = ρ/2 (Q / (C_d w h))²
 *
 * Q the airflow delivered with the door shut, which is less than with it open: solve gap, fan and duct together first.
 * Other ways in (side gaps, a grille) only make it less.
 *
 * @source orifice equation, fluid mechanics texts
 */
export function doorPressure(
  gap: DoorGap,
  flow: { readonly airflow: CubicMetresPerSecond; readonly density: KilogramsPerCubicMetre },
): Pascals {
  return openingPressure(doorGapOpening(gap), flow);
}

/** An airflow through a gap under a door, and the pressure it may cost. */
export interface DoorGapDuty {
  readonly airflow: CubicMetresPerSecond;
  readonly limit: Pascals;
  readonly density: KilogramsPerCubicMetre;
  readonly doorWidth: Metres;
}

/**
 * How high the gap must be for the airflow to cost no more than a pressure.
 *
 * h = Q / (C_d w √(2 Δp / ρ))
 *
 * Q in m³/s, w door width in m, Δp the limit in Pa above zero, ρ in kg/m³.
 *
 * @source orifice equation, fluid mechanics texts
 */
export function doorGapNeeded({ airflow, limit, density, doorWidth }: DoorGapDuty): Metres {
  const dischargeCoefficient = sharpEdgedDischargeCoefficient;
  return metres(openingNeeded({ airflow, pressure: limit, density, dischargeCoefficient }) / doorWidth);
}

/**
 * Mean speed of the air under the door.
 *
 * V = Q / (w h)
 *
 * V in m/s, Q airflow in m³/s, w and h width and height of the gap in m.
 *
 * @source own working
 */
export function doorGapVelocity(gap: DoorGap, airflow: CubicMetresPerSecond): MetresPerSecond {
  return metresPerSecond(airflow / (gap.width * gap.height));
}
