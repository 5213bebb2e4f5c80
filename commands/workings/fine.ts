import type { UnitSystem } from '#interview/question.ts';
import { airflow, staticPressure } from '#quantity/kinds.ts';
import type { CubicMetresPerSecond, Pascals } from '#quantity/units.ts';

/** An airflow to a tenth, as working needs it: rounding to whole cfm would not add up. */
export const fineFlow = (flow: CubicMetresPerSecond, units: UnitSystem): string => {
  const { unit, of } = airflow.scale(units);
  return `${of(flow).toFixed(1)} ${unit}`;
};

/** A pressure to a thousandth of an inch of water or a tenth of a pascal, and `more` digits where it is multiplied further. */
export const finePressure = (pressure: Pascals, units: UnitSystem, more = 0): string => {
  const { unit, of } = staticPressure.scale(units);
  return `${of(pressure).toFixed((units === 'metric' ? 1 : 3) + more)} ${unit}`;
};
