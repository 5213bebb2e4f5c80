import { condensationDirections } from '#engine/condensation/condensation-directions.ts';
import type { DuctPiece } from '#engine/condensation/duct-pieces.ts';
import type { ExhaustDuct } from '#engine/condensation/exhaust-duct.ts';
import { atmosphericPressure } from '#engine/psychrometrics/atmospheric-pressure.ts';
import type { UnitSystem } from '#interview/question.ts';
import { ductCondensationDefaults } from '#knowledge/moisture.ts';
import { type Estimate, exactly } from '#quantity/estimate.ts';
import {
  type Celsius,
  type CubicMetresPerSecond,
  celsius,
  cubicMetresPerSecond,
  type Metres,
  metres,
  type Ratio,
  ratio,
  type SquareMetreKelvinsPerWatt,
  squareMetreKelvinsPerWatt,
} from '#quantity/units.ts';
import { diameterAt } from '../questions/duct-run-reading.ts';
import type { DuctRun } from '../questions/run-parts.ts';
import type { Delivered } from './delivered.ts';
import { type Parameters, parameters } from './parameters.ts';

/** A length of one width, as told. */
export interface ColdPiece {
  readonly diameter: Estimate<Metres>;
  readonly length: Estimate<Metres>;
}

/** Everything that decides whether a duct sweats. */
export interface SweatInputs {
  readonly delivered: Delivered;
  /** From the fan outward. */
  readonly pieces: readonly ColdPiece[];
  /** How much of them, from the fan, lies in the cold; `null` for all. */
  readonly coldLength: Estimate<Metres> | null;
  /** The run ends at a roof cap, so it climbs. */
  readonly climbs: boolean;
  readonly insulation: Estimate<SquareMetreKelvinsPerWatt>;
  readonly surroundings: Estimate<Celsius>;
  readonly exhaustHumidity: Estimate<Ratio>;
  readonly exhaustTemperature: Estimate<Celsius>;
  readonly altitude: Metres;
}

/** One duct through the cold, filled in. */
export interface ColdRun {
  readonly duct: ExhaustDuct;
  readonly pieces: readonly DuctPiece[];
}

/** A duct whose unknowns can be filled in again and again. */
export interface UnsureDuct {
  readonly parameters: Parameters;
  readonly typical: Float64Array;
  run(values: Float64Array): ColdRun;
  /** What the answers are told by: all typical but the airflow, at its low end. Slow air cools more, so it is the worse. */
  readonly cautious: ColdRun;
}

/** The lengths of duct in a run, those of one width in a row as one. Bends and caps are short beside them. */
export function piecesOf({ parts }: DuctRun): readonly ColdPiece[] {
  const pieces: ColdPiece[] = [];
  parts.forEach((part, index) => {
    if (part.part !== 'duct') return;
    const diameter = diameterAt(parts, index) as Metres;
    const last = pieces.at(-1);
    if (last?.diameter.typical !== diameter) {
      pieces.push({ diameter: exactly(diameter), length: part.length });
      return;
    }
    const longer = (end: keyof Estimate) => metres(last.length[end] + part.length[end]);
    const length = { low: longer('low'), typical: longer('typical'), high: longer('high') };
    pieces.splice(-1, 1, { diameter: last.diameter, length });
  });
  return pieces;
}

export const climbs = ({ parts }: DuctRun): boolean =>
  parts.some((part) => part.part === 'fitting' && part.fitting === 'roof-cap');

/** Puts the duct together, each unknown entered once. The relative humidity is what a hygrometer would hold. */
export function unsureDuct(inputs: SweatInputs): UnsureDuct {
  const unknown = parameters();
  const directions = condensationDirections['relative humidity'];
  const enter = (input: keyof typeof directions, estimate: Estimate, measure?: (units: UnitSystem) => string) =>
    unknown.enter({ estimate, direction: directions[input], ...(measure === undefined ? {} : { measure }) });

  const airflow = enter('airflow', inputs.delivered.airflow, () => 'the airflow at the grille');
  const pieces = inputs.pieces.map(({ diameter, length }) => ({
    diameter: enter('diameter', diameter, () => 'the diameter of the duct'),
    length: enter('length', length, () => 'how much duct lies in the cold'),
  }));
  const coldLength = inputs.coldLength
    ? enter('length', inputs.coldLength, () => 'how much duct lies in the cold')
    : () => Number.POSITIVE_INFINITY;
  const insulation = enter('insulation', inputs.insulation, () => 'what insulation is on the duct');
  const outsideFilm = enter('outsideFilm', ductCondensationDefaults['outside-film'].estimate);
  const surroundings = enter('surroundings', inputs.surroundings, () => 'how cold the attic gets');
  const temperature = enter('exhaustTemperature', inputs.exhaustTemperature, () => 'how warm the exhaust is');
  const humidity = enter('dampness', inputs.exhaustHumidity, () => 'how humid the exhaust is');
  const pressure = atmosphericPressure(inputs.altitude);

  const run = (values: Float64Array): ColdRun => {
    const inCold = cutTo(
      pieces.map((piece) => ({ diameter: metres(piece.diameter(values)), length: metres(piece.length(values)) })),
      coldLength(values),
    );
    return {
      pieces: inCold,
      duct: {
        diameter: inCold[0]?.diameter ?? metres(0),
        length: metres(inCold.reduce((sum, { length }) => sum + length, 0)),
        insulation: squareMetreKelvinsPerWatt(insulation(values)),
        outsideFilm: squareMetreKelvinsPerWatt(outsideFilm(values)),
        airflow: cubicMetresPerSecond(airflow(values)),
        exhaustTemperature: celsius(temperature(values)),
        exhaustDampness: { held: 'relative humidity', relativeHumidity: ratio(humidity(values)) },
        surroundings: celsius(surroundings(values)),
        pressure,
      },
    };
  };
  const typical = Float64Array.from(unknown.bounded, (bound) => bound.typical);
  return {
    parameters: unknown,
    typical,
    run,
    cautious: withAirflow(run(typical), inputs.delivered.airflow.low),
  };
}

const withAirflow = ({ duct, pieces }: ColdRun, airflow: CubicMetresPerSecond): ColdRun => ({
  pieces,
  duct: { ...duct, airflow },
});

/** The pieces from the fan up to a length; the last one longer where they do not reach it. */
function cutTo(pieces: readonly DuctPiece[], length: number): readonly DuctPiece[] {
  if (length === Number.POSITIVE_INFINITY) return pieces;
  const kept: DuctPiece[] = [];
  let left = length;
  for (const [index, piece] of pieces.entries()) {
    if (left <= 0) break;
    const reach = index === pieces.length - 1 ? left : Math.min(left, piece.length);
    kept.push({ diameter: piece.diameter, length: metres(reach) });
    left -= reach;
  }
  return kept;
}
