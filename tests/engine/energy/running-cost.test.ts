import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fanEnergyPerYear, fanPower } from '#engine/energy/fan-energy.ts';
import { exhaustHeatFlow, heatThrownOutPerYear } from '#engine/energy/heat-thrown-out.ts';
import { runningCost } from '#engine/energy/running-cost.ts';
import { cubicMetresPerSecond, kilogramsPerCubicMetre, ratio, seconds, watts } from '#quantity/units.ts';

const runs = { seed: 1, numRuns: 100 };
const positive = (max: number) => fc.double({ min: 0.001, max, noNaN: true });
const stream = (airflow: number, density = 1.2) => ({
  airflow: cubicMetresPerSecond(airflow),
  density: kilogramsPerCubicMetre(density),
});

describe('the laws of running a fan', () => {
  it('twice the hours cost twice as much, in electricity and in heat', () => {
    fc.assert(
      fc.property(positive(0.1), positive(5000), positive(40_000), (airflow, degreeDays, running) => {
        const [once, twice] = [seconds(running), seconds(2 * running)];
        const heat = (runningPerDay: typeof once) =>
          heatThrownOutPerYear(stream(airflow), { degreeDays, runningPerDay });
        expect(heat(twice)).toBeCloseTo(2 * heat(once), 3);
        expect(fanEnergyPerYear(watts(30), twice)).toBeCloseTo(2 * fanEnergyPerYear(watts(30), once), 3);
      }),
      runs,
    );
  });

  it('more air never throws out less heat, and thin mountain air throws out less', () => {
    fc.assert(
      fc.property(positive(0.1), positive(40), (airflow, difference) => {
        const heat = exhaustHeatFlow(stream(airflow), difference);
        expect(exhaustHeatFlow(stream(airflow * 2), difference)).toBeGreaterThan(heat);
        expect(exhaustHeatFlow(stream(airflow, 1), difference)).toBeLessThan(heat);
      }),
      runs,
    );
  });

  it('running all day for a degree-day is that heat flow for a day', () => {
    const allDay = heatThrownOutPerYear(stream(0.04), { degreeDays: 1, runningPerDay: seconds(86_400) });
    expect(allDay).toBeCloseTo(exhaustHeatFlow(stream(0.04), 1) * 86_400, 6);
  });

  it('a worse furnace buys more fuel for the same heat', () => {
    const bill = { fanEnergy: 4e7, heat: 3e8, electricityPrice: 4e-8, heatPrice: 1.3e-8 };
    const [good, poor] = [0.95, 0.7].map((share) => runningCost({ ...bill, heatingEfficiency: ratio(share) }));
    expect(poor?.heating).toBeGreaterThan(good?.heating ?? Number.NaN);
    expect(poor?.electricity).toBe(good?.electricity);
    expect(good?.total).toBeCloseTo((good?.electricity ?? 0) + (good?.heating ?? 0), 12);
  });

  it('a fan twice as thrifty draws half', () => {
    expect(fanPower(cubicMetresPerSecond(0.04), 0.002)).toBeCloseTo(fanPower(cubicMetresPerSecond(0.04), 0.001) / 2, 9);
  });
});
