import { specificVolume } from '#engine/psychrometrics/moist-air.ts';
import { cubicMetresPerSecond, type Metres, metres } from '#quantity/units.ts';
import { airTemperature, type DuctCooling, ductCooling } from './duct-cooling.ts';
import { type ExhaustDuct, exhaustAir } from './exhaust-duct.ts';

/** A length of duct of one width. */
export interface DuctPiece {
  readonly diameter: Metres;
  readonly length: Metres;
}

/** A piece with the air that arrives in it. */
export interface PieceInPlace {
  /** From the fan to where the piece begins. */
  readonly from: Metres;
  readonly duct: ExhaustDuct;
  /** How this piece cools. */
  readonly cooling: DuctCooling;
}

/**
 * The pieces of a run one after another, each with the air that the one before leaves: cooler, and with the same moisture.
 *
 * T₀,i+1 = T_i(L_i),  W = W₀,  Q_i = Q₀ v_i / v₀
 *
 * T_i as in `airTemperature`, W humidity ratio, Q airflow and v specific volume: the same mass of air goes through all. Bends and caps are left out: they are short beside the duct. Past the first
 * wet wall the air has lost a little of its moisture, so the pieces after it are told too wet.
 *
 * @source own working, exponential cooling piece by piece
 */
export function piecesInPlace(duct: ExhaustDuct, pieces: readonly DuctPiece[]): readonly PieceInPlace[] {
  const air = exhaustAir(duct);
  const exhaustDampness = { held: 'moisture', humidityRatio: air.humidityRatio } as const;
  const volume = specificVolume(air);
  const placed: PieceInPlace[] = [];
  let [from, exhaustTemperature] = [0, duct.exhaustTemperature];
  for (const { diameter, length } of pieces) {
    const shrunk = specificVolume({ ...air, temperature: exhaustTemperature }) / volume;
    const airflow = cubicMetresPerSecond(duct.airflow * shrunk);
    // Field by field: a spread takes as long as all the physics of a piece.
    const here: ExhaustDuct = {
      diameter,
      length,
      insulation: duct.insulation,
      outsideFilm: duct.outsideFilm,
      airflow,
      exhaustTemperature,
      exhaustDampness,
      surroundings: duct.surroundings,
      pressure: duct.pressure,
    };
    const cooling = ductCooling(here);
    placed.push({ from: metres(from), duct: here, cooling });
    from += length;
    exhaustTemperature = airTemperature(here, length, cooling);
  }
  return placed;
}
