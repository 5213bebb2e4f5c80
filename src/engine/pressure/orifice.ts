import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type KilogramsPerCubicMetre,
  type Pascals,
  pascals,
  type Ratio,
  ratio,
  type SquareMetres,
  squareMetres,
} from '#quantity/units.ts';

/**
 * Share of the free stream that gets through a sharp-edged opening. 0.60 and its kin are one measured constant; the often
 * printed 2610 (cfm, ft², in. w.g.) and 0.827 (SI) silently stand for 0.65 and 0.64. Fluid mechanics texts.
 */
export const sharpEdgedDischargeCoefficient = ratio(0.6);

/** An opening that air is drawn through. */
export interface Opening {
  readonly area: SquareMetres;
  readonly dischargeCoefficient: Ratio;
}

/**
 * The pressure it takes to draw an airflow through an opening. Twice the air takes four times the pressure.
 *
 * Δp = ρ/2 (Q / (C_d A))²
 *
 * Q airflow in m³/s, A area in m², C_d discharge coefficient, ρ density in kg/m³. For openings short beside their width;
 * pass the airflow that is delivered with this opening in place, or the answer is more than any fan could make. A shut
 * opening takes endless pressure.
 *
 * @source orifice equation, fluid mechanics texts
 */
export function openingPressure(
  { area, dischargeCoefficient }: Opening,
  { airflow, density }: { readonly airflow: CubicMetresPerSecond; readonly density: KilogramsPerCubicMetre },
): Pascals {
  if (airflow === 0) return pascals(0);
  return pascals((density / 2) * (airflow / (dischargeCoefficient * area)) ** 2);
}

/**
 * The airflow a pressure draws through an opening.
 *
 * Q = C_d A √(2 Δp / ρ)
 *
 * Q in m³/s, A in m², Δp in Pa, zero or more, ρ in kg/m³.
 *
 * @source orifice equation, fluid mechanics texts
 */
export function openingAirflow(
  { area, dischargeCoefficient }: Opening,
  { pressure, density }: { readonly pressure: Pascals; readonly density: KilogramsPerCubicMetre },
): CubicMetresPerSecond {
  return cubicMetresPerSecond(dischargeCoefficient * area * Math.sqrt((2 * pressure) / density));
}

/** An airflow that must get through at no more than a pressure. */
export interface OpeningDuty {
  readonly airflow: CubicMetresPerSecond;
  readonly pressure: Pascals;
  readonly density: KilogramsPerCubicMetre;
  readonly dischargeCoefficient: Ratio;
}

/**
 * The opening that passes an airflow at a pressure.
 *
 * A = Q / (C_d √(2 Δp / ρ))
 *
 * A in m², Q in m³/s, Δp in Pa above zero, ρ in kg/m³.
 *
 * @source orifice equation, fluid mechanics texts
 */
export function openingNeeded({ airflow, pressure, density, dischargeCoefficient }: OpeningDuty): SquareMetres {
  return squareMetres(airflow / (dischargeCoefficient * Math.sqrt((2 * pressure) / density)));
}

/**
 * Several openings side by side, as one: a door gap and a grille share the air.
 *
 * A = Σ C_d,i A_i / C_d,  C_d of the first
 *
 * No openings at all make a shut one.
 *
 * @source orifice equation; openings at one pressure add their airflows
 */
export function sideBySide(openings: readonly Opening[]): Opening {
  const dischargeCoefficient = openings[0]?.dischargeCoefficient ?? sharpEdgedDischargeCoefficient;
  const effective = openings.reduce((sum, opening) => sum + opening.dischargeCoefficient * opening.area, 0);
  return { area: squareMetres(effective / dischargeCoefficient), dischargeCoefficient };
}

/**
 * The pressure across several openings one behind the other: a door gap, then a hall door, then the leaks of the house.
 *
 * Δp = Σ ρ/2 (Q / (C_d,i A_i))²
 *
 * @source orifice equation; openings at one airflow add their pressures
 */
export function oneBehindTheOther(
  openings: readonly Opening[],
  flow: { readonly airflow: CubicMetresPerSecond; readonly density: KilogramsPerCubicMetre },
): Pascals {
  return pascals(openings.reduce((sum, opening) => sum + openingPressure(opening, flow), 0));
}
