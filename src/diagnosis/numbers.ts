import type { CallbackFindingId } from '#knowledge/callback-findings.ts';
import type { CallbackLines } from '#knowledge/callback-scale.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { meets } from '#quantity/meets.ts';
import type { Celsius, CubicMetresPerSecond, Metres, Pascals, Ratio, Seconds } from '#quantity/units.ts';

/** What was measured and worked out for this job. Everything is optional: what is not known says nothing. */
export interface CallbackNumbers {
  readonly airflow?: MeasuredAirflowEvidence;
  /** At the collar, with the wheel turning. */
  readonly collarPressure?: Pascals;
  readonly rated?: { readonly rating: CubicMetresPerSecond; readonly needed: CubicMetresPerSecond };
  readonly runTime?: { readonly set: Seconds; readonly needed: Seconds };
  readonly doorGap?: { readonly actual: Metres; readonly needed: Metres };
  readonly sweating?: { readonly predicted: boolean; readonly attic: Celsius };
  readonly atSwap?: AirflowAtSwap;
}

/** An airflow measured when the fan was fitted, and what it says beside the one measured now. */
interface AirflowAtSwap {
  readonly airflow: Estimate<CubicMetresPerSecond>;
  readonly needed?: { readonly airflow: CubicMetresPerSecond; readonly outcome: NeedOutcome };
  /** How the airflow now compares with it, both errors counted. */
  readonly now?: { readonly airflow: Estimate<CubicMetresPerSecond>; readonly verdict: Verdict };
}

type NeedOutcome = 'met' | 'not shown' | 'not met';
type Verdict = 'agrees' | 'cannot tell' | 'lower' | 'higher';

/** An airflow measured at the grille. A leak further on does not lower it. */
interface MeasuredAirflowEvidence {
  readonly atGrille: Estimate<CubicMetresPerSecond>;
  /** The same airflow measured again where it leaves the house. */
  readonly atHood?: Estimate<CubicMetresPerSecond>;
  readonly needed?: { readonly airflow: CubicMetresPerSecond; readonly outcome: NeedOutcome };
  readonly predicted?: {
    readonly airflow: Estimate<CubicMetresPerSecond>;
    /** How the two compare once the error of both is counted; `weight` is the difference in joint errors. */
    readonly comparison: { readonly verdict: Verdict; readonly weight: Ratio };
  };
}

/** One of the numbers behind a finding, for the reply to print. */
export interface NumberShown {
  readonly what:
    | 'measured at the grille'
    | 'measured at the hood'
    | 'measured at the swap'
    | 'needed'
    | 'predicted'
    | 'pressure at the collar'
    | 'low under'
    | 'high over'
    | 'rated'
    | 'set'
    | 'door gap'
    | 'attic';
  readonly number: number;
  readonly low?: number;
  readonly high?: number;
  readonly unit: 'm3/s' | 'Pa' | 's' | 'm' | '°C';
}

export interface NumberEvidence {
  readonly finding: CallbackFindingId;
  /** False: the numbers show that it is not so. */
  readonly seen: boolean;
  readonly numbers: readonly NumberShown[];
}

/**
 * What the numbers tell, as findings with the numbers behind each.
 *
 * Bands of airflow are shares of the need, told where the whole measurement lies in one; against the prediction the difference counts in joint errors, so that a poor
 * measurement accuses nobody. Where the numbers cannot tell, they say nothing.
 */
