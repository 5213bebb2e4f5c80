import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doorGapNeeded, doorGapOpening, doorPressure } from '#engine/pressure/door-gap.ts';
import {
  airChangesFromLeakage,
  houseDepressurisation,
  leakageFromAirChanges,
  netExhaust,
} from '#engine/pressure/house-leakage.ts';
import { makeUpPressure } from '#engine/pressure/make-up-path.ts';
import {
  oneBehindTheOther,
  openingAirflow,
  openingNeeded,
  openingPressure,
  sideBySide,
} from '#engine/pressure/orifice.ts';
import {
  cubicMetres,
  cubicMetresPerSecond,
  kilogramsPerCubicMetre,
  metres,
  pascals,
  ratio,
  squareMetres,
} from '#quantity/units.ts';

const runs = { seed: 1, numRuns: 200 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const density = kilogramsPerCubicMetre(1.2);
const flowing = (airflow: number) => ({ airflow: cubicMetresPerSecond(airflow), density });
const opening = (area: number) => ({ area: squareMetres(area), dischargeCoefficient: ratio(0.6) });
const gap = (height: number) => ({ width: metres(0.762), height: metres(height) });
const airflows = between(0.001, 0.1);
const areas = between(0.001, 0.05);
const heights = between(0.003, 0.05);

describe('the laws of air under a door', () => {
  it('a bigger gap never raises the pressure', () => {
    fc.assert(
      fc.property(airflows, heights, between(1, 4), (airflow, height, times) => {
        expect(doorPressure(gap(height * times), flowing(airflow))).toBeLessThanOrEqual(
          doorPressure(gap(height), flowing(airflow)),
        );
      }),
      runs,
    );
  });

  it('the gap needed just meets its limit', () => {
    fc.assert(
      fc.property(airflows, between(1, 20), (airflow, limit) => {
        const height = doorGapNeeded({ ...flowing(airflow), limit: pascals(limit), doorWidth: metres(0.762) });
        expect(doorPressure(gap(height), flowing(airflow))).toBeCloseTo(limit, 9);
      }),
      runs,
    );
  });

  it('pressure, airflow and opening agree whichever is asked for', () => {
    fc.assert(
      fc.property(airflows, areas, (airflow, area) => {
        const pressure = openingPressure(opening(area), flowing(airflow));
        expect(openingAirflow(opening(area), { pressure, density })).toBeCloseTo(airflow, 9);
        const needed = openingNeeded({ ...flowing(airflow), pressure, dischargeCoefficient: ratio(0.6) });
        expect(needed).toBeCloseTo(area, 9);
      }),
      runs,
    );
  });

  it('thin mountain air takes less pressure for the same airflow', () => {
    const thin = { airflow: cubicMetresPerSecond(0.04), density: kilogramsPerCubicMetre(1) };
    expect(doorPressure(gap(0.012), thin)).toBeLessThan(doorPressure(gap(0.012), flowing(0.04)));
  });

  it('no airflow takes no pressure, and a shut door takes more than any fan has', () => {
    expect(openingPressure(opening(0), flowing(0))).toBe(0);
    expect(openingPressure(opening(0), flowing(0.01))).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('several ways in', () => {
  it('side by side they pass the sum of their airflows', () => {
    fc.assert(
      fc.property(areas, areas, between(0.5, 50), (one, other, difference) => {
        const pressure = { pressure: pascals(difference), density };
        const both = openingAirflow(sideBySide([opening(one), opening(other)]), pressure);
        const apart = openingAirflow(opening(one), pressure) + openingAirflow(opening(other), pressure);
        expect(both).toBeCloseTo(apart, 9);
      }),
      runs,
    );
  });

  it('openings of different shape add by what they let through', () => {
    const grille = { area: squareMetres(0.02), dischargeCoefficient: ratio(0.5) };
    const both = sideBySide([opening(0.01), grille]);
    expect(both.dischargeCoefficient * both.area).toBeCloseTo(0.6 * 0.01 + 0.5 * 0.02, 12);
  });

  it('one behind the other they cost the sum of their pressures', () => {
    const [one, other] = [opening(0.01), opening(0.02)];
    const sum = openingPressure(one, flowing(0.04)) + openingPressure(other, flowing(0.04));
    expect(oneBehindTheOther([one, other], flowing(0.04))).toBeCloseTo(sum, 9);
    expect(oneBehindTheOther([], flowing(0.04))).toBe(0);
  });

  it('no opening at all is a shut one', () => {
    expect(openingPressure(sideBySide([]), flowing(0.01))).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('a house pulled down by its fans', () => {
  const house = (airflowAt50: number, exponent = 0.65) => ({
    airflowAt50: cubicMetresPerSecond(airflowAt50),
    exponent: ratio(exponent),
  });

  it('at its own test airflow sits at 50 Pa, whatever its cracks', () => {
    for (const n of [0.5, 0.65, 1]) expect(houseDepressurisation(house(0.5, n), cubicMetresPerSecond(0.5))).toBe(50);
  });

  it('more exhaust or a tighter house never lessens the pull, nor does a larger exponent below 50 Pa', () => {
    fc.assert(
      fc.property(between(0.01, 0.2), between(0.3, 2), between(0.5, 1), (exhaust, leakage, n) => {
        const now = houseDepressurisation(house(leakage, n), cubicMetresPerSecond(exhaust));
        expect(houseDepressurisation(house(leakage, n), cubicMetresPerSecond(exhaust * 1.5))).toBeGreaterThan(now);
        expect(houseDepressurisation(house(leakage / 1.5, n), cubicMetresPerSecond(exhaust))).toBeGreaterThan(now);
        expect(houseDepressurisation(house(leakage, 1), cubicMetresPerSecond(exhaust))).toBeGreaterThanOrEqual(now);
      }),
      runs,
    );
  });

  it('counts every exhaust, and never less than nothing', () => {
    const flows = (...values: number[]) => values.map(cubicMetresPerSecond);
    expect(netExhaust({ exhausts: flows(0.05, 0.07), supplies: flows(0.02) })).toBeCloseTo(0.1, 12);
    expect(netExhaust({ exhausts: flows(0.05), supplies: flows(0.2) })).toBe(0);
    expect(houseDepressurisation(house(0.5), cubicMetresPerSecond(-0.1))).toBe(0);
  });

  it('air changes and leakage are two names for one thing', () => {
    const volume = cubicMetres(450);
    const leakage = leakageFromAirChanges(volume, ratio(7));
    expect(airChangesFromLeakage(volume, leakage)).toBeCloseTo(7, 12);
  });
});

describe('the whole way from outdoors to the bathroom', () => {
  const path = {
    openings: [doorGapOpening(gap(0.0127))],
    house: { airflowAt50: cubicMetresPerSecond(0.5), exponent: ratio(0.65) },
    otherExhaust: cubicMetresPerSecond(0.07),
  };

  it('is the door and the house, one behind the other, with the other fans pulling on the house only', () => {
    const door = doorPressure(gap(0.0127), flowing(0.04));
    const outside = houseDepressurisation(path.house, cubicMetresPerSecond(0.11));
    expect(makeUpPressure(path, flowing(0.04))).toBeCloseTo(door + outside, 9);
  });

  it('with a window open it is the door alone', () => {
    const { openings, otherExhaust } = path;
    expect(makeUpPressure({ openings, otherExhaust }, flowing(0.04))).toBe(doorPressure(gap(0.0127), flowing(0.04)));
  });

  it('rises with the airflow, so that a fan curve crosses it once', () => {
    fc.assert(
      fc.property(airflows, between(1.001, 3), (airflow, times) => {
        expect(makeUpPressure(path, flowing(airflow * times))).toBeGreaterThan(makeUpPressure(path, flowing(airflow)));
      }),
      runs,
    );
  });
});
