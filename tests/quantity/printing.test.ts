import { describe, expect, it, test } from 'vitest';
import type { Kind } from '#quantity/kind.ts';
import * as kinds from '#quantity/kinds.ts';

/** Kind, number and unit, then what an inch-pound crew and a metric crew read. */
type Row = readonly [kind: Kind, number: number, unit: string, inchPound: string, metric: string];

describe('a value is printed in the crew’s units, the other beside it, to what the trade reads', () => {
  const rows: readonly Row[] = [
    [kinds.airflow, 73, 'cfm', '73 cfm (34.5 L/s)', '34.5 L/s (73 cfm)'],
    [kinds.airflow, 110, 'cfm', '110 cfm (51.9 L/s)', '51.9 L/s (110 cfm)'],
    [kinds.airflow, 400, 'cfm', '400 cfm (189 L/s)', '189 L/s (400 cfm)'],
    [kinds.airflow, 0, 'cfm', '0 cfm (0 L/s)', '0 L/s (0 cfm)'],
    [kinds.houseLeakage, 1200, 'cfm', '1200 cfm50 (566 L/s at 50 Pa)', '566 L/s at 50 Pa (1200 cfm50)'],
    [kinds.houseLeakage, 12000, 'cfm', '12,000 cfm50 (5663 L/s at 50 Pa)', '5663 L/s at 50 Pa (12,000 cfm50)'],
    [kinds.staticPressure, 0.25, 'inH2O', '0.25 in. w.g. (62 Pa)', '62 Pa (0.25 in. w.g.)'],
    [kinds.staticPressure, 0.1, 'inH2O', '0.1 in. w.g. (25 Pa)', '25 Pa (0.1 in. w.g.)'],
    [kinds.staticPressure, 2, 'Pa', '0.008 in. w.g. (2 Pa)', '2 Pa (0.008 in. w.g.)'],
    [kinds.staticPressure, 1.25, 'inH2O', '1.3 in. w.g. (311 Pa)', '311 Pa (1.3 in. w.g.)'],
    [kinds.roomPressure, -3.2, 'Pa', '-3.2 Pa', '-3.2 Pa'],
    [kinds.ductDiameter, 4, 'in', '4 in (102 mm)', '102 mm (4 in)'],
    [kinds.ductDiameter, 4.5, 'in', '4 1/2 in (114 mm)', '114 mm (4 1/2 in)'],
    [kinds.ductDiameter, 150, 'mm', '5 7/8 in (150 mm)', '150 mm (5 7/8 in)'],
    [kinds.smallLength, 0.75, 'in', '3/4 in (19 mm)', '19 mm (3/4 in)'],
    [kinds.smallLength, 0.375, 'in', '3/8 in (10 mm)', '10 mm (3/8 in)'],
    [kinds.smallLength, 0, 'in', '0 in (0 mm)', '0 mm (0 in)'],
    [kinds.doorWidth, 30, 'in', '30 in (762 mm)', '762 mm (30 in)'],
    [kinds.roomLength, 8.5, 'ft', '8 ft 6 in (2.59 m)', '2.59 m (8 ft 6 in)'],
    [kinds.roomLength, 14, 'ft', '14 ft (4.27 m)', '4.27 m (14 ft)'],
    [kinds.ductLength, 95.6, 'in', '8 ft (2.43 m)', '2.43 m (8 ft)'],
    [kinds.ductLength, 24, 'in', '2 ft (610 mm)', '610 mm (2 ft)'],
    [kinds.ductLength, 23.95, 'in', '2 ft (608 mm)', '608 mm (2 ft)'],
    [kinds.ductLength, 23.5, 'in', '23 1/2 in (597 mm)', '597 mm (23 1/2 in)'],
    [kinds.altitude, 5280, 'ft', '5280 ft (1609 m)', '1609 m (5280 ft)'],
    [kinds.roughnessHeight, 0.0003, 'ft', '0.0003 ft (0.09 mm)', '0.09 mm (0.0003 ft)'],
    [kinds.roomArea, 54, 'ft^2', '54 sq ft (5.02 m²)', '5.02 m² (54 sq ft)'],
    [kinds.openingArea, 30, 'in^2', '30 sq in (194 cm²)', '194 cm² (30 sq in)'],
    [kinds.roomVolume, 430, 'ft^3', '430 cu ft (12.2 m³)', '12.2 m³ (430 cu ft)'],
    [kinds.containerVolume, 55, 'gallon', '55 gal (208 L)', '208 L (55 gal)'],
    [kinds.boxVolume, 30.3, 'in^3', '30.3 cu in (496.5 cm³)', '496.5 cm³ (30.3 cu in)'],
    [kinds.airSpeed, 836, 'fpm', '840 fpm (4.2 m/s)', '4.2 m/s (840 fpm)'],
    [kinds.temperature, 68, 'degF', '68 °F (20 °C)', '20 °C (68 °F)'],
    [kinds.temperature, -10, 'degF', '-10 °F (-23.5 °C)', '-23.5 °C (-10 °F)'],
    [kinds.temperature, -0.1, 'degC', '32 °F (0 °C)', '0 °C (32 °F)'],
    [kinds.relativeHumidity, 55, '0.01', '55 %', '55 %'],
    [kinds.insulation, 8, 'Rvalue', 'R-8 (RSI 1.41)', 'RSI 1.41 (R-8)'],
    [kinds.insulation, 4.2, 'Rvalue', 'R-4.2 (RSI 0.74)', 'RSI 0.74 (R-4.2)'],
    [kinds.minutes, 25, 'minute', '25 min', '25 min'],
    [kinds.minutes, 90, 's', '90 s', '90 s'],
    [kinds.minutes, 150, 'minute', '2 h 30 min', '2 h 30 min'],
    [kinds.minutes, 2, 'hour', '2 h', '2 h'],
    [kinds.stopwatchTime, 7.42, 's', '7.4 s', '7.4 s'],
    [kinds.fanPower, 28.57, 'W', '29 W', '29 W'],
    [kinds.fanPower, 4.35, 'W', '4.4 W', '4.4 W'],
    [kinds.heatOutput, 1500, 'W', '5120 Btu/h (1500 W)', '1500 W (5120 Btu/h)'],
    [kinds.heatOutput, 60000, 'BTU/hour', '60,000 Btu/h (17.6 kW)', '17.6 kW (60,000 Btu/h)'],
    [kinds.loudness, 1.5, '1', '1.5 sones', '1.5 sones'],
    [kinds.loudness, 1, '1', '1 sone', '1 sone'],
    [kinds.current, 15, 'A', '15 A', '15 A'],
    [kinds.voltage, 0.3, 'V', '0.3 V', '0.3 V'],
    [kinds.degreeDays, 5400, 'degR day', '5400 °F·d (3000 K·d)', '3000 K·d (5400 °F·d)'],
    [kinds.airDensity, 1.2, 'kg/m^3', '0.075 lb/ft³ (1.2 kg/m³)', '1.2 kg/m³ (0.075 lb/ft³)'],
    [kinds.efficacy, 2.8, 'cfm/W', '2.8 cfm/W (1.32 L/s per W)', '1.32 L/s per W (2.8 cfm/W)'],
    [kinds.airChanges, 8, '1', '8 air changes per hour', '8 air changes per hour'],
    [kinds.energy, 13.04, 'kW hour', '13 kWh', '13 kWh'],
    [kinds.money, 12.5, '1', '$12.50', '$12.50'],
    [kinds.money, 152.8, '1', '$153', '$153'],
    [kinds.electricityPrice, 0.16, '1', '$0.16 per kWh', '$0.16 per kWh'],
    [kinds.electricityPrice, 0.145, '1', '$0.145 per kWh', '$0.145 per kWh'],
    [kinds.fuelPrice, 1.4, '1', '$1.40 per therm', '$1.40 per therm'],
    [kinds.count, 3, '1', '3', '3'],
    [kinds.lossCoefficient, 0.35, '1', '0.35', '0.35'],
  ];
  test.each(rows.map((row) => [row[3], row] as const))('%s', (_, [kind, number, unit, inchPound, metric]) => {
    const value = kind.from(number, unit);
    expect(kind.show(value, 'inch-pound')).toBe(inchPound);
    expect(kind.show(value, 'metric')).toBe(metric);
  });

  it('prints the crew’s units alone when there is little room', () => {
    expect(kinds.airflow.showShort(kinds.airflow.from(73, 'cfm'), 'inch-pound')).toBe('73 cfm');
    expect(kinds.airflow.showShort(kinds.airflow.from(73, 'cfm'), 'metric')).toBe('34.5 L/s');
  });
});

