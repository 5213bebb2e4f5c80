import { describe, expect, it } from 'vitest';
import { exitCode } from '#chat/one-shot.ts';
import makeup from '#commands/makeup.ts';
import type { Finding } from '#findings/finding.ts';
import { findingOf, once, talked } from './talked.ts';

const asked = (...words: readonly string[]) => once(makeup, ...words);
const door = (gap: string) => ['door-width=30 in', `door-gap=${gap}`] as const;

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
    ['somebody who was asked about the closet and could not say', ["appliance-in-bath-zone=don't know"]],
    ['somebody who was asked about the house and could not say', ["fuel-appliances=don't know"]],
    [
      'a draft hood of which nobody can say whether smoke comes back, however leaky the house',
      ['fuel-appliances=natural-draft', "spillage-seen=don't know", 'house-leakage=20000', 'other-exhausts=none'],
    ],
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
      'kind-unknown',
      'unknown',
      '',
    ];
    const said = (id: string, value: string) => (value === '' ? [] : [`${id}=${value}`]);
    const zones = ['none', 'natural-draft', 'sealed', 'kind-unknown', 'unknown', ''];
    for (const [index, fuel] of kinds.entries())
      for (const zone of zones)
        for (const who of ['lead', 'other', '']) {
          const found = flames(
            ...said('fuel-appliances', fuel),
            ...said('appliance-in-bath-zone', zone),
            ...said('recorded-by', who),
            ...said('house-leakage', index % 2 === 0 ? '' : '9000'),
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

           Leave the new fan locked off until a trained person has done a worst-case test.

           STOP:    Leave the new fan locked off until a trained person has done a worst-case test. An
                    appliance here may spill its fumes, and nobody knows how tight the house is.
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
           Caution: Fit a carbon monoxide alarm and press its test button at hand-over. A silent alarm proves
                    nothing at low levels.
           Caution: This estimate clears no appliance. Only a worst-case test by a licensed or certified person
                    does, under the local code.
      "
    `);
  });
});
