import { expect } from 'vitest';
import { densityRatio } from '#engine/air/density.ts';
import { airflowAt, type FanCurve, fanCurve, freeAirflow, shutOffPressure } from '#engine/fan/fan-curve.ts';
import { airflowAtSpeed, fanChanged, fanPower } from '#engine/fan/fan-laws.ts';
import type { FanDescription } from '#engine/fan/fan-points.ts';
import { typicalShape } from '#engine/fan/fan-shape.ts';
import { operatingPoint } from '#engine/fan/operating-point.ts';
import {
  type EfficacyEditionId,
  type FanKindId,
  fanEfficacyEditions,
  fanKinds,
  ratingPressures,
} from '#knowledge/fans.ts';
import { fromSi, toSi } from '#quantity/unit-factors.ts';
import { celsius, pascals, ratio, watts } from '#quantity/units.ts';
import { agrees, type Check, cfm, feet, inchesOfWater, liesIn, workedExamples } from './airflow-checks.ts';
import figures from './figures/fan.json' with { type: 'json' };

function curveOf(description: FanDescription, kind: FanKindId): FanCurve {
  const outcome = fanCurve(description, typicalShape(fanKinds[kind].shape));
  if (!outcome.valid) throw new TypeError(outcome.why);
  return outcome.curve;
}

/** A fan of this kind that is sold as one cfm. */
const sold = (kind: FanKindId) =>
  curveOf({ kind: 'points', points: [{ airflow: cfm(1), staticPressure: ratingPressures.low }] }, kind);

const shareAt = (curve: FanCurve, inches: number) => fromSi(airflowAt(curve, inchesOfWater(inches)), 'cfm', 'm^3/s');

interface Steps<Value extends string> {
  readonly edition: EfficacyEditionId;
  readonly airflow: number;
  readonly fan: Value;
}

/** The step of a table in which an airflow falls. */
const stepFor = <Step extends { readonly below: number }>(steps: readonly Step[] | undefined, airflow: number) =>
  steps?.find(({ below }) => airflow < below);

workedExamples('what is published about fans', figures, {
  'airflow at speed': (check: Check<{ speedRatio: number; airflow: number }>) =>
    agrees(fromSi(airflowAtSpeed(cfm(check.given.airflow), ratio(check.given.speedRatio)), 'cfm', 'm^3/s'), check),
  'pressure at speed': (check: Check<{ speedRatio: number; pressure: number }>) => {
    const { speedRatio, pressure } = check.given;
    const points = [
      { airflow: cfm(100), staticPressure: pascals(0) },
      { airflow: cfm(0), staticPressure: inchesOfWater(pressure) },
    ];
    const faster = fanChanged(curveOf({ kind: 'points', points }, 'standard'), {
      speedRatio: ratio(speedRatio),
      densityRatio: ratio(1),
    });
    agrees(fromSi(shutOffPressure(faster), 'inH2O', 'Pa'), check);
  },
  'power at speed': (check: Check<{ speedRatio: number; power: number }>) => {
    const change = { speedRatio: ratio(check.given.speedRatio), densityRatio: ratio(1) };
    agrees(fanPower(watts(check.given.power), change), check);
  },
  'rating pressure': (check: Check<{ which: 'low' | 'high' }>) =>
    agrees(fromSi(ratingPressures[check.given.which], 'inH2O', 'Pa'), check),
  'airflow kept': (check: Check<Steps<never>>) => {
    const { edition, airflow } = check.given;
    agrees(stepFor(fanEfficacyEditions[edition].airflowKept, cfm(airflow))?.least ?? Number.NaN, check);
  },
  'least efficacy': (check: Check<Steps<'bath' | 'inLine' | 'rangeHood' | 'heatRecovery' | 'airHandler'>>) => {
    const { edition, airflow, fan } = check.given;
    const least = stepFor(fanEfficacyEditions[edition][fan], cfm(airflow))?.least ?? Number.NaN;
    agrees(least / toSi(1, 'cfm/W', 'm^3/s/W'), check);
  },
  'most sones': (check: Check<Steps<never>>) => {
    const { edition, airflow } = check.given;
    agrees(stepFor(fanEfficacyEditions[edition].sones, cfm(airflow))?.most ?? Number.NaN, check);
  },
  'shape of an ordinary fan': (check: Check<{ at: number }>) =>
    liesIn(
      check.given.at === 0
        ? fromSi(freeAirflow(sold('standard')), 'cfm', 'm^3/s')
        : shareAt(sold('standard'), check.given.at),
      check,
    ),
  'shut-off of an ordinary fan': (check) => liesIn(fromSi(shutOffPressure(sold('standard')), 'inH2O', 'Pa'), check),
  'shape of an economy fan': (check: Check<{ at: number }>) => liesIn(shareAt(sold('economy'), check.given.at), check),
  'constant flow held': (check: Check<{ heldTo: number; airflow: number }>) => {
    const { heldTo, airflow } = check.given;
    const curve = curveOf(
      { kind: 'constant flow', airflow: cfm(airflow), heldTo: inchesOfWater(heldTo) },
      'constant-flow',
    );
    for (const inches of [0, 0.1, 0.2, heldTo]) {
      expect(1 - shareAt(curve, inches) / airflow).toBeLessThanOrEqual(check.expected as number);
    }
    expect(shareAt(curve, heldTo + 0.2)).toBeLessThan(0.8 * airflow);
  },
  'same volume at altitude': (check: Check<{ altitude: number; temperature: number }>) => {
    const thin = densityRatio({
      altitude: feet(check.given.altitude),
      temperature: celsius(toSi(check.given.temperature, 'degF', 'degC')),
    });
    const fan = curveOf(
      {
        kind: 'points',
        points: [
          { airflow: cfm(110), staticPressure: inchesOfWater(0.1) },
          { airflow: cfm(86), staticPressure: inchesOfWater(0.25) },
        ],
      },
      'standard',
    );
    const resistance = inchesOfWater(0.3) / cfm(85) ** 2;
    const found = (density: number) => {
      const point = operatingPoint({
        fan: fanChanged(fan, { speedRatio: ratio(1), densityRatio: ratio(density) }),
        systemPressure: (airflow) => pascals(density * resistance * airflow * airflow),
      });
      return point.found ? point.airflow : Number.NaN;
    };
    expect(thin).toBeLessThan(0.85);
    expect(Math.abs(found(thin) / found(1) - 1)).toBeLessThan(check.expected as number);
  },
  'density ratio': (check: Check<{ altitude: number; temperature: number }>) =>
    agrees(
      densityRatio({
        altitude: feet(check.given.altitude),
        temperature: celsius(toSi(check.given.temperature, 'degF', 'degC')),
      }),
      check,
    ),
});
