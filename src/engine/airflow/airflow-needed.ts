import {
  type CubicMetresPerSecond,
  cubicMetres,
  cubicMetresPerSecond,
  type Metres,
  type SquareMetres,
} from '#quantity/units.ts';
import { airChangeAirflow, type Fixtures, fixtureAirflow, floorAreaAirflow } from './room-airflow.ts';

export interface Bathroom {
  readonly area: SquareMetres;
  readonly ceilingHeight: Metres;
  readonly fixtures: Fixtures;
  /** A toilet behind its own door needs its own fan or a window that opens. It is counted among the fixtures as well. */
  readonly toiletCompartment: boolean;
  readonly running: 'on demand' | 'continuous';
  /** What the same fan owes the whole house, where it is the whole-house fan too. */
  readonly wholeHouse?: CubicMetresPerSecond;
}

export interface CodeAirflow {
  readonly intermittent: CubicMetresPerSecond;
  readonly continuous: CubicMetresPerSecond;
}

export interface AirflowGuideline {
  /** Airflow for each square metre of floor, m³/(s·m²), for rooms up to `areaLimit`. */
  readonly perArea: number;
  readonly areaLimit: SquareMetres;
  readonly least: CubicMetresPerSecond;
  /** For rooms above `areaLimit`. */
  readonly fixtures: Fixtures<CubicMetresPerSecond>;
  readonly airChangesPerHour: number;
  /** Ceilings above this are sized by volume. */
  readonly ordinaryCeiling: Metres;
}

export type AirflowRule = 'code' | 'floor area' | 'fixtures' | 'air changes' | 'whole house';

export interface AirflowNeeded {
  readonly needed: CubicMetresPerSecond;
  readonly governedBy: AirflowRule;
  /** Every rule with its figure; only those that apply to this room and this way of running had a say. */
  readonly candidates: readonly {
    readonly rule: AirflowRule;
    readonly airflow: CubicMetresPerSecond;
    readonly applies: boolean;
  }[];
  /** What clears the room during and after a bath. The same as `needed` for a fan that runs on demand. */
  readonly whenBathing: CubicMetresPerSecond;
  /** Where the toilet has its own compartment: its own fan's airflow, and what the rest of the room then needs. */
  readonly compartment?: { readonly own: CubicMetresPerSecond; readonly mainRoom: CubicMetresPerSecond };
}

/** A room of 9.3 m² is a room of 100 ft², and 2.44 m is 8 ft: what a tape reads within this of a limit is at the limit. */
const tapeAllowance = 0.002;

/**
 * The airflow a bathroom needs: the largest figure among the rules that apply to it, and which rule that was.
 *
 * Q = max(Q_code, Q_area or Q_fixtures, Q_volume where the ceiling is high, Q_house)
 *
 * All in m³/s. On demand: code figure for intermittent running, floor area (never under `least`) to the area limit, fixtures
 * above it, air changes only above the ordinary ceiling. Continuous: code figure for continuous running; the rest becomes the
 * flow to boost to. A steam shower is not part of this: it has its own enclosure and its own fan.
 *
 * @source HVI residential ventilation guideline, bathrooms, together with the local code's exhaust table
 */
export function airflowNeeded({
  room,
  code,
  guideline,
}: {
  room: Bathroom;
  code: CodeAirflow;
  guideline: AirflowGuideline;
}): AirflowNeeded {
  const large = room.area > guideline.areaLimit * (1 + tapeAllowance);
  const high = room.ceilingHeight > guideline.ordinaryCeiling * (1 + tapeAllowance);
  const onDemand = room.running === 'on demand';
  const byArea = floorAreaAirflow({ area: room.area, perArea: guideline.perArea });
  const byFixtures = fixtureAirflow({ fixtures: room.fixtures, rates: guideline.fixtures });
  const byVolume = airChangeAirflow({
    volume: cubicMetres(room.area * room.ceilingHeight),
    airChangesPerHour: guideline.airChangesPerHour,
  });
  const bathing = [
    { rule: 'code', airflow: code.intermittent, applies: true },
    { rule: 'floor area', airflow: larger(byArea, guideline.least), applies: !large },
    { rule: 'fixtures', airflow: byFixtures, applies: large },
    { rule: 'air changes', airflow: byVolume, applies: high },
  ] as const;
  const house =
    room.wholeHouse === undefined ? [] : [{ rule: 'whole house', airflow: room.wholeHouse, applies: true } as const];
  const candidates = onDemand
    ? [...bathing, ...house]
    : [
        { rule: 'code', airflow: code.continuous, applies: true } as const,
        ...bathing.slice(1).map((candidate) => ({ ...candidate, applies: false })),
        ...house,
      ];
  const governing = largest(candidates);
  const whenBathing = largest([...bathing, ...house]).airflow;
  return {
    needed: governing.airflow,
    governedBy: governing.rule,
    candidates,
    whenBathing,
    ...(room.toiletCompartment ? { compartment: compartmentAirflow() } : {}),
  };

  function compartmentAirflow() {
    const rest = { ...room.fixtures, toilet: Math.max(0, room.fixtures.toilet - 1) };
    const restByFixtures = larger(fixtureAirflow({ fixtures: rest, rates: guideline.fixtures }), code.intermittent);
    return {
      own: larger(guideline.fixtures.toilet, code.intermittent),
      mainRoom: large && whenBathing <= byFixtures ? restByFixtures : whenBathing,
    };
  }
}

const larger = (a: CubicMetresPerSecond, b: CubicMetresPerSecond): CubicMetresPerSecond =>
  cubicMetresPerSecond(Math.max(a, b));

/** The largest among those that apply; of equals the first, so that the code is named before a guideline. */
const largest = <Candidate extends { readonly airflow: number; readonly applies: boolean }>(
  candidates: readonly Candidate[],
): Candidate =>
  candidates
    .filter(({ applies }) => applies)
    .reduce((best, candidate) => (candidate.airflow > best.airflow ? candidate : best));
