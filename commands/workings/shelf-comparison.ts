import type { Finding, Table } from '#findings/finding.ts';
import { type Interview, offer, take } from '#interview/interview.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { airflow, fanPower, loudness, staticPressure } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, metres, type Sones, type Watts } from '#quantity/units.ts';
import { fanWatts } from '../questions/cost.ts';
import { doorGap, doorWidth } from '../questions/door.ts';
import { altitude, ductRun } from '../questions/duct.ts';
import { collar, fanCurve, fanSettings, ratedSones } from '../questions/fan.ts';
import { citations } from './citations.ts';
import { type AirPath, type Delivery, delivery } from './delivery.ts';
import { deliveredSteps } from './delivery-findings.ts';
import { lossSteps } from './duct-working.ts';
import { fanSettingsOf } from './fan-model.ts';
import { fanSteps, isPastLastPoint, lastPointOf } from './fan-working.ts';
import { neededTaken } from './needed.ts';
import { onLabel, type ShelfFan, shownName } from './shelf.ts';

/** The duct of the job as every fan meets it. */
export interface JobDuct {
  readonly path: Pick<AirPath, 'run' | 'altitude' | 'door'>;
  readonly needed: CubicMetresPerSecond | null;
}

/** What the sheet has of the duct; where it is silent the usual run stands in and is named among what was assumed. */
export function* jobDuct(): Interview<JobDuct> {
  const run = yield* offer(ductRun);
  const needed = yield* neededTaken();
  const height = yield* take(altitude);
  const width = yield* take(doorWidth);
  const gap = yield* take(doorGap);
  return {
    path: {
      run: run.value,
      altitude: height.value ?? metres(0),
      door: width.known && gap.known ? { width: width.value.typical, height: gap.value.typical } : undefined,
    },
    needed: needed.airflow,
  };
}

/** A fan of the shelf at its fastest, in the job's duct. */
export interface Compared {
  /** With the mark of an invented fan, where it is one. */
  readonly name: string;
  /** The name alone, short enough for a curve. */
  readonly short: string;
  readonly demo: boolean;
  readonly result: Delivery;
  readonly sones: Sones | null;
  readonly watts: Watts | null;
}

const longestShort = 24;

/** @returns `undefined` where the label can no longer be read as a fan. */
export function compared(fan: ShelfFan, duct: JobDuct): Compared | undefined {
  const curve = onLabel(fan, fanCurve);
  if (curve === undefined) return undefined;
  const fastest = fanSettingsOf(curve, onLabel(fan, fanSettings) ?? []).at(-1);
  if (!fastest) return undefined;
  return {
    name: shownName(fan),
    short: fan.name.length > longestShort ? `${fan.name.slice(0, longestShort - 1)}…` : fan.name,
    demo: fan.demo,
    result: delivery({ ...duct.path, setting: fastest, collar: onLabel(fan, collar) ?? null }),
    sones: onLabel(fan, ratedSones) ?? null,
    watts: onLabel(fan, fanWatts)?.typical ?? null,
  };
}

const flowOf = ({ result }: Compared): CubicMetresPerSecond => cubicMetresPerSecond(result.airflow.typical);
const bandOf = ({ result }: Compared) => ({
  low: cubicMetresPerSecond(result.airflow.low),
  high: cubicMetresPerSecond(result.airflow.high),
});

const enough = (one: Compared, need: CubicMetresPerSecond): string => {
  if (meets(bandOf(one).low, need)) return 'enough';
  return meets(bandOf(one).high, need) ? 'perhaps enough' : 'too little';
};

const orDash = (text: string | null): string => text ?? '—';

export function comparisonTable(all: readonly Compared[], need: CubicMetresPerSecond | null, units: UnitSystem): Table {
  return {
    title: 'In this job’s duct, each at its fastest',
    columns: ['fan', 'delivers', 'usually', ...(need === null ? [] : ['for the need']), 'on its label'],
    rows: all.map((one) => [
      one.name,
      airflow.showShort(flowOf(one), units),
      airflow.showRangeShort(bandOf(one), units),
      ...(need === null ? [] : [enough(one, need)]),
      [
        orDash(one.sones === null ? null : loudness.showShort(one.sones, units)),
        orDash(one.watts === null ? null : fanPower.showShort(one.watts, units)),
      ].join(', '),
    ]),
  };
}

