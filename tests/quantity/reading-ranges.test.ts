import { describe, expect, it, test } from 'vitest';
import * as kinds from '#quantity/kinds.ts';
import { estimated } from './check.ts';

describe('a range, when nobody knows better', () => {
  const flow: readonly (readonly [string, readonly number[]])[] = [
    ['60 to 80 cfm', [60, 70, 80]],
    ['60-80 cfm', [60, 70, 80]],
    ['60–80', [60, 70, 80]],
    ['60 cfm to 80 cfm', [60, 70, 80]],
    ['between 60 and 80 cfm', [60, 70, 80]],
    ['from 60 to about 80 cfm', [60, 70, 80]],
    ['60 to 80 cfm, most likely 72', [60, 72, 80]],
    ['47 to 74, most likely 59 cfm', [47, 59, 74]],
    ['60 to 80 cfm (28 to 38 L/s), most likely 72 cfm', [60, 72, 80]],
    ['sixty to eighty cfm probably seventy', [60, 70, 80]],
    ['1,200 to 1,400 cfm', [1200, 1300, 1400]],
    ['about 60 cfm', [60, 60, 60]],
    ['60 to 60 cfm', [60, 60, 60]],
  ];
  test.each(flow)('%s', (typed, cfm) => expect(estimated(kinds.airflow, typed)).toEqual(cfm));

  const lengths: readonly (readonly [string, readonly number[]])[] = [
    ['12 to 16 ft', [12, 14, 16]],
    ['12-16 ft', [12, 14, 16]],
    ['12-16', [12, 14, 16]],
    ['8 - 10', [8, 9, 10]],
    ['8–10 ft', [8, 9, 10]],
    ['8-6', [8.5, 8.5, 8.5]],
    ['8-6 to 9-6', [8.5, 9, 9.5]],
    ['8 ft 6 in to 9 ft 6 in', [8.5, 9, 9.5]],
    ['8 to 9 ft 6 in', [8, 8.75, 9.5]],
    ['12 ft to 16', [12, 14, 16]],
    ['between 12 and 16 feet', [12, 14, 16]],
    ['12-18 in', [1, 1.25, 1.5]],
  ];
  test.each(lengths)('%s', (typed, feet) => expect(estimated(kinds.ductLength, typed)).toEqual(feet));

  it('keeps its signs, its prefixes and its hyphens apart', () => {
    expect(estimated(kinds.temperature, '-10 to 20 F')).toEqual([-10, 5, 20]);
    expect(estimated(kinds.temperature, '-20 to -10 C', 'metric')).toEqual([-20, -15, -10]);
    expect(estimated(kinds.insulation, 'R-8 to R-12')).toEqual([8, 10, 12]);
    expect(estimated(kinds.insulation, 'R-8 to 12')).toEqual([8, 10, 12]);
    expect(estimated(kinds.minutes, '20-30 min')).toEqual([20, 25, 30]);
    expect(estimated(kinds.minutes, '20 min-30 min')).toEqual([20, 25, 30]);
    expect(estimated(kinds.relativeHumidity, '40 to 60 %')).toEqual([40, 50, 60]);
    expect(estimated(kinds.money, '$5 to $6')).toEqual([5, 5.5, 6]);
  });
});
