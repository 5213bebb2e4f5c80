import { type CubicMetresPerSecond, cubicMetresPerSecond, type Pascals, pascals } from '#quantity/units.ts';
import {
  type CurvePoint,
  classAirflow,
  type FanDescription,
  type FanShape,
  isOneRating,
  knownPoints,
  type PointFault,
  pointFault,
  power,
} from './fan-points.ts';
import { cubicValue, emptyCubic, type MonotoneCubic, smoothCubic } from './monotone-cubic.ts';

/**
 * A fan as airflow over static pressure, from free air to shut-off. Curves made from it by the fan laws are views of the same
 * knots: reshaping one reshapes them all.
 */
export interface FanCurve {
  readonly description: FanDescription;
  readonly knots: MonotoneCubic;
  /** Knots of the first and last known point; those outside are guessed from the shape. */
  readonly firstPoint: number;
  readonly lastPoint: number;
  readonly flowScale: number;
  readonly pressureScale: number;
}

export type FanCurveOutcome =
  | { readonly valid: true; readonly curve: FanCurve }
  | ({ readonly valid: false } & PointFault);

/** Where between the last point and shut-off the guessed part is pinned, as shares of that span. */
const tailPins = [0.4, 0.7, 0.9, 1] as const;
/** Natural logarithm of what is left of the span at each pin. */
const tailLogs = tailPins.map((share) => Math.log(1 - share));
/** A curve cannot drop straight down: shut-off lies at least this share of the last point's pressure past it. */
const shortestTail = 0.01;

/**
 * The curve of a fan from what its label gives, or the reason why the points cannot be a fan.
 *
 * Between points: a smooth curve that never rises. Outside them: Q^k = Q_1^k − (Q_1^k − Q_2^k) (P − P_1) / (P_2 − P_1)
 *
 * Q airflow in m³/s and P static pressure in Pa of the two nearest points, k the bow. One point alone is joined by a second
 * one from the class strength. Points in any order, at zero pressure or more; one point alone at or under `strengthTo`.
 *
 * @source Fritsch and Carlson 1980 between points; own working outside them, a straight fall of airflow to a power
 */
export function fanCurve(description: FanDescription, shape: FanShape): FanCurveOutcome {
  const points = knownPoints(description, shape);
  const fault = pointFault(points, { description, shape });
  if (fault) return { valid: false, ...fault };
  const firstPoint = points[0]?.staticPressure === 0 ? 0 : 1;
  const lastPoint = firstPoint + points.length - 1;
  const reachesShutOff = description.kind === 'points' && points.at(-1)?.airflow === 0 && !isOneRating(description);
  const knots = emptyCubic(lastPoint + 1 + (reachesShutOff ? 0 : tailPins.length));
  const curve: FanCurve = { description, knots, firstPoint, lastPoint, flowScale: 1, pressureScale: 1 };
  points.forEach(({ airflow, staticPressure }, index) => {
    knots.x[firstPoint + index] = staticPressure;
    knots.y[firstPoint + index] = airflow;
  });
  reshapeFanCurve(curve, shape);
  return { valid: true, curve };
}

/**
 * Puts another guess in place of the guessed parts of a curve, leaving its known points alone. Works in place and leaves
 * nothing behind, for sampling; every view of the curve changes with it.
 *
 * P_0 = P_n + r min(Q_n^k (P_n − P_(n−1)) / (Q_(n−1)^k − Q_n^k), t)
 *
 * P_0 shut-off and P_n the last point's pressure in Pa, Q airflow at the last two points in m³/s, k the bow, r the reach, t the
 * longest tail. Keep `strengthFrom` and `strengthTo` as the curve was made with.
 *
 * @source own working, a straight fall of airflow to a power
 */
