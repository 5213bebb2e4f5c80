import { airflowAt, type FanCurve, freeAirflow, lastKnownPressure, shutOffPressure } from '#engine/fan/fan-curve.ts';
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

/** A fan's curve in two: as far as its points are known, and from there to where it is guessed to move nothing. */
export function fanPoints(
  curve: FanCurve,
  point: (flow: number, pressure: number) => Point,
): { readonly known: readonly Point[]; readonly guessed: readonly Point[] } {
  const top = shutOffPressure(curve);
  const last = lastKnownPressure(curve);
  const between = (from: number, to: number) =>
    Array.from({ length: steps + 1 }, (_, index) => {
      const pressure = pascals(from + ((to - from) * index) / steps);
      return point(airflowAt(curve, pressure), pressure);
    });
  return { known: between(0, last), guessed: top > last ? between(last, top) : [] };
}

/** Those two as lines of a chart. */
export const fanLines = (
  { known, guessed }: ReturnType<typeof fanPoints>,
  { label, role, guess }: { readonly label: string; readonly role: 'main' | 'other'; readonly guess: string },
): readonly Line[] => [
  { label, role, points: known },
  ...(guessed.length === 0 ? [] : [{ label: guess, role: 'guess', points: guessed } as const]),
];

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
  const fanLine = (setting: FanSetting) => {
    const other = setting === ready.path.setting ? ready : readyPath({ ...ready.path, setting });
    return fanPoints(other.curve(other.typical), point);
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
      ...fanLines(fanLine(ready.path.setting), {
        label: name === '' ? 'the fan' : `the fan on ${name}`,
        role: 'main',
        guess: 'guessed past its label',
      }),
      ...others.flatMap((setting) =>
        fanLines(fanLine(setting), { label: setting.name(units), role: 'other', guess: '' }),
      ),
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
