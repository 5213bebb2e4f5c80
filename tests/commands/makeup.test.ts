import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oneShot } from '#chat/one-shot.ts';
import makeup from '#commands/makeup.ts';
import { findingOf, once } from './talked.ts';

const asked = (...words: readonly string[]) => once(makeup, ...words);
const numberOf = (id: string, ...words: readonly string[]) =>
  findingOf(asked(...words), id).value?.number ?? Number.NaN;
const door = (gap: string, width = '30 in') => [`door-width=${width}`, `door-gap=${gap}`] as const;
const inch = 0.0254;

describe('the pressure a shut door takes', () => {
  // Orifice equation with a discharge coefficient of 0.60 and air of 1.2 kg/m³, own arithmetic: 0.6 (Q / 0.6 A)². Ours has 1.2014.
  it.each([
    ['50 cfm', '1/4 in', '30 in', 39.64],
    ['80 cfm', '1/2 in', '30 in', 25.37],
    ['110 cfm', '3/4 in', '28 in', 24.47],
    ['50 cfm', '1/2 in', '24 in', 15.48],
  ])('%s over %s under a %s door', (flow, gap, width, pressure) => {
    const number = numberOf('door-pressure', `delivered-airflow=${flow}`, ...door(gap, width));
    expect(number / pressure).toBeCloseTo(1.2014 / 1.2, 3);
  });

  it('reads the same in millimetres and litres', () => {
    const metric = oneShot(makeup, ['delivered-airflow=37.7557954', 'door-width=762', 'door-gap=12.7'], {
      units: 'metric',
    });
    expect(findingOf(metric, 'door-pressure').value?.number).toBeCloseTo(
      numberOf('door-pressure', 'delivered-airflow=80', ...door('1/2 in')),
      6,
    );
  });

  it('a grille beside the gap shares the air: the open areas add', () => {
    // Own arithmetic: 15 sq in of gap and 72 × 60 % = 43.2 sq in of grille make 58.2; pressure goes with the square of the area.
    const words = [
      'delivered-airflow=80',
      ...door('1/2 in'),
      'transfer-grille=12 x 6 in',
      'transfer-grille-free-share=60 %',
    ];
    expect(numberOf('door-pressure', ...words)).toBeCloseTo(25.3983 * (15 / 58.2) ** 2, 3);
  });

  it('with no way in at all there is no number, and it is said', () => {
    const finding = findingOf(asked('delivered-airflow=80', ...door('0 in')), 'door-pressure');
    expect(finding.value?.number).toBeNull();
    expect(finding.says).toContain('Let air in');
  });
});

