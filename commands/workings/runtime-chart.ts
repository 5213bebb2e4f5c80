import type { RecoveryTime } from '#engine/moisture/recovery-level.ts';
import { type RoomMoment, roomTrajectory } from '#engine/moisture/trajectory.ts';
import type { Chart, Line, Mark, Point } from '#findings/reply.ts';
import type { UnitSystem } from '#interview/question.ts';
import { recoveryLimits, runTimeSteps } from '#knowledge/moisture.ts';
import { airflow, minutes, relativeHumidity } from '#quantity/kinds.ts';
import { type Seconds, seconds } from '#quantity/units.ts';
import { withAirflow } from './runtime-room.ts';
import type { FollowedRoom } from './runtime-working.ts';

/** Close enough together to draw a smooth curve. */
const drawnEvery = seconds(20);

/** Two airflows nearer than this draw one curve on a phone. */
const tellApart = 1.15;

const upTo = (value: number, step: number): number => Math.ceil(value / step - 1e-9) * step;

/** A little past the last time, the shower before zero, both ends on a number of the axis. */
function minuteAxis(shower: number, last: number): { readonly start: number; readonly end: number } {
  const wanted = Math.max(30, last + 2);
  const step = wanted + shower > 190 ? 50 : wanted + shower > 75 ? 20 : 10;
  return { start: -upTo(shower, step), end: upTo(wanted, step) };
}

const point = ({ at, relativeHumidity: share }: { at: number; relativeHumidity: number }): Point => [
  at / 60,
  100 * share,
];

/** Room humidity against minutes, from the first drop of water to a little past the last surface drying. */
export function runTimeChart(
  { inputs, room, result }: FollowedRoom,
  advised: Seconds | null,
  units: UnitSystem,
): Chart {
  const { cautious } = room;
  const times = [result.fanMayStop, result.surfacesDry].map((time) => (time.found ? time.after : runTimeSteps.most));
  const last = Math.max(...times, advised ?? 0);
  const { start, end } = minuteAxis(cautious.showerDuration / 60, Math.min(last, recoveryLimits.longest) / 60);
  const until = seconds(end * 60);
  const moments = roomTrajectory(cautious, { every: drawnEvery, until });
  const { low, typical, high } = inputs.delivered.airflow;
  const main: Line = {
    label: low === high ? 'room air' : `room air at ${airflow.showShort(low, units)}`,
    role: 'main',
    points: moments.map(point),
  };
  const likely: readonly Line[] =
    typical > low * tellApart
      ? [
          {
            label: `at ${airflow.showShort(typical, units)}`,
            role: 'other',
            points: roomTrajectory(withAirflow(cautious, typical), { every: drawnEvery, until }).map(point),
          },
        ]
      : [];
  const marks = [
    mark('mirror clears', result.mirrorClears, moments, units),
    mark('walls dry', result.surfacesDry, moments, units),
  ].filter((each) => each !== undefined);
  const lowest = Math.min(...[main, ...likely].flatMap(({ points }) => points.map(([, y]) => y)));
  const limit = relativeHumidity.showShort(recoveryLimits.air, units);
  return {
    title: 'Humidity of the bathroom, shower and after',
    x: { label: 'minutes after the shower', min: start, max: end },
    y: {
      label: 'relative humidity of the room air, %',
      min: Math.floor(Math.min(lowest, 100 * recoveryLimits.air - 1) / 10) * 10,
      max: 100,
    },
    lines: [main, ...likely],
    bands: [],
    marks,
    levels: [
      { label: `limit ${limit}`, axis: 'y', at: 100 * recoveryLimits.air },
      ...(advised === null || advised > runTimeSteps.most
        ? []
        : [{ label: `fan off, ${minutes.showShort(advised, units)}`, axis: 'x' as const, at: advised / 60 }]),
    ],
    alt: `Chart of room humidity against minutes. It rises to ${relativeHumidity.showShort(result.endOfShower.relativeHumidity, units)} in the shower and ${backUnder(result.airRecovers, limit, units)}; ${marks.map(({ label }) => label).join(', ') || 'nothing dries'}.`,
  };
}

const backUnder = (time: RecoveryTime, limit: string, units: UnitSystem): string =>
  time.found
    ? `is back under ${limit} after ${minutes.showShort(seconds(Math.round(time.after / 60) * 60), units)}`
    : `does not come back under ${limit}`;

/** A time marked on the curve, read between the moments on either side of it. */
function mark(label: string, time: RecoveryTime, moments: readonly RoomMoment[], units: UnitSystem): Mark | undefined {
  if (!time.found) return undefined;
  const next = moments.findIndex(({ at }) => at >= Math.max(0, time.after));
  const [before, after] = [moments[next - 1], moments[next]];
  if (!after) return undefined;
  const part = before && after.at > before.at ? (time.after - before.at) / (after.at - before.at) : 1;
  const share = before
    ? before.relativeHumidity + part * (after.relativeHumidity - before.relativeHumidity)
    : after.relativeHumidity;
  return {
    label:
      time.after < runTimeSteps.step
        ? `${label} at once`
        : `${label}, ${minutes.showShort(seconds(Math.round(time.after / 60) * 60), units)}`,
    at: point({ at: time.after, relativeHumidity: share }),
  };
}
