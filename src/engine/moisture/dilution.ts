import type { CubicMetres, CubicMetresPerSecond, Ratio, Seconds } from '#quantity/units.ts';
import { seconds } from '#quantity/units.ts';

export type DilutionTime =
  | { readonly found: true; readonly after: Seconds }
  | { readonly found: false; readonly why: 'no air moves' | 'supply air too humid' };

/** A room being flushed with cleaner air, with nothing in it giving off more. */
export interface Flush {
  readonly roomVolume: CubicMetres;
  readonly airflow: CubicMetresPerSecond;
  /** How many times the air's own share the room holds, mixing included: 1 for a well-mixed room that stores nothing. */
  readonly slowness: Ratio;
}

/** Three levels of the same thing: what the room has, should come down to, and is fed. */
export interface FlushLevels {
  readonly start: Ratio;
  readonly target: Ratio;
  readonly supply: Ratio;
}

/**
 * How long fresh air takes to bring a room down from one level to another.
 *
 * t = (k V / Q) ln((C₀ − C_s) / (C_t − C_s))
 *
 * V room volume in m³, Q airflow in m³/s, k slowness (a mixing factor from 1 to 10, or a storage factor), C levels.
 * For a closed room with no wet surfaces; with them use `runTime`.
 *
 * @source CDC, Morbidity and Mortality Weekly Report 1994;43(RR-13), supplement 3, table S3-1
 */
export function dilutionTime({ roomVolume, airflow, slowness }: Flush, levels: FlushLevels): DilutionTime {
  const { start, target, supply } = levels;
  if (start <= target) return { found: true, after: seconds(0) };
  if (airflow <= 0) return { found: false, why: 'no air moves' };
  if (target <= supply) return { found: false, why: 'supply air too humid' };
  return {
    found: true,
    after: seconds(((slowness * roomVolume) / airflow) * Math.log((start - supply) / (target - supply))),
  };
}
