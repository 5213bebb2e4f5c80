import { type Air, airAt } from '#engine/air/air.ts';
import { densityRatio, standardAirTemperature } from '#engine/air/density.ts';
import { type Piece, pieceLosses, systemCurve } from '#engine/duct/run.ts';
import { velocityPressureCoefficient } from '#engine/duct/velocity.ts';
import { airflowAt, type FanCurve } from '#engine/fan/fan-curve.ts';
import { operatingPoint, operatingPressure } from '#engine/fan/operating-point.ts';
import { type DoorGap, doorGapOpening } from '#engine/pressure/door-gap.ts';
import { type LikelyBand, likelyBand } from '#engine/uncertainty/likely-band.ts';
import { type BoundedParameter, type OuterBound, outerBound } from '#engine/uncertainty/outer-bound.ts';
import type { SampleCount } from '#engine/uncertainty/triangular-sample.ts';
import { exactly } from '#quantity/estimate.ts';
import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type Metres,
  metres,
  type Pascals,
  pascals,
  type Ratio,
} from '#quantity/units.ts';
import type { DuctRun } from '../questions/run-parts.ts';
import { type FanModel, type FanSetting, fanModel } from './fan-model.ts';
import { type Parameters, parameters } from './parameters.ts';
import { type RunPiece, runPieces, startOf } from './run-pieces.ts';

/** Everything on the way of the air: the fan, the duct and what the room lets in. */
export interface AirPath {
  readonly setting: FanSetting;
  readonly run: DuctRun;
  /** `null` where nobody measured it: as wide as the duct that starts there. */
  readonly collar: Metres | null;
  readonly altitude: Metres;
  /** The slot under the bathroom door; absent where it is not known, and then the room lets in all the air it is asked for. */
  readonly door?: DoorGap | undefined;
}

/** An air path made ready to be worked out again and again with other values for what is unknown. */
export interface ReadyPath {
  readonly path: AirPath;
  readonly air: Air;
  readonly density: Ratio;
  readonly fan: FanModel;
  readonly pieces: readonly RunPiece[];
  readonly parameters: Parameters;
  readonly typical: Float64Array;
  enginePieces(values: Float64Array): readonly Piece[];
  /** What the duct asks of the fan's static pressure at an airflow: all losses less what the rating already paid. */
  staticDemand(values: Float64Array): (airflow: CubicMetresPerSecond) => Pascals;
  curve(values: Float64Array): FanCurve;
}

/** What a fan really moves along a path. */
export interface Delivery {
  readonly ready: ReadyPath;
  /** 5 %, most likely, 95 %. */
  readonly airflow: LikelyBand;
  /** With everything unknown at its worst, and at its best. */
  readonly outer: OuterBound;
  readonly staticPressure: Pascals;
  /** Pressure lost in each piece at the most likely airflow, in the order of `ready.pieces`. */
  readonly losses: readonly Pascals[];
  /** Lost at the door, where one stands in the path. */
  readonly doorLoss: Pascals;
}

/** Prepares a path: each unknown is entered once, in the order of the air. */
export function readyPath(path: AirPath): ReadyPath {
  const unknown = parameters();
  const surroundings = { altitude: path.altitude, temperature: standardAirTemperature };
  const air = airAt(surroundings);
  const density = densityRatio(surroundings);
  const fan = fanModel(path.setting, density, unknown);
  const pieces = runPieces(path.run, path.collar, unknown);
  const start = startOf(path.run);
  const collar = path.collar ?? start;
  const creditAt = (diameter: Metres) => velocityPressureCoefficient(diameter, air);
  const credit = unknown.enter({
    estimate: {
      low: 0,
      typical: creditAt(collar),
      high: Math.max(creditAt(collar), creditAt(metres(Math.min(start, collar)))),
    },
    direction: 'up',
  });
  const door: Piece | undefined = path.door ? { kind: 'opening', ...doorGapOpening(path.door) } : undefined;
  const enginePieces = (values: Float64Array): readonly Piece[] => {
    const list = pieces.map((each) => each.piece(values));
    if (door) list.push(door);
    return list;
  };
  return {
    path,
    air,
    density,
    fan,
    pieces,
    parameters: unknown,
    typical: Float64Array.from(unknown.bounded, ({ typical }) => typical),
    enginePieces,
    staticDemand(values) {
      const demand = systemCurve(enginePieces(values), air);
      const paid = credit(values);
      return (airflow) => pascals(demand(airflow) - paid * airflow * airflow);
    },
    curve: (values) => fan.curve(values),
  };
}

/** The airflow for one set of values; NaN where the fan cannot push any air through. */
function airflowFor(ready: ReadyPath, start: { pressure: Pascals }): (values: Float64Array) => number {
  return (values) => {
    const fan = ready.curve(values);
    const pressure = operatingPressure({
      fan,
      systemPressure: ready.staticDemand(values),
      start: start.pressure,
      tolerance: 1e-3,
    });
    return Number.isNaN(pressure) ? Number.NaN : airflowAt(fan, pressure);
  };
}

