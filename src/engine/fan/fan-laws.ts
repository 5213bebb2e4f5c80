import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type Pascals,
  type Ratio,
  ratio,
  type Watts,
  watts,
} from '#quantity/units.ts';
import { airflowAt, type FanCurve, shutOffPressure } from './fan-curve.ts';
import type { CurvePoint } from './fan-points.ts';

/** How a fan differs from the one the curve was drawn for. 1 and 1 is the same fan in the same air. */
export interface FanChange {
  /** Speed over the curve's speed. */
  readonly speedRatio: Ratio;
  /** Density of the air over the density the curve was rated in. */
  readonly densityRatio: Ratio;
}

/**
 * The same fan at another speed and in other air. A view of the same knots, not a copy.
 *
 * Q_2 = Q_1 n,  P_2 = P_1 n² d
 *
 * Q airflow in m³/s, P static pressure in Pa, n speed ratio, d density ratio. One fan, so no change of size. Not for a
 * constant-flow fan, whose control changes the speed by itself.
 *
 * @source ASHRAE Handbook, Systems and Equipment, Fans: fan laws, from memory
 */
export const fanChanged = (curve: FanCurve, { speedRatio, densityRatio }: FanChange): FanCurve => ({
  ...curve,
  flowScale: curve.flowScale * speedRatio,
  pressureScale: curve.pressureScale * speedRatio * speedRatio * densityRatio,
});

export type SettingSpeed =
  | { readonly found: true; readonly speedRatio: Ratio }
  | { readonly found: false; readonly why: 'no such speed' };

/** A setting runs somewhere between these shares of the speed the curve is for. */
const slowest = 0.1;
const fastest = 4;
const mostHalvings = 60;

/**
 * How fast a fan turns at a setting of which one rated point is known, so that the slowed curve passes through that point.
 *
 * n Q(P_s / n²) = Q_s
 *
 * n speed ratio, Q the curve at its own speed, Q_s and P_s the setting's rated airflow in m³/s and pressure in Pa. At no
 * pressure this is the ratio of the airflows; a tenth to four times the curve's speed.
 *
 * @source ASHRAE Handbook, Systems and Equipment, Fans: fan laws, from memory; bisection
 */
export function settingSpeed({ curve, setting }: { curve: FanCurve; setting: CurvePoint }): SettingSpeed {
  const { airflow, staticPressure } = setting;
  const moved = (n: number) => n * airflowAt(curve, (staticPressure / (n * n)) as Pascals);
  let low = Math.max(slowest, Math.sqrt(Math.max(0, staticPressure) / shutOffPressure(curve)));
  let high = fastest;
  if (!(moved(low) <= airflow && moved(high) >= airflow)) return { found: false, why: 'no such speed' };
  for (let halving = 0; halving < mostHalvings; halving += 1) {
    const middle = (low + high) / 2;
    if (moved(middle) < airflow) low = middle;
    else high = middle;
  }
  return { found: true, speedRatio: ratio((low + high) / 2) };
}

/**
 * Power drawn at another speed and in other air.
 *
 * W_2 = W_1 n³ d
 *
 * W in watts, n speed ratio, d density ratio. Motor efficiency taken as unchanged, so it reads low at low speed.
 *
 * @source ASHRAE Handbook, Systems and Equipment, Fans: fan laws, from memory
 */
export const fanPower = (power: Watts, { speedRatio, densityRatio }: FanChange): Watts =>
  watts(power * speedRatio ** 3 * densityRatio);

/**
 * Airflow at another speed along the same duct.
 *
 * Q_2 = Q_1 n
 *
 * Q in m³/s, n speed ratio. Exact where duct pressure rises as the square of airflow.
 *
 * @source ASHRAE Handbook, Systems and Equipment, Fans: fan laws, from memory
 */
export const airflowAtSpeed = (airflow: CubicMetresPerSecond, speedRatio: Ratio): CubicMetresPerSecond =>
  cubicMetresPerSecond(airflow * speedRatio);
