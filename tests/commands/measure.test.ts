import { describe, expect, it } from 'vitest';
import { oneShot } from '#chat/one-shot.ts';
import measure from '#commands/measure.ts';
import { measuredAirflow } from '#commands/questions/airflow.ts';
import { findingOf, once, talked } from './talked.ts';

const asked = (...words: readonly string[]) => once(measure, ...words);
const cfm = 0.000471947443;
const inCfm = (id: string, ...words: readonly string[]) =>
  (findingOf(asked(...words), id).value?.number ?? Number.NaN) / cfm;
const bag = (gallons: string, times: string) => ['method=bag', `bag-volume=${gallons}`, `fill-times=${times}`] as const;
const box = (opening: string, pressures: string) =>
  ['method=flow-box', `box-opening=${opening}`, `box-pressure=${pressures}`] as const;
const hood = (reading: string) => ['method=hood', `hood-reading=${reading}`, 'hood-powered=yes'] as const;

describe('a bag and a stopwatch', () => {
  // RESNET 804, timed bag: 8.02 × gallons ÷ seconds.
  it.each([
    ['55 gal', '6 s', 73.5],
    ['55 gal', '10 s', 44.1],
    ['30 gal', '4 s', 60.2],
    ['55 gal', '9, 10, 11 s', 44.1],
  ])('%s in %s', (gallons, times, airflow) => {
    expect(inCfm('measured-airflow', ...bag(gallons, times))).toBeCloseTo(airflow, 1);
  });

  it('holds the watch, the scatter and a bag that is not full against the number', () => {
    // Own arithmetic: mean 6.2 s, scatter 0.2/√3 = 0.1155, twice that with 0.3 s of hand: √(0.09 + 0.05333) = 0.3786 s. 85 % of
    // 55 gal in 6.5786 s is 57.0 cfm; 105 % in 5.8214 s 79.6.
    const { value } = findingOf(asked(...bag('55 gal', '6.2, 6.0, 6.4 s')), 'measured-airflow');
    expect((value?.low ?? 0) / cfm).toBeCloseTo(57.0, 1);
    expect((value?.high ?? 0) / cfm).toBeCloseTo(79.6, 1);
  });

  it('says that a small bag cannot measure a bath fan (ORNL: under 5 s the watch decides)', () => {
    // A bag of 20 gal holds 2.674 cu ft: 32 cfm fill it in 5 s.
    const { says } = findingOf(asked(...bag('20 gal', '2.1, 2.0, 2.2, 1.9, 2.0 s')), 'reading-doubt');
    expect(says).toContain('The bag is too small: above 32 cfm it takes under 5 s');
    expect(says).toContain('Use 55 gal or larger');
    expect(asked(...bag('55 gal', '6.1, 6.0, 6.2, 6.0, 6.1 s')).reply?.findings.map(({ id }) => id)).not.toContain(
      'reading-doubt',
    );
  });

  it.each([
    ['a bag that fills faster than a hand', bag('20 gal', '0.3 s'), 'Use a larger bag'],
    ['a bag of unknown volume', bag("don't know", '6 s'), 'how much the bag holds'],
    ['no readings at all', bag('55 gal', "don't know"), 'no readings'],
  ])('gives no number for %s, and keeps none', (_, words, says) => {
    const answer = asked(...words);
    expect(findingOf(answer, 'measured-airflow').value?.number).toBeNull();
    expect(findingOf(answer, 'measured-airflow').says).toContain(says);
    expect(answer.reply?.keeps ?? []).toEqual([]);
  });
});

describe('a flow box', () => {
  // RESNET 804, airflow resistance method: 1.07 × square inches × √pascals.
  it.each([
    ['10 sq in', '4 Pa', 21.4],
    ['15 sq in', '5 Pa', 35.9],
    ['30 sq in', '8 Pa', 90.8],
    ['12 sq in', '6 Pa', 31.5],
  ])('%s at %s', (opening, pressure, airflow) => {
    expect(inCfm('measured-airflow', ...box(opening, pressure))).toBeCloseTo(airflow, 1);
  });

  it('says when the gauge shows noise and when the box throttles the fan', () => {
    expect(findingOf(asked(...box('50 sq in', '1 Pa')), 'reading-doubt').says).toContain('Use a smaller opening');
    expect(findingOf(asked(...box('15 sq in', '12 Pa')), 'reading-doubt').says).toContain('Use a larger opening');
  });

  it('puts the box in the way of the fan it is held against', () => {
    // Own arithmetic: a duct of 4 velocity pressures takes 0.11789 in. w.g. at 60 cfm in 4 in. Through 20 sq in, 60 cfm take
    // (60 ÷ 21.4)² = 7.861 Pa = 0.03156 in. w.g. A fan rated 60@0.14945 moves 60 cfm with the box on, and 65 without.
    const fan = ['fan-curve=80@0.02 65@0.13835 60@0.14945 0@0.5', 'collar=4 in', 'duct-run=fitting 4 in k=4'] as const;
    const { says, working } = findingOf(asked(...box('20 sq in', '7.861 Pa'), ...fan), 'against-predicted');
    expect(says).toContain('As predicted, 60 cfm');
    expect(working[0]?.value).toBe('7.9 Pa');
    expect(findingOf(asked(...hood('65'), ...fan), 'against-predicted').says).toContain('As predicted, 65 cfm');
  });
});