export function evidenceFromNumbers(lines: CallbackLines, numbers: CallbackNumbers): readonly NumberEvidence[] {
  const { airflow, collarPressure, rated, runTime, doorGap, sweating, atSwap } = numbers;
  const evidence: NumberEvidence[] = [];
  const tell = (finding: CallbackFindingId, seen: boolean, ...shown: NumberShown[]) => {
    evidence.push({ finding, seen, numbers: shown });
  };
  if (airflow) airflowEvidence(airflow);
  if (collarPressure !== undefined) {
    const { 'pressure-low': low, 'pressure-high': high } = lines;
    const finding = collarPressure < low.value ? 'sp-low' : collarPressure > high.value ? 'sp-high' : 'sp-mid';
    const shown = { what: 'pressure at the collar', number: collarPressure, unit: 'Pa' } as const;
    const line =
      finding === 'sp-low'
        ? ({ what: 'low under', number: low.value, unit: 'Pa' } as const)
        : ({ what: 'high over', number: high.value, unit: 'Pa' } as const);
    tell(finding, true, shown, line);
  }
  if (rated) {
    const enough = meets(rated.rating, rated.needed);
    tell('fan-rating', !enough, flow('rated', rated.rating), flow('needed', rated.needed));
  }
  if (runTime) {
    const set = { what: 'set', number: runTime.set, unit: 's' } as const;
    tell('run-short', !meets(runTime.set, runTime.needed), set, { what: 'needed', number: runTime.needed, unit: 's' });
  }
  if (doorGap) {
    const actual = { what: 'door gap', number: doorGap.actual, unit: 'm' } as const;
    tell('gap-small', !meets(doorGap.actual, doorGap.needed), actual, {
      what: 'needed',
      number: doorGap.needed,
      unit: 'm',
    });
  }
  if (sweating) tell('sweat-predicted', sweating.predicted, { what: 'attic', number: sweating.attic, unit: '°C' });
  if (atSwap) swapEvidence(atSwap);
  return evidence;

  function swapEvidence({ airflow: then, needed, now }: AirflowAtSwap): void {
    const shown = band('measured at the swap', then);
    if (needed && needed.outcome !== 'not shown') {
      tell('enough-then', needed.outcome === 'met', shown, flow('needed', needed.airflow));
    }
    if (now && now.verdict !== 'cannot tell') {
      tell('flow-fell', now.verdict === 'lower', band('measured at the grille', now.airflow), shown);
    }
  }

  function airflowEvidence({ atGrille, atHood, needed, predicted }: MeasuredAirflowEvidence): void {
    const measured = band('measured at the grille', atGrille);
    if (needed) {
      const need = flow('needed', needed.airflow);
      const [least, most] = [shareBand(atGrille.low / needed.airflow), shareBand(atGrille.high / needed.airflow)];
      if (least === most) tell(least, true, measured, need);
      tell(needFindings[needed.outcome], true, measured, need);
    }
    if (predicted) {
      const finding = againstPrediction(predicted.comparison);
      if (finding) tell(finding, true, measured, band('predicted', predicted.airflow));
    }
    if (atHood) {
      const share = lines.leak.value;
      const hood = band('measured at the hood', atHood);
      if (atHood.high < share * atGrille.low) tell('leaks-between', true, measured, hood);
      else if (meets(atHood.low, share * atGrille.high)) tell('leaks-between', false, measured, hood);
    }
  }

  function shareBand(share: number): 'flow-low' | 'flow-mid' | 'flow-ok' {
    if (share < lines['flow-low'].value) return 'flow-low';
    return meets(share, lines['flow-ok'].value) ? 'flow-ok' : 'flow-mid';
  }

  function againstPrediction({ verdict, weight }: { verdict: Verdict; weight: Ratio }): CallbackFindingId | undefined {
    if (verdict === 'agrees') return 'as-predicted';
    if (verdict === 'higher') return 'above-predicted';
    if (verdict === 'lower') return weight < -lines['far-below'].value ? 'far-below-predicted' : 'below-predicted';
    return undefined;
  }
}

const needFindings = { met: 'need-met', 'not shown': 'need-not-shown', 'not met': 'need-not-met' } as const;

const flow = (what: NumberShown['what'], number: CubicMetresPerSecond): NumberShown => ({ what, number, unit: 'm3/s' });

const band = (what: NumberShown['what'], { low, typical, high }: Estimate<CubicMetresPerSecond>): NumberShown => ({
  what,
  number: typical,
  low,
  high,
  unit: 'm3/s',
});
