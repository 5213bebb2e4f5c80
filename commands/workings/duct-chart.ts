import { airflowAt, freeAirflow, shutOffPressure } from '#engine/fan/fan-curve.ts';
import type { Chart, Line, Point } from '#findings/reply.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflow, staticPressure } from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, pascals } from '#quantity/units.ts';
import { type Delivery, readyPath } from './delivery.ts';
import type { FanSetting } from './fan-model.ts';

const steps = 48;

/** A round number at or above a value, so that an axis ends on a tick. */
export function roundUp(value: number): number {
  const size = 10 ** Math.floor(Math.log10(value));
  return ([1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10].find((step) => step * size >= value) ?? 10) * size;
}

/** The fan's curve and the duct's, crossing at what is delivered. */
export function ductChart(
  delivery: Delivery,
  settings: readonly FanSetting[],
  need: CubicMetresPerSecond | null,
  units: UnitSystem,
): Chart {
  const { ready } = delivery;
  const flowScale = airflow.scale(units);
  const pressureScale = staticPressure.scale(units);
  const typical = ready.typical;
  const point = (flow: number, pressure: number): Point => [
    flowScale.of(cubicMetresPerSecond(flow)),
    pressureScale.of(pascals(pressure)),
  ];
  const fanLine = (setting: FanSetting): readonly Point[] => {
    const other = setting === ready.path.setting ? ready : readyPath({ ...ready.path, setting });
    const curve = other.curve(other.typical);
    const top = shutOffPressure(curve);
    return Array.from({ length: steps + 1 }, (_, index) => {
      const pressure = pascals((top * index) / steps);
      return point(airflowAt(curve, pressure), pressure);
    });
  };
  const curve = ready.curve(typical);
  const mostFlow = Math.max(freeAirflow(curve), need ?? 0, delivery.airflow.high) * 1.12;
  const xMax = roundUp(flowScale.of(cubicMetresPerSecond(mostFlow)));
  const yMax = roundUp(pressureScale.of(shutOffPressure(curve)) * 1.05);
  const corner = (end: 'low' | 'high') =>
    Float64Array.from(ready.parameters.bounded, (bound) => {
      // More of what goes down costs pressure; the curve drawn low is the easy duct.
      if (bound.direction === 'none' || bound.direction === 'hump') return bound.typical;
      return (bound.direction === 'down') === (end === 'high') ? bound.high : bound.low;
    });
  const demands = {
    typical: ready.staticDemand(typical),
    low: ready.staticDemand(corner('low')),
    high: ready.staticDemand(corner('high')),
  };
  const perUnit = mostFlow / flowScale.of(cubicMetresPerSecond(mostFlow));
  const flows = Array.from({ length: steps + 1 }, (_, index) => cubicMetresPerSecond((xMax * perUnit * index) / steps));
  const system: Line = {
    label: 'this duct',
    role: 'system',
    points: flows.map((flow) => point(flow, demands.typical(flow))),
  };
  const others = settings.filter((setting) => setting !== ready.path.setting);
  const name = ready.path.setting.name(units);
  const delivered = cubicMetresPerSecond(delivery.airflow.typical);
  const shown = airflow.showShort(delivered, units);
  return {
    title: 'What the fan delivers through this duct',
    x: { label: `airflow, ${flowScale.unit}`, min: 0, max: xMax },
    y: { label: `static pressure, ${pressureScale.unit}`, min: 0, max: yMax },
    lines: [
      { label: name === '' ? 'the fan' : `the fan on ${name}`, role: 'main', points: fanLine(ready.path.setting) },
      ...others.map((setting): Line => ({ label: setting.name(units), role: 'other', points: fanLine(setting) })),
      system,
    ],
    bands: [
      {
        label: 'worst to best duct',
        points: flows.map((flow) => {
          const [x, low] = point(flow, demands.low(flow));
          return [x, low, point(flow, demands.high(flow))[1]];
        }),
      },
    ],
    marks: [{ label: `delivers ${shown}`, at: point(delivered, delivery.staticPressure) }],
    levels:
      need === null ? [] : [{ label: `needed ${airflow.showShort(need, units)}`, axis: 'x', at: flowScale.of(need) }],
    alt: `Chart of static pressure against airflow. The fan’s falling curve and the duct’s rising curve cross at ${shown} and ${staticPressure.showShort(delivery.staticPressure, units)}${need === null ? '' : `; ${airflow.showShort(need, units)} is needed`}; likely ${airflow.showRangeShort({ low: cubicMetresPerSecond(delivery.airflow.low), high: cubicMetresPerSecond(delivery.airflow.high) }, units)}.`,
  };
}
