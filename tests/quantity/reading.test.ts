import { describe, expect, it, test } from 'vitest';
import type { Kind } from '#quantity/kind.ts';
import * as kinds from '#quantity/kinds.ts';
import type { UnitSystem } from '#quantity/units.ts';
import { read, same } from './check.ts';

/** Rows of "what was typed" and "what it is in SI". The definitions behind the figures are in unit-factors.test.ts. */
type Rows = readonly (readonly [typed: string, si: number])[];

const foot = 0.3048;

describe('a quantity as it is written on site', () => {
  const cfm = 0.0004719474432;
  const inH2O = 249.08891;
  const r = 0.176110183682306;
  const table: readonly (readonly [Kind, Rows])[] = [
    [
      kinds.airflow,
      [
        ['110', 110 * cfm],
        ['110cfm', 110 * cfm],
        ['110 CFM', 110 * cfm],
        ['110 c.f.m.', 110 * cfm],
        ['110 cubic feet per minute', 110 * cfm],
        ['one hundred ten cfm', 110 * cfm],
        ['1,200 cfm', 1200 * cfm],
        ['52 L/s', 0.052],
        ['52 l/s', 0.052],
        ['52 L / s', 0.052],
        ['52 litres per second', 0.052],
        ['52,5 L/s', 0.0525],
        ['187 m3/h', 187 / 3600],
        ['187 m³/h', 187 / 3600],
        ['187 m^3/h', 187 / 3600],
        ['0', 0],
      ],
    ],
    [
      kinds.houseLeakage,
      [
        ['1200', 1200 * cfm],
        ['1200 cfm', 1200 * cfm],
        ['1200 cfm50', 1200 * cfm],
        ['1,200 CFM50', 1200 * cfm],
        ['1200 cfm at 50 Pa', 1200 * cfm],
        ['1200 cfm @ 50 Pa', 1200 * cfm],
        ['2000 m3/h at 50 Pa', 2000 / 3600],
      ],
    ],
    [
      kinds.staticPressure,
      [
        ['0.25', inH2O / 4],
        ['0.25" wg', inH2O / 4],
        ['0.25 in wg', inH2O / 4],
        ['.25 in. w.g.', inH2O / 4],
        ['0.25 inwc', inH2O / 4],
        ['0.25 in. H₂O', inH2O / 4],
        ['0.25 inches of water', inH2O / 4],
        ['a quarter inch', inH2O / 4],
        ['1/4"', inH2O / 4],
        ['0,250 in wg', inH2O / 4],
        ['62 Pa', 62],
        ['62pa', 62],
        ['0.062 kPa', 62],
      ],
    ],
    [
      kinds.roomPressure,
      [
        ['5', 5],
        ['-5 Pa', -5],
        ['−5 Pa', -5],
        ['–5 Pa', -5],
        ['0.02 in wg', 0.02 * inH2O],
      ],
    ],
    [
      kinds.temperature,
      [
        ['68', 20],
        ['68 F', 20],
        ['68°F', 20],
        ['68 ° F', 20],
        ['68ºF', 20],
        ['68 ℉', 20],
        ['68 degrees', 20],
        ['68 degrees Fahrenheit', 20],
        ['20°C', 20],
        ['20 C', 20],
        ['20 ℃', 20],
        ['-10 C', -10],
        ['–10 °C', -10],
        ['-40', -40],
        ['293.15 K', 20],
      ],
    ],
    [
      kinds.relativeHumidity,
      [
        ['55', 0.55],
        ['55%', 0.55],
        ['55 %', 0.55],
        ['55 percent', 0.55],
        ['55 per cent', 0.55],
        ['fifty five percent', 0.55],
        ['55 % RH', 0.55],
        ['55 RH', 0.55],
        ['0.5 %', 0.005],
        ['0', 0],
        ['100 %', 1],
      ],
    ],
    [
      kinds.insulation,
      [
        ['8', 8 * r],
        ['R-8', 8 * r],
        ['R8', 8 * r],
        ['R 8', 8 * r],
        ['r-value 8', 8 * r],
        ['R-4.2', 4.2 * r],
        ['RSI 1.4', 1.4],
        ['RSI-1,4', 1.4],
        ['1.4 RSI', 1.4],
        ['1.4 m2K/W', 1.4],
        ['1.4 m²·K/W', 1.4],
      ],
    ],
    [
      kinds.minutes,
      [
        ['20', 1200],
        ['20 min', 1200],
        ['20m', 1200],
        ['7 s', 7],
        ['90 sec', 90],
        ['1 h 30 min', 5400],
        ['1h30', 5400],
        ['1 1/2 hours', 5400],
        ['1 min 30 s', 90],
        ['half an hour', 1800],
        ['an hour and a half', 5400],
      ],
    ],
    [kinds.stopwatchTime, [['7.4', 7.4]]],
    [kinds.hoursPerDay, [['2', 7200]]],
    [
      kinds.fanPower,
      [
        ['30', 30],
        ['30 W', 30],
        ['0.03 kW', 30],
        ['30 watts', 30],
      ],
    ],
    [
      kinds.heatOutput,
      [
        ['5100', (5100 * 1055.05585262) / 3600],
        ['5100 Btu/h', (5100 * 1055.05585262) / 3600],
        ['5,100 BTUH', (5100 * 1055.05585262) / 3600],
        ['1500 W', 1500],
        ['1.5 kW', 1500],
      ],
    ],
    [
      kinds.degreeDays,
      [
        ['5400', 3000],
        ['HDD65 5400', 3000],
        ['HDD 5400', 3000],
        ['5400 HDD65', 3000],
        ['5400 °F·d', 3000],
        ['5,400 degree days', 3000],
        ['3000 K·d', 3000],
        ['3000 °C days', 3000],
      ],
    ],
    [
      kinds.boxVolume,
      [
        ['21', 21],
        ['21 in3', 21],
        ['21 cu. in.', 21],
        ['30.3 in³', 30.3],
        ['12 1/2 cubic inches', 12.5],
      ],
    ],
    [
      kinds.containerVolume,
      [
        ['55', 0.20819764812],
        ['55 gal', 0.20819764812],
        ['208 L', 0.208],
        ['208 litres', 0.208],
        ['7 ft3', 7 * foot ** 3],
        ['7 cu ft', 7 * foot ** 3],
      ],
    ],
    [
      kinds.roomArea,
      [
        ['54', 54 * foot ** 2],
        ['54 sq ft', 54 * foot ** 2],
        ['54 sq. ft.', 54 * foot ** 2],
        ['54 ft2', 54 * foot ** 2],
        ['54 ft²', 54 * foot ** 2],
        ['54 square feet', 54 * foot ** 2],
        ['5 m²', 5],
        ['5 ㎡', 5],
      ],
    ],
    [
      kinds.roomVolume,
      [
        ['430 cu ft', 430 * foot ** 3],
        ['430 ft3', 430 * foot ** 3],
        ['12 m3', 12],
      ],
    ],
    [
      kinds.airSpeed,
      [
        ['800', 4.064],
        ['800 fpm', 4.064],
        ['800 ft/min', 4.064],
        ['800 feet per minute', 4.064],
        ['4 m/s', 4],
      ],
    ],
    [
      kinds.electricityPrice,
      [
        ['0.16', 0.16],
        ['$0.16', 0.16],
        ['$.16/kWh', 0.16],
        ['$0.16 per kWh', 0.16],
        ['16 cents', 0.16],
        ['16¢/kWh', 0.16],
        ['16 c per kWh', 0.16],
      ],
    ],
    [kinds.fuelPrice, [['$1.40 per therm', 1.4]]],
    [
      kinds.money,
      [
        ['$1,250', 1250],
        ['45 dollars', 45],
        ['50 cents', 0.5],
      ],
    ],
    [
      kinds.count,
      [
        ['3', 3],
        ['three', 3],
        ['none', 0],
        ['twenty', 20],
        ['3x', 3],
      ],
    ],
    [
      kinds.loudness,
      [
        ['1.5', 1.5],
        ['1.5 sones', 1.5],
        ['one sone', 1],
      ],
    ],
    [
      kinds.current,
      [
        ['15 A', 15],
        ['15 amps', 15],
        ['15a', 15],
      ],
    ],
    [
      kinds.voltage,
      [
        ['120 V', 120],
        ['120 volts', 120],
        ['300 mV', 0.3],
      ],
    ],
    [
      kinds.airDensity,
      [
        ['0.075', 0.075 * (0.45359237 / foot ** 3)],
        ['1.2 kg/m³', 1.2],
      ],
    ],
    [
      kinds.efficacy,
      [
        ['2.8', 2.8 * cfm],
        ['2.8 cfm/W', 2.8 * cfm],
        ['1.3 L/s per W', 0.0013],
      ],
    ],
    [
      kinds.airChanges,
      [
        ['8', 8],
        ['8 ACH', 8],
        ['8 air changes per hour', 8],
      ],
    ],
    [
      kinds.energy,
      [
        ['120 kWh', 4.32e8],
        ['10 therms', 1.05505585262e9],
      ],
    ],
    [
      kinds.soundLevel,
      [
        ['45 dBA', 45],
        ['45 dB(A)', 45],
      ],
    ],
    [
      kinds.roughnessHeight,
      [
        ['0.0003 ft', 0.0003 * foot],
        ['0.09 mm', 0.00009],
        ['90 microns', 0.00009],
      ],
    ],
    [
      kinds.altitude,
      [
        ['5,280 ft', 5280 * foot],
        ['-100 ft', -100 * foot],
      ],
    ],
    [
      kinds.lossCoefficient,
      [
        ['0.35', 0.35],
        ['1/4', 0.25],
      ],
    ],
  ];
  for (const [kind, rows] of table) {
    test.each(rows)(`${kind.noun}: %s`, (typed, si) => same(read(kind, typed), si));
  }

  it('leaves box fill in the cubic inches it was given in', () => {
    for (const typed of ['21', '30.3', '12.5', '20.25']) expect(read(kinds.boxVolume, typed)).toBe(Number(typed));
  });

  it('takes a bare number in the crew’s own unit', () => {
    const metric: readonly (readonly [Kind, string, number])[] = [
      [kinds.airflow, '52', 0.052],
      [kinds.staticPressure, '62', 62],
      [kinds.temperature, '20 degrees', 20],
      [kinds.temperature, '20', 20],
      [kinds.insulation, '1.4', 1.4],
      [kinds.degreeDays, '3000 degree days', 3000],
      [kinds.airSpeed, '4', 4],
      [kinds.roomArea, '5', 5],
    ];
    for (const [kind, typed, si] of metric) same(read(kind, typed, 'metric'), si);
  });

  it('takes R as the inch-pound value and RSI as the metric one, whoever writes it', () => {
    for (const units of ['inch-pound', 'metric'] satisfies UnitSystem[]) {
      same(read(kinds.insulation, 'R-8', units), 8 * r);
      same(read(kinds.insulation, 'RSI 1.4', units), 1.4);
    }
  });
});
