import { atmosphericPressure } from '#engine/psychrometrics/atmospheric-pressure.ts';
import { dewPoint } from '#engine/psychrometrics/dew-point.ts';
import {
  humidityRatio,
  relativeHumidity,
  saturationHumidityRatio,
  vapourPressure,
} from '#engine/psychrometrics/humidity.ts';
import { enthalpy, moistAirDensity, specificVolume } from '#engine/psychrometrics/moist-air.ts';
import { saturationPressure } from '#engine/psychrometrics/saturation-pressure.ts';
import { humidityRatioFromWetBulb, wetBulb } from '#engine/psychrometrics/wet-bulb.ts';
import { fromSi } from '#quantity/unit-factors.ts';
import { type Celsius, celsius, metres, pascals, ratio } from '#quantity/units.ts';
import rows from './figures/psychrometrics.json' with { type: 'json' };
import { expected, given, inSi, near, type Row, type RowFile, testEveryRow, tolerance } from './moisture-rows.ts';

const temperature = (row: Row, name = 't') =>
  celsius(row.given?.[`${name}_C`] === undefined ? inSi.fahrenheit(given(row, `${name}_F`)) : given(row, `${name}_C`));

const pressure = (row: Row) => {
  if (row.given?.['z_m'] !== undefined) return atmosphericPressure(metres(given(row, 'z_m')));
  if (row.given?.['z_ft'] !== undefined) return atmosphericPressure(metres(inSi.feet(given(row, 'z_ft'))));
  return pascals(row.given?.['p_Pa'] === undefined ? inSi.psi(given(row, 'p_psia')) : given(row, 'p_Pa'));
};

const found = (answer: { found: true; temperature: Celsius } | { found: false; why: string }): Celsius => {
  if (!answer.found) throw new Error(answer.why);
  return answer.temperature;
};

/** The inch-pound handbook counts dry air's heat from 0 °F, the metric one from 0 °C: 32 °F at 0.24 Btu/(lb·°F) apart. */
const inBtuPerPound = (joulesPerKilogram: number) => fromSi(joulesPerKilogram, 'BTU/lbm', 'J/kg') + 0.24 * 32;
const inFahrenheit = (t: Celsius) => fromSi(t, 'degF', 'degC');
const inPoundsPerCubicFoot = (density: number) => fromSi(density, 'lbm/ft^3', 'kg/m^3');
const inCubicFeetPerPound = (volume: number) => fromSi(volume, 'ft^3/lbm', 'm^3/kg');

const dryAir = (row: Row) => ({ temperature: temperature(row), humidityRatio: ratio(0), pressure: pressure(row) });