describe('speeds over the grille, and hoods', () => {
  it('takes the open share of the grille into account, 50 to 70 % where nobody knows', () => {
    // Own arithmetic: 200 fpm × 81 ÷ 144 sq ft × 60 % = 67.5 cfm; 50 % less a quarter 42.2; 70 % and a quarter more 98.4.
    const { value } = findingOf(
      asked('method=traverse', 'grille-area=81 sq in', 'grille-velocities=180, 220, 200, 190, 210 fpm'),
      'measured-airflow',
    );
    expect((value?.number ?? 0) / cfm).toBeCloseTo(67.5, 3);
    expect((value?.low ?? 0) / cfm).toBeCloseTo(42.1875, 3);
    expect((value?.high ?? 0) / cfm).toBeCloseTo(98.4375, 3);
  });

  it('trusts a hood with its own fan to 6 %, one without to 25 % (LBNL-5982E)', () => {
    const powered = findingOf(asked(...hood('72, 74, 73 cfm')), 'measured-airflow').value;
    expect((powered?.low ?? 0) / cfm).toBeCloseTo(73 * 0.94, 3);
    const plain = findingOf(asked('method=hood', 'hood-reading=73'), 'measured-airflow').value;
    expect((plain?.high ?? 0) / cfm).toBeCloseTo(73 * 1.25, 3);
  });
});

describe('against what is needed', () => {
  it.each([
    ['45 cfm', 'good', 'met'],
    ['60 cfm', 'caution', 'not shown'],
    ['80 cfm', 'caution', 'not met'],
  ])('45 to 75 cfm against %s', (needed, weight, outcome) => {
    // A hood that shows 60 cfm and errs by a quarter says 45 to 75.
    const answer = asked('method=hood', 'hood-reading=60', `airflow-needed=${needed}`);
    const finding = findingOf(answer, 'against-needed');
    expect([finding.weight, finding.value?.shown.split(': ')[1]]).toEqual([weight, outcome]);
  });

  it('is not asked of a room nobody sized', () => {
    expect(asked(...hood('60')).reply?.findings.map(({ id }) => id)).not.toContain('against-needed');
  });
});

describe('against what was predicted', () => {
  // A fan that holds 80 cfm up to 0.3 in. w.g., in a duct that asks less: 80 predicted, with little doubt.
  const fan = ['fan-curve=constant 80 to 0.3', 'collar=4 in', 'duct-run=fitting 4 in k=2'] as const;
  const verdict = (words: readonly string[]) => {
    const { value, weight, says } = findingOf(asked(...words, ...fan), 'against-predicted');
    return { verdict: value?.shown.split(': ').at(-1), weight, says };
  };

  it('agrees, cannot tell, lower or higher', () => {
    expect(verdict(hood('80'))).toMatchObject({ verdict: 'agrees', weight: 'good' });
    expect(verdict(hood('50'))).toMatchObject({ verdict: 'lower', weight: 'caution' });
    expect(verdict(hood('110'))).toMatchObject({ verdict: 'higher', weight: 'caution' });
    // Speeds over the grille: 75 cfm, 35 to 50 cfm either way, against a quarter of 80.
    const speeds = ['method=traverse', 'grille-area=81 sq in', 'grille-velocities=222, 222, 222, 222, 222 fpm'];
    expect(verdict(speeds)).toMatchObject({ verdict: 'cannot tell', weight: 'advice' });
  });

  it('says where to look, by how far below it is', () => {
    expect(verdict(hood('30')).says).toContain('blocked or crushed duct');
    expect(verdict(hood('55')).says).toContain('sagging or kinked flex');
    expect(verdict(hood('70')).says).toContain('A little below');
    expect(verdict(hood('110')).says).toContain('ends in the attic');
  });

  it('a fan that does as predicted and is still too weak is too small, not broken', () => {
    const { says } = findingOf(asked(...hood('80'), ...fan, 'airflow-needed=110'), 'against-predicted');
    expect(says).toContain('Fan or duct is too small for the need');
  });

  it('reckons with the door as it stands', () => {
    // 1/4 in under a 30 in door would take 102 Pa at 80 cfm, more than the fan holds against.
    const predicted = (...more: readonly string[]) =>
      findingOf(asked(...hood('60'), ...fan, ...more), 'against-predicted').working.find(({ what }) =>
        what.startsWith('Predicted'),
      );
    expect(predicted()?.value).toContain('79');
    expect(Number.parseFloat(predicted('door-width=30 in', 'door-gap=1/4 in')?.value ?? '')).toBeLessThan(75);
  });
});

describe('with the door open and shut', () => {
  it('a drop of a tenth or more means that the fan is starved', () => {
    const drop = (open: string) => findingOf(asked(...hood('70'), `door-open-airflow=${open}`), 'door-drop');
    // Own arithmetic: 1 − 70/84 = 16.7 %; 1 − 70/75 = 6.7 %.
    expect(drop('84')).toMatchObject({ weight: 'caution' });
    expect(drop('84').value?.number).toBeCloseTo(0.1667, 3);
    expect(drop('75')).toMatchObject({ weight: 'good' });
  });
});

