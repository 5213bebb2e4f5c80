import { type Metres, metres, type SquareMetres, squareMetres } from '#quantity/units.ts';

/** A flat duct by its inside measures. */
export interface RectangularDuct {
  readonly width: Metres;
  readonly height: Metres;
}

/**
 * The round duct in which air at the same *speed* rubs as hard as in this shape.
 *
 * D_h = 4 A / P
 *
 * A open area in m², P the wetted edge in m.
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design, hydraulic diameter; IRC Table M1504.2, note c
 */
export function hydraulicDiameter({
  area,
  perimeter,
}: {
  readonly area: SquareMetres;
  readonly perimeter: Metres;
}): Metres {
  return metres((4 * area) / perimeter);
}

/**
 * Hydraulic diameter of a flat duct.
 *
 * D_h = 2 a b / (a + b)
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design, hydraulic diameter
 */
export function rectangularHydraulicDiameter({ width, height }: RectangularDuct): Metres {
  return hydraulicDiameter({ area: squareMetres(width * height), perimeter: metres(2 * (width + height)) });
}

/**
 * The round duct that loses as much pressure at the same *airflow* as this flat one: the size to use when a wall stack is
 * reckoned as round.
 *
 * D_e = 1.30 (a b)^0.625 / (a + b)^0.25
 *
 * a, b and D_e in the same unit. For sides no more unequal than about 8 to 1.
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design (Huebscher 1948)
 */
export function equalFrictionDiameter({ width: a, height: b }: RectangularDuct): Metres {
  return metres((1.3 * (a * b) ** 0.625) / (a + b) ** 0.25);
}
