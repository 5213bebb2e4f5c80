import { airAt } from '#engine/air/air.ts';
import { standardAirTemperature } from '#engine/air/density.ts';
import { type AirflowComparison, comparedWithPredicted } from '#engine/measuring/comparison.ts';
import { type GrilleReadings, measuredAirflow } from '#engine/measuring/measured-airflow.ts';
import type { MeasuredAirflow } from '#engine/measuring/reading.ts';
import { doorGapOpening } from '#engine/pressure/door-gap.ts';
import type { Opening } from '#engine/pressure/orifice.ts';
import { likelyBand } from '#engine/uncertainty/likely-band.ts';
import { fieldMethods, methodTrust } from '#knowledge/field-methods.ts';
import type { Estimate } from '#quantity/estimate.ts';
import {
  type CubicMetres,
  type CubicMetresPerSecond,
  cubicMetres,
  cubicMetresPerSecond,
  metres,
  type Pascals,
  pascals,
  ratio,
  type Seconds,
} from '#quantity/units.ts';
import { type AirPath, readyPath } from './delivery.ts';
import { airflowInSeries } from './makeup-series.ts';
import type { DoorAnswer } from './makeup-way-in.ts';

/** What the readings say. What lacks a number that only the site can give says which. */
export type ReadAtGrille = GrilleReadings | { readonly method: 'incomplete'; readonly lacks: string };

/** A bag by the number on its box, which it hardly ever fills to. */
export const bagReadings = (volume: Estimate<CubicMetres>, times: readonly Seconds[]): GrilleReadings => {
  const { low, typical, high } = fieldMethods.bag.fullness.estimate;
  return {
    method: 'bag',
    volume: {
      low: cubicMetres(volume.low * low),
      typical: cubicMetres(volume.typical * typical),
      high: cubicMetres(volume.high * high),
    },
    times,
  };
};

export const airflowRead = (readings: GrilleReadings): MeasuredAirflow => measuredAirflow(readings, methodTrust);

/** What the fan should move while it is being measured. */
export interface Predicted {
  readonly airflow: Estimate<CubicMetresPerSecond>;
  /** What the meter itself holds back at the likely airflow; nought for one that holds back nothing. */
  readonly meterTakes: Pascals;
}

/**
 * The airflow fan and duct should give with the door as it is and the meter over the grille. A flow box is one more opening
 * in the way, its constant standing for a discharge coefficient: c = C_d √(2 / ρ).
 */
export function predictedAirflow(path: AirPath, door: DoorAnswer | null, readings: GrilleReadings): Predicted {
  const ready = readyPath({ ...path, door: undefined });
  const unknown = ready.parameters;
  const width = door ? unknown.enter({ estimate: door.width, direction: 'up' }) : null;
  const gap = door ? unknown.enter({ estimate: door.gap, direction: 'up' }) : null;
  const { density } = airAt({ altitude: path.altitude, temperature: standardAirTemperature });
  const meter: readonly Opening[] =
    readings.method === 'box'
      ? [
          {
            area: readings.opening,
            dischargeCoefficient: ratio(methodTrust.box.constant * Math.sqrt(density / 2)),
          },
        ]
      : [];
  const passed = (values: Float64Array): readonly Opening[] =>
    width && gap ? [doorGapOpening({ width: metres(width(values)), height: metres(gap(values)) }), ...meter] : meter;
  const band = likelyBand({
    parameters: unknown.bounded,
    drivers: unknown.drivers,
    evaluate: (values) =>
      airflowInSeries(ready, values, { openings: passed(values), otherExhaust: cubicMetresPerSecond(0) }),
    whenNone: 0,
    samples: 256,
  });
  const at = cubicMetresPerSecond;
  const meterTakes =
    readings.method === 'box' ? (band.typical / (methodTrust.box.constant * readings.opening)) ** 2 : 0;
  return {
    airflow: { low: at(band.low), typical: at(band.typical), high: at(band.high) },
    meterTakes: pascals(meterTakes),
  };
}

export const compared = (
  measured: Estimate<CubicMetresPerSecond>,
  predicted: Estimate<CubicMetresPerSecond>,
): AirflowComparison =>
  comparedWithPredicted({ measured, predicted, widestTelling: fieldMethods.comparison.widestTelling.value });
