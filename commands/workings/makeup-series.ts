import { airflowAt, type FanCurve, shutOffPressure } from '#engine/fan/fan-curve.ts';
import { fanChanged } from '#engine/fan/fan-laws.ts';
import { operatingPressure } from '#engine/fan/operating-point.ts';
import { type MakeUpPath, makeUpPressure } from '#engine/pressure/make-up-path.ts';
import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type Pascals,
  pascals,
  type Ratio,
  ratio,
} from '#quantity/units.ts';
import type { ReadyPath } from './delivery.ts';

const none = cubicMetresPerSecond(0);

/** What duct and way in ask of the fan's static pressure at an airflow, for one set of values. */
export function demandInSeries(ready: ReadyPath, values: Float64Array, wayIn: MakeUpPath) {
  const duct = ready.staticDemand(values);
  const { density } = ready.air;
  return (airflow: CubicMetresPerSecond): Pascals =>
    pascals(duct(airflow) + makeUpPressure(wayIn, { airflow: airflow > 0 ? airflow : none, density }));
}

/** A further pressure in the way, or the same fan at another speed. */
interface WhatIf {
  readonly further?: number;
  readonly speedRatio?: Ratio;
}

/** The airflow with duct and way in one behind the other. NaN where the fan cannot push any through. */
export function airflowInSeries(
  ready: ReadyPath,
  values: Float64Array,
  wayIn: MakeUpPath,
  { further = 0, speedRatio = ratio(1) }: WhatIf = {},
): number {
  const demand = demandInSeries(ready, values, wayIn);
  const fan = fanChanged(ready.curve(values), { speedRatio, densityRatio: ratio(1) });
  const pressure = operatingPressure({
    fan,
    systemPressure: (airflow) => pascals(demand(airflow) + further),
    tolerance: 1e-4,
  });
  return Number.isNaN(pressure) ? Number.NaN : Math.max(0, airflowAt(fan, pressure));
}

/** Halvings of the fan's pressure range: past this the pressure is known to a millionth of shut-off. */
const halvings = 24;

/** The static pressure at which a fan moves an airflow: its curve read the other way. */
export function fanPressureAt(fan: FanCurve, airflow: CubicMetresPerSecond): Pascals {
  let high = shutOffPressure(fan);
  let low = pascals(-high);
  for (let halving = 0; halving < halvings; halving += 1) {
    const middle = pascals((low + high) / 2);
    if (airflowAt(fan, middle) > airflow) low = middle;
    else high = middle;
  }
  return pascals((low + high) / 2);
}
