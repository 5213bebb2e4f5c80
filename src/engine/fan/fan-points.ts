import { type CubicMetresPerSecond, cubicMetresPerSecond, type Pascals, pascals } from '#quantity/units.ts';

/** A rated point: what the fan moves against a static pressure. */
export interface CurvePoint {
  readonly airflow: CubicMetresPerSecond;
  readonly staticPressure: Pascals;
}

/** What is known of a fan: points from its label, one of them being enough, or the flow a constant-flow fan holds. */
export type FanDescription =
  | { readonly kind: 'points'; readonly points: readonly CurvePoint[] }
  | { readonly kind: 'constant flow'; readonly airflow: CubicMetresPerSecond; readonly heldTo: Pascals };

/**
 * What is guessed where the label is silent. None of these acts one way only: a fan that keeps more of its flow against pressure
 * has less to give with no duct at all. For a bound, search each over its range.
 */
export interface FanShape {
  /** How the curve bows outside its points: airflow to this power falls straight with pressure. 2 is a parabola. */
  bow: number;
  /** How far shut-off lies past the last point, as a multiple of where the bow puts it. */
  reach: number;
  /** The bow never puts shut-off further past the last point than this, as it would where the points are level. */
  longestTail: Pascals;
  /** For a single rated point: the share of the flow at `strengthFrom` that the fan still moves at `strengthTo`. 0 to 1. */
  strength: number;
  strengthFrom: Pascals;
  strengthTo: Pascals;
  /** For a constant-flow fan: the share of its flow lost by the time it reaches the pressure it holds to. */
  droop: number;
}

/** Why points cannot be a fan, and which of them, counted from nought in order of pressure. */
export interface PointFault {
  readonly why:
    | 'no points'
    | 'not a number'
    | 'negative pressure'
    | 'negative airflow'
    | 'no airflow'
    | 'same pressure twice'
    | 'airflow rises with pressure'
    | 'airflow stops twice'
    | 'one point past the class';
  readonly at: number;
}

/**
 * Whether the label gives a single point, so that the class has to stand in for a second.
 *
 * n = 1
 *
 * n how many points.
 *
 * @source own working
 */
export const isOneRating = ({ points }: { readonly points: readonly CurvePoint[] }): boolean => points.length === 1;

/**
 * Airflow of the class curve through one rated point.
 *
 * Q = Q_r ((1 − f (P − P_a)) / (1 − f (P_r − P_a)))^(1/k),  f = (1 − s^k) / (P_b − P_a)
 *
 * Q in m³/s at P in Pa, r the rated point, s the share of flow kept from P_a to P_b, k the bow.
 *
 * @source own working, a straight fall of airflow to a power
 */
export function classAirflow(rated: CurvePoint, pressure: number, shape: FanShape): number {
  const fall = (1 - power(shape.strength, shape.bow)) / (shape.strengthTo - shape.strengthFrom);
  const kept = 1 - fall * (pressure - shape.strengthFrom);
  const keptAtRating = 1 - fall * (rated.staticPressure - shape.strengthFrom);
  return rated.airflow * power(Math.max(0, kept / keptAtRating), 1 / shape.bow);
}

/**
 * A base that is not negative, to a power. Several times quicker than the general operator, which counts in sampling.
 *
 * b^e = exp(e ln b)
 *
 * @source identity
 */
export const power = (base: number, exponent: number): number => (base > 0 ? Math.exp(exponent * Math.log(base)) : 0);

/**
 * The points a curve is drawn through, in order of pressure, a stand-in from the class among them where the label has but one.
 *
 * (0, Q) and (P_h, Q (1 − droop)) for a constant-flow fan
 *
 * Q in m³/s held up to P_h in Pa.
 *
 * @source own working
 */
export function knownPoints(description: FanDescription, shape: FanShape): readonly CurvePoint[] {
  if (description.kind === 'constant flow') {
    const { airflow, heldTo } = description;
    return [
      { airflow, staticPressure: pascals(0) },
      { airflow: cubicMetresPerSecond(airflow * (1 - shape.droop)), staticPressure: heldTo },
    ];
  }
  const points = description.points.toSorted((a, b) => a.staticPressure - b.staticPressure);
  const rated = points[0];
  if (rated === undefined || points.length > 1) return points;
  const at = rated.staticPressure < shape.strengthTo ? shape.strengthTo : shape.strengthFrom;
  const standIn = { staticPressure: at, airflow: cubicMetresPerSecond(classAirflow(rated, at, shape)) };
  return rated.staticPressure < shape.strengthTo ? [rated, standIn] : [standIn, rated];
}

/**
 * What is wrong with some points in order of pressure, if anything.
 *
 * P_i < P_(i+1),  Q_i ≥ Q_(i+1)
 *
 * Q in m³/s, P in Pa, both at nought or more.
 *
 * @source own working: a fan moves no more against more pressure
 */
export function pointFault(
  points: readonly CurvePoint[],
  { description, shape }: { description: FanDescription; shape: FanShape },
): PointFault | undefined {
  if (points.length === 0) return { why: 'no points', at: 0 };
  if (description.kind === 'points' && isOneRating(description)) {
    const rated = description.points[0] as CurvePoint;
    if (rated.staticPressure > shape.strengthTo) return { why: 'one point past the class', at: 0 };
  }
  for (const [at, point] of points.entries()) {
    const before = points[at - 1];
    if (!Number.isFinite(point.airflow) || !Number.isFinite(point.staticPressure)) {
      return { why: 'not a number', at };
    }
    if (point.staticPressure < 0) return { why: 'negative pressure', at };
    if (point.airflow < 0) return { why: 'negative airflow', at };
    if (at === 0 && point.airflow === 0) return { why: 'no airflow', at };
    if (before?.staticPressure === point.staticPressure) return { why: 'same pressure twice', at };
    if (before && before.airflow < point.airflow) return { why: 'airflow rises with pressure', at };
    if (before?.airflow === 0) return { why: 'airflow stops twice', at };
  }
  return undefined;
}
