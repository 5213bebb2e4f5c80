import { fanEnergyPerYear, fanPower } from '#engine/energy/fan-energy.ts';
import { exhaustHeatFlow, heatThrownOutPerYear } from '#engine/energy/heat-thrown-out.ts';
import { runningCost } from '#engine/energy/running-cost.ts';
import { atmosphericPressure } from '#engine/psychrometrics/atmospheric-pressure.ts';
import { efficacyFigures } from '#knowledge/energy.ts';
import { fromSi, toSi } from '#quantity/unit-factors.ts';
import { cubicMetresPerSecond, kilogramsPerCubicMetre, metres, ratio, seconds } from '#quantity/units.ts';
import file from './figures/energy.json' with { type: 'json' };
import { expected, given, held, inSi, near, type Row, type RowFile, testEveryRow, tolerance } from './moisture-rows.ts';

/** Standard air, 0.075 lb/ft³: the air that 1.08 Btu/h for each cfm and °F is for. */
const standardAir = kilogramsPerCubicMetre(toSi(0.075, 'lbm/ft^3', 'kg/m^3'));
const stream = (row: Row) => ({
  airflow: cubicMetresPerSecond(inSi.airflow(given(row, row.given?.['cfm'] === undefined ? 'delivered_cfm' : 'cfm'))),
  density: standardAir,
});
const kelvin = (fahrenheitDegrees: number) => fahrenheitDegrees / 1.8;
const rel = (row: Row) => ({ rel: tolerance(row, 'rel') });

testEveryRow('energy and cost', file as unknown as RowFile, [
  [
    /^energy-\d/,
    'a year of running a fan',
    (row) => {
      const power = fanPower(stream(row).airflow, toSi(given(row, 'cfm_per_W'), 'cfm/W', 'm^3/s/W'));
      const runningPerDay = seconds(3600 * given(row, 'hours_per_day'));
      const fanEnergy = fanEnergyPerYear(power, runningPerDay);
      const degreeDays = kelvin(given(row, 'HDD65_Fday'));
      const heat = heatThrownOutPerYear(stream(row), { degreeDays, runningPerDay });
      const cost = runningCost({
        fanEnergy,
        heat,
        heatingEfficiency: ratio(given(row, 'heating_efficiency')),
        electricityPrice: given(row, 'elec_per_kWh') / toSi(1, 'kW hour', 'J'),
        heatPrice: given(row, 'heat_per_therm') / toSi(1, 'therm', 'J'),
      });
      near(power, expected(row, 'fan_W'), rel(row));
      near(fromSi(fanEnergy, 'kW hour', 'J'), expected(row, 'fan_kWh_yr'), rel(row));
      near(cost.electricity, expected(row, 'fan_cost_yr'), rel(row));
      near(fromSi(heat, 'BTU', 'J'), expected(row, 'heat_Btu_yr'), rel(row));
      near(fromSi(cost.fuel, 'therm', 'J'), expected(row, 'heat_therms_fuel'), rel(row));
      near(cost.heating, expected(row, 'heat_cost_yr'), rel(row));
      near(cost.total, expected(row, 'fan_cost_yr') + expected(row, 'heat_cost_yr'), rel(row));
    },
  ],
  [
    /^sensible/,
    'heat in an exhaust stream',
    (row) => {
      const heat = exhaustHeatFlow(stream(row), kelvin(given(row, 'dT_F')));
      near(fromSi(heat, 'BTU/hour', 'W'), expected(row), rel(row));
    },
  ],
  [
    /^alt-correct/,
    'heat in an exhaust stream a mile up',
    (row) => {
      const thinner = atmosphericPressure(metres(inSi.feet(given(row, 'z_ft')))) / atmosphericPressure(metres(0));
      const thin = { ...stream(row), density: kilogramsPerCubicMetre(standardAir * thinner) };
      const heat = exhaustHeatFlow(thin, kelvin(given(row, 'dT_F')));
      near(fromSi(heat, 'BTU/hour', 'W'), expected(row), rel(row));
    },
  ],
  [
    /^infiltration/,
    'the same sum as a leakage formula of 0.018 Btu for each cubic foot and °F',
    (row) => {
      const airflow = cubicMetresPerSecond((inSi.cubicFeet(given(row, 'volume_ft3')) * given(row, 'ACH')) / 3600);
      const heat = heatThrownOutPerYear(
        { airflow, density: standardAir },
        { degreeDays: kelvin(given(row, 'HDD')), runningPerDay: seconds(86_400) },
      );
      // 0.018 is 0.075 × 0.24; the engine has 1006 J/(kg·K) for 0.24 Btu/(lb·°F), 0.12 % more.
      near(fromSi(heat, 'BTU', 'J') / 1.0012, expected(row), rel(row));
    },
  ],
  [/^(wa-|iecc2021)/, 'figures held as printed', held(efficacyFigures)],
]);
