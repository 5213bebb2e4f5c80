import type { Air } from '#engine/air/air.ts';
import {
  type CubicMetresPerSecond,
  type Metres,
  type Pascals,
  pascals,
  type Ratio,
  type SquareMetres,
} from '#quantity/units.ts';
import { type Wall, wallFrictionFactor, wallOf } from './friction-factor.ts';
import { velocityPressureCoefficient } from './velocity.ts';

/** Straight duct of one make. */
export interface DuctPiece {
  readonly kind: 'duct';
  readonly diameter: Metres;
  /** As it lies, not as it would be pulled tight. */
  readonly length: Metres;
  readonly roughness: Metres;
  /** How many times the loss of the same length pulled tight; 1 for anything rigid. */
  readonly pressureFactor: Ratio;
}

/** A fitting, hood or damper, by its loss coefficient on the velocity pressure at a diameter. */
interface LossPiece {
  readonly kind: 'loss';
  readonly diameter: Metres;
  readonly coefficient: Ratio;
}

/** A gap the air has to squeeze through to reach the fan: under a door, through a grille in the wall. */
interface OpeningPiece {
  readonly kind: 'opening';
  readonly area: SquareMetres;
  readonly dischargeCoefficient: Ratio;
}

/** One piece of the way the air takes, from the room's door to the open. */
export type Piece = DuctPiece | LossPiece | OpeningPiece;

/** Pressure the way takes at an airflow. Zero at no flow; never falls as flow rises. */
export type SystemCurve = (airflow: CubicMetresPerSecond) => Pascals;

/** All duct of one diameter and wall: its loss is f(Re) · coefficient · Q². */
interface AlikeDuct {
  readonly diameter: Metres;
  readonly roughness: Metres;
  readonly wall: Wall;
  /** Re = this · Q. */
  readonly reynoldsPerAirflow: number;
  /** Grows as pieces are added. */
  coefficient: number;
}

/** The same size reached through two units of measure differs in the last digit; it is still one duct. */
const alike = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-12;

function newAlikeDuct(piece: DuctPiece, air: Air): AlikeDuct {
  return {
    diameter: piece.diameter,
    roughness: piece.roughness,
    wall: wallOf(piece.roughness / piece.diameter),
    reynoldsPerAirflow: 4 / (Math.PI * piece.diameter * air.kinematicViscosity),
    coefficient: 0,
  };
}

const ductCoefficient = (piece: DuctPiece, air: Air): number =>
  ((piece.length * piece.pressureFactor) / piece.diameter) * velocityPressureCoefficient(piece.diameter, air);

const openingCoefficient = (piece: OpeningPiece, air: Air): number => {
  const effective = piece.dischargeCoefficient * piece.area;
  return air.density / (2 * effective * effective);
};

const quadraticCoefficient = (piece: LossPiece | OpeningPiece, air: Air): number =>
  piece.kind === 'loss'
    ? piece.coefficient * velocityPressureCoefficient(piece.diameter, air)
    : openingCoefficient(piece, air);

const ductFactor = (duct: AlikeDuct, airflow: number): number =>
  wallFrictionFactor(duct.reynoldsPerAirflow * airflow, duct.wall);

/**
 * The pressure a whole run takes, as a function of airflow, made ready for many calls.
 *
 * Δp = Q² ( Σ K ρ/2A²  +  Σ ρ/2(C_d A)²  +  Σ f(Re) F (L/D) ρ/2A² )
 *
 * K loss coefficient, C_d discharge coefficient, F pressure factor, f Darcy friction factor, Q in m³/s from 0 up. Everything
 * that goes with the square of the flow is one number; ducts of the same diameter and wall are one duct. An opening of no
 * area takes infinite pressure at any flow at all.
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design: Darcy–Weisbach, loss coefficients; orifice equation
 */
export function systemCurve(pieces: readonly Piece[], air: Air): SystemCurve {
  let quadratic = 0;
  const ducts: AlikeDuct[] = [];
  for (const piece of pieces) {
    if (piece.kind !== 'duct') {
      quadratic += quadraticCoefficient(piece, air);
      continue;
    }
    let duct = ducts.find((known) => alike(known.diameter, piece.diameter) && alike(known.roughness, piece.roughness));
    if (duct === undefined) {
      duct = newAlikeDuct(piece, air);
      ducts.push(duct);
    }
    duct.coefficient += ductCoefficient(piece, air);
  }
  return (airflow) => {
    if (!(airflow > 0)) return pascals(0);
    let coefficient = quadratic;
    for (let index = 0; index < ducts.length; index++) {
      const duct = ducts[index] as AlikeDuct;
      coefficient += ductFactor(duct, airflow) * duct.coefficient;
    }
    return pascals(coefficient * airflow * airflow);
  };
}

/**
 * Pressure lost in each piece at an airflow, in the order of the pieces. They add up to what {@link systemCurve} says.
 *
 * @source ASHRAE Handbook, Fundamentals, Duct Design: Darcy–Weisbach, loss coefficients; orifice equation
 */
export function pieceLosses(pieces: readonly Piece[], air: Air, airflow: CubicMetresPerSecond): Pascals[] {
  return pieces.map((piece) => {
    if (!(airflow > 0)) return pascals(0);
    const coefficient =
      piece.kind === 'duct'
        ? ductFactor(newAlikeDuct(piece, air), airflow) * ductCoefficient(piece, air)
        : quadraticCoefficient(piece, air);
    return pascals(coefficient * airflow * airflow);
  });
}

/**
 * Pressure lost by rubbing in one straight duct.
 *
 * Δp = f F (L/D) ρ V²/2
 *
 * @source Darcy–Weisbach; ASHRAE Handbook, Fundamentals, Duct Design, equation 18
 */
export function frictionLoss({
  duct,
  airflow,
  air,
}: {
  readonly duct: Omit<DuctPiece, 'kind'>;
  readonly airflow: CubicMetresPerSecond;
  readonly air: Air;
}): Pascals {
  return systemCurve([{ kind: 'duct', ...duct }], air)(airflow);
}
