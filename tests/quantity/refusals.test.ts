import { describe, expect, it, test } from 'vitest';
import type { Kind } from '#quantity/kind.ts';
import * as kinds from '#quantity/kinds.ts';
import { refusal } from './check.ts';

describe('a refusal says what was wrong and what would do', () => {
  const lengths: readonly (readonly [string, string])[] = [
    ['62 Pa', 'That is a pressure; I need a length, such as 4 in or 100 mm.'],
    ['110 cfm', 'That is an airflow; I need a length, such as 4 in or 100 mm.'],
    ['68 F', 'That is a temperature; I need a length, such as 4 in or 100 mm.'],
    ['4 sq in', 'That is an area; I need a length, such as 4 in or 100 mm.'],
    ['4 ft²', 'That is an area; I need a length, such as 4 in or 100 mm.'],
    ['R-8', 'That is an insulation value; I need a length, such as 4 in or 100 mm.'],
    ['$4', 'That is an amount of money; I need a length, such as 4 in or 100 mm.'],
    ['', 'Nothing was given; I need a length, such as 4 in or 100 mm.'],
    [' \n\t ', 'Nothing was given; I need a length, such as 4 in or 100 mm.'],
    ['banana', 'I cannot read “banana”; I need a length, such as 4 in or 100 mm.'],
    ['😀', 'I cannot read “😀”; I need a length, such as 4 in or 100 mm.'],
    ['\0', 'I cannot read that; I need a length, such as 4 in or 100 mm.'],
    ['4\0in', 'I cannot read “4in”; I need a length, such as 4 in or 100 mm.'],
    ['4 furlongs', 'I do not know the unit “furlongs”; I need a length, such as 4 in or 100 mm.'],
    ['4 6', 'I cannot tell what the two numbers mean; I need a length, such as 4 in or 100 mm.'],
    ['5 to 6 in', 'That is a range; I need one length, such as 4 in or 100 mm.'],
    ['-4 in', 'A length cannot be negative; I need a length, such as 4 in or 100 mm.'],
    ['0', 'Zero will not do; I need a length from 2 in to 20 in, such as 4 in or 100 mm.'],
    ['4 ft', '“4 ft” is too much; I need a length from 2 in to 20 in, such as 4 in or 100 mm.'],
    ['4 mm', '“4 mm” is too little; I need a length from 2 in to 20 in, such as 4 in or 100 mm.'],
    ['1 ft 14 in', 'After a whole number of ft I expect fewer than 12 in; I need a length, such as 4 in or 100 mm.'],
    ['1.5 ft 2 in', 'After a whole number of ft I expect fewer than 12 in; I need a length, such as 4 in or 100 mm.'],
    ['4-6', 'That could be 4 ft 6 in, or from 4 to 6; write it out as one of those, with its unit.'],
    ['6-4 ft', 'With ft at its end that is unclear; write 6 ft 4 in.'],
    ['4 in (200 mm)', 'The two numbers in “4 in (200 mm)” do not agree; I need a length, such as 4 in or 100 mm.'],
    ['x'.repeat(10_000), 'That is too long to read; I need a length, such as 4 in or 100 mm.'],
    [' '.repeat(10_000), 'That is too long to read; I need a length, such as 4 in or 100 mm.'],
  ];
  test.each(lengths)('%j', (typed, sentence) => {
    expect(refusal(kinds.ductDiameter, typed)).toBe(sentence);
  });

  it('gives the limits in the crew’s own units', () => {
    expect(refusal(kinds.ductDiameter, '4 ft', 'metric')).toBe(
      '“4 ft” is too much; I need a length from 51 mm to 508 mm, such as 4 in or 100 mm.',
    );
    expect(refusal(kinds.temperature, '500 F', 'inch-pound')).toBe(
      '“500 F” is too much; I need a temperature from -58 °F to 212 °F, such as 68 °F or 20 °C.',
    );
  });

  it('takes the very limits it names', () => {
    for (const typed of ['2 in', '20 in']) expect(kinds.ductDiameter.read(typed, 'inch-pound')).toHaveProperty('value');
    for (const typed of ['51 mm', '508 mm']) expect(kinds.ductDiameter.read(typed, 'metric')).toHaveProperty('value');
    for (const typed of ['0 %', '100 %']) expect(kinds.percentage.read(typed, 'metric')).toHaveProperty('value');
    expect(refusal(kinds.percentage, '100.4 %')).toContain('too much');
  });

  it('repeats at most thirty characters of what was typed', () => {
    const sentence = refusal(kinds.airflow, `please ${'very '.repeat(20)}much`);
    expect(sentence).toBe(
      'I cannot read “please very very very very ve…”; I need an airflow, such as 80 cfm or 38 L/s.',
    );
  });
});