/**
 * Said where a fan would work past the points on its label: what is compared there is a guess.
 *
 * @returns `undefined` where every label reaches as far as the duct asks.
 */
export function pastLabels(all: readonly Compared[], units: UnitSystem): Finding | undefined {
  const past = all.filter(({ result }) => isPastLastPoint(result));
  if (past.length === 0) return undefined;
  const each = past.map(({ name, result }) => {
    const last = staticPressure.showShort(lastPointOf(result.ready).staticPressure, units);
    return `${name} (known to ${last}, would work at ${staticPressure.showShort(result.staticPressure, units)})`;
  });
  return {
    id: 'past-the-label',
    weight: 'caution',
    says: `Do not choose by a narrow margin: past the last point on the label the curve is a guess, and that is where these would work: ${each.join('; ')}. Ask for a rated point at a higher pressure.`,
    working: past.flatMap(({ result }) => fanSteps(result, units)),
    sources: citations(airflowMethods['fan-curve-outside'].citation),
  };
}

/** Quiet before thrifty; a fan whose label is silent counts as the loudest. */
const quieter = (one: Compared, other: Compared): number =>
  (one.sones ?? Number.POSITIVE_INFINITY) - (other.sones ?? Number.POSITIVE_INFINITY) ||
  (one.watts ?? Number.POSITIVE_INFINITY) - (other.watts ?? Number.POSITIVE_INFINITY) ||
  flowOf(other) - flowOf(one) ||
  0;

/** The fan to take: the quietest that is surely enough; where none is, or nothing is needed, the one that moves most. */
export function bestFan(
  all: readonly [Compared, ...Compared[]],
  need: CubicMetresPerSecond | null,
  units: UnitSystem,
): Finding {
  const most = all.reduce((best, one) => (flowOf(one) > flowOf(best) ? one : best));
  const sure = need === null ? [] : all.filter((one) => meets(bandOf(one).low, need)).sort(quieter);
  const chosen = sure[0] ?? most;
  const flow = flowOf(chosen);
  const short = airflow.showShort(flow, units);
  const finding = {
    id: 'best-fan',
    value: { number: flow, unit: airflow.siUnit, ...bandOf(chosen), shown: `${chosen.name}: ${short}` },
    working: [
      ...all.map((one) => ({
        what: `${one.name} and the duct cross at`,
        how: `${staticPressure.showShort(one.result.staticPressure, units)} of static pressure`,
        value: airflow.show(flowOf(one), units),
      })),
      ...all.flatMap(({ name, result }) => [
        { what: `${name}: its sum`, value: airflow.show(cubicMetresPerSecond(result.airflow.typical), units) },
        ...lossSteps(result, units),
        ...deliveredSteps(result, units),
      ]),
    ],
    sources: citations(airflowMethods['operating-point'].citation, airflowMethods['likely-band'].citation),
  };
  if (flow <= 0)
    return { ...finding, weight: 'stop', says: 'Fit none of these to this duct: none can push any air through.' };
  if (need === null) {
    const says = `${chosen.name} moves most: ${short}. Say what airflow is needed (/size), and the quietest that is enough can be told.`;
    return { ...finding, weight: 'advice', says };
  }
  const wanted = airflow.showShort(need, units);
  if (sure.length === 0) {
    const says = `None of these is surely enough for the ${wanted} needed; ${chosen.name} comes nearest with ${short}. Look at the duct first: /duct.`;
    return { ...finding, weight: 'caution', says };
  }
  const quiet = chosen.sones === null ? '' : `, rated ${loudness.showShort(chosen.sones, units)}`;
  const says =
    sure.length === 1
      ? `Only ${chosen.name} is surely enough for the ${wanted} needed: ${short}${quiet}.`
      : `Take ${chosen.name}: the quietest that is surely enough for the ${wanted} needed, ${short}${quiet}.`;
  return { ...finding, weight: 'good', says };
}