describe('fan, duct and door worked out together', () => {
  // Own arithmetic with velocity pressure (V/4005)²: the duct is a coefficient of 4 and a bare end of 1, of which the rating
  // has paid 1, so it takes 4 velocity pressures. At 65 cfm in a 4 in duct (0.08727 sq ft) 0.13835 in. w.g., at 60 cfm
  // 0.11789. The gap takes 14.29 Pa = 0.05736 in. w.g. at 60 cfm. A fan rated at 65@0.13835 and 60@0.17525 moves 65 cfm
  // with the door open and 60 with it shut.
  const path = ['fan-curve=80@0.02 65@0.13835 60@0.17525 0@0.5', 'collar=4 in', 'duct-run=fitting 4 in k=4'] as const;
  const answer = asked(...path, ...door('1/2 in'));

  it('finds the airflow at which all three agree', () => {
    const { value, says } = findingOf(answer, 'door-pressure');
    expect(value?.number).toBeCloseTo(14.29, 1);
    expect(says).toContain('With the door shut 60 cfm gets through, with it open 65 cfm: the door costs 8 %');
  });

  it('puts aside a number told for an open door, and says so', () => {
    const both = asked(...path, ...door('1/2 in'), 'delivered-airflow=65');
    expect(findingOf(both, 'door-pressure').value?.number).toBe(findingOf(answer, 'door-pressure').value?.number);
    expect(both.reply?.assumed?.join(' ')).toContain('65 cfm given is put aside');
  });

  it('shows sums that add up to the pressure at which the fan moves that airflow', () => {
    const { working } = findingOf(answer, 'door-pressure');
    const shownFor = (what: string) => working.find((step) => step.what.startsWith(what))?.value ?? '';
    expect(Number.parseFloat(shownFor('Pressure the duct takes'))).toBeCloseTo(29.36, 1);
    expect(Number.parseFloat(shownFor('Pressure the fan works against'))).toBeCloseTo(43.65, 1);
    expect(shownFor('The fan’s curve at that pressure')).toContain('60.0 cfm');
  });

  it('a gap as high as said to be needed costs exactly a tenth', () => {
    const { value } = findingOf(asked(...path, ...door('1/8 in')), 'gap-needed');
    const gap = (value?.number ?? 0) / inch;
    const costs = findingOf(asked(...path, ...door(`${gap.toFixed(5)} in`)), 'door-pressure').working.at(-1)?.value;
    expect(costs).toBe('10.0 %');
  });

  it('a fan that holds its airflow is not slowed by a door it can bear, and is by one it cannot', () => {
    const holds = ['fan-curve=constant 80 to 0.3', 'collar=4 in', 'duct-run=fitting 4 in k=1'] as const;
    // 1/2 in takes 25.4 Pa, the duct 13 Pa: under the 75 Pa it holds against, of which its droop takes under a percent of
    // the pressure. 1/4 in would take 102.
    const borne = numberOf('door-pressure', ...holds, ...door('1/2 in'));
    expect(Math.abs(borne / 25.4 - 1)).toBeLessThan(0.01);
    expect(numberOf('door-pressure', ...holds, ...door('1/4 in'))).toBeLessThan(80);
  });

  it('a wider gap never raises the pressure and never lessens the airflow', () => {
    const run = ['fan-curve=110', 'collar=4 in', 'duct-run=15 ft 4 in smooth; wall cap'] as const;
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        fc.double({ min: 1.01, max: 3, noNaN: true }),
        (gap, times) => {
          const at = (inches: number) => numberOf('door-pressure', ...run, ...door(`${inches.toFixed(4)} in`));
          const [now, wider] = [at(gap), at(gap * times)];
          expect(wider).toBeLessThanOrEqual(now);
          // By the orifice equation airflow goes with the gap times the root of the pressure.
          expect(times * Math.sqrt(wider)).toBeGreaterThanOrEqual(Math.sqrt(now) * 0.999);
        },
      ),
      { seed: 1, numRuns: 10 },
    );
  });

  it('says what the next size of fan would bring through the same gap', () => {
    const finding = findingOf(
      asked('fan-curve=110', 'collar=4 in', 'duct-run=15 ft 4 in smooth; wall cap', ...door('1/4 in')),
      'too-much-fan',
    );
    expect(finding.weight).toBe('caution');
    expect(finding.says).toMatch(
      /Too much fan for this door.*The next size up would bring \d+ cfm instead of 63 cfm, and pull \d+ Pa/,
    );
  });
});

describe('the gap that is needed', () => {
  // Orifice equation solved for the area, own arithmetic at 1.2 kg/m³: 80 cfm at 3 Pa under a 30 in door needs 1.45 in.
  it.each([
    ['50 cfm', 0.909],
    ['80 cfm', 1.45],
    ['110 cfm', 2.0],
  ])('for %s at the 3 Pa nobody need mind (programme limit for bedrooms)', (flow, inches) => {
    expect(numberOf('gap-needed', `delivered-airflow=${flow}`, ...door('1/2 in')) / inch).toBeCloseTo(inches, 2);
  });

  it('never passes a gap on its height alone', () => {
    const { says } = findingOf(asked('delivered-airflow=20', ...door('2 in')), 'gap-needed');
    expect(says).toContain('A gap alone proves nothing');
  });

  it('goes by the two readings where both were taken', () => {
    // Own arithmetic: 84 open, 70 shut. At 75.6 cfm a straight line leaves 19.42 × 8.4 ÷ 14 = 11.65 Pa; the gap is then
    // 1/2 in × 75.6 ÷ 70 × √(19.42 ÷ 11.65) = 0.697 in.
    const answer = asked('measured-airflow=70', 'door-open-airflow=84', ...door('1/2 in'));
    const { value, says } = findingOf(answer, 'gap-needed');
    expect((value?.number ?? 0) / inch).toBeCloseTo(0.697, 2);
    expect(says).toContain('Open the gap to 3/4 in');
    expect(findingOf(answer, 'door-pressure').says).toContain('Measured, shutting it costs 17 %');
  });

  it('two readings that differ by less than a tenth show that the gap is enough', () => {
    const { weight, says } = findingOf(
      asked('measured-airflow=80', 'door-open-airflow=84', ...door('1/2 in')),
      'gap-needed',
    );
    expect(weight).toBe('good');
    expect(says).toContain('Measured, the gap is enough: it costs 5 %');
  });
});

