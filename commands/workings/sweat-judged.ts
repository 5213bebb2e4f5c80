import type { DuctVerdict } from '#engine/condensation/condensation-start.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflow, distance } from '#quantity/kinds.ts';
import { inEach, type Metres, metres, type OneSystem } from '#quantity/units.ts';
import type { OpenBand, SweatBands } from './sweat-bands.ts';
import type { SweatInputs, UnsureDuct } from './sweat-duct.ts';

/** A duct looked at: the answers, the verdict on the case that is told, and its bands. */
export interface JudgedDuct {
  readonly inputs: SweatInputs;
  readonly unsure: UnsureDuct;
  readonly verdict: DuctVerdict;
  readonly bands: SweatBands;
}

/** Nearer than this is "at the fan": the first foot is not told from the first inch. */
export const atTheFan = metres(0.3);

/** To the nearest foot, or tenth of a metre: the sums are no finer. */
const nearly = (at: Metres, system: OneSystem): Metres => {
  const step = system === 'metric' ? 0.1 : 0.3048;
  return metres(Math.round(at / step) * step);
};

/** "31 ft", as a place along a duct is told. */
export const alongText = (at: Metres, units: UnitSystem): string =>
  inEach(units, (system) => distance.showShort(nearly(at, system), system));

/** "at the fan", "8 ft from the fan". */
export const place = (at: Metres, units: UnitSystem): string =>
  at < atTheFan ? 'at the fan' : `${alongText(at, units)} from the fan`;

/** "8 ft from the fan to staying dry": where the water usually starts. */
export function startBandText({ low, high }: OpenBand<Metres>, units: UnitSystem): string {
  if (low === null) return 'stays dry';
  if (high === null)
    return low < atTheFan ? 'anywhere from the fan to staying dry' : `${place(low, units)} to staying dry`;
  if (place(low, units) === place(high, units)) return place(low, units);
  if (low < atTheFan) return `within ${alongText(high, units)} of the fan`;
  return `${inEach(units, (system) => distance.showRangeShort({ low: nearly(low, system), high: nearly(high, system) }, system))} from the fan`;
}

/** That the low end of the airflow decides, where there is one. */
export const byLow = ({ inputs }: JudgedDuct, units: UnitSystem): string => {
  const { low, high } = inputs.delivered.airflow;
  return low === high ? '' : ` Reckoned at the low end of the airflow, ${airflow.showShort(low, units)}.`;
};

/** Fewer cases than one in twenty are not worth a word. */
export const worthAWord = 0.05;

/** "12 of 100". */
export const inHundred = (share: number): string => `${Math.round(share * 100)} of 100`;
