import { airflowAt, freeAirflow, lastKnownPressure, shutOffPressure } from '#engine/fan/fan-curve.ts';
import { classAirflow, isOneRating } from '#engine/fan/fan-points.ts';
import { typicalShape } from '#engine/fan/fan-shape.ts';
import type { Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { fanKinds, ratingPressures } from '#knowledge/fans.ts';
import { airflow } from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, type Pascals, pascals } from '#quantity/units.ts';
import type { Delivery, ReadyPath } from './delivery.ts';
import { fineFlow, finePressure } from './fine.ts';

/** One known point of a fan's curve as it turns on the path: rated, or standing in for a second rating. */
interface RatedPoint {
  readonly airflow: CubicMetresPerSecond;
  readonly staticPressure: Pascals;
}

/** The known points of the fan as it turns here, at its setting and in this air, in order of pressure. */
function pointsHere({ curve, typical }: ReadyPath): readonly RatedPoint[] {
  const { knots, firstPoint, lastPoint, flowScale, pressureScale } = curve(typical);
  return Array.from({ length: lastPoint - firstPoint + 1 }, (_, index) => ({
    airflow: cubicMetresPerSecond(flowScale * (knots.y[firstPoint + index] as number)),
    staticPressure: pascals(pressureScale * (knots.x[firstPoint + index] as number)),
  }));
}

/** The last point at which the fan is known, as it turns here. */
export const lastPointOf = (ready: ReadyPath): RatedPoint => pointsHere(ready).at(-1) as RatedPoint;

/** Whether the fan has to be read past the last point at which it is known. */
export const isPastLastPoint = ({ ready, staticPressure: pressure }: Delivery): boolean =>
  pressure > lastKnownPressure(ready.curve(ready.typical));

/** How the fan's airflow at the pressure it works against comes about, line by line. */
export function fanSteps(delivery: Delivery, units: UnitSystem): Step[] {
  const { ready, staticPressure: pressure } = delivery;
  const curve = ready.curve(ready.typical);
  const flowHere = airflowAt(curve, pressure);
  return [
    ...knownSteps(ready, units),
    ...(isPastLastPoint(delivery) ? pastSteps(delivery, units) : []),
    ...(pressure < (pointsHere(ready)[0]?.staticPressure ?? 0) ? beforeSteps(delivery, units) : []),
    {
      what: 'The fan’s curve at that pressure',
      how: `a smooth curve through these points: ${curveAround(delivery, units)}, straight between`,
      value: fineFlow(flowHere, units),
      source: airflowMethods['fan-curve'].citation,
    },
  ];
}

/** The points the curve goes through, as rated and as the fan turns here. */
function knownSteps(ready: ReadyPath, units: UnitSystem): Step[] {
  const { description } = ready.path.setting;
  const steps: Step[] = [];
  const at = (point: RatedPoint) => `${fineFlow(point.airflow, units)} at ${finePressure(point.staticPressure, units)}`;
  if (description.kind === 'points' && isOneRating(description)) {
    const [rated] = description.points;
    const { shape: range, citation } = fanKinds.unknown;
    const { low, typical, high } = range.strength;
    const percent = (share: number) => `${Math.round(100 * share)} %`;
    if (rated?.staticPressure === ratingPressures.low) {
      steps.push({
        what: `The label has one point; at ${finePressure(ratingPressures.high, units)} a fan keeps, of its airflow at ${finePressure(ratingPressures.low, units)}, about ${percent(typical)}`,
        how: `${fineFlow(rated.airflow, units)} × ${typical}; ${percent(low)} to ${percent(high)} may be`,
        value: fineFlow(cubicMetresPerSecond(classAirflow(rated, ratingPressures.high, typicalShape(range))), units),
        source: citation,
      });
    }
  } else if (description.kind === 'points') {
    steps.push({ what: 'Points on the label', value: description.points.map(at).join(', ') });
  } else {
    const { droop } = fanKinds['constant-flow'].shape;
    const held = cubicMetresPerSecond(description.airflow * (1 - droop.typical));
    steps.push({
      what: `What it holds by ${finePressure(description.heldTo, units)}`,
      how: `${fineFlow(description.airflow, units)} × (1 − ${droop.typical}); ${droop.low} to ${droop.high} may be lost by then`,
      value: fineFlow(held, units),
      source: fanKinds['constant-flow'].citation,
    });
  }
  const { speedRatio } = ready.fan;
  const { slowedTo } = ready.path.setting;
  const setTo =
    slowedTo === undefined
      ? ''
      : `as fast as moves ${fineFlow(slowedTo, units)} at ${finePressure(ratingPressures.low, units)}: `;
  if (speedRatio !== 1 || Math.abs(ready.density - 1) > 0.005) {
    steps.push({
      what: 'The same fan as it turns here, in this air',
      how: `${setTo}airflow × ${speedRatio.toFixed(3)}, pressure × ${speedRatio.toFixed(3)}² × ${ready.density.toFixed(3)} (speed; density of the air)`,
      value: pointsHere(ready).map(at).join(', '),
      source: airflowMethods['fan-laws'].citation,
    });
  }
  return steps;
}

