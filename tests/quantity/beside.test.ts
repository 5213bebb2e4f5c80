import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { withMetric } from '#quantity/beside.ts';
import type { Kind } from '#quantity/kind.ts';
import * as kinds from '#quantity/kinds.ts';

describe('a number in a sentence gets its metric beside it', () => {
  // Factors by definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 cfm = 0.47194745 L/s; 1 in. w.g. = 249.089 Pa.
  test.each([
    ['Keep it 3 in off the lamp.', 'Keep it 3 in (76 mm) off the lamp.'],
    ['The bay is 14-1/2 in wide.', 'The bay is 14-1/2 in (368 mm) wide.'],
    ['8 ft 6 in long', '8 ft 6 in (2.59 m) long'],
    ['18 ft 4 in flex; wall cap', '18 ft (5.49 m) 4 in (102 mm) flex; wall cap'],
    ['1/4 in for each foot', '1/4 in for each foot (20.8 mm per m)'],
    ['usually 53 to 72 cfm', 'usually 53 to 72 cfm (25 to 34 L/s)'],
    ['50 or 80 cfm', '50 or 80 cfm (23.6 L/s or 37.8 L/s)'],
    ['1 cfm per sq ft', '1 cfm per sq ft (5.1 L/s per m²)'],
    ['cold (below about 40 °F outside)', 'cold (below about 40 °F (4.5 °C) outside)'],
    ['-20 °F, and 10 °F warmer', '-20 °F (-29 °C), and 10 °F warmer (5.6 K)'],
    ['R-4 to R-8, or R-4.3', 'R-4 to R-8 (RSI 0.7 to RSI 1.41), or R-4.3 (RSI 0.76)'],
    ['12-foot duct, 1/2-inch drywall', '12-foot (3.66 m) duct, 1/2-inch (13 mm) drywall'],
    ['0.25 in. w.g.', '0.25 in. w.g. (62 Pa)'],
    ['5,000 ft up', '5,000 ft (1524 m) up'],
  ])('%s', (text, told) => {
    expect(withMetric(text)).toBe(told);
    expect(withMetric(told)).toBe(told);
  });

  it('as finely as it was written, so that a sum still comes out', () => {
    expect(withMetric('61.3 cfm ÷ 0.0873 sq ft = 702 fpm')).toBe(
      '61.3 cfm (28.9 L/s) ÷ 0.0873 sq ft (0.00811 m²) = 702 fpm (3.57 m/s)',
    );
  });

  test.each([
    '3 in the attic, 2 in 10 cases, 4 in Denver',
    'IRC 2021 in most states; job 3 in autumn; table 7 in it',
    'Read as “14 ft 4 in flex”.',
    'collar=4 in',
    '102 mm (4 in)',
    '61 cfm (28.8 L/s)',
    '15 A, 14 gauge, 25 min, 12 Pa, 0.9 sones',
    'Step 3 of 12; type 2',
  ])('but %s stays as it is', (text) => {
    expect(withMetric(text)).toBe(text);
  });

  const alike: readonly (readonly [string, Kind])[] = [
    ['airflow', kinds.airflow],
    ['house leakage', kinds.houseLeakage],
    ['static pressure', kinds.staticPressure],
    ['air speed', kinds.airSpeed],
    ['duct length', kinds.ductLength],
    ['small length', kinds.smallLength],
    ['temperature', kinds.temperature],
    ['insulation', kinds.insulation],
    ['opening', kinds.openingArea],
    ['room volume', kinds.roomVolume],
  ];
  test.each(alike)('and it is the one a value has: %s', (_, kind) => {
    fc.assert(
      fc.property(fc.double({ min: kind.least, max: kind.most, noNaN: true }), (value) => {
        const printed = kind.showShort(value, 'inch-pound');
        const reading = kind.read(printed, 'inch-pound');
        fc.pre('value' in reading);
        if ('value' in reading) expect(withMetric(printed)).toBe(kind.show(reading.value, 'both'));
      }),
      { seed: 1, numRuns: 60 },
    );
  });
});

describe('a crew that reads both systems', () => {
  const every = Object.entries<Kind>(kinds);

  test.each(every)('types back what it is shown, and means inch-pound by a bare number: %s', (_, kind) => {
    const value = kind.least + (kind.most - kind.least) * 0.37;
    const usual = kind === (kinds.count as Kind) ? Math.round(value) : value;
    expect(kind.read(kind.showShort(usual, 'both'), 'both')).toEqual(
      kind.read(kind.showShort(usual, 'inch-pound'), 'inch-pound'),
    );
    expect(kind.read('2', 'both')).toEqual(kind.read('2', 'inch-pound'));
    const estimate = { low: kind.least, typical: usual, high: kind.most };
    const again = kind.readEstimate(kind.showEstimate(estimate, 'both'), 'both');
    expect(again).toEqual(kind.readEstimate(kind.showEstimate(estimate, 'inch-pound'), 'inch-pound'));
  });
});
