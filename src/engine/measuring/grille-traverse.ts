import type { Estimate } from '#quantity/estimate.ts';
import { cubicMetresPerSecond, type MetresPerSecond, type Ratio, type SquareMetres } from '#quantity/units.ts';
import type { MeasuredAirflow, MeasuringLimit } from './reading.ts';

/** How far a walk over the grille with an anemometer can be trusted. */
export interface TraverseTrust {
  /** Of velocity and method together, either way. */
  readonly error: Ratio;
  readonly fewestReadings: number;
}

/**
 * Airflow from air speeds read over the face of a grille.
 *
 * Q = V̄ A κ
 *
 * Q in m³/s, V̄ mean velocity in m/s, A area of the face in m², κ the share of it that is open, 1 where the area given is the
 * free area. Low and high take both κ and the error of the method at their ends.
 *
 * @source common practice, no source
 */
export function traverseAirflow({
  velocities,
  faceArea,
  openShare,
  trust,
}: {
  velocities: readonly MetresPerSecond[];
  faceArea: SquareMetres;
  openShare: Estimate<Ratio>;
  trust: TraverseTrust;
}): MeasuredAirflow {
  if (velocities.length === 0) return { measured: false, why: 'no readings' };
  const mean = velocities.reduce((sum, velocity) => sum + velocity, 0) / velocities.length;
  if (!(mean > 0) || !(faceArea > 0)) return { measured: false, why: 'not a positive reading' };
  const limits: MeasuringLimit[] = velocities.length < trust.fewestReadings ? ['too few readings'] : [];
  const at = (share: number, error: number) => cubicMetresPerSecond(mean * faceArea * share * (1 + error));
  return {
    measured: true,
    airflow: {
      low: at(openShare.low, -trust.error),
      typical: at(openShare.typical, 0),
      high: at(openShare.high, trust.error),
    },
    limits,
  };
}
