import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exitCode, oneShot } from '#chat/one-shot.ts';
import makeup from '#commands/makeup.ts';
import type { Finding } from '#findings/finding.ts';
import { findingOf, once, talked } from './talked.ts';

const asked = (...words: readonly string[]) => once(makeup, ...words);
const numberOf = (id: string, ...words: readonly string[]) =>
  findingOf(asked(...words), id).value?.number ?? Number.NaN;
const door = (gap: string, width = '30 in') => [`door-width=${width}`, `door-gap=${gap}`] as const;
const inch = 0.0254;

/** A lead who found nothing that burns, an alarm that was tested, no garage: what is left to say then is the least there is. */
const quiet = [
  'fuel-appliances=none',
  'recorded-by=lead',
  'carbon-monoxide-alarm=fitted',
  'attached-garage=no',
] as const;

const flames = (...words: readonly string[]): readonly Finding[] =>
  (asked('delivered-airflow=80', ...door('3/4 in'), ...words).reply?.findings ?? []).filter(
    ({ id }) => id === 'combustion-caution',
  );

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
          expect(at(gap * times)).toBeLessThanOrEqual(at(gap));
        },
      ),
      { seed: 1, numRuns: 15 },
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

describe('what may be said of flames', () => {
  it('a question about a door alone is answered, with every unasked danger named', () => {
    const answer = asked('delivered-airflow=80', ...door('1/2 in'));
    expect(exitCode(answer)).toBe(0);
    const said = flames().map(({ says, weight }) => [weight, says.split('. ')[0]]);
    expect(said.every(([weight]) => weight === 'caution')).toBe(true);
    expect(said.map(([, says]) => says)).toEqual(
      expect.arrayContaining([
        expect.stringContaining('look for a fuel-burning appliance in the bathroom'),
        expect.stringContaining('Find out which fuel-burning appliances there are'),
        expect.stringContaining('Fit a carbon monoxide alarm'),
        expect.stringContaining('This estimate clears no appliance'),
      ]),
    );
  });

  it.each([
    ['a draft hood and a house nobody tested', ['fuel-appliances=natural draft']],
    ['a heater of a kind nobody can tell', ['fuel-appliances=gas furnace']],
    ['a draft hood where two pascals cannot be ruled out', ['fuel-appliances=natural-draft', 'house-leakage=1500']],
    ['nobody asked, and the house can fall far enough', ['house-leakage=1500']],
    [
      'a water heater in the bathroom closet (IRC G2406.2)',
      ['appliance-in-bath-zone=natural draft', 'house-leakage=9000'],
    ],
    ['something in the closet, kind unknown', ['appliance-in-bath-zone=yes']],
    ['a sealed heater in the bathroom that nobody has proved', ['appliance-in-bath-zone=sealed', 'recorded-by=lead']],
  ])('stops for %s', (_, words) => {
    const answer = asked('delivered-airflow=80', ...door('3/4 in'), ...words);
    expect(answer.status).toBe('stopped');
    expect(exitCode(answer)).toBe(3);
    expect(answer.reply?.findings[0]?.weight).toBe('stop');
    expect(answer.reply?.headline).toMatch(/^(?:Do not run a new fan|Leave the new fan locked off)/);
    expect(findingOf(answer, 'door-pressure').value?.number).toBeGreaterThan(0);
  });

  it.each([['carbon-monoxide-alarm=sounding'], ['spillage-seen=yes'], ['carbon-monoxide=35 ppm']])(
    '%s sends everybody outside at once, and asks nothing more',
    (word) => {
      const answer = asked(word);
      expect(answer.status).toBe('stopped');
      expect(answer.reply?.headline).toBe('Everyone outside now.');
      expect(answer.reply?.findings.map(({ weight }) => weight)).toEqual(['stop']);
    },
  );

  it('only a lead’s "none" quietens the rest, and even then an estimate clears nothing', () => {
    const least = flames(...quiet, 'house-leakage=4000', 'other-exhausts=none');
    expect(least.map(({ says }) => says)).toEqual([expect.stringContaining('This estimate clears no appliance')]);
    const fromOffice = flames('fuel-appliances=none', 'carbon-monoxide-alarm=fitted', 'attached-garage=no');
    expect(fromOffice.map(({ says }) => says).join(' ')).toContain('only a lead may record that');
  });

  it('whatever is answered and by whomever, nothing is called fine, and a flame reported is never quietened', () => {
    const kinds = [
      'none',
      'natural-draft',
      'unvented',
      'solid-fuel',
      'induced-draft',
      'power-vented',
      'sealed',
      'kind unknown',
      '',
    ];
    const said = (id: string, value: string) => (value === '' ? [] : [`${id}=${value}`]);
    for (const fuel of kinds)
      for (const zone of kinds)
        for (const who of ['lead', 'other', ''])
          for (const leakage of ['', '9000']) {
            const found = flames(
              ...said('fuel-appliances', fuel),
              ...said('appliance-in-bath-zone', zone),
              ...said('recorded-by', who),
              ...said('house-leakage', leakage),
              'other-exhausts=none',
            );
            expect(found.length).toBeGreaterThan(0);
            for (const { weight, says } of found) {
              expect(['caution', 'stop']).toContain(weight);
              expect(says).not.toMatch(/\b(?:safe|fine|all right|no danger|no caution)\b/i);
            }
            const stops = found.filter(({ weight }) => weight === 'stop');
            if (zone !== '' && zone !== 'none') expect(stops.length, `${fuel} ${zone} ${who}`).toBeGreaterThan(0);
            if (who !== 'lead' && ['none', 'sealed', ''].includes(fuel)) expect(found.length).toBeGreaterThan(1);
          }
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

describe('asked in conversation', () => {
  it('stops asking the moment an answer says that people must leave', async () => {
    const said = await talked(makeup, 'makeup', '80', '30', '1/2', 'none', 'it is sounding now');
    expect(said).toContain('bot: Carbon monoxide alarm: It is sounding now.');
    expect(said.slice(said.lastIndexOf('you:'))).toContain('Everyone outside now.');
    expect(said.slice(said.lastIndexOf('you:'))).not.toContain('?');
  });

  it('an apprentice answers with a wrong word, a why, a back and a don’t know', async () => {
    expect(
      await talked(
        makeup,
        'makeup',
        'plenty',
        '84 cfm',
        '30 in',
        'why',
        '1/2 in',
        'none',
        'fitted',
        'back',
        'not tested',
        "don't know",
        'no',
        'no',
        'other',
        'no',
        "don't know",
      ),
    ).toMatchInlineSnapshot(`
      "
      you: makeup
      bot: How much air does the fan really move? The number /duct gives or a measurement, not the carton’s.
      you: plenty
      bot: I cannot read “plenty”; I need an airflow, such as 80 cfm or 38 L/s.
           How much air does the fan really move? The number /duct gives or a measurement, not the carton’s.
      you: 84 cfm
      bot: Airflow really delivered: 84 cfm (39.6 L/s).
           How wide is the bathroom door?
      you: 30 in
      bot: Bathroom door width: 30 in (762 mm).
           How high is the gap under the shut door, from the floor or the top of the carpet?
      you: why
      bot: A tight door starves the strongest fan: the gap takes pressure just as the duct does.
           How high is the gap under the shut door, from the floor or the top of the carpet?
      you: 1/2 in
      bot: Gap under the shut door: 1/2 in (13 mm).
           Is there a grille through the door or the wall beside it? Its face, such as 12 x 6 in, or none.
      you: none
      bot: Face of a grille through door or wall, or none: none.
           Is there a carbon monoxide alarm?
             1  Fitted and tested (its button was pressed)
             2  None
             3  There, not tested
             4  It is sounding now (leave first)
      you: fitted
      bot: Carbon monoxide alarm: Fitted and tested.
           What burns fuel in the house, taking air from indoors or venting through it? Furnace, boiler, water
           heater, fireplace, stove, gas log.
             1  Draft hood (natural draft) (an open hood or gap where the pipe leaves a heater, boiler or
                furnace)
             2  Heater without a vent (room heater or log set, no pipe at all)
             3  Fireplace or wood stove
             4  Furnace or boiler with a draft fan (a small fan at the foot of a metal pipe)
             5  Power vented (a blower on top pushes the fumes out through one plastic pipe)
             6  Sealed combustion (a pipe of its own for the air, another for the fumes)
             7  There is one of unknown kind (gas or oil, nobody has looked how it is vented)
      you: back
      bot: Took back: Carbon monoxide alarm.
           Is there a carbon monoxide alarm?
             1  Fitted and tested (its button was pressed)
             2  None
             3  There, not tested
             4  It is sounding now (leave first)
      you: not tested
      bot: Carbon monoxide alarm: There, not tested.
           What burns fuel in the house, taking air from indoors or venting through it? Furnace, boiler, water
           heater, fireplace, stove, gas log.
             1  Draft hood (natural draft) (an open hood or gap where the pipe leaves a heater, boiler or
                furnace)
             2  Heater without a vent (room heater or log set, no pipe at all)
             3  Fireplace or wood stove
             4  Furnace or boiler with a draft fan (a small fan at the foot of a metal pipe)
             5  Power vented (a blower on top pushes the fumes out through one plastic pipe)
             6  Sealed combustion (a pipe of its own for the air, another for the fumes)
             7  There is one of unknown kind (gas or oil, nobody has looked how it is vented)
      you: don't know
      bot: Fuel-burning appliances in the house: taken as There is one of unknown kind. Nobody has said, so one
           that can spill its fumes is counted on.
           Does one of them stand in the bathroom, or in a closet that opens only into it?
             1  Draft hood (natural draft) (an open hood or gap where the pipe leaves a heater, boiler or
                furnace)
             2  Heater without a vent (room heater or log set, no pipe at all)
             3  Fireplace or wood stove
             4  Furnace or boiler with a draft fan (a small fan at the foot of a metal pipe)
             5  Power vented (a blower on top pushes the fumes out through one plastic pipe)
             6  Sealed combustion (a pipe of its own for the air, another for the fumes)
             7  There is one of unknown kind (gas or oil, nobody has looked how it is vented)
      you: no
      bot: Fuel-burning appliance in the bathroom or its closet: none.
           Has smoke or hot gas been seen or felt coming back out of a draft hood or fireplace?
             1  Yes
             2  No
      you: no
      bot: Smoke or hot gas coming back into the house: No.
           Who looked at the fuel-burning appliances?
             1  A lead, on site
             2  Somebody else (the customer, the office, an apprentice)
      you: other
      bot: Who looked at the fuel-burning appliances: Somebody else.
           Does a garage share a wall or a door with the house?
             1  Yes
             2  No
      you: no
      bot: Garage attached to the house: No.
           How leaky is the house? The blower-door figure, airflow at 50 Pa, if there is one.
      you: don't know
      bot: Blower-door figure: airflow at 50 Pa: taken as 500 to 4500 cfm50 (236 to 2124 L/s at 50 Pa), most
           likely 1800 cfm50. Houses run from 500 to 4500 cfm50; too wide to reckon with, so no house pressure
           is worked out.

           What the shut door takes at 84 cfm, and what the fan does to the house.

           Caution: The shut door takes 28 Pa at 84 cfm: more than a bath fan can spare.
           Advice:  A gap of 7/8 in keeps it at 10 Pa, where a fan begins to choke; 1 5/8 in at 3 Pa, which
                    nobody need mind. So high a gap is seldom wanted: a grille with 31 sq in open, beside the
                    gap as it is, does the same. A gap alone proves nothing. Measure the airflow with the door
                    open and shut: it should drop by less than a tenth.
           Caution: Too much fan for this door. The way in passes 50 cfm before the door takes 10 Pa; the fan
                    asks for 84 cfm. Open the way in before buying a stronger one.
           Advice:  To have the pull on the whole house worked out, give the blower-door figure
                    (house-leakage).
           Caution: Have a lead look in the bathroom and in any closet that opens only into it. No fuel-burning
                    appliance was reported there, but only a lead may record that.
           Caution: Find out which fuel-burning appliances there are: furnace, boiler, water heater, fireplace,
                    stove, gas log. Until then count on one that can spill.
           Caution: How far the fans can pull the house down is not known. A blower-door figure would tell.
           Caution: Fit a carbon monoxide alarm and press its test button at hand-over. A silent alarm proves
                    nothing at low levels.
           Caution: This estimate clears no appliance. Only a worst-case test by a licensed or certified person
                    does, under the local code.
      "
    `);
  });
});
