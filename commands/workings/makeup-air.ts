import { airAt } from '#engine/air/air.ts';
import { standardAirTemperature } from '#engine/air/density.ts';
import { houseDepressurisation } from '#engine/pressure/house-leakage.ts';
import { type MakeUpPath, makeUpPressure } from '#engine/pressure/make-up-path.ts';
import { type Opening, openingPressure } from '#engine/pressure/orifice.ts';
import type { Estimate } from '#quantity/estimate.ts';
import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type KilogramsPerCubicMetre,
  type Metres,
  metres,
  type Pascals,
  pascals,
  type Ratio,
} from '#quantity/units.ts';
import { type AirPath, type ReadyPath, readyPath } from './delivery.ts';
import { airflowInSeries, demandInSeries, fanPressureAt } from './makeup-series.ts';
import { type Openings, openingsOf, type WayIn } from './makeup-way-in.ts';
import { type Parameters, parameters } from './parameters.ts';

/** How leaky the house is, and the shape of its cracks. */
interface House {
  readonly leakage: Estimate<CubicMetresPerSecond>;
  readonly exponent: Ratio;
}

/** Where the airflow comes from: fan and duct solved together with the door, or a number that was told or measured. */
export type AirSource =
  | { readonly kind: 'path'; readonly path: AirPath; readonly house: House | null }
  | { readonly kind: 'given'; readonly airflow: Estimate<CubicMetresPerSecond>; readonly altitude: Metres };

/** The air that gets past the door, ready to be worked out again and again with other values for what is unknown. */
export interface MakeUpAir {
  readonly parameters: Parameters;
  readonly typical: Float64Array;
  readonly density: KilogramsPerCubicMetre;
  /** `null` where the airflow was given: then no door changes it. */
  readonly ready: ReadyPath | null;
  openings(values: Float64Array, gap?: Metres): Openings;
  /** Airflow with the door shut over a gap. NaN where the fan cannot push any air through. */
  shut(values: Float64Array, gap?: Metres): number;
  /** Airflow with the door shut as it is and the fan at another speed; `null` for a fan that sets its own, or a given airflow. */
  faster: ((values: Float64Array, speedRatio: Ratio) => number) | null;
  /** Airflow with the door open. */
  open(values: Float64Array): number;
  /** Pressure between bathroom and hall, with the door shut over a gap. Not a finite number where no air gets through. */
  doorPressure(values: Float64Array, gap?: Metres): number;
  /** What the fan has left for the bathroom's door at an airflow. Less than nothing where it has none. */
  left(values: Float64Array, airflow: number): Pascals;
  /** What the rest of the way in takes at an airflow: a second door, the leaks of the house. */
  restTakes(values: Float64Array, airflow: number): Pascals;
  /** Airflow at which the bathroom's door takes a pressure. */
  airflowWhere(values: Float64Array, door: Pascals): number;
}

export function makeUpAir(source: AirSource, wayIn: WayIn): MakeUpAir {
  return source.kind === 'path' ? alongPath(source.path, source.house, wayIn) : given(source, wayIn);
}

function given({ airflow, altitude }: Extract<AirSource, { kind: 'given' }>, wayIn: WayIn): MakeUpAir {
  const unknown = parameters();
  const flow = unknown.enter({ estimate: airflow, direction: 'up', measure: () => 'the airflow, with a bag or a box' });
  const openings = openingsOf(wayIn, unknown);
  const { density } = airAt({ altitude, temperature: standardAirTemperature });
  return {
    parameters: unknown,
    typical: typicalOf(unknown),
    density,
    ready: null,
    openings,
    shut: flow,
    faster: null,
    open: flow,
    doorPressure: (values, gap) => {
      const at = openings(values, gap);
      return isShutTight(at)
        ? Number.NaN
        : openingPressure(at.bath, { airflow: cubicMetresPerSecond(flow(values)), density });
    },
    left: () => pascals(Number.NaN),
    restTakes: () => pascals(0),
    airflowWhere: flow,
  };
}

