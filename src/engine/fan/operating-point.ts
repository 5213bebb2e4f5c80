import { type CubicMetresPerSecond, cubicMetresPerSecond, type Pascals, pascals } from '#quantity/units.ts';
import { airflowAt, type FanCurve, shutOffPressure } from './fan-curve.ts';
import { cubicSlope, cubicValue } from './monotone-cubic.ts';

export interface OperatingPointQuestion {
  readonly fan: FanCurve;
  /** What the duct and everything else in series asks for at an airflow: never falling as airflow rises. */
  readonly systemPressure: (airflow: CubicMetresPerSecond) => Pascals;
  /** Where to start looking: the answer to a neighbouring question saves half the work. */
  readonly start?: Pascals;
  /** The search ends when its step is under this share of shut-off; the point is then nearer still. For sampling, 1e-3. */
  readonly tolerance?: number;
}

export type OperatingPoint =
  | { readonly found: true; readonly airflow: CubicMetresPerSecond; readonly staticPressure: Pascals }
  | {
      readonly found: false;
      /**
       * `fan too weak`: something holds back more than the fan can make even at no flow. `pulled past free air`: the system
       * sucks harder than a fan in this direction can be worked out for.
       */
      readonly why: 'fan too weak' | 'pulled past free air' | 'system pressure is not a number';
    };

/** Each look costs one reading of the system. Bisection every second look after the first few makes this always enough. */
const mostLooks = 64;
const looksBeforeBisection = 8;
const usualTolerance = 1e-6;
/** Duct pressure rises about as this power of airflow; only the first guess of the slope uses it. */
const usualExponent = 1.9;
/** Where to look first without a better idea, as a share of shut-off. */
const usualShare = 0.35;

/**
 * Where the fan and the duct agree: the airflow the fan really moves, and the static pressure it works against.
 *
 * h(P) = P − S(Q(P)) = 0
 *
 * P static pressure in Pa, Q the fan's airflow at P in m³/s, S the system's pressure at that airflow. Q never rises and S never
 * falls, so h rises and has one zero at most. The search ends at a step under 1e-6 of shut-off.
 *
 * @source ASHRAE Handbook, Systems and Equipment, Fans: intersection of fan and system curve; secant search held in a bracket
 */
export function operatingPoint(question: OperatingPointQuestion): OperatingPoint {
  const { fan, systemPressure } = question;
  const staticPressure = operatingPressure(question);
  if (!Number.isNaN(staticPressure)) return { found: true, airflow: airflowAt(fan, staticPressure), staticPressure };
  const standing = systemPressure(cubicMetresPerSecond(0));
  if (Number.isNaN(standing)) return { found: false, why: 'system pressure is not a number' };
  if (standing >= shutOffPressure(fan)) return { found: false, why: 'fan too weak' };
  const pulled = systemPressure(airflowAt(fan, pascals(-shutOffPressure(fan))));
  return { found: false, why: Number.isNaN(pulled) ? 'system pressure is not a number' : 'pulled past free air' };
}

/**
 * The pressure of the operating point as a bare number, for sampling: NaN where there is none. Leaves nothing to clean up.
 *
 * h(P) = P − S(Q(P)) = 0
 *
 * Letters, range and tolerance as in the operating point.
 *
 * @source ASHRAE Handbook, Systems and Equipment, Fans: intersection of fan and system curve; secant search held in a bracket
 */
export function operatingPressure(question: OperatingPointQuestion): Pascals {
  const { fan, systemPressure, start, tolerance = usualTolerance } = question;
  const { knots, flowScale, pressureScale } = fan;
  const shutOff = knots.x[knots.x.length - 1] as number;
  let low = -shutOff;
  let high = shutOff;
  let lowSeen = false;
  let highSeen = false;
  let p = start === undefined ? usualShare * shutOff : start / pressureScale;
  if (!(p > low && p < high)) p = usualShare * shutOff;
  let before = Number.NaN;
  let missBefore = Number.NaN;

  for (let look = 0; look < mostLooks; look += 1) {
    const flow = cubicValue(knots, p);
    const system = systemPressure(cubicMetresPerSecond(flowScale * flow)) / pressureScale;
    const miss = p - system;
    if (Number.isNaN(miss)) return pascals(Number.NaN);
    if (miss === 0 && p < shutOff) return pascals(p * pressureScale);
    if (miss > 0) {
      if (p === -shutOff) return pascals(Number.NaN);
      high = p;
      highSeen = true;
    } else {
      if (p === shutOff) return pascals(Number.NaN);
      low = p;
      lowSeen = true;
    }

    const slope =
      look === 0 ? 1 - (usualExponent * system * cubicSlope(knots, p)) / flow : (miss - missBefore) / (p - before);
    before = p;
    missBefore = miss;
    let next = p - miss / slope;
    if (next >= high && !highSeen) next = high;
    else if (next <= low && !lowSeen) next = low;
    else if (!(next > low && next < high) || (look > looksBeforeBisection && look % 2 === 0)) next = (low + high) / 2;
    if (Math.abs(next - p) <= tolerance * shutOff && next !== high && next !== low)
      return pascals(next * pressureScale);
    if (high - low <= tolerance * shutOff) return pascals(p * pressureScale);
    p = next;
  }
  return pascals(p * pressureScale);
}
