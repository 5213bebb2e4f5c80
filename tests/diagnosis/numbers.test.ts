import { describe, expect, it } from 'vitest';
import { type CallbackNumbers, evidenceFromNumbers, type NumberEvidence } from '#diagnosis/numbers.ts';
import { comparedWithNeeded, comparedWithPredicted } from '#engine/measuring/comparison.ts';
import { callbackLines } from '#knowledge/callback-scale.ts';
import { type Estimate, exactly } from '#quantity/estimate.ts';
import { toSi } from '#quantity/unit-factors.ts';
import {
  type CubicMetresPerSecond,
  celsius,
  cubicMetresPerSecond,
  metres,
  pascals,
  ratio,
  seconds,
} from '#quantity/units.ts';
import { diagnosed } from './reasoning-at-hand.ts';

const cfm = (value: number) => cubicMetresPerSecond(toSi(value, 'cfm', 'm3/s'));
const about = (value: number, share: number): Estimate<CubicMetresPerSecond> => ({
  low: cfm(value * (1 - share)),
  typical: cfm(value),
  high: cfm(value * (1 + share)),
});
const airflow = (measured: number, needed: number, predicted: number): CallbackNumbers => {
  const [atGrille, expected] = [about(measured, 0.1), about(predicted, 0.1)];
  const comparison = comparedWithPredicted({ measured: atGrille, predicted: expected, widestTelling: ratio(0.3) });
  return {
    airflow: {
      atGrille,
      needed: { airflow: cfm(needed), outcome: comparedWithNeeded(atGrille, cfm(needed)) },
      predicted: { airflow: expected, comparison },
    },
  };
};
const evidence = (numbers: CallbackNumbers) => evidenceFromNumbers(callbackLines, numbers);
const seen = (numbers: CallbackNumbers) =>
  evidence(numbers)
    .filter((one) => one.seen)
    .map(({ finding }) => finding);
const one = (numbers: CallbackNumbers): NumberEvidence | undefined => evidence(numbers)[0];

describe('numbers become findings', () => {
  it('far below what the duct should give: something is in the way, off or worn', () => {
    expect(seen(airflow(35, 80, 75))).toEqual(['flow-low', 'need-not-met', 'far-below-predicted']);
  });

  it('as predicted and below need: the plan is too small', () => {
    expect(seen(airflow(55, 80, 57))).toEqual(['flow-mid', 'need-not-met', 'as-predicted']);
  });

  it('below, above, and enough', () => {
    expect(seen(airflow(64, 50, 78))).toContain('below-predicted');
    expect(seen(airflow(95, 80, 78))).toEqual(['flow-ok', 'need-met', 'above-predicted']);
    expect(seen(airflow(80, 80, 78))).toEqual(['flow-ok', 'need-not-shown', 'as-predicted']);
  });

  it('a measurement too poor to tell accuses nobody', () => {
    const atGrille = about(60, 0.5);
    const predicted = about(75, 0.2);
    const comparison = comparedWithPredicted({ measured: atGrille, predicted, widestTelling: ratio(0.3) });
    expect(comparison.verdict).toBe('cannot tell');
    expect(evidence({ airflow: { atGrille, predicted: { airflow: predicted, comparison } } })).toEqual([]);
  });

  it('keeps both numbers for the reply', () => {
    const found = evidence(airflow(35, 80, 75)).find(({ finding }) => finding === 'far-below-predicted');
    expect(found?.numbers.map(({ what }) => what)).toEqual(['measured at the grille', 'predicted']);
    expect(found?.numbers[0]?.number).toBeCloseTo(cfm(35), 9);
    expect(found?.numbers[1]?.number).toBeCloseTo(cfm(75), 9);
  });

  it('less air at the hood than at the grille is a leak, and only where the errors leave no doubt', () => {
    const at = (hood: number, share: number) => ({
      airflow: { atGrille: about(80, share), atHood: about(hood, share) },
    });
    expect(one(at(40, 0.1))).toMatchObject({ finding: 'leaks-between', seen: true });
    expect(one(at(80, 0.1))).toMatchObject({ finding: 'leaks-between', seen: false });
    expect(one(at(60, 0.2))).toBeUndefined();
  });

  // 0.05 and 0.25 in. w.g. are crew figures (common practice): 12.4 Pa and 62.2 Pa.
  it('pressure at the collar is low, middling or high', () => {
    expect(one({ collarPressure: pascals(10) })?.finding).toBe('sp-low');
    expect(one({ collarPressure: pascals(40) })?.finding).toBe('sp-mid');
    expect(one({ collarPressure: pascals(70) })?.finding).toBe('sp-high');
  });

  it('run time, door gap, rating and sweating are seen or not seen', () => {
    const minutes = (value: number) => seconds(value * 60);
    expect(one({ runTime: { set: minutes(10), needed: minutes(25) } })).toMatchObject({
      finding: 'run-short',
      seen: true,
    });
    expect(one({ runTime: { set: minutes(25), needed: minutes(25) } })).toMatchObject({ seen: false });
    expect(one({ doorGap: { actual: metres(0.006), needed: metres(0.019) } })).toMatchObject({
      finding: 'gap-small',
      seen: true,
    });
    expect(one({ rated: { rating: cfm(50), needed: cfm(80) } })).toMatchObject({ finding: 'fan-rating', seen: true });
    expect(one({ sweating: { predicted: true, attic: celsius(-5) } })).toMatchObject({
      finding: 'sweat-predicted',
      seen: true,
    });
  });

  it('nothing known says nothing', () => {
    expect(evidence({})).toEqual([]);
    expect(evidence({ airflow: { atGrille: exactly(cfm(50)) } })).toEqual([]);
  });

  it('leads to the cause the physics means', () => {
    const told = [...evidence(airflow(35, 80, 75)), ...evidence({ collarPressure: pascals(90) })];
    const { ranking } = diagnosed({ seen: told.map(({ finding }) => finding), context: ['recent-swap'] });
    expect(ranking[0]?.cause).toBe('fandamper');
  });
});