function alongPath(path: AirPath, house: House | null, wayIn: WayIn): MakeUpAir {
  const ready = readyPath({ ...path, door: undefined });
  const unknown = ready.parameters;
  const openings = openingsOf(wayIn, unknown);
  const leakage = house ? unknown.enter({ estimate: house.leakage, direction: 'up' }) : null;
  const { density } = ready.air;
  /** What the air passes besides the duct: some openings, then the leaks of the house, with no other exhaust on. */
  const past = (values: Float64Array, openingsPassed: readonly Opening[]): MakeUpPath => ({
    openings: openingsPassed,
    otherExhaust: cubicMetresPerSecond(0),
    ...(house && leakage
      ? { house: { airflowAt50: cubicMetresPerSecond(leakage(values)), exponent: house.exponent } }
      : {}),
  });
  const beyond = ({ hall }: Openings) => (hall ? [hall] : []);
  const shutAt = (values: Float64Array, at: Openings, speedRatio?: Ratio) =>
    isShutTight(at)
      ? 0
      : airflowInSeries(ready, values, past(values, [at.bath, ...beyond(at)]), speedRatio ? { speedRatio } : {});
  const shut = (values: Float64Array, gap?: Metres) => shutAt(values, openings(values, gap));
  return {
    parameters: unknown,
    typical: typicalOf(unknown),
    density,
    ready,
    openings,
    shut,
    faster:
      path.setting.description.kind === 'constant flow'
        ? null
        : (values, speedRatio) => shutAt(values, openings(values), speedRatio),
    open: (values) => airflowInSeries(ready, values, past(values, beyond(openings(values)))),
    doorPressure: (values, gap) => {
      const airflow = shut(values, gap);
      return Number.isNaN(airflow) || airflow === 0
        ? Number.NaN
        : openingPressure(openings(values, gap).bath, { airflow: cubicMetresPerSecond(airflow), density });
    },
    left: (values, airflow) => {
      const flow = cubicMetresPerSecond(airflow);
      const demand = demandInSeries(ready, values, past(values, beyond(openings(values))));
      return pascals(fanPressureAt(ready.curve(values), flow) - demand(flow));
    },
    restTakes: (values, airflow) =>
      makeUpPressure(past(values, beyond(openings(values))), { airflow: cubicMetresPerSecond(airflow), density }),
    airflowWhere: (values, door) =>
      airflowInSeries(ready, values, past(values, beyond(openings(values))), { further: door }),
  };
}

/** Whether neither gap nor grille lets anything past the bathroom's door. */
const isShutTight = ({ bath }: Openings): boolean => bath.area === 0;

const typicalOf = ({ bounded }: Parameters): Float64Array => Float64Array.from(bounded, ({ typical }) => typical);

/** How far the house falls below outdoors with everything drawing at once, least, likely and most. */
export function houseFall(
  leakage: Estimate<CubicMetresPerSecond>,
  exponent: Estimate<Ratio>,
  exhaust: Estimate<CubicMetresPerSecond>,
): Estimate<Pascals> {
  const at = (airflowAt50: CubicMetresPerSecond, n: Ratio, net: CubicMetresPerSecond) =>
    houseDepressurisation({ airflowAt50, exponent: n }, net);
  const ends = [exponent.low, exponent.typical, exponent.high];
  return {
    low: pascals(Math.min(...ends.map((n) => at(leakage.high, n, exhaust.low)))),
    typical: at(leakage.typical, exponent.typical, exhaust.typical),
    high: pascals(Math.max(...ends.map((n) => at(leakage.low, n, exhaust.high)))),
  };
}

/** The gap that passes an airflow at a pressure, beside whatever grille there is. */
export function gapFor(
  air: Pick<MakeUpAir, 'density' | 'openings'>,
  values: Float64Array,
  { airflow, pressure }: { readonly airflow: number; readonly pressure: number },
): Metres {
  if (!(pressure > 0)) return metres(Number.NaN);
  const { grille, doorWidth, bath } = air.openings(values);
  const effective = airflow / Math.sqrt((2 * pressure) / air.density) - grille;
  return metres(Math.max(0, effective) / (bath.dischargeCoefficient * doorWidth));
}