describe('a range is printed with its unit once', () => {
  const spans: readonly (readonly [Kind, number, number, string, string, string])[] = [
    [kinds.airflow, 47, 74, 'cfm', '47 to 74 cfm (22 to 35 L/s)', '22 to 35 L/s (47 to 74 cfm)'],
    [kinds.ductLength, 12, 16.5, 'ft', '12 ft to 16 ft 6 in (3.66 to 5.03 m)', '3.66 to 5.03 m (12 ft to 16 ft 6 in)'],
    [kinds.ductLength, 12, 16, 'ft', '12 to 16 ft (3.66 to 4.88 m)', '3.66 to 4.88 m (12 to 16 ft)'],
    [kinds.ductDiameter, 3.5, 4, 'in', '3 1/2 to 4 in (89 to 102 mm)', '89 to 102 mm (3 1/2 to 4 in)'],
    [kinds.insulation, 8, 11, 'Rvalue', 'R-8 to R-11 (RSI 1.41 to RSI 1.94)', 'RSI 1.41 to RSI 1.94 (R-8 to R-11)'],
    [kinds.temperature, -10, 20, 'degF', '-10 to 20 °F (-23.5 to -6.5 °C)', '-23.5 to -6.5 °C (-10 to 20 °F)'],
    [kinds.loudness, 1, 1.5, '1', '1 to 1.5 sones', '1 to 1.5 sones'],
    [kinds.minutes, 20, 30, 'minute', '20 to 30 min', '20 to 30 min'],
    [kinds.minutes, 1.5, 30, 'minute', '90 s to 30 min', '90 s to 30 min'],
    [kinds.money, 4.5, 6, '1', '$4.50 to $6.00', '$4.50 to $6.00'],
    [kinds.airflow, 73.1, 73.2, 'cfm', '73 cfm (34.5 L/s)', '34 to 35 L/s (73 cfm)'],
  ];
  test.each(spans.map((row) => [row[4], row] as const))('%s', (_, [kind, from, to, unit, inchPound, metric]) => {
    const span = { low: kind.from(from, unit), high: kind.from(to, unit) };
    expect(kind.showRange(span, 'inch-pound')).toBe(inchPound);
    expect(kind.showRange(span, 'metric')).toBe(metric);
    expect(kind.showRangeShort(span, 'metric')).toBe(metric.replace(/ \(.*/, ''));
  });

  it('says the likeliest of an estimate, and only the value of an exact one', () => {
    const cfm = (value: number) => kinds.airflow.from(value, 'cfm');
    const { showEstimate } = kinds.airflow;
    expect(showEstimate({ low: cfm(47), typical: cfm(59), high: cfm(74) }, 'inch-pound')).toBe(
      '47 to 74 cfm (22 to 35 L/s), most likely 59 cfm',
    );
    expect(showEstimate({ low: cfm(59), typical: cfm(59), high: cfm(59) }, 'inch-pound')).toBe('59 cfm (27.8 L/s)');
  });
});

describe('a chart or a table asks a kind for its scale', () => {
  it('gives the unit and the plain number in it', () => {
    const { unit, of } = kinds.airflow.scale('metric');
    expect(unit).toBe('L/s');
    expect(of(kinds.airflow.from(110, 'cfm'))).toBeCloseTo(51.914218752, 9);
    expect(kinds.staticPressure.scale('inch-pound').unit).toBe('in. w.g.');
    expect(kinds.ductLength.scale('inch-pound').unit).toBe('ft');
    expect(kinds.insulation.scale('inch-pound').unit).toBe('R');
    expect(kinds.minutes.scale('metric').of(kinds.minutes.from(1.5, 'hour'))).toBe(90);
  });

  it('names the SI unit of its values', () => {
    expect(kinds.airflow.siUnit).toBe('m3/s');
    expect(kinds.temperature.siUnit).toBe('°C');
    expect(kinds.boxVolume.siUnit).toBe('in3');
  });

  it('says what a question takes', () => {
    expect(kinds.ductDiameter.accepts).toBe('a length, such as 4 in or 100 mm');
  });
});
