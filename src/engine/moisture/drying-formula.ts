import type { CubicMetres, CubicMetresPerSecond, Seconds } from '#quantity/units.ts';
import { seconds } from '#quantity/units.ts';

/** A line fitted to measured drying times: a volume of air that must pass, and a time that no airflow shortens. */
export interface DryingFormula {
  readonly airToPass: CubicMetres;
  readonly unshortened: Seconds;
}

/**
 * How long measured bathrooms took to dry their walls and ceiling at an airflow.
 *
 * t = a / Q + b
 *
 * t in s, a volume of air in m³, Q airflow in m³/s, b in s. A check on the run-time model, for the wetting and the range
 * of airflow of the publication only; a floor left wet takes far longer.
 *
 * @source Architectural Institute of Japan, Transactions no. 314
 */
export function measuredDryingTime(formula: DryingFormula, airflow: CubicMetresPerSecond): Seconds {
  return seconds(formula.airToPass / airflow + formula.unshortened);
}
