import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type Pascals,
  pascals,
  type Ratio,
  type SquareMetres,
} from '#quantity/units.ts';
import type { MeasuredAirflow, MeasuringLimit } from './reading.ts';

/** A box over the grille with one sharp-edged opening, read by the pressure inside it. */
export interface FlowBox {
  /** Area of the opening. */
  readonly opening: SquareMetres;
  /** m³/s through each square metre at one pascal. */
  readonly constant: number;
}

/** How far a flow box can be trusted. */
export interface BoxTrust {
  /** Of the box itself, either way. */
  readonly error: Ratio;
  /** Of the gauge: the larger of a pressure and a share of the reading. */
  readonly gaugeError: Pascals;
  readonly gaugeShare: Ratio;
  /** Under this the gauge is mostly noise. */
  readonly leastPressure: Pascals;
  /** Above this the box itself throttles the fan. */
  readonly mostPressure: Pascals;
}

/**
 * Airflow through a box over an exhaust grille, from the pressure its opening makes.
 *
 * Q = c A √Δp
 *
 * Q in m³/s, A opening in m², Δp in Pa, c the constant in m³/(s·m²·Pa^½). Exhaust grilles only; best between the trust's
 * least and most pressure.
 *
 * @source RESNET 804 and ANSI/RESNET/ICC 380, airflow resistance method
 */
export const flowBoxAirflow = ({ opening, constant }: FlowBox, pressure: Pascals): CubicMetresPerSecond =>
  cubicMetresPerSecond(constant * opening * Math.sqrt(Math.max(0, pressure)));

/**
 * What the box itself holds back. Add it to what the duct asks for when the fan's flow with the box on is predicted.
 *
 * Δp = (Q / c A)²
 *
 * Letters as in the airflow; Q at nought or more.
 *
 * @source RESNET 804 and ANSI/RESNET/ICC 380, airflow resistance method, turned round
 */
export const flowBoxPressure = ({ opening, constant }: FlowBox, airflow: CubicMetresPerSecond): Pascals =>
  pascals((airflow / (constant * opening)) ** 2);

/**
 * Airflow measured with a box, with the error of box and gauge together.
 *
 * low, high = Q(Δp ∓ g) (1 ∓ e)
 *
 * Q in m³/s, Δp mean of the readings in Pa, g the gauge's error in Pa, e the share by which the box may be off.
 *
 * @source RESNET 804 and ANSI/RESNET/ICC 380, airflow resistance method; error by own working
 */
export function measuredByBox({
  box,
  pressures,
  trust,
}: {
  box: FlowBox;
  pressures: readonly Pascals[];
  trust: BoxTrust;
}): MeasuredAirflow {
  if (pressures.length === 0) return { measured: false, why: 'no readings' };
  if (!pressures.every((pressure) => pressure > 0) || !(box.opening > 0)) {
    return { measured: false, why: 'not a positive reading' };
  }
  const mean = pressures.reduce((sum, pressure) => sum + pressure, 0) / pressures.length;
  const gauge = Math.max(trust.gaugeError, trust.gaugeShare * mean);
  const limits: MeasuringLimit[] = [];
  if (mean < trust.leastPressure) limits.push('box pressure too low');
  if (mean > trust.mostPressure) limits.push('box pressure too high');
  const at = (pressure: number, error: number) =>
    cubicMetresPerSecond(flowBoxAirflow(box, pascals(pressure)) * (1 + error));
  return {
    measured: true,
    airflow: { low: at(mean - gauge, -trust.error), typical: at(mean, 0), high: at(mean + gauge, trust.error) },
    limits,
  };
}
