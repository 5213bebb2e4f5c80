import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';
import { dimensions } from '#quantity/dimensions.ts';
import { fromSi, toSi, warmUnits } from '#quantity/unit-factors.ts';
import { same } from './check.ts';

describe('mathjs is fetched only when it is wanted', () => {
  it('is not loaded by the kinds, nor by printing and reading what is in SI already', () => {
    const script = fileURLToPath(new URL('./loads-no-mathjs.ts', import.meta.url));
    const said = execFileSync(process.execPath, ['--import', 'tsx', script], { encoding: 'utf8' });
    expect(said.split('\n')).toEqual(['2.4 m', '5 Pa', '{"value":5}', 'not loaded']);
  });

  it('is loaded on request, with units the trade uses', () => {
    warmUnits();
    warmUnits();
    expect(toSi(1, 'cfm', 'm^3/s')).toBe(0.0004719474432);
  });
});

/**
 * Exact by definition: the foot, 0.3048 m; the pound, 0.45359237 kg; the US gallon, 231 in³; the Btu (IT), 1055.05585262 J.
 * The rest is arithmetic on them. Source: NIST SP 811, appendix B.8, from memory; worked out here by hand.
 */
describe('a unit is what the book says it is', () => {
  const foot = 0.3048;
  const table: readonly (readonly [string, string, number])[] = [
    ['in', 'm', foot / 12],
    ['ft', 'm', foot],
    ['yd', 'm', 3 * foot],
    ['um', 'm', 1e-6],
    ['ft^2', 'm^2', foot ** 2],
    ['in^2', 'm^2', (foot / 12) ** 2],
    ['ft^3', 'm^3', foot ** 3],
    ['gallon', 'm^3', 231 * (foot / 12) ** 3],
    ['L', 'm^3', 1e-3],
    ['cm^3', 'in^3', 1 / 16.387064],
    ['cfm', 'm^3/s', 0.0004719474432],
    ['L/s', 'm^3/s', 1e-3],
    ['m^3/hour', 'm^3/s', 1 / 3600],
    // Conventional water, 1000 kg/m³ under 9.80665 m/s²: one inch is 249.08891 Pa exactly. Own arithmetic.
    ['inH2O', 'Pa', 1000 * 9.80665 * 0.0254],
    ['mmH2O', 'Pa', 9.80665],
    ['mbar', 'Pa', 100],
    ['psi', 'Pa', 6894.75729316836],
    ['fpm', 'm/s', foot / 60],
    ['mi/hour', 'm/s', 0.44704],
    ['km/hour', 'm/s', 1 / 3.6],
    ['Rvalue', 'm^2 K/W', (foot ** 2 * (5 / 9) * 3600) / 1055.05585262],
    ['BTU/hour', 'W', 1055.05585262 / 3600],
    ['1000 BTU/hour', 'W', 1055055.85262 / 3600],
    ['kW hour', 'J', 3.6e6],
    ['therm', 'J', 1.05505585262e8],
    ['degR day', 'K day', 5 / 9],
    ['lbm/ft^3', 'kg/m^3', 0.45359237 / foot ** 3],
    ['cfm/W', 'm^3/s/W', 0.0004719474432],
    ['0.01', '1', 0.01],
  ];
  test.each(table)('1 %s in %s', (unit, si, factor) => same(toSi(1, unit, si), factor));

  // Fixed points of both scales, exact by definition.
  test.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [68, 20],
  ])('%d °F is %d °C', (fahrenheit, celsius) => {
    expect(toSi(fahrenheit, 'degF', 'degC')).toBe(celsius);
    expect(fromSi(celsius, 'degF', 'degC')).toBe(fahrenheit);
  });

  it('counts absolute zero from the same place', () => expect(toSi(0, 'K', 'degC')).toBe(-273.15));
});

describe('every unit in the list of words is one mathjs can convert', () => {
  for (const [name, { units, si }] of Object.entries(dimensions)) {
    test.each(Object.keys(units).filter((unit) => unit !== 'own'))(`${name} in %s`, (unit) => {
      expect(toSi(1, unit, si)).not.toBeNaN();
    });
  }
});