describe('how far the fans pull the house down', () => {
  // Power law of leakage with an exponent of 0.65 (ASTM E779), own arithmetic: 50 (Q / Q50)^(1/0.65).
  it.each([
    [80, 500, 2.982],
    [80, 1500, 0.5502],
    [110, 800, 2.362],
    [300, 1000, 7.844],
    [450, 1500, 7.844],
  ])('%d cfm out of a house of %d cfm50', (flow, leakage, pressure) => {
    const words = [`delivered-airflow=${flow}`, ...door('3/4 in'), `house-leakage=${leakage}`, 'other-exhausts=none'];
    expect(numberOf('house-depressurisation', ...words)).toBeCloseTo(pressure, 2);
  });

  it('counts every other exhaust that was named, unnamed airflows at what such things draw', () => {
    // 80 + 150 (a dryer, typical) + 300 = 530 cfm of 1500: 50 × 0.3533^(1/0.65) = 10.09 Pa.
    const words = [
      'delivered-airflow=80',
      ...door('3/4 in'),
      'house-leakage=1500',
      'other-exhausts=dryer, range hood 300',
    ];
    expect(numberOf('house-depressurisation', ...words)).toBeCloseTo(50 * (530 / 1500) ** (1 / 0.65), 4);
  });

  it('where nobody said what else blows out, it is this fan alone, and the high end counts a dryer and a range hood', () => {
    const { value } = findingOf(
      asked('delivered-airflow=80', ...door('3/4 in'), 'house-leakage=1500'),
      'house-depressurisation',
    );
    expect(value?.number).toBeCloseTo(0.5502, 3);
    // 80 + 200 + 1200 cfm, cracks of exponent 1: 50 × 1480 ÷ 1500.
    expect(value?.high).toBeCloseTo((50 * 1480) / 1500, 6);
  });

  it('gives no number without a blower door', () => {
    expect(numberOf('house-depressurisation', 'delivered-airflow=80', ...door('3/4 in'))).toBeNaN();
  });
});

describe('the picture of it', () => {
  it('marks the gap as it is on the curve, with the bands as levels', () => {
    const chart = asked('delivered-airflow=80', ...door('1/2 in')).reply?.chart;
    expect(chart?.marks[0]?.at[0]).toBeCloseTo(0.5, 6);
    expect(chart?.marks[0]?.at[1]).toBeCloseTo(25.4, 1);
    expect(chart?.levels.map(({ at }) => at)).toEqual([3, 10]);
    const points = chart?.lines[0]?.points ?? [];
    expect(points.length).toBeGreaterThan(10);
    expect(points.every(([, pressure], index) => index === 0 || pressure <= (points[index - 1]?.[1] ?? 0))).toBe(true);
  });
});

it('never tells a pull on the house that no fan could keep up', () => {
  const house = findingOf(
    asked('delivered-airflow=80', ...door('1/2 in'), 'house-leakage=600 cfm50', 'other-exhausts=range hood 1200 cfm'),
    'house-depressurisation',
  );
  expect(house.value?.high).toBe(50);
  expect(house.says).toContain('more than 50 Pa');
  expect(house.working.at(-1)?.value).toMatch(/by the formula, told as more than 50 Pa/);
});
