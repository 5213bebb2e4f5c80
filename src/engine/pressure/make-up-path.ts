import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type KilogramsPerCubicMetre,
  type Pascals,
  pascals,
} from '#quantity/units.ts';
import { type HouseLeakage, houseDepressurisation } from './house-leakage.ts';
import { type Opening, oneBehindTheOther } from './orifice.ts';

/** The way air takes from outdoors to the bathroom: through the leaks of the house, then past each door in turn. */
export interface MakeUpPath {
  /** From the bathroom door outwards; openings side by side already gathered into one. */
  readonly openings: readonly Opening[];
  /** Absent where the house is open to outdoors, as with a window ajar. */
  readonly house?: HouseLeakage;
  /** What the other fans draw out of the same house at the same time. */
  readonly otherExhaust: CubicMetresPerSecond;
}

/**
 * How far below outdoors the bathroom falls when its fan moves an airflow: pressure the fan must make besides the duct's.
 *
 * Δp = Σ ρ/2 (Q / (C_d,i A_i))² + 50 ((Q + Q_other) / Q₅₀)^(1/n)
 *
 * Q airflow in m³/s, others as in `oneBehindTheOther` and `houseDepressurisation`. Rises steadily with Q, so it can be
 * added to a duct's pressure and solved against a fan curve.
 *
 * @source orifice equation and power law of building leakage, in series
 */
export function makeUpPressure(
  { openings, house, otherExhaust }: MakeUpPath,
  flow: { readonly airflow: CubicMetresPerSecond; readonly density: KilogramsPerCubicMetre },
): Pascals {
  const past = oneBehindTheOther(openings, flow);
  if (house === undefined) return past;
  const drawn = cubicMetresPerSecond(flow.airflow + otherExhaust);
  return pascals(past + houseDepressurisation(house, drawn));
}