describe('what is kept', () => {
  it.each([
    ['inch-pound', ['fill-times=6.2, 6.0, 6.4 s', 'bag-volume=55 gal', 'method=bag']],
    ['metric', ['fill-times=6.2; 6.0; 6.4 s', 'bag-volume=208 L', 'method=bag']],
  ] as const)('the measured airflow in words its own question reads, %s', (units, words) => {
    const answer = oneShot(measure, words, { units });
    const kept = answer.reply?.keeps?.[0];
    expect(kept?.fact).toBe(measuredAirflow.id);
    const reading = measuredAirflow.read(kept?.typed ?? '', units);
    if (!('value' in reading)) throw new Error(reading.rejected);
    const { value } = findingOf(answer, 'measured-airflow');
    for (const end of ['low', 'high'] as const) expect(reading.value[end] / (value?.[end] ?? 1)).toBeCloseTo(1, 1);
    expect(reading.value.typical / (value?.number ?? 1)).toBeCloseTo(1, 1);
  });
});

describe('readings as people type them', () => {
  it.each([
    '6.2, 6.0, 6.4 s',
    '6.2 6.0 6.4',
    '6.2s 6.0s 6.4s',
    '6,2; 6,0; 6,4 s',
    '6.2 and 6.0 and 6.4',
    '6.2/6.0/6.4',
  ])('%s', (times) => {
    expect(inCfm('measured-airflow', ...bag('55 gal', times))).toBeCloseTo((60 * 7.35243) / 6.2, 2);
  });

  it('names every reading it cannot understand the same way, and asks only what the method needs', () => {
    expect(asked('method=bag', 'bag-volume=55 gal', 'fill-times=6.2, slow').problems[0]?.says).toContain('“slow”');
    expect(asked('method=hood').missing.map(({ id }) => id)).toEqual(['hood-reading']);
    expect(asked('method=flow-box').missing.map(({ id }) => id)).toEqual(['box-opening', 'box-pressure']);
  });
});

describe('asked in conversation', () => {
  it('a wrong word, a why, a back and a don’t know', async () => {
    expect(
      await talked(
        measure,
        'measure',
        'by feel',
        'bag',
        '55 gal',
        'why',
        '6.2, quick',
        '6.2, 6.0, 6.4 s',
        'back',
        '6.1, 6.0, 6.2, 6.0, 6.1',
        "don't know",
        '50 cfm',
      ),
    ).toMatchInlineSnapshot(`
      "
      you: measure
      bot: How was the airflow measured?
             1  Bag and stopwatch
             2  Flow box (a box over the grille with one opening and a pressure gauge)
             3  Speeds over the grille (an anemometer moved over its face)
             4  Flow hood (it shows the airflow itself)
      you: by feel
      bot: “by feel” is not one of these. Pick Bag and stopwatch, Flow box, Speeds over the grille or Flow
           hood.
           How was the airflow measured?
             1  Bag and stopwatch
             2  Flow box (a box over the grille with one opening and a pressure gauge)
             3  Speeds over the grille (an anemometer moved over its face)
             4  Flow hood (it shows the airflow itself)
      you: bag
      bot: How the airflow was measured: Bag and stopwatch.
           How much does the bag hold? The number on its box.
      you: 55 gal
      bot: Volume of the bag: 55 gal (208 L).
           How many seconds each time, door shut? Five times, with commas between.
      you: why
      bot: One timing may be half a second off; the mean of five is worth having.
           How many seconds each time, door shut? Five times, with commas between.
      you: 6.2, quick
      bot: I cannot read “quick”; I need a time, such as 7.4 s.
           How many seconds each time, door shut? Five times, with commas between.
      you: 6.2, 6.0, 6.4 s
      bot: Seconds to fill or empty the bag, each time: 6.2 s; 6 s; 6.4 s.
           What does it measure with the door open? The same way, the same place; or don’t know.
      you: back
      bot: Took back: Seconds to fill or empty the bag, each time.
           How many seconds each time, door shut? Five times, with commas between.
      you: 6.1, 6.0, 6.2, 6.0, 6.1
      bot: Seconds to fill or empty the bag, each time: 6.1 s; 6 s; 6.2 s; 6 s; 6.1 s.
           What does it measure with the door open? The same way, the same place; or don’t know.
      you: don't know
      bot: Airflow measured the same way with the door open: Not measured with the door open, so the door’s
           part cannot be told apart.
           How much air must it move? Use /size to work it out from the room.
      you: 50 cfm
      bot: Airflow the room needs: 50 cfm (23.6 L/s).

           The fan moves about 73 cfm (34.2 L/s).

           Fine:    Measured with a bag: 73 cfm (34.2 L/s), somewhere from 59 to 80 cfm.
           Fine:    Enough: even the low end, 59 cfm, meets the 50 cfm needed.
      "
    `);
  });
});
