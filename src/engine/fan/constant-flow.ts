import type { Estimate } from '#quantity/estimate.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, type Pascals, pascals, type Ratio } from '#quantity/units.ts';

/** What a constant-flow fan holds in thinner or denser air. */
export interface HeldFlow {
  /** Low and high by whether the control holds volume or mass of air; which of the two is not printed on any label. */
  readonly airflow: Estimate<CubicMetresPerSecond>;
  readonly heldTo: Pascals;
}

/**
 * What a constant-flow fan holds away from the air it was rated in. Its control may hold the volume or the mass of air, so the
 * answer is a range; the pressure to which its top speed can hold anything falls with density.
 *
 * Q = Q_r  or  Q_r / d,  P = P_r d
 *
 * Q_r rated airflow in m³/s, P_r the pressure it holds to in Pa, d density ratio.
 *
 * @source own working from the fan laws
 */
export function heldFlow({
  airflow,
  heldTo,
  densityRatio,
}: {
  airflow: CubicMetresPerSecond;
  heldTo: Pascals;
  densityRatio: Ratio;
}): HeldFlow {
  const massHeld = airflow / densityRatio;
  return {
    airflow: {
      low: cubicMetresPerSecond(Math.min(airflow, massHeld)),
      typical: cubicMetresPerSecond((airflow + massHeld) / 2),
      high: cubicMetresPerSecond(Math.max(airflow, massHeld)),
    },
    heldTo: pascals(heldTo * densityRatio),
  };
}