export function reshapeFanCurve(curve: FanCurve, shape: FanShape): void {
  const { description, knots, firstPoint, lastPoint } = curve;
  const { x, y } = knots;
  if (description.kind === 'constant flow') {
    y[lastPoint] = description.airflow * (1 - shape.droop);
  } else if (isOneRating(description)) {
    const rated = description.points[0] as CurvePoint;
    const standIn = rated.staticPressure < shape.strengthTo ? lastPoint : firstPoint;
    y[standIn] = classAirflow(rated, x[standIn] as number, shape);
  }

  const k = shape.bow;
  const last = power(y[lastPoint] as number, k);
  const lastButOne = power(y[lastPoint - 1] as number, k);
  if (firstPoint === 1) {
    const first = lastPoint === 2 ? lastButOne : power(y[1] as number, k);
    const second = lastPoint === 2 ? last : power(y[2] as number, k);
    const fall = (first - second) / ((x[2] as number) - (x[1] as number));
    x[0] = 0;
    y[0] = power(first + fall * (x[1] as number), 1 / k);
  }
  if (lastPoint < x.length - 1) {
    const from = x[lastPoint] as number;
    const flow = y[lastPoint] as number;
    const drop = lastButOne - last;
    const straight = drop > 0 ? (last * (from - (x[lastPoint - 1] as number))) / drop : shape.longestTail;
    const tail = Math.max(shortestTail * from, shape.reach * Math.min(straight, shape.longestTail));
    for (let pin = 0; pin < tailPins.length; pin += 1) {
      x[lastPoint + 1 + pin] = from + (tailPins[pin] as number) * tail;
      y[lastPoint + 1 + pin] = flow * Math.exp((tailLogs[pin] as number) / k);
    }
  }
  smoothCubic(knots);
}

/**
 * What the fan moves against a static pressure. Nothing at shut-off and above; a little more than free air where the duct
 * helps, by the slope at free air.
 *
 * Q = s_q q(P / s_p)
 *
 * Q in m³/s, P in Pa, q the curve as made, s_q and s_p its scales of airflow and pressure. Any pressure.
 *
 * @source Fritsch and Carlson 1980 between points; own working outside them
 */
export const airflowAt = (curve: FanCurve, staticPressure: Pascals): CubicMetresPerSecond =>
  cubicMetresPerSecond(curve.flowScale * cubicValue(curve.knots, staticPressure / curve.pressureScale));

/**
 * The pressure against which the fan moves nothing.
 *
 * P_0 = s_p p_0
 *
 * In Pa; p_0 shut-off of the curve as made, s_p its scale of pressure.
 *
 * @source own working
 */
export const shutOffPressure = ({ knots, pressureScale }: FanCurve): Pascals =>
  pascals(pressureScale * (knots.x[knots.x.length - 1] as number));

/**
 * What the fan moves with no duct at all.
 *
 * Q_0 = s_q q_0
 *
 * In m³/s; q_0 free air of the curve as made, s_q its scale of airflow.
 *
 * @source own working
 */
export const freeAirflow = ({ knots, flowScale }: FanCurve): CubicMetresPerSecond =>
  cubicMetresPerSecond(flowScale * (knots.y[0] as number));

/**
 * The pressure up to which the curve rests on known points; past it the airflow is guessed down to nothing at shut-off.
 *
 * P = s_p p_last
 *
 * In Pa; p_last the pressure of the last known point, s_p the curve's scale of pressure. A second point taken from the class
 * counts as known.
 *
 * @source own working
 */
export const lastKnownPressure = ({ knots, lastPoint, pressureScale }: FanCurve): Pascals =>
  pascals(pressureScale * (knots.x[lastPoint] as number));

/**
 * Whether a pressure lies between the known points of the fan, where the curve is read off rather than guessed.
 *
 * p_first ≤ P / s_p ≤ p_last
 *
 * P in Pa, p the pressures of the known points, s_p the curve's scale of pressure. A single rated point spans nothing.
 *
 * @source own working
 */
export function isBetweenPoints(curve: FanCurve, staticPressure: Pascals): boolean {
  const { description, knots, firstPoint, lastPoint } = curve;
  const pressure = staticPressure / curve.pressureScale;
  if (description.kind === 'points' && isOneRating(description)) {
    return pressure === description.points[0]?.staticPressure;
  }
  return pressure >= (knots.x[firstPoint] as number) && pressure <= (knots.x[lastPoint] as number);
}