/** Past the last known point: where the guess puts shut-off, and what the rule gives at the pressure. */
function pastSteps({ ready, staticPressure: pressure }: Delivery, units: UnitSystem): Step[] {
  const points = pointsHere(ready);
  const [before, last] = [points.at(-2), points.at(-1)];
  if (!before || !last) return [];
  const curve = ready.curve(ready.typical);
  const shutOff = shutOffPressure(curve);
  const { of: flow } = airflow.scale(units);
  const q = (point: RatedPoint) => flow(point.airflow).toFixed(1);
  // Near shut-off the root is steep: a digit fewer would not come out as printed.
  const p = (value: number) => finePressure(pascals(value), units, 1);
  const straight =
    (last.airflow ** 2 * (last.staticPressure - before.staticPressure)) / (before.airflow ** 2 - last.airflow ** 2);
  const tail = shutOff - last.staticPressure;
  const capped = !(Math.abs(straight - tail) < 0.005 * tail);
  const source = airflowMethods['fan-curve-outside'].citation;
  const share = (pressure - last.staticPressure) / tail;
  return [
    {
      what: 'Past that the label is silent. Guess of where the fan moves nothing: the square of its airflow falls on in a straight line',
      how: capped
        ? `${p(last.staticPressure)} + ${p(tail)}, the bounds of how far the line is followed`
        : `${p(last.staticPressure)} + ${q(last)}² × (${p(last.staticPressure)} − ${p(before.staticPressure)}) ÷ (${q(before)}² − ${q(last)}²)`,
      value: p(shutOff),
      source,
    },
    {
      what: `That rule at ${p(pressure)}`,
      how: `${q(last)} × √(1 − (${p(pressure)} − ${p(last.staticPressure)}) ÷ (${p(shutOff)} − ${p(last.staticPressure)})); the curve is drawn through it at 40, 70 and 90 % of the way`,
      value: fineFlow(cubicMetresPerSecond(last.airflow * Math.sqrt(Math.max(0, 1 - share))), units),
      source,
    },
  ];
}

/** Under the first known pressure: the airflow with no duct at all, by the same straight line of squares. */
function beforeSteps({ ready }: Delivery, units: UnitSystem): Step[] {
  const [first, second] = pointsHere(ready);
  if (!first || !second || first.staticPressure <= 0) return [];
  const { of: flow } = airflow.scale(units);
  const q = (point: RatedPoint) => flow(point.airflow).toFixed(1);
  const p = (value: number) => finePressure(pascals(value), units);
  return [
    {
      what: 'Below the first point the label is silent. Guess of the airflow with no duct: the square of its airflow rises on in a straight line',
      how: `√(${q(first)}² + (${q(first)}² − ${q(second)}²) × ${p(first.staticPressure)} ÷ (${p(second.staticPressure)} − ${p(first.staticPressure)}))`,
      value: fineFlow(freeAirflow(ready.curve(ready.typical)), units),
      source: airflowMethods['fan-curve-outside'].citation,
    },
  ];
}

/** The curve a little to either side of where the fan works: between them it is as good as straight. */
function curveAround({ ready, staticPressure: here }: Delivery, units: UnitSystem): string {
  const curve = ready.curve(ready.typical);
  const step = 0.5;
  const at = (pressure: number) =>
    `${fineFlow(airflowAt(curve, pascals(pressure)), units)} at ${finePressure(pascals(pressure), units)}`;
  return `${at(here - step)}, ${at(here + step)}`;
}
