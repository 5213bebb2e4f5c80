import { describe, it, test } from 'vitest';
import * as kinds from '#quantity/kinds.ts';
import { read, same } from './check.ts';

/** Rows of "what was typed" and "what it is in SI". The definitions behind the figures are in unit-factors.test.ts. */
type Rows = readonly (readonly [typed: string, si: number])[];

const foot = 0.3048;
const inch = 0.0254;

describe('a length as it is written on site', () => {
  const eightSix = 102 * inch;
  const rows: Rows = [
    ['8 ft 6 in', eightSix],
    [`8'6"`, eightSix],
    [`8' 6"`, eightSix],
    [`8'-6"`, eightSix],
    [`8' 6`, eightSix],
    [`8' 6 1/2"`, 102.5 * inch],
    [`8'-6 1/2"`, 102.5 * inch],
    ['8-6', eightSix],
    ['8-6 1/2', 102.5 * inch],
    ['8-4-1/2', 100.5 * inch],
    ['8-10', 106 * inch],
    ['8 ft-6 in', eightSix],
    ['8ft6in', eightSix],
    ['8ft. 6in.', eightSix],
    ['8ft.6in.', eightSix],
    ['8 ft, 6 in', eightSix],
    ['8 feet & 6 inches', eightSix],
    ['102"', eightSix],
    ['102 inches', eightSix],
    ['8.5', eightSix],
    ['8 1/2 ft', eightSix],
    ['8½ ft', eightSix],
    ['14', 14 * foot],
    ['14-ft', 14 * foot],
    ['14 ft long', 14 * foot],
    ['about 14 ft', 14 * foot],
    ['~14 ft', 14 * foot],
    ['14 ft or so', 14 * foot],
    ['2.6 m', 2.6],
    ['2,6 m', 2.6],
    ['2600 mm', 2.6],
    ['2,600 mm', 2.6],
    ['260 cm', 2.6],
    ['2 m 60', 2.6],
    ['2 m 60 cm', 2.6],
    ['3 yards', 9 * foot],
    ['8 ft (2.4 m)', 8 * foot],
    ['8 ft 6 in (2.59 m)', eightSix],
    ['a 14 ft', 14 * foot],
  ];
  test.each(rows)('%s', (typed, si) => same(read(kinds.roomLength, typed), si));

  it('takes quotes, spaces and digits as phones draw them', () => {
    for (const typed of [
      '8’6”',
      '8′6″',
      '8′ 6′′',
      '8ʹ6ʺ',
      '８ ｆｔ ６ ｉｎ',
      '8\u00a0ft\u202f6\u00a0in',
      "8' 6''",
      '8‑6',
    ]) {
      same(read(kinds.roomLength, typed), eightSix);
    }
  });

  it('takes numbers as speech is written down', () => {
    const spoken: Rows = [
      ['eight feet six', eightSix],
      ['eight foot six inches', eightSix],
      ['eight feet and six inches', eightSix],
      ['eight and a half feet', eightSix],
      ['eight feet and a half', eightSix],
      ['eight point five feet', eightSix],
      ['Fourteen foot', 14 * foot],
      ['fourteen foot four inch', 172 * inch],
      ['twenty-five feet', 25 * foot],
      ['twenty five feet', 25 * foot],
      ['ninety-nine feet', 99 * foot],
      ['one hundred inches', 100 * inch],
      ['a hundred and ten inches', 110 * inch],
      ['two point six metres', 2.6],
    ];
    for (const [typed, si] of spoken) same(read(kinds.roomLength, typed), si);
  });

  it('takes a bare number as feet from one crew and metres from the other', () => {
    same(read(kinds.roomLength, '8'), 8 * foot);
    same(read(kinds.roomLength, '2.6', 'metric'), 2.6);
    same(read(kinds.roomLength, '2,6', 'metric'), 2.6);
    same(read(kinds.roomLength, '8-6', 'metric'), eightSix);
  });
});

describe('a duct diameter', () => {
  const rows: Rows = [
    ['4', 4 * inch],
    ['4 in', 4 * inch],
    ['4"', 4 * inch],
    ['4-inch', 4 * inch],
    ['four inch', 4 * inch],
    ['4 in. dia.', 4 * inch],
    ['4 1/2 in', 4.5 * inch],
    ['4½', 4.5 * inch],
    ['4 ½', 4.5 * inch],
    ['4-1/2 in', 4.5 * inch],
    ['4 and 1/2 in', 4.5 * inch],
    ['4 and a half', 4.5 * inch],
    ['9/2 in', 4.5 * inch],
    ['four and a half inches', 4.5 * inch],
    ['four inches and a half', 4.5 * inch],
    ['six and five eighths', 6.625 * inch],
    ['four and three quarters of an inch', 4.75 * inch],
    ['3⅞"', 3.875 * inch],
    ['100 mm', 0.1],
    ['10 cm', 0.1],
  ];
  test.each(rows)('%s', (typed, si) => same(read(kinds.ductDiameter, typed), si));
  it('is millimetres when a metric crew writes a bare number', () =>
    same(read(kinds.ductDiameter, '100', 'metric'), 0.1));
});

describe('a gap', () => {
  const rows: Rows = [
    ['½ in', inch / 2],
    ['1/2', inch / 2],
    ['half an inch', inch / 2],
    ['half inch', inch / 2],
    ['a quarter inch', inch / 4],
    ['three quarter inch', 0.75 * inch],
    ['three quarters of an inch', 0.75 * inch],
    ['an inch', inch],
    ['an inch and a half', 1.5 * inch],
    ['five sixteenths', (5 / 16) * inch],
    ['.75', 0.75 * inch],
    ['0', 0],
    ['zero', 0],
    ['none', 0],
  ];
  test.each(rows)('%s', (typed, si) => same(read(kinds.smallLength, typed), si));
});
