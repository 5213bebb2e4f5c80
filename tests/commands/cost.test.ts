import { describe, expect, it } from 'vitest';
import { oneShot } from '#chat/one-shot.ts';
import cost from '#commands/cost.ts';
import { findingOf, once, talked } from './talked.ts';

const asked = (...words: readonly string[]) => once(cost, ...words);
const kilowattHour = 3.6e6;
const british = 1055.05585262;

describe('what a year of running costs', () => {
  // Own arithmetic: Btu a year = 1.08 × cfm × °F·d × hours a day; kWh = W × hours × 365 ÷ 1000; a therm is 100 000 Btu.
  // Air of 0.075 lb/ft³ and its specific heat make 1.081, a tenth of a percent more than the rounded 1.08.
  it.each([
    ['50', '35.71', '1', '5000', '0.16', '1.40', '80 %', { kWh: 13.04, power: 2.086, Btu: 270_000, heat: 4.725 }],
    ['80', '28.57', '1', '5000', '0.16', '1.40', '80 %', { kWh: 10.43, power: 1.669, Btu: 432_000, heat: 7.56 }],
    ['80', '28.57', '24', '5000', '0.16', '1.40', '95 %', { kWh: 250.3, power: 40.05, Btu: 10_368_000, heat: 152.8 }],
    ['110', '31.43', '2', '7000', '0.18', '1.20', '80 %', { kWh: 22.94, power: 4.13, Btu: 1_663_200, heat: 24.95 }],
  ])('%s cfm, %s W, %s h a day, %s °F·d', (flow, power, hours, days, electric, fuel, efficiency, expected) => {
    const answer = asked(
      `delivered-airflow=${flow} cfm`,
      `fan-watts=${power}`,
      `hours-per-day=${hours}`,
      `degree-days=${days}`,
      `electricity-price=${electric}`,
      `heating-price=${fuel}`,
      `heating-efficiency=${efficiency}`,
    );
    const number = (id: string) => findingOf(answer, id).value?.number ?? Number.NaN;
    expect(number('fan-energy') / kilowattHour / expected.kWh).toBeCloseTo(1, 3);
    expect(number('heat-lost') / british / expected.Btu).toBeCloseTo(1, 2);
    expect(number('running-cost') / (expected.power + expected.heat)).toBeCloseTo(1, 2);
    expect(findingOf(answer, 'running-cost').value?.low).toBeUndefined();
  });

  const usual = [
    'delivered-airflow=80',
    'fan-watts=30',
    'hours-per-day=1',
    'degree-days=5000',
    'electricity-price=0.16',
    'heating-price=1.40',
    'heating-efficiency=80 %',
  ] as const;

  it('counts the air at the high end of what may move', () => {
    const range = asked('delivered-airflow=60 to 80', ...usual.slice(1));
    expect(findingOf(range, 'heat-lost').value?.number).toBe(findingOf(asked(...usual), 'heat-lost').value?.number);
    expect(findingOf(range, 'heat-lost').working[0]?.what).toContain('high end');
  });

  it('says that it bounds heating only, never the cooling', () => {
    expect(findingOf(asked(...usual), 'heat-lost').says).toContain('upper bound for heating only');
    expect(findingOf(asked(...usual), 'running-cost').says).toContain('upper bound for heating only');
  });

  it('thin air at 5000 ft carries less heat (standard atmosphere: 0.832 of the density)', () => {
    const high = findingOf(asked(...usual, 'altitude=5000 ft'), 'heat-lost').value?.number ?? 0;
    expect(high / (findingOf(asked(...usual), 'heat-lost').value?.number ?? 1)).toBeCloseTo(0.832, 3);
  });

  it('takes a price for a kWh and a heat pump as they are said', () => {
    // 432 508 Btu are 126.76 kWh of heat; at three for one 42.25 kWh, at 0.16 $6.76.
    const pump = asked(...usual.slice(0, 5), 'heating-price=0.16 per kWh', 'heating-efficiency=3');
    const heat = 432_508 / 3412.14;
    const fan = (30 * 365) / 1000;
    expect(findingOf(pump, 'running-cost').value?.number).toBeCloseTo((heat / 3) * 0.16 + fan * 0.16, 2);
  });

  it('is the same in metric units', () => {
    const metric = oneShot(
      cost,
      ['delivered-airflow=37.75579544', 'fan-watts=30', 'hours-per-day=1', 'degree-days=2777.7777778'],
      { units: 'metric' },
    );
    expect(findingOf(metric, 'heat-lost').value?.number).toBeCloseTo(
      findingOf(asked(...usual.slice(0, 4)), 'heat-lost').value?.number ?? 0,
      -2,
    );
  });

  it('needs the airflow and the watts, and says what it took for the rest', () => {
    expect(asked().missing.map(({ id }) => id)).toEqual(['delivered-airflow', 'fan-watts']);
    const { reply } = asked('delivered-airflow=80', 'fan-watts=30');
    expect(reply?.assumed?.join(' ')).toMatch(/Hours the fan runs a day.*degree-days.*Price of electricity/s);
    const value = reply?.findings[0]?.value;
    expect(value?.low).toBeLessThan(value?.number ?? 0);
    expect(value?.high).toBeGreaterThan(value?.number ?? Number.POSITIVE_INFINITY);
  });

  it('names the one figure that would narrow it most', () => {
    expect(findingOf(asked('delivered-airflow=80', 'fan-watts=30'), 'measure-next').says).toMatch(
      /find out how long the fan runs a day: that alone narrows the band from \$[\d.]+ wide to \$[\d.]+/,
    );
  });

  it('shows sums that lead to what it prints', () => {
    const { working } = findingOf(asked(...usual), 'running-cost');
    const [electricity, fuel, heating, together] = working.map(({ value }) => value);
    // 10.95 kWh × 0.16; 126.755 ÷ 0.8 = 158.4 kWh = 5.4063 therm; × 1.40.
    expect(electricity).toBe('$1.75');
    expect(fuel).toBe('158.4 kWh, which is 5.4063 therm');
    expect(heating).toBe('$7.57');
    expect(together).toBe('$9.32');
  });
});