/** Airflow with everything as expected, and with every one-way unknown at its worst and at its best. */
export interface AirflowAtCorners {
  readonly typical: CubicMetresPerSecond;
  readonly worst: CubicMetresPerSecond;
  readonly best: CubicMetresPerSecond;
}

/** The unknowns all at the end that gives the least air, or the most. Those that act both ways stay as expected. */
function cornerOf(ready: ReadyPath, end: 'worst' | 'best'): Float64Array {
  return Float64Array.from(ready.parameters.bounded, ({ direction, low, typical, high }) => {
    if (direction === 'down') return end === 'worst' ? high : low;
    if (direction === 'up') return end === 'worst' ? low : high;
    return typical;
  });
}

/** For comparing one change with another. No air where the fan cannot push any through. */
export function airflowAtCorners(path: AirPath): AirflowAtCorners {
  const ready = readyPath(path);
  const start = { pressure: pascals(Number.NaN) };
  const evaluate = airflowFor(ready, start);
  const at = (values: Float64Array) => cubicMetresPerSecond(evaluate(values) || 0);
  const typical = at(ready.typical);
  return { typical, worst: at(cornerOf(ready, 'worst')), best: at(cornerOf(ready, 'best')) };
}

/** Where the fan's curve and the duct's cross with everything as expected; no air and no pressure where they do not. */
export function crossing(ready: ReadyPath): {
  readonly airflow: CubicMetresPerSecond;
  readonly staticPressure: Pascals;
} {
  const { typical } = ready;
  const point = operatingPoint({ fan: ready.curve(typical), systemPressure: ready.staticDemand(typical) });
  if (!point.found) return { airflow: cubicMetresPerSecond(0), staticPressure: pascals(0) };
  return { airflow: point.airflow, staticPressure: point.staticPressure };
}

/** What the fan delivers along a path, with its likely band and outer bound. */
export function delivery(path: AirPath, samples: SampleCount = 256): Delivery {
  const ready = readyPath(path);
  const { typical, parameters: unknown } = ready;
  const { staticPressure, airflow: moved } = crossing(ready);
  const evaluate = airflowFor(ready, { pressure: staticPressure });
  const airflow = likelyBand({ parameters: unknown.bounded, drivers: unknown.drivers, evaluate, whenNone: 0, samples });
  const outer = outerBound({ parameters: unknown.bounded, evaluate, whenNone: 0 });
  ready.curve(typical);
  const losses = pieceLosses(ready.enginePieces(typical), ready.air, moved);
  return {
    ready,
    airflow,
    outer: { low: Math.min(outer.low, airflow.low), high: Math.max(outer.high, airflow.high) },
    staticPressure,
    losses: losses.slice(0, ready.pieces.length),
    doorLoss: losses[ready.pieces.length] ?? pascals(0),
  };
}

/** One unknown, and how wide the band would be if it were known and turned out as expected. */
export interface Telling {
  readonly parameter: number;
  readonly width: number;
}

/** Only the few with the widest swing are worked out in full; the rest cannot be the most telling. */
const shortlist = 2;

/**
 * Which measurement would narrow the delivered airflow most, among those somebody can make on site. The swing of each
 * measurement alone picks the few that can matter; those are sampled with it made. Unknowns that one look tells, such as how
 * tight two lengths of flex are pulled, are known together.
 */
export function tellingMeasurements({ ready, staticPressure, airflow }: Delivery): readonly Telling[] {
  const { bounded, drivers, measures } = ready.parameters;
  const evaluate = airflowFor(ready, { pressure: staticPressure });
  const names = measures.map((measure) => measure?.('inch-pound'));
  const airflowWith = (name: string, end: 'low' | 'high'): number => {
    const values = Float64Array.from(ready.typical, (value, index) =>
      names[index] === name ? (bounded[index] as BoundedParameter)[end] : value,
    );
    return evaluate(values) || 0;
  };
  const width = airflow.high - airflow.low;
  return [...new Set(names)]
    .flatMap((name) => (name === undefined ? [] : [name]))
    .map((name) => ({ name, swing: Math.abs(airflowWith(name, 'high') - airflowWith(name, 'low')) }))
    .filter((each) => each.swing > 0)
    .sort((one, other) => other.swing - one.swing)
    .slice(0, shortlist)
    .map(({ name }) => {
      const known = bounded.map((bound, index) =>
        names[index] === name ? { ...bound, ...exactly(bound.typical) } : bound,
      );
      const band = likelyBand({ parameters: known, drivers, evaluate, whenNone: 0, samples: 128 });
      return { parameter: names.indexOf(name), width: band.high - band.low };
    })
    .filter((each) => each.width < width * worthwhile)
    .sort((one, other) => one.width - other.width);
}

/** A measurement that leaves more of the band than this is not worth the ladder. */
const worthwhile = 0.95;