describe('nothing typed is ever worked out as a sum', () => {
  const tries = [
    '=1+1',
    '1+1',
    '4*2 in',
    '2^10',
    'ones(3000,3000)',
    'import("fs")',
    'createUnit("foo")',
    'sqrt(16) in',
    '0x10 in',
    '1e1 in',
    '1e999',
    'Infinity',
    '-Infinity',
    'NaN',
    'null',
    'constructor',
    '__proto__',
    '4 constructor',
    '4 __proto__',
    'pi in',
    '1/0 in',
    '0/0',
    '4²',
    '4①',
    '٤ in',
    '4 in; drop table',
    '4 in\u202e',
    '4\u200b in',
  ];
  test.each(tries)('%j is refused', (typed) => {
    for (const kind of [kinds.ductDiameter, kinds.airflow, kinds.count]) {
      expect(refusal(kind, typed)).toMatch(/^[^\p{C}]+\.$/u);
      expect(kind.readEstimate(typed, 'metric')).toHaveProperty('rejected');
    }
  });

  it('does not take a number too big to hold', () => {
    expect(refusal(kinds.airflow, `${'9'.repeat(199)}`)).toContain('is too much');
  });
});

describe('two readings that differ are never guessed between', () => {
  const unclear: readonly (readonly [Kind, string])[] = [
    [kinds.ductLength, '8-10 ft'],
    [kinds.ductLength, '8 6'],
    [kinds.ductLength, '8 ft 1/2'],
    [kinds.ductLength, '8 ft 6 in 3'],
    [kinds.ductLength, '8 ft by 10 ft'],
    [kinds.ductLength, '8 x 10'],
    [kinds.ductLength, '8"6\''],
    [kinds.ductLength, '4 5/2'],
    [kinds.ductLength, 'five twenty feet'],
    [kinds.ductLength, 'a'],
    [kinds.airflow, '1 200 cfm'],
    [kinds.airflow, '1234,567 cfm'],
    [kinds.airflow, '1,20,300 cfm'],
    [kinds.airflow, '1.2.3 cfm'],
    [kinds.airflow, '110 cfm at 0.1 in wg'],
    [kinds.airflow, 'one ten cfm'],
    [kinds.airflow, 'over 60 cfm'],
    [kinds.relativeHumidity, '0.55'],
    [kinds.minutes, '1:30'],
    [kinds.count, '2.5'],
    [kinds.count, '3 ft'],
    [kinds.electricityPrice, '$1.40 per therm'],
    [kinds.airflow, '1200 cfm50'],
  ];
  test.each(unclear.map(([kind, typed]) => [kind.noun, typed, kind] as const))('%s: %s', (_, typed, kind) => {
    expect(refusal(kind, typed)).toMatch(/\.$/);
    expect(kind.readEstimate(typed, 'inch-pound')).toHaveProperty('rejected');
  });

  it('asks for the percent sign where a bare number could be a share', () => {
    expect(refusal(kinds.relativeHumidity, '0.55')).toBe(
      '“0.55” could be a share or a percentage; write it with a percent sign, such as 55 %.',
    );
  });

  it('asks a metric crew which it means by 8-10', () => {
    expect(kinds.ductLength.readEstimate('8-10', 'metric')).toEqual({
      rejected: 'That could be 8 ft 10 in, or from 8 to 10; write it out as one of those, with its unit.',
    });
  });

  it('wants a range the right way round, with the likeliest inside it', () => {
    const rejected = (typed: string) => kinds.airflow.readEstimate(typed, 'inch-pound');
    expect(rejected('80 to 60 cfm')).toEqual({
      rejected: 'That range runs backwards; put the smaller number first.',
    });
    expect(rejected('60 to 80 cfm, most likely 90')).toEqual({
      rejected: 'The likeliest value must lie inside the range; write it as 60 to 80, most likely 72, with the unit.',
    });
    expect(rejected('60 to 9000 cfm')).toEqual({
      rejected: '“60 to 9000 cfm” is too much; I need an airflow from 0 cfm to 2000 cfm, such as 80 cfm or 38 L/s.',
    });
    expect(rejected('60 cfm to 70 Pa')).toEqual({
      rejected: 'That is a pressure; I need an airflow, such as 80 cfm or 38 L/s.',
    });
    expect(kinds.ductLength.readEstimate('8 ft 6 in to 9', 'inch-pound')).toEqual({
      rejected: 'The second number needs its unit too; I need a length, such as 14 ft or 4.3 m.',
    });
  });
});