testEveryRow('damp air', rows as RowFile, [
  [
    /^psat-si/,
    'the most vapour pressure air can carry, metric table',
    (row) => near(saturationPressure(temperature(row)), expected(row), { rel: tolerance(row, 'rel') }),
  ],
  [
    /^psat-ip/,
    'the most vapour pressure air can carry, inch-pound table',
    (row) => near(saturationPressure(temperature(row)), inSi.psi(expected(row)), { rel: tolerance(row, 'rel') }),
  ],
  [
    /^wsat/,
    'the most water air can carry',
    (row) =>
      near(saturationHumidityRatio(temperature(row), pressure(row)), expected(row), { rel: tolerance(row, 'rel') }),
  ],
  [
    /^hsat/,
    'the heat in saturated air',
    (row) => {
      const saturated = saturationHumidityRatio(temperature(row), pressure(row));
      const heat = enthalpy({ temperature: temperature(row), humidityRatio: saturated });
      near(heat, expected(row), { rel: tolerance(row, 'rel') });
    },
  ],
  [
    /^dryair-h/,
    'the heat in dry air',
    (row) => {
      const heat = enthalpy({ temperature: temperature(row), humidityRatio: ratio(0) });
      near(heat, expected(row), { rel: tolerance(row, 'rel') });
    },
  ],
  [
    /^dryair-v-25C/,
    'the room dry air takes up, metric table',
    (row) => near(specificVolume(dryAir(row)), expected(row), { rel: tolerance(row, 'rel') }),
  ],
  [
    /^dryair-v-77F/,
    'the room dry air takes up, inch-pound table',
    (row) => near(inCubicFeetPerPound(specificVolume(dryAir(row))), expected(row), { rel: tolerance(row, 'rel') }),
  ],
  [
    /^ex1/,
    'the handbook example with two thermometers',
    (row, id) => {
      const [dryBulb, p] = [temperature(row), pressure(row)];
      const W = humidityRatioFromWetBulb({ dryBulb, wetBulb: temperature(row, 'twb'), pressure: p });
      const air = { temperature: dryBulb, humidityRatio: W, pressure: p };
      const dew = found(dewPoint(vapourPressure(air)));
      near(W, expected(row, 'W'), { abs: tolerance(row, 'W_abs') });
      near(relativeHumidity(air), expected(row, 'rh'), { abs: tolerance(row, 'rh_abs') });
      if (id === 'ex1-si') {
        near(dew, expected(row, 'tdp_C'), { abs: tolerance(row, 'tdp_abs') });
        near(enthalpy(air), expected(row, 'h_J_kg'), { abs: tolerance(row, 'h_abs') });
        near(specificVolume(air), expected(row, 'v_m3_kg'), { rel: tolerance(row, 'v_rel') });
      } else {
        near(inFahrenheit(dew), expected(row, 'tdp_F'), { abs: tolerance(row, 'tdp_abs') });
        near(inBtuPerPound(enthalpy(air)), expected(row, 'h_Btu_lb'), { abs: tolerance(row, 'h_abs') });
        near(inCubicFeetPerPound(specificVolume(air)), expected(row, 'v_ft3_lb'), { rel: tolerance(row, 'v_rel') });
      }
    },
  ],
  [
    /^patm-.*\dm$/,
    'air pressure with height, metric table',
    (row) => near(pressure(row), expected(row), { abs: tolerance(row, 'abs') }),
  ],
  [
    /^patm-.*ft$/,
    'air pressure with height, inch-pound table',
    (row) => near(pressure(row), inSi.psi(expected(row)), { rel: tolerance(row, 'rel') }),
  ],
  [
    /^oracle-ip/,
    'damp air against an open library, inch-pound',
    (row) => {
      const [t, p] = [temperature(row), pressure(row)];
      const W = humidityRatio({ temperature: t, relativeHumidity: ratio(given(row, 'rh')), pressure: p });
      const air = { temperature: t, humidityRatio: W, pressure: p };
      near(p, inSi.psi(expected(row, 'p_psia')), { rel: tolerance(row, 'p_rel') });
      near(W, expected(row, 'W_lb_lb'), { rel: tolerance(row, 'W_rel') });
      near(inFahrenheit(found(dewPoint(vapourPressure(air)))), expected(row, 'tdp_F'), {
        abs: tolerance(row, 'tdp_abs'),
      });
      near(inPoundsPerCubicFoot(moistAirDensity(air)), expected(row, 'rho_lb_ft3'), { rel: tolerance(row, 'rho_rel') });
      near(inBtuPerPound(enthalpy(air)), expected(row, 'h_Btu_lb'), { abs: tolerance(row, 'h_abs') });
      near(inFahrenheit(found(wetBulb(air))), expected(row, 'twb_F'), { abs: tolerance(row, 'twb_abs') });
    },
  ],
  [
    /^oracle-si/,
    'damp air against an open library, metric',
    (row) => {
      const [t, p] = [temperature(row), pressure(row)];
      const W = humidityRatio({ temperature: t, relativeHumidity: ratio(given(row, 'rh')), pressure: p });
      const air = { temperature: t, humidityRatio: W, pressure: p };
      near(p, expected(row, 'p_Pa'), { rel: tolerance(row, 'p_rel') });
      near(W, expected(row, 'W_kg_kg'), { rel: tolerance(row, 'W_rel') });
      near(found(dewPoint(vapourPressure(air))), expected(row, 'tdp_C'), { abs: tolerance(row, 'tdp_abs') });
      near(moistAirDensity(air), expected(row, 'rho_kg_m3'), { rel: tolerance(row, 'rho_rel') });
      near(enthalpy(air), expected(row, 'h_J_kg'), { abs: tolerance(row, 'h_abs') });
      near(found(wetBulb(air)), expected(row, 'twb_C'), { abs: tolerance(row, 'twb_abs') });
    },
  ],
]);
