import { openingAirflow } from '#engine/pressure/orifice.ts';
import { likelyBand } from '#engine/uncertainty/likely-band.ts';
import { outerBound } from '#engine/uncertainty/outer-bound.ts';
import { doorPressureLimits } from '#knowledge/make-up.ts';
import type { Estimate } from '#quantity/estimate.ts';
import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type Metres,
  metres,
  type Pascals,
  pascals,
} from '#quantity/units.ts';
import { type AirSource, gapFor, type MakeUpAir, makeUpAir } from './makeup-air.ts';
import type { WayIn } from './makeup-way-in.ts';

/** An airflow measured with the door shut and, the same way, with it open. */
export interface DoorPair {
  readonly shut: CubicMetresPerSecond;
  readonly open: CubicMetresPerSecond;
}

interface DoorQuestion {
  readonly source: AirSource;
  readonly wayIn: WayIn;
  readonly pair: DoorPair | null;
}

/** A gap that would do, the airflow it then passes and the pressure it takes. */
export interface GapThatDoes {
  readonly gap: Metres;
  readonly airflow: CubicMetresPerSecond;
  readonly pressure: Pascals;
}

/** What a shut bathroom door does to the air. */
export interface DoorResult {
  readonly air: MakeUpAir;
  readonly wayIn: WayIn;
  readonly pair: DoorPair | null;
  readonly shut: Estimate<CubicMetresPerSecond>;
  readonly open: Estimate<CubicMetresPerSecond>;
  /** The most the fan can draw out of the house, whatever the door. */
  readonly most: CubicMetresPerSecond;
  /** Not a number where nothing lets air in. */
  readonly pressure: Estimate<Pascals>;
  /** Share of the airflow that shutting the door costs; nothing where neither a fan nor a pair of readings tells. */
  readonly drop: number | null;
  /** The gap at which the drop is as large as it may be; nothing where the drop cannot be told. */
  readonly byDrop: (GapThatDoes & { readonly band: Estimate<Metres> }) | null;
  /** The gaps at which the door takes as much as nobody need mind, and as much as chokes the fan. */
  readonly byPressure: {
    readonly fine: GapThatDoes & { readonly band: Estimate<Metres> };
    readonly choked: GapThatDoes;
  };
  /** What the way in passes at the pressure that chokes the fan. */
  readonly chokedAt: CubicMetresPerSecond;
}

const flow = cubicMetresPerSecond;
const samples = 256;

export function doorResult({ source, wayIn, pair }: DoorQuestion): DoorResult {
  const air = makeUpAir(source, wayIn);
  const { parameters, typical } = air;
  const { bounded, drivers } = parameters;
  const band = (evaluate: (values: Float64Array) => number, whenNone?: number) =>
    likelyBand({ parameters: bounded, drivers, evaluate, samples, ...(whenNone === undefined ? {} : { whenNone }) });
  const airflowBand = (evaluate: (values: Float64Array) => number): Estimate<CubicMetresPerSecond> => {
    const { low, typical: likely, high } = band(evaluate, 0);
    return { low: flow(low), typical: flow(likely), high: flow(high) };
  };
  const shut = airflowBand((values) => air.shut(values));
  const open = airflowBand((values) => air.open(values));
  const outer = outerBound({ parameters: bounded, evaluate: (values) => air.open(values), whenNone: 0 });
  const pressure = band((values) => air.doorPressure(values));
  const { fine, choked, 'door-drop': dropAllowed } = doorPressureLimits;
  const drop = pair ? 1 - pair.shut / pair.open : air.ready ? 1 - shut.typical / open.typical : null;
  const gapAt = (values: Float64Array, limit: Pascals): GapThatDoes => {
    const airflow = flow(air.airflowWhere(values, limit));
    return { gap: gapFor(air, values, { airflow, pressure: limit }), airflow, pressure: limit };
  };
  const byDropAt = (values: Float64Array): GapThatDoes => {
    const airflow = flow((1 - dropAllowed.value) * (pair ? pair.open : air.open(values)));
    const left = pair ? leftByPair(pair, air.doorPressure(values), airflow) : air.left(values, airflow);
    return { gap: gapFor(air, values, { airflow, pressure: left }), airflow, pressure: pascals(left) };
  };
  const told = pair !== null || air.ready !== null;
  return {
    air,
    wayIn,
    pair,
    shut,
    open,
    most: flow(Math.max(outer.high, open.high, pair?.open ?? 0)),
    pressure: { low: pascals(pressure.low), typical: pascals(pressure.typical), high: pascals(pressure.high) },
    drop,
    byDrop: told ? { ...byDropAt(typical), band: lengthBand(band((values) => byDropAt(values).gap)) } : null,
    byPressure: {
      fine: { ...gapAt(typical, fine.value), band: lengthBand(band((values) => gapAt(values, fine.value).gap)) },
      choked: gapAt(typical, choked.value),
    },
    chokedAt: openingAirflow(air.openings(typical).bath, { pressure: choked.value, density: air.density }),
  };
}

const lengthBand = ({ low, typical, high }: Estimate): Estimate<Metres> => ({
  low: metres(low),
  typical: metres(typical),
  high: metres(high),
});

/**
 * What fan and duct have left for the door at an airflow between two measured ones: all of the door's pressure at the
 * lower, nothing at the higher, and a straight line between. Own working.
 */
function leftByPair({ shut, open }: DoorPair, doorPressure: number, airflow: number): number {
  return open > shut ? (doorPressure * (open - airflow)) / (open - shut) : Number.NaN;
}
