import type { Estimate } from '#quantity/estimate.ts';
import { meets } from '#quantity/meets.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, type Ratio, ratio } from '#quantity/units.ts';

export type ComparisonVerdict = 'agrees' | 'cannot tell' | 'lower' | 'higher';

export interface AirflowComparison {
  readonly verdict: ComparisonVerdict;
  /** Measured less predicted. */
  readonly difference: CubicMetresPerSecond;
  /** How large a difference both errors together explain. */
  readonly explained: CubicMetresPerSecond;
  /** Difference over what is explained: past 1 either way it means something, past 2 a good deal. */
  readonly weight: Ratio;
}

/**
 * Whether a measured airflow is what was predicted, each with its own error.
 *
 * d = m − p,  U = √(U_m² + U_p²)
 *
 * All in m³/s: m measured, p predicted, U_m and U_p their half-bands on the sides that face each other. Lower or higher when
 * |d| > U; otherwise it agrees, unless U is above the share of p at which agreeing would say nothing.
 *
 * @source textbook error analysis: independent errors add as squares
 */
export function comparedWithPredicted({
  measured,
  predicted,
  widestTelling,
}: {
  measured: Estimate<CubicMetresPerSecond>;
  predicted: Estimate<CubicMetresPerSecond>;
  widestTelling: Ratio;
}): AirflowComparison {
  const difference = measured.typical - predicted.typical;
  const below = difference < 0;
  const measuredHalf = below ? measured.high - measured.typical : measured.typical - measured.low;
  const predictedHalf = below ? predicted.typical - predicted.low : predicted.high - predicted.typical;
  const explained = Math.hypot(measuredHalf, predictedHalf);
  return {
    verdict: verdict(),
    difference: cubicMetresPerSecond(difference),
    explained: cubicMetresPerSecond(explained),
    weight: ratio(difference === 0 ? 0 : difference / explained),
  };

  function verdict(): ComparisonVerdict {
    if (Math.abs(difference) > explained) return below ? 'lower' : 'higher';
    return explained > widestTelling * predicted.typical ? 'cannot tell' : 'agrees';
  }
}

/** `not shown`: the band straddles the need, so the need is neither met nor missed until it is measured better. */
export type NeedOutcome = 'met' | 'not shown' | 'not met';

/**
 * Whether a measured airflow is enough. Only its low end proves that it is.
 *
 * met: m_low ≥ Q,  not met: m_high < Q
 *
 * m measured and Q needed airflow in m³/s.
 *
 * @source own working: the burden of proof lies with the measurement
 */
export function comparedWithNeeded(
  measured: Estimate<CubicMetresPerSecond>,
  needed: CubicMetresPerSecond,
): NeedOutcome {
  if (meets(measured.low, needed)) return 'met';
  return meets(measured.high, needed) ? 'not shown' : 'not met';
}
