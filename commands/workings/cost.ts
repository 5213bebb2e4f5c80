import { airAt } from '#engine/air/air.ts';
import { standardAirTemperature } from '#engine/air/density.ts';
import { fanEnergyPerYear } from '#engine/energy/fan-energy.ts';
import { heatThrownOutPerYear } from '#engine/energy/heat-thrown-out.ts';
import { type RunningCost, runningCost } from '#engine/energy/running-cost.ts';
import { likelyBand } from '#engine/uncertainty/likely-band.ts';
import { mostTelling } from '#engine/uncertainty/most-telling.ts';
import type { UnitSystem } from '#interview/question.ts';
import { type Estimate, exactly } from '#quantity/estimate.ts';
import { toSi } from '#quantity/unit-factors.ts';
import {
  type CubicMetresPerSecond,
  type KilogramsPerCubicMetre,
  type Metres,
  type Ratio,
  ratio,
  type Seconds,
  seconds,
  type Watts,
  watts,
} from '#quantity/units.ts';
import { type HeatPrice, perJoule } from '../questions/cost.ts';
import { parameters } from './parameters.ts';

/** A fan, a climate and what energy is bought at. */
export interface CostQuestion {
  /** The upper airflow: for what is thrown out, more is worse. */
  readonly airflow: CubicMetresPerSecond;
  readonly watts: Estimate<Watts>;
  readonly hoursPerDay: Estimate<Seconds>;
  /** K·day. */
  readonly degreeDays: Estimate;
  /** Money for a kilowatt-hour. */
  readonly electricityPrice: Estimate;
  readonly heatPrice: HeatPrice;
  readonly heatingEfficiency: Estimate<Ratio>;
  readonly altitude: Metres;
}

/** A year of running the fan: an upper bound for heating only. */
export interface CostResult {
  readonly question: CostQuestion;
  readonly density: KilogramsPerCubicMetre;
  /** J. */
  readonly fanEnergy: Estimate;
  /** J. */
  readonly heat: Estimate;
  /** At typical values. */
  readonly bill: RunningCost;
  readonly total: Estimate;
  /** The figure that would narrow the cost most, and how wide the band then is; nothing where none would. */
  readonly telling: { readonly what: string; readonly width: number; readonly nowWidth: number } | null;
}

export const joulesPerKilowattHour = toSi(1, 'kW hour', 'J');

export function costResult(question: CostQuestion): CostResult {
  const unknown = parameters();
  const power = unknown.enter({ estimate: question.watts, direction: 'up', measure: () => 'the watts on the label' });
  const hours = unknown.enter({
    estimate: question.hoursPerDay,
    direction: 'up',
    measure: () => 'how long the fan runs a day',
  });
  const days = unknown.enter({
    estimate: question.degreeDays,
    direction: 'up',
    measure: () => 'the heating degree-days of the place',
  });
  const electric = unknown.enter({
    estimate: question.electricityPrice,
    direction: 'up',
    measure: () => 'the price of electricity on the bill',
  });
  const fuel = unknown.enter({
    estimate: perJoule(question.heatPrice),
    direction: 'up',
    measure: () => 'the price of heating fuel on the bill',
  });
  const efficiency = unknown.enter({
    estimate: question.heatingEfficiency,
    direction: 'down',
    measure: () => 'the efficiency of the heating',
  });
  const { density } = airAt({ altitude: question.altitude, temperature: standardAirTemperature });
  const energyOf = (values: Float64Array) => fanEnergyPerYear(watts(power(values)), seconds(hours(values)));
  const heatOf = (values: Float64Array) =>
    heatThrownOutPerYear(
      { airflow: question.airflow, density },
      { degreeDays: days(values), runningPerDay: seconds(hours(values)) },
    );
  const billOf = (values: Float64Array): RunningCost =>
    runningCost({
      fanEnergy: energyOf(values),
      heat: heatOf(values),
      heatingEfficiency: ratio(efficiency(values)),
      electricityPrice: electric(values) / joulesPerKilowattHour,
      heatPrice: fuel(values),
    });
  const { bounded, measures } = unknown;
  const typical = Float64Array.from(bounded, (each) => each.typical);
  const band = (evaluate: (values: Float64Array) => number): Estimate => {
    if (bounded.length === 0) return exactly(evaluate(typical));
    const { low, typical: likely, high } = likelyBand({ parameters: bounded, evaluate });
    return { low, typical: likely, high };
  };
  const evaluate = (values: Float64Array) => billOf(values).total;
  const telling = mostTelling({ parameters: bounded, evaluate });
  return {
    question,
    density,
    fanEnergy: band(energyOf),
    heat: band(heatOf),
    bill: billOf(typical),
    total: band(evaluate),
    telling: telling.found
      ? { what: nameOf(measures, telling.ranked[0].parameter), width: telling.ranked[0].width, nowWidth: telling.width }
      : null,
  };
}

const nameOf = (measures: readonly (((units: UnitSystem) => string) | undefined)[], index: number): string =>
  measures[index]?.('inch-pound') ?? '';
