import { describe, expect, it, test } from 'vitest';
import file from '../worked-examples/figures/duct-condensation.json' with { type: 'json' };
import { asked, feet, flow, rValue, stepOf, valueIn } from './sweating.ts';
import { findingOf } from './talked.ts';

describe('the least wrap (own working, another program, two figures)', () => {
  const { given, rows: printed } = file.leastInsulation;
  const base = [
    `delivered-airflow=${given.delivered_cfm} cfm`,
    `duct-diameter=${given.duct_in} in`,
    `attic-duct-length=${given.length_ft} ft`,
    `exhaust-temperature=${given.T_in_F} F`,
  ];
  const cells = Object.entries(printed).filter(([, { R }]) => R > 0.2 && R < 16);
  it('has the printed table to go by', () => expect(cells.length).toBeGreaterThan(25));

  test.each(cells)('%s', (_, { attic_F, rh, R }) => {
    const cold = [`attic-temperature=${attic_F} F`, `exhaust-humidity=${rh * 100} %`] as const;
    const needed = valueIn('insulation-needed', ...base, ...cold);
    // Two figures, and the vapour's own heat counted here, which keeps the air a hundredth warmer.
    expect(Math.abs(rValue(needed?.number) - R)).toBeLessThan(Math.max(0.06, 0.05 * R));
  });

  it('is none where the wall never meets the dew point', () => {
    const needed = findingOf(asked(...base, 'attic-temperature=40 F', 'exhaust-humidity=50'), 'insulation-needed');
    expect(needed).toMatchObject({ weight: 'good', value: { number: 0 } });
  });

  it('is no amount where it cannot be fitted, and then says what helps instead', () => {
    const soaked = findingOf(asked(...base, 'attic-temperature=-20 F', 'exhaust-humidity=95'), 'insulation-needed');
    expect(soaked).toMatchObject({ weight: 'caution', value: { number: null, shown: 'no amount will do' } });
    expect(soaked.says).toContain('Pitch it outward, run the fan on after the shower, leave no low spots.');
    const saturated = findingOf(asked(...base, 'attic-temperature=20 F', 'exhaust-humidity=100'), 'insulation-needed');
    expect(saturated.says).toContain('No amount of wrap will keep it dry');
    expect(saturated.value?.number).toBeNull();
  });

  it('is enough once it is there, and a tenth of R less is not', () => {
    const words = [...base, 'attic-temperature=20 F', 'exhaust-humidity=80'] as const;
    const told = Number(/R-([\d.]+)/.exec(findingOf(asked(...words), 'insulation-needed').says)?.[1]);
    expect(valueIn('condensation-starts', ...words, `duct-insulation=R-${told}`)?.number).toBeNull();
    expect(findingOf(asked(...words, `duct-insulation=R-${told}`), 'insulation-needed').weight).toBe('good');
    // What is told is the next half R; the value itself is exact to a tenth. 1 R is 0.17611 m²·K/W (NIST SP 811, appendix B.8).
    const exact = (findingOf(asked(...words), 'insulation-needed').value?.number ?? Number.NaN) / 0.17611;
    expect(told - exact).toBeGreaterThanOrEqual(0);
    expect(told - exact).toBeLessThan(0.5);
    expect(told * 2).toBe(Math.round(told * 2));
    expect(
      valueIn('condensation-starts', ...words, `duct-insulation=R-${(exact - 0.1).toFixed(2)}`)?.number,
    ).not.toBeNull();
  });
});

describe('the working', () => {
  const long = asked(
    flow,
    'duct-diameter=4 in',
    'attic-duct-length=40 ft',
    'duct-insulation=R-4.2',
    'attic-temperature=20 F',
    'exhaust-humidity=80',
    'exhaust-temperature=75 F',
  );
  const start = findingOf(long, 'condensation-starts');
  const numbers = (text = '') => [...text.matchAll(/-?\d+(?:\.\d+)?/g)].map(([each]) => Number(each));

  it('leads with a calculator to the printed place', () => {
    const film = stepOf(start, /^Film of air/);
    const [d = 0, , re = 0] = numbers(film.how);
    const rsi = d / (0.023 * re ** 0.8 * 0.71 ** 0.3 * 0.0257);
    expect(parseFloat(film.value.slice(2))).toBeCloseTo(rValue(rsi), 2);
    const all = stepOf(start, /^With the wrap/);
    expect(parseFloat(all.value.slice(2))).toBeCloseTo(
      numbers(all.how).reduce((sum, each) => sum + each, 0),
      2,
    );
    const share = stepOf(start, /^Share of the difference/);
    const [round = 0, overall = 1, heat = 1] = numbers(share.how);
    expect(parseFloat(share.value)).toBeCloseTo(round / (overall * heat), 5);
    const wall = stepOf(start, /^Wall where/);
    const [air = 0, spread = 0, inside = 0, total = 1] = numbers(wall.how);
    expect(parseFloat(wall.value)).toBeCloseTo(air - (spread * inside) / total, 1);
    const place = stepOf(start, /^The wall meets/);
    const [from = 1, to = 1, perFoot = 1] = numbers(place.how);
    expect(parseFloat(place.value)).toBeCloseTo(Math.log(from / to) / perFoot, 1);
    expect(feet(start.value?.number)).toBeCloseTo(parseFloat(place.value), 1);
  });

  it('ends the wrap with the wall just at the dew point', () => {
    const wrap = findingOf(long, 'insulation-needed');
    expect(parseFloat(stepOf(wrap, /^Wall at the far end/).value)).toBeCloseTo(
      parseFloat(stepOf(wrap, /^Dew point/).value),
      1,
    );
  });

  it('cites a source beside everything', () => {
    for (const { id, sources } of long.reply?.findings ?? []) expect(sources.length, id).toBeGreaterThan(0);
  });
});
