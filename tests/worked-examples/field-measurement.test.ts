import { expect } from 'vitest';
import { flowBoxAirflow, flowBoxPressure } from '#engine/measuring/flow-box.ts';
import { measuredAirflow } from '#engine/measuring/measured-airflow.ts';
import { type FieldStudyId, fieldStudies } from '#knowledge/airflow.ts';
import { fieldMethods, methodTrust } from '#knowledge/field-methods.ts';
import { exactly } from '#quantity/estimate.ts';
import { fromSi, toSi } from '#quantity/unit-factors.ts';
import { cubicMetres, pascals, seconds, squareMetres } from '#quantity/units.ts';
import { agrees, type Check, liesIn, workedExamples } from './airflow-checks.ts';
import figures from './figures/field-measurement.json' with { type: 'json' };

const inCfm = (airflow: number): number => fromSi(airflow, 'cfm', 'm^3/s');
const boxOf = (squareInches: number) => ({
  opening: squareMetres(toSi(squareInches, 'in^2', 'm^2')),
  constant: methodTrust.box.constant,
});

function timed(volume: number, time: number) {
  const outcome = measuredAirflow(
    { method: 'bag', volume: exactly(cubicMetres(volume)), times: [seconds(time)] },
    methodTrust,
  );
  if (!outcome.measured) throw new TypeError(outcome.why);
  return outcome;
}

workedExamples('what is published about measuring at the grille', figures, {
  'box pressure window': (check: Check<{ which: 'low' | 'high' }>) =>
    agrees(fieldMethods.box.pressure[check.given.which], check),
  box: (check: Check<{ opening: number; pressure: number }>) =>
    agrees(inCfm(flowBoxAirflow(boxOf(check.given.opening), pascals(check.given.pressure))), check),
  'box back-pressure': (check: Check<{ opening: number; pressure: number }>) => {
    const box = boxOf(check.given.opening);
    const through = flowBoxAirflow(box, pascals(check.given.pressure));
    agrees(fromSi(flowBoxPressure(box, through), 'inH2O', 'Pa'), check);
  },
  'bag in gallons': (check: Check<{ gallons: number; seconds: number }>) =>
    agrees(inCfm(timed(toSi(check.given.gallons, 'gallon', 'm^3'), check.given.seconds).airflow.typical), check),
  'canadian bag': (check: Check<{ litres: number; seconds: number }>) => {
    const { airflow, limits } = timed(check.given.litres / 1000, check.given.seconds);
    expect(Math.abs(inCfm(airflow.typical) / (check.expected as number) - 1)).toBeLessThanOrEqual(check.tolerance);
    expect(limits.includes('bag fills too fast')).toBe(check.given.seconds < 5);
  },
  'shortest time': (check) => agrees(fieldMethods.bag.shortestTime.value, check),
  'hood error': (check: Check<{ hood: 'powered' | 'unpowered' }>) =>
    liesIn(fieldMethods.hood[check.given.hood].value, check),
  'widest telling': (check) => agrees(fieldMethods.comparison.widestTelling.value, check),
  'open share': (check) => {
    liesIn(fieldMethods.traverse.openShare.estimate.low, check);
    liesIn(fieldMethods.traverse.openShare.estimate.high, check);
  },
  study: (check: Check<{ study: FieldStudyId }>) => {
    for (const figure of check.expected as readonly string[]) {
      expect(fieldStudies[check.given.study].says).toContain(figure);
    }
  },
});
