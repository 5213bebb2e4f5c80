import type { Chart, Point } from '#findings/reply.ts';
import type { UnitSystem } from '#interview/question.ts';
import { doorPressureLimits } from '#knowledge/make-up.ts';
import { airflow, roomPressure, smallLength } from '#quantity/kinds.ts';
import { type Metres, metres, pascals } from '#quantity/units.ts';
import type { DoorResult } from './makeup-result.ts';

const steps = 40;

/** Where an axis may end, so that it ends on a tick. */
const ends = [4, 6, 8, 10, 15, 20, 30, 40, 60, 80, 100, 150, 200];
const roundEnd = (value: number, most: number): number => ends.find((end) => end >= value) ?? most;

/** More than this no bath fan makes; a curve that climbs past it is cut. */
const mostPressure = 150;

/** The pressure across the shut door against the height of its gap, with the advice bands and the gap as it is. */
export function makeupChart({ air, wayIn, byDrop, byPressure, pressure, shut }: DoorResult, units: UnitSystem): Chart {
  const { unit, of } = smallLength.scale(units);
  const { fine, choked } = doorPressureLimits;
  const { typical } = air;
  const now = wayIn.door.gap.typical;
  const wanted = [now, byDrop?.gap ?? 0, byPressure.choked.gap].filter(Number.isFinite);
  const inches = roundEnd((Math.max(...wanted) * 1.25) / 0.0254 / 0.25, 48) * 0.25;
  const xMost = units === 'metric' ? roundEnd(inches * 25.4, 300) : inches;
  const perUnit = smallLength.from(1, units === 'metric' ? 'mm' : 'in');
  const at = (gap: Metres): Point => [of(gap), air.doorPressure(typical, gap)];
  const there = Number.isFinite(pressure.typical) ? pressure.typical : 0;
  const yMost = roundEnd(Math.min(mostPressure, Math.max(2 * choked.value, there * 1.3)), mostPressure);
  const points = Array.from({ length: steps }, (_, index) => metres((perUnit * xMost * (index + 1)) / steps))
    .map(at)
    .filter(([, taken]) => Number.isFinite(taken) && taken <= yMost);
  const gapNow = smallLength.showShort(now, units);
  const pa = (value: number) => roomPressure.showShort(pascals(value), units);
  const flow = airflow.showShort(shut, units);
  return {
    title: 'What the gap under the door costs',
    x: { label: `gap under the door, ${unit}`, min: 0, max: xMost },
    y: { label: 'pressure across the door, Pa', min: 0, max: yMost },
    lines: [
      {
        label: air.ready ? 'fan, duct and door together' : `at ${flow}`,
        role: 'main',
        points,
      },
    ],
    bands: [],
    marks:
      Number.isFinite(pressure.typical) && pressure.typical <= yMost
        ? [{ label: `now ${gapNow}: ${pa(pressure.typical)}`, at: [of(now), pressure.typical] }]
        : [],
    levels: [
      { label: `fine up to ${pa(fine.value)}`, axis: 'y', at: fine.value },
      { label: `choked past ${pa(choked.value)}`, axis: 'y', at: choked.value },
    ],
    alt: `Chart of the pressure across the shut door against the gap under it. ${
      Number.isFinite(pressure.typical)
        ? `At ${gapNow}, as it is, ${flow} takes ${pa(pressure.typical)}`
        : 'As it is, nothing gets through'
    }; up to ${pa(fine.value)} is fine, past ${pa(choked.value)} the fan chokes. The wider the gap, the less.`,
  };
}
