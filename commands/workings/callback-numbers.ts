import type { CallbackNumbers } from '#diagnosis/numbers.ts';
import { ductVerdict } from '#engine/condensation/condensation-start.ts';
import { comparedWithNeeded } from '#engine/measuring/comparison.ts';
import { runTime } from '#engine/moisture/run-time.ts';
import { runTimeAdvice } from '#engine/moisture/run-time-advice.ts';
import { type Interview, take } from '#interview/interview.ts';
import type { AnyQuestion } from '#interview/question.ts';
import { recoveryLimits, runTimeSteps } from '#knowledge/moisture.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, type Seconds } from '#quantity/units.ts';
import { airInterview, wayInInterview } from '../makeup.ts';
import { measuredAirflow } from '../questions/airflow.ts';
import { atticTemperature, ductInsulation } from '../questions/attic.ts';
import { airflowAtSwap, collarPressure, hoodAirflow, runTimeSet } from '../questions/callback-measured.ts';
import { doorOpenAirflow } from '../questions/door.ts';
import { fanCurve } from '../questions/fan.ts';
import runtime from '../runtime.ts';
import sweat from '../sweat.ts';
import { deliveryOnce } from './delivered.ts';
import type { AirPath } from './delivery.ts';
import { doorResult } from './makeup-result.ts';
import { compared } from './measure.ts';
import { neededInterview, neededTakes } from './needed.ts';
import { ifKnown } from './only-known.ts';
import { pathOnSheet, pathTakes } from './path-on-sheet.ts';
import { type RunTimeInputs, unsureBathroom, withAirflow } from './runtime-room.ts';
import { unsureDuct } from './sweat-duct.ts';

/** What the sheet may hold that a callback can reckon with. */
export const callbackNumbersTake: readonly AnyQuestion[] = [
  ...new Set<AnyQuestion>([
    measuredAirflow,
    hoodAirflow,
    collarPressure,
    airflowAtSwap,
    runTimeSet,
    doorOpenAirflow,
    ...neededTakes,
    ...pathTakes,
    ...runtime.takes,
    ...sweat.takes,
  ]),
];

type Airflow = Estimate<CubicMetresPerSecond>;

/**
 * What was measured and what fan, duct, door, control and attic on the sheet lead one to expect, for the reasoning: physics as
 * evidence. Nothing is asked; what the sheet lacks says nothing, and so does what cannot be told for sure.
 */
export function* callbackNumbers(): Interview<CallbackNumbers> {
  const measured = yield* take(measuredAirflow);
  const hood = yield* take(hoodAirflow);
  const pressure = yield* take(collarPressure);
  const then = yield* take(airflowAtSwap);
  const fan = yield* take(fanCurve);
  const need = (yield* ifKnown(neededInterview()))?.airflow ?? null;
  const rating = fan.known && fan.value.kind !== 'points' ? fan.value.airflow : null;
  const now = measured.known ? measured.value : null;
  return {
    ...(now ? { airflow: yield* airflowNow(now, need, hood.known ? hood.value : null) } : {}),
    ...(pressure.value === null ? {} : { collarPressure: pressure.value }),
    ...(rating !== null && need !== null ? { rated: { rating, needed: need } } : {}),
    ...(yield* runTimeEvidence()),
    ...(yield* doorEvidence()),
    ...(yield* sweatEvidence()),
    ...(then.known ? { atSwap: swapEvidence(then.value, need, now) } : {}),
  };
}

const againstNeed = (airflow: Airflow, need: CubicMetresPerSecond | null) =>
  need === null ? {} : { needed: { airflow: need, outcome: comparedWithNeeded(airflow, need) } };

/** Held against what fan and duct should give by themselves: what the door takes is a finding of its own. */
function* airflowNow(
  atGrille: Airflow,
  need: CubicMetresPerSecond | null,
  atHood: Airflow | null,
): Interview<NonNullable<CallbackNumbers['airflow']>> {
  const path = yield* pathOnSheet();
  const airflow = path && predictedFor(path);
  return {
    atGrille,
    ...(atHood ? { atHood } : {}),
    ...againstNeed(atGrille, need),
    ...(airflow ? { predicted: { airflow, comparison: compared(atGrille, airflow) } } : {}),
  };
}

function predictedFor(path: AirPath): Airflow {
  const { low, typical, high } = deliveryOnce(path).airflow;
  return { low: cubicMetresPerSecond(low), typical: cubicMetresPerSecond(typical), high: cubicMetresPerSecond(high) };
}

const swapEvidence = (then: Airflow, need: CubicMetresPerSecond | null, now: Airflow | null) => ({
  airflow: then,
  ...againstNeed(then, need),
  ...(now ? { now: { airflow: now, verdict: compared(now, then).verdict } } : {}),
});

/** Too short where the likeliest airflow already needs longer; long enough where even its low end does not. */
function* runTimeEvidence(): Interview<Pick<CallbackNumbers, 'runTime'>> {
  const { value: set } = yield* take(runTimeSet);
  const room = set === null ? null : yield* ifKnown(runtime.interview());
  if (set === null || room === null) return {};
  const needed = timeThatTells(set, room);
  return needed === null ? {} : { runTime: { set, needed } };
}

function timeThatTells(set: Seconds, room: RunTimeInputs): Seconds | null {
  const { cautious } = unsureBathroom(room);
  const safe = runTimeAdvice(runTime(cautious, recoveryLimits).fanMayStop, runTimeSteps);
  if (safe.kind === 'run' && set >= safe.for) return safe.for;
  const likely = runTime(withAirflow(cautious, room.delivered.airflow.typical), recoveryLimits).fanMayStop;
  const advice = runTimeAdvice(likely, runTimeSteps);
  return likely.found && advice.kind === 'run' && set < likely.after ? advice.for : null;
}

function* doorEvidence(): Interview<Pick<CallbackNumbers, 'doorGap'>> {
  const air = yield* ifKnown(airInterview());
  const wayIn = air && (yield* ifKnown(wayInInterview()));
  if (!air || !wayIn) return {};
  const { source, from } = air;
  const { value: open } = yield* take(doorOpenAirflow);
  const measured = source.kind === 'given' && from === 'measured' ? source.airflow.typical : null;
  const pair = measured !== null && open !== null && open > 0 ? { shut: measured, open } : null;
  const { byDrop, byPressure } = doorResult({ source, wayIn, pair });
  const needed = (byDrop ?? byPressure.choked).gap;
  const { low, typical, high } = wayIn.door.gap;
  const isSure = high < needed || low >= needed;
  return Number.isFinite(needed) && isSure ? { doorGap: { actual: typical, needed } } : {};
}

/** Wet where the likeliest airflow is wet too; dry where even its low end stays dry. */
function* sweatEvidence(): Interview<Pick<CallbackNumbers, 'sweating'>> {
  const cold = yield* take(atticTemperature);
  const wrap = yield* take(ductInsulation);
  const inputs = cold.known && wrap.known ? yield* ifKnown(sweat.interview()) : null;
  if (!inputs) return {};
  const { cautious, run, typical } = unsureDuct(inputs);
  const isWet = ({ duct, pieces }: typeof cautious) => ductVerdict(duct, pieces).wet;
  const predicted = isWet(cautious);
  return predicted && !isWet(run(typical)) ? {} : { sweating: { predicted, attic: cold.value.typical } };
}
