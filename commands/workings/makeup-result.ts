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

/** What a shut bathroom door does to the air, at the likely values unless it is a range. */
export interface DoorResult {
  readonly air: MakeUpAir;
  readonly wayIn: WayIn;
  readonly pair: DoorPair | null;
  readonly shut: CubicMetresPerSecond;
  readonly open: CubicMetresPerSecond;
  /** Not a number where nothing lets air in. */
  readonly pressure: Estimate<Pascals>;
  /** Share of the airflow that shutting the door costs; nothing where neither a fan nor a pair of readings tells. */
  readonly drop: number | null;
  /** The gap at which the drop is as large as it may be; nothing where the drop cannot be told. */
  readonly byDrop: GapThatDoes | null;
  /** The gaps at which the door takes as much as nobody need mind, and as much as chokes the fan. */
  readonly byPressure: { readonly fine: GapThatDoes; readonly choked: GapThatDoes };
  /** Where the gap that is asked for usually lies. */
  readonly band: Estimate<Metres>;
  /** What the way in passes at the pressure that chokes the fan. */
  readonly chokedAt: CubicMetresPerSecond;
  /** What the fan draws out of the house with the door open, the high end the most it can. Worked out when called. */
  fromHouse(): Estimate<CubicMetresPerSecond>;
}

const flow = cubicMetresPerSecond;

export function doorResult({ source, wayIn, pair }: DoorQuestion): DoorResult {
  const air = makeUpAir(source, wayIn);
  const { parameters, typical } = air;
  const { bounded, drivers } = parameters;
  const band = (evaluate: (values: Float64Array) => number, whenNone?: number) =>
    likelyBand({
      parameters: bounded,
      drivers,
      evaluate,
      samples: 128,
      ...(whenNone === undefined ? {} : { whenNone }),
    });
  const shut = flow(air.shut(typical) || 0);
  const open = flow(air.open(typical) || 0);
  const pressure = band((values) => air.doorPressure(values));
  const { fine, choked, 'door-drop': dropAllowed } = doorPressureLimits;
  const gapAt = (values: Float64Array, limit: Pascals): GapThatDoes => {
    const airflow = flow(air.airflowWhere(values, limit));
    return { gap: gapFor(air, values, { airflow, pressure: limit }), airflow, pressure: limit };
  };
  const byDropAt = (values: Float64Array): GapThatDoes => {
    const airflow = flow((1 - dropAllowed.value) * (pair ? pair.open : air.open(values)));
    const left = pair ? leftByPair(pair, air.doorPressure(values), airflow) : air.left(values, airflow);
    return { gap: gapFor(air, values, { airflow, pressure: left }), airflow, pressure: pascals(left) };
  };
  const told = pair ? pair.open > pair.shut && Number.isFinite(pressure.typical) : air.ready !== null;
  const gapBand = band((values) => (told ? byDropAt(values) : gapAt(values, fine.value)).gap);
  return {
    air,
    wayIn,
    pair,
    shut,
    open,
    pressure: { low: pascals(pressure.low), typical: pascals(pressure.typical), high: pascals(pressure.high) },
    drop: dropOf(),
    byDrop: told ? byDropAt(typical) : null,
    byPressure: { fine: gapAt(typical, fine.value), choked: gapAt(typical, choked.value) },
    band: { low: metres(gapBand.low), typical: metres(gapBand.typical), high: metres(gapBand.high) },
    chokedAt: openingAirflow(air.openings(typical).bath, { pressure: choked.value, density: air.density }),
    fromHouse: () => {
      const { low } = band((values) => air.open(values), 0);
      const { high } = outerBound({ parameters: bounded, evaluate: (values) => air.open(values), whenNone: 0 });
      return { low: flow(low), typical: open, high: flow(Math.max(open, high, pair?.open ?? 0)) };
    },
  };

  function dropOf(): number | null {
    if (pair) return Math.max(0, 1 - pair.shut / pair.open);
    if (!air.ready) return null;
    return open > 0 ? 1 - shut / open : 1;
  }
}

/**
 * What fan and duct have left for the door at an airflow between two measured ones: all of the door's pressure at the
 * lower, nothing at the higher, and a straight line between. Own working.
 */
function leftByPair({ shut, open }: DoorPair, doorPressure: number, airflow: number): number {
  return open > shut ? (doorPressure * (open - airflow)) / (open - shut) : Number.NaN;
}
