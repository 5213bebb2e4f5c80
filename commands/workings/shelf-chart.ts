import { type FanCurve, freeAirflow, shutOffPressure } from '#engine/fan/fan-curve.ts';
import type { Chart, Line, Point } from '#findings/reply.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflow, ductDiameter, staticPressure } from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, pascals } from '#quantity/units.ts';
import { fanLines, fanPoints, roundUp } from './duct-chart.ts';
import { startOf } from './run-pieces.ts';
import type { Compared } from './shelf-comparison.ts';

const steps = 40;
const along = Array.from({ length: steps + 1 }, (_, index) => index / steps);

/** Several fans against the one duct. Fans with different collars meet it at different widths, so each width has its line. */
export function comparisonChart(
  all: readonly [Compared, ...Compared[]],
  need: CubicMetresPerSecond | null,
  units: UnitSystem,
): Chart {
  const flowScale = airflow.scale(units);
  const pressureScale = staticPressure.scale(units);
  const point = (flow: number, pressure: number): Point => [
    flowScale.of(cubicMetresPerSecond(flow)),
    pressureScale.of(pascals(pressure)),
  ];
  const curves = all.map(({ result }) => result.ready.curve(result.ready.typical));
  const mostFlow = Math.max(need ?? 0, ...curves.map(freeAirflow)) * 1.1;
  const mostPressure = Math.max(...curves.map(shutOffPressure));
  const collarOf = ({ result }: Compared) => result.ready.path.collar ?? startOf(result.ready.path.run);
  const widths = [...new Set(all.map(collarOf))].sort((one, other) => one - other);
  const duct = widths.flatMap((width): Line[] => {
    const one = all.find((each) => collarOf(each) === width);
    if (!one) return [];
    const { ready } = one.result;
    const demand = ready.staticDemand(ready.typical);
    const label = widths.length === 1 ? 'this duct' : `duct from a ${ductDiameter.showShort(width, units)} collar`;
    const flows = along.map((share) => cubicMetresPerSecond(share * mostFlow));
    return [{ label, role: 'system', points: flows.map((flow) => point(flow, demand(flow))) }];
  });
  const shown = (one: Compared) => airflow.showShort(cubicMetresPerSecond(one.result.airflow.typical), units);
  return {
    title: all.some(({ demo }) => demo) ? 'Fans in this job’s duct, some invented' : 'Fans in this job’s duct',
    x: { label: `airflow, ${flowScale.unit}`, min: 0, max: roundUp(flowScale.of(cubicMetresPerSecond(mostFlow))) },
    y: {
      label: `static pressure, ${pressureScale.unit}`,
      min: 0,
      max: roundUp(pressureScale.of(pascals(mostPressure)) * 1.05),
    },
    lines: [
      ...all.flatMap((one, index) =>
        fanLines(fanPoints(curves[index] as FanCurve, point), {
          label: one.short,
          role: index === 0 ? 'main' : 'other',
          guess: index === 0 ? 'guessed past the labels' : '',
        }),
      ),
      ...duct,
    ],
    bands: [],
    marks: all.map((one) => ({
      label: shown(one),
      at: point(one.result.airflow.typical, one.result.staticPressure),
    })),
    levels:
      need === null ? [] : [{ label: `needed ${airflow.showShort(need, units)}`, axis: 'x', at: flowScale.of(need) }],
    alt: `Chart of static pressure against airflow with the duct’s rising curve and each fan’s falling one. They cross at: ${all.map((one) => `${one.name} ${shown(one)}`).join(', ')}.`,
  };
}