describe('air for each watt, by edition', () => {
  // IECC tables R403.6.1 (2015) and R403.6.2 (2021, 2024): under 90 cfm 1.4 and then 2.8 cfm/W; from 90 cfm 2.8, then 3.5;
  // from 200 cfm 4.0 in 2024.
  const judged = (flow: string, power: string, edition: string) =>
    findingOf(asked(`delivered-airflow=${flow}`, `fan-watts=${power}`, `building-code-edition=${edition}`), 'efficacy');

  it.each([
    ['80', '50', 'irc-2015', 'good'],
    ['80', '50', 'irc-2021', 'caution'],
    ['80', '28.5', 'irc-2021', 'good'],
    ['100', '33', 'irc-2021', 'caution'],
    ['100', '33', 'irc-2015', 'good'],
    ['220', '60', 'irc-2021', 'good'],
    ['220', '60', 'irc-2024', 'caution'],
  ])('%s cfm on %s W under %s', (flow, power, edition, weight) => {
    expect(judged(flow, power, edition).weight).toBe(weight);
  });

  it('goes by the label’s airflow where the sheet has it', () => {
    const finding = findingOf(asked('delivered-airflow=60', 'fan-watts=30', 'fan-curve=84@0.1 66@0.25'), 'efficacy');
    expect(finding.value?.number).toBeCloseTo((84 * 0.000471947443) / 30, 8);
    expect(finding.says).toContain('2.80 cfm/W, by the label’s 84 cfm');
  });

  it('says when an edition’s figures are from memory, and when there are none at hand', () => {
    expect(judged('80', '50', 'irc-2018').says).toContain('from memory');
    expect(judged('80', '50', 'canada').says).toContain('ask the inspector');
  });

  it('is left out where nobody knows the watts', () => {
    const ids = asked('delivered-airflow=80', "fan-watts=don't know").reply?.findings.map(({ id }) => id);
    expect(ids).not.toContain('efficacy');
  });
});

describe('asked in conversation', () => {
  it('a wrong word, a why, a back and a don’t know', async () => {
    expect(
      await talked(
        cost,
        'cost',
        '80 cfm',
        'lots',
        'why',
        '30 W',
        '2 h',
        'back',
        '1',
        "don't know",
        '16 c',
        '1.40 per therm',
        '80',
      ),
    ).toMatchInlineSnapshot(`
      "
      you: cost
      bot: How much air does the fan really move? The number /duct gives or a measurement, not the carton’s.
      you: 80 cfm
      bot: Airflow really delivered: 80 cfm (37.8 L/s).
           How many watts does the fan draw? The label says; leave the light out.
      you: lots
      bot: I cannot read “lots”; I need a power, such as 30 W.
           How many watts does the fan draw? The label says; leave the light out.
      you: why
      bot: Watts and hours make the electricity; watts and airflow tell whether the fan is thrifty enough for
           the code.
           How many watts does the fan draw? The label says; leave the light out.
      you: 30 W
      bot: Watts the fan draws, without its light: 30 W.
           How long does the fan run on an ordinary day?
      you: 2 h
      bot: Hours the fan runs a day: 2 h.
           How cold is the place? Its heating degree-days a year, base 65 °F or 18 °C.
      you: back
      bot: Took back: Hours the fan runs a day.
           How long does the fan run on an ordinary day?
      you: 1
      bot: Hours the fan runs a day: 60 min.
           How cold is the place? Its heating degree-days a year, base 65 °F or 18 °C.
      you: don't know
      bot: Heating degree-days a year: taken as 1500 to 8500 °F·d (830 to 4720 K·d), most likely 5000 °F·d.
           From the warm south to the cold north of the country; from memory.
           What does electricity cost? Off the bill.
      you: 16 c
      bot: Price of electricity for a kilowatt-hour: $0.16 per kWh.
           What does the heating fuel cost? Off the bill, for a therm; for electric heat or a heat pump, for a
           kWh.
      you: 1.40 per therm
      bot: Price of heating fuel, for a therm, kWh or GJ: $1.40 per therm.
           How much of the fuel’s energy reaches the rooms? The furnace’s efficiency; a heat pump gives more
           than it takes.
      you: 80
      bot: Efficiency of the heating: 80 %.

           Running this fan costs about $9.32 a year, an upper bound for heating only.

           Fine:    A year costs about $9.32, usually $5.71 to $12.93: $1.75 of electricity and $7.57 of heat,
                    an upper bound for heating only.
           Fine:    At most about 127 kWh of heat goes out with the air in a year. This is an upper bound for
                    heating only. Part of the air would have leaked out anyway. Cooling and drying the air that
                    comes in are left out.
           Fine:    The fan itself uses about 11 kWh of electricity a year.
           Caution: The fan moves 2.67 cfm/W, by 80 cfm delivered; the label’s own airflow decides: less than
                    the 2.8 cfm/W IECC and IRC 2021 asks. The limit is for a fan that also ventilates the
                    house.
           Advice:  To be surer, find out the heating degree-days of the place: that alone settles it.
      "
    `);
  });
});
