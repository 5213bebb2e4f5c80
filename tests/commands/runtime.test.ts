import { describe, expect, it, test } from 'vitest';
import { type OneShot, oneShot } from '#chat/one-shot.ts';
import runtime from '#commands/runtime.ts';
import type { Finding } from '#findings/finding.ts';
import { findingOf, once, talked } from './talked.ts';

const room = ['room-length=8 ft', 'room-width=5 ft', 'ceiling-height=8 ft'] as const;
/** Each answer once: every one follows a hundred and more bathrooms. */
const answered = new Map<string, OneShot>();
function asked(...words: readonly string[]): OneShot {
  const key = words.join('|');
  const answer = answered.get(key) ?? once(runtime, ...room, ...words);
  answered.set(key, answer);
  return answer;
}
const numberOf = (id: string, ...words: readonly string[]) =>
  findingOf(asked(...words), id).value?.number ?? Number.NaN;
const stepOf = ({ working }: Finding, what: RegExp) => {
  const step = working.find((each) => what.test(each.what));
  if (!step) throw new Error(`no line ${what} among ${working.map((each) => each.what).join('; ')}`);
  return step;
};
const times = ['run-time', 'air-recovers', 'mirror-clears', 'surfaces-dry'] as const;

describe('how long to run the fan', () => {
  it.each([30, 50, 80, 110])(
    'dries walls at %i cfm within a quarter of the measured time (Architectural Institute of Japan, no. 314)',
    (cfm) => {
      const measured = 60 * (1920 / (cfm * 1.69901) + 25);
      const ratio = numberOf('surfaces-dry', `delivered-airflow=${cfm}`) / measured;
      expect(ratio).toBeGreaterThan(0.75);
      expect(ratio).toBeLessThan(1.25);
    },
  );

  it('tells the latest of air, mirror and walls, rounded up to five minutes', () => {
    const { working, value, says } = findingOf(asked('delivered-airflow=60 cfm'), 'run-time');
    const latest = Math.max(
      ...working
        .filter(({ what }) => /^(?:Air back|Mirror clear|Walls safe)/.test(what))
        .map((step) => parseFloat(step.value)),
    );
    expect(value?.number).toBe(Math.ceil(latest / 5) * 5 * 60);
    expect(stepOf(findingOf(asked('delivered-airflow=60 cfm'), 'run-time'), /may stop/).value).toBe(`${latest} min`);
    expect(says).toContain(`about ${(value?.number ?? 0) / 60} min`);
  });

  it('never tells less than a quarter of an hour, nor hides a weak fan behind an hour', () => {
    const quick = findingOf(asked('delivered-airflow=200 cfm', 'house-humidity=30', 'wipe-down=yes'), 'run-time');
    expect(quick.value?.number).toBe(15 * 60);
    const weak = findingOf(asked('delivered-airflow=25 cfm'), 'run-time');
    expect(weak).toMatchObject({ weight: 'caution', value: { shown: 'more than an hour' } });
    expect(weak.value?.number).toBeGreaterThan(3600);
    expect(weak.says).toContain('more air, not more time');
  });

  it('goes by the low end of the airflow, and says so', () => {
    const range = asked('delivered-airflow=40 to 80 cfm, most likely 60');
    for (const id of times) expect(findingOf(range, id).value?.number).toBe(numberOf(id, 'delivered-airflow=40 cfm'));
    const atLikeliest = numberOf('run-time', 'delivered-airflow=60 cfm') / 60;
    expect(findingOf(range, 'run-time').says).toContain(
      `low end of the airflow, 40 cfm; at the likeliest, 60 cfm, about ${atLikeliest} min would do`,
    );
    expect(findingOf(asked('delivered-airflow=40 cfm'), 'run-time').says).not.toContain('low end');
  });

  it('goes by what is delivered through the duct on the sheet, not by the carton', () => {
    const duct = ['fan-curve=110@0.1', 'collar=4 in', 'duct-run=20 ft 3 in smooth; wall cap'] as const;
    const through = findingOf(asked(...duct), 'run-time');
    expect(through.working[0]?.what).toBe('Delivered airflow, worked out from the duct');
    expect(numberOf('air-recovers', ...duct)).toBeGreaterThan(1.5 * numberOf('air-recovers', 'delivered-airflow=110'));
    expect(numberOf('air-recovers', ...duct, 'measured-airflow=110')).toBe(
      numberOf('air-recovers', 'delivered-airflow=110'),
    );
  });

  it('stands inside its likely band', () => {
    for (const words of [['delivered-airflow=60 cfm'], ['delivered-airflow=30 to 90 cfm']]) {
      for (const id of times) {
        const { number, low = 0, high = Number.POSITIVE_INFINITY } = findingOf(asked(...words), id).value ?? {};
        expect(low, id).toBeLessThanOrEqual(number ?? Number.NaN);
        expect(high, id).toBeGreaterThanOrEqual(number ?? Number.NaN);
      }
    }
  });

  it('tells metric crews the same times', () => {
    const metric = oneShot(
      runtime,
      [
        'room-length=2.4384',
        'room-width=1.524',
        'ceiling-height=2.4384',
        'delivered-airflow=28.3168466',
        'house-temperature=21',
      ],
      { units: 'metric' },
    );
    for (const id of times) {
      const here = numberOf(id, 'delivered-airflow=60 cfm', 'house-temperature=69.8 F');
      expect((findingOf(metric, id).value?.number ?? 0) / here).toBeCloseTo(1, 4);
    }
  });
});

describe('the laws of a run time', () => {
  const order = (id: string, less: readonly string[], more: readonly string[]) =>
    expect(numberOf(id, ...more), id).toBeGreaterThanOrEqual(numberOf(id, ...less));

  test.each([
    ['less air', ['delivered-airflow=90'], ['delivered-airflow=50']],
    ['a damper house', ['delivered-airflow=60', 'house-humidity=35'], ['delivered-airflow=60', 'house-humidity=50']],
    ['a longer shower', ['delivered-airflow=60', 'shower-minutes=5'], ['delivered-airflow=60', 'shower-minutes=15']],
    ['a fan off in the shower', ['delivered-airflow=60'], ['delivered-airflow=60', 'fan-during-shower=no']],
    ['walls left wet', ['delivered-airflow=60', 'wipe-down=yes'], ['delivered-airflow=60', 'wipe-down=no']],
    [
      'a cool bathroom',
      ['delivered-airflow=60', 'bathroom-temperature=77 F'],
      ['delivered-airflow=60', 'bathroom-temperature=70 F'],
    ],
  ])('%s never shortens a time', (_, less, more) => {
    for (const id of times) order(id, less, more);
  });

  it('a mirror on an outside wall clears later', () => {
    const wall = (which: string) => numberOf('mirror-clears', 'delivered-airflow=60', `mirror-wall=${which}`);
    expect(wall('outside')).toBeGreaterThan(wall('inside'));
  });
});

describe('when there is no time to give', () => {
  it('says that the house air is too damp, and what drying it would do', () => {
    const answer = asked('delivered-airflow=80', 'house-humidity=75');
    for (const id of ['run-time', 'air-recovers']) {
      expect(findingOf(answer, id)).toMatchObject({ weight: 'caution', value: { number: null, shown: 'never' } });
    }
    expect(findingOf(answer, 'run-time').says).toContain('the house air, 75 %');
    expect(findingOf(answer, 'shortens').says).toMatch(/^Dry the house air to 50 %/);
  });

  it('says that no air moves, once in full', () => {
    const answer = asked('delivered-airflow=0');
    for (const id of times) expect(findingOf(answer, id).value?.number).toBeNull();
    const said = answer.reply?.findings.map(({ says }) => says).join(' ') ?? '';
    expect(said.match(/Find out why/g)).toHaveLength(1);
  });

  it('never says that a mirror does not fog, nor that it takes no time', () => {
    const strong = findingOf(asked('delivered-airflow=200', 'house-humidity=30'), 'mirror-clears');
    expect(strong.value?.number).toBe(0);
    expect(strong.says).toContain('The mirror fogs, and clears within about 5 min');
    expect(strong.says + strong.value?.shown).not.toMatch(/not fog|\b0 (?:s|min)/);
  });
});

describe('what shortens it', () => {
  const rows = (...words: readonly string[]) =>
    Object.fromEntries(
      (findingOf(asked(...words), 'shortens').table?.rows ?? []).map(([change = '', after = '']) => [change, after]),
    );
  const stop = (...words: readonly string[]) =>
    `${Math.round(parseFloat(stepOf(findingOf(asked(...words), 'run-time'), /may stop/).value))} min`;

  it('is worked out by running the room again, so asking with the change made says the same', () => {
    const table = rows('delivered-airflow=60', 'fan-during-shower=no');
    expect(table['Start the fan with the shower']).toBe(stop('delivered-airflow=60', 'fan-during-shower=yes'));
    expect(table['Half as much air again: 90 cfm']).toBe(stop('delivered-airflow=90', 'fan-during-shower=no'));
    expect(table['As things are']).toBe(stop('delivered-airflow=60', 'fan-during-shower=no'));
    expect(rows('delivered-airflow=60')['With the fan off during the shower']).toBe(
      stop('delivered-airflow=60', 'fan-during-shower=no'),
    );
  });

  it('a squeegee leaves a quarter of the film, as the habit does', () => {
    expect(rows('delivered-airflow=60')['Squeegee the wet walls and curtain']).toBe(
      stop('delivered-airflow=60', 'wipe-down=yes'),
    );
  });

  it('offers the habits that are not there yet, and no others', () => {
    expect(Object.keys(rows('delivered-airflow=60', 'wipe-down=yes', 'fan-during-shower=yes'))).toEqual([
      'Half as much air again: 90 cfm',
      'As things are',
    ]);
  });

  it('tries a wider gap under the door in the duct that is there', () => {
    const path = ['fan-curve=80@0.02 65@0.13835 60@0.17525 0@0.5', 'collar=4 in', 'duct-run=fitting 4 in k=4'] as const;
    const tight = Object.keys(rows(...path, 'door-width=30 in', 'door-gap=1/4 in')).find((each) =>
      each.startsWith('Open the gap'),
    );
    const flow = Number(/: (\d+) cfm$/.exec(tight ?? '')?.[1]);
    const now = parseFloat(
      stepOf(findingOf(asked(...path, 'door-width=30 in', 'door-gap=1/4 in'), 'run-time'), /^Delivered/).value,
    );
    expect(flow).toBeGreaterThan(now * 1.2);
    expect(Object.keys(rows(...path, 'door-width=30 in', 'door-gap=1 in')).join()).not.toContain('Open the gap');
  });

  it('comes shortest first', () => {
    const after = (findingOf(asked('delivered-airflow=60', 'fan-during-shower=no'), 'shortens').table?.rows ?? [])
      .slice(0, -1)
      .map(([, minutes = '']) => parseFloat(minutes));
    expect(after).toEqual(after.toSorted((a, b) => a - b));
  });
});

describe('the working', () => {
  const answer = asked('delivered-airflow=60 cfm', 'house-humidity=40', 'house-temperature=21 C', 'shower-minutes=8');

  it('starts from the air by the printed saturation pressures (ASHRAE Fundamentals 2017, chapter 1, table 3)', () => {
    // 2.4877 kPa at 21 °C and 2.8104 kPa at 23 °C: 0.62195 × 40 % × 2487.7 ÷ (101325 − 995.1), and 60 % of 2810.4 alike.
    const air = findingOf(answer, 'air-recovers');
    expect(stepOf(air, /^The house air/).value).toBe('6.17 g/kg');
    expect(stepOf(air, /^Room air at the limit/).value).toBe('10.53 g/kg');
    expect(stepOf(air, /^Vapor given off/).value).toBe('336 g');
  });

  it('sweeps fog and air by the closed form (CDC, MMWR 1994, table S3-1)', () => {
    // Own arithmetic: 320 cu ft in 60 % of 60 cfm is 8.89 min for one filling of the room.
    const air = findingOf(answer, 'air-recovers');
    const { how = '', value } = stepOf(air, /^Sweeping the air alone/);
    const [, storage, filling, from, to] =
      /^([\d.]+) × ([\d.]+) min × ln\(([\d.]+) ÷ ([\d.]+)\)$/.exec(how)?.map(Number) ?? [];
    expect(filling).toBeCloseTo(320 / (0.6 * 60), 1);
    expect(to).toBeCloseTo(10.53 - 6.17, 1);
    const byHand = (storage ?? 0) * (filling ?? 0) * Math.log((from ?? 1) / (to ?? 1));
    expect(parseFloat(value)).toBeCloseTo(byHand, 1);
  });

  it.each([
    ['air-recovers', /air crosses the limit/, 60],
    ['mirror-clears', /falls under that/, 1],
    ['surfaces-dry', /falls under that/, 5],
  ])('%s can be read off between the two minutes printed', (id, line, limit) => {
    const finding = findingOf(answer, id);
    const { how = '', value } = stepOf(finding, line);
    const [, before, at, after, then] =
      /^([\d.]+) \S+ after ([\d.]+) min, ([\d.]+) \S+ after ([\d.]+) min$/.exec(how)?.map(Number) ?? [];
    const read = (at ?? 0) + (((then ?? 0) - (at ?? 0)) * ((before ?? 0) - limit)) / ((before ?? 0) - (after ?? 0));
    expect(parseFloat(value)).toBeCloseTo(read, 0);
    expect(finding.value?.number).toBeCloseTo(60 * parseFloat(value), -1);
    expect(Math.abs((finding.value?.number ?? 0) - 60 * read)).toBeLessThan(6);
  });

  it('cites a source beside every assumption, and says once that it is a fit', () => {
    const all = answer.reply?.findings ?? [];
    for (const { id, sources } of all) expect(sources.length, id).toBeGreaterThan(0);
    expect(all.filter(({ says }) => says.includes('not a proof'))).toHaveLength(1);
  });
});

describe('the picture', () => {
  it('runs from the shower to past the last time, between round numbers', () => {
    const { chart } = asked('delivered-airflow=60 cfm').reply ?? {};
    expect([chart?.x.min, chart?.x.max, chart?.y.max]).toEqual([-10, 50, 100]);
    expect(chart?.marks.map(({ label }) => label.replace(/, .*/, ''))).toEqual(['mirror clears', 'walls dry']);
    expect(chart?.levels.map(({ at }) => at)).toEqual([60, 45]);
    expect(chart?.alt).toMatch(/rises to 100 % in the shower and is back under 60 % after \d+ min/);
  });

  it('keeps the limit in sight where the room never comes down to it', () => {
    const { chart } = asked('delivered-airflow=80', 'house-humidity=75').reply ?? {};
    expect(chart?.y.min).toBeLessThan(60);
  });

  it('draws the likeliest airflow beside the low one', () => {
    const { chart } = asked('delivered-airflow=40 to 80 cfm').reply ?? {};
    expect(chart?.lines.map(({ label }) => label)).toEqual(['room air at 40 cfm', 'at 60 cfm']);
  });
});

it('asks for what is missing only', () => {
  const { missing } = once(runtime);
  expect(missing.map(({ id }) => id)).toEqual(['room-length', 'room-width', 'delivered-airflow']);
  expect(once(runtime, 'room-area=40 sq ft', 'delivered-airflow=60').status).toBe('answered');
});

it('is asked and answered by an apprentice', async () => {
  expect(
    await talked(
      runtime,
      'runtime',
      '8 ft',
      'a bit',
      '5 ft',
      'why',
      '8 ft',
      'back',
      '9 ft',
      'quite a lot',
      "don't know",
      '10',
      'back',
      '12 min',
      '45 %',
      "don't know",
      'no',
      'no',
    ),
  ).toMatchInlineSnapshot(`
    "
    you: runtime
    bot: How long is the room, wall to wall?
    you: 8 ft
    bot: Room length: 8 ft (2.44 m).
         How wide is it?
    you: a bit
    bot: I do not know the unit “bit”; I need a length, such as 8 ft 6 in or 2.6 m.
         How wide is it?
    you: 5 ft
    bot: Room width: 5 ft (1.52 m).
         How high is the ceiling? For a sloped one, the average.
    you: why
    bot: Above 8 ft the room holds more air than its floor tells, so it is sized by volume.
         How high is the ceiling? For a sloped one, the average.
    you: 8 ft
    bot: Ceiling height: 8 ft (2.44 m).
         How much air does the fan really move? The number /duct gives or a measurement, not the carton’s.
    you: back
    bot: Took back: Ceiling height.
         How high is the ceiling? For a sloped one, the average.
    you: 9 ft
    bot: Ceiling height: 9 ft (2.74 m).
         How much air does the fan really move? The number /duct gives or a measurement, not the carton’s.
    you: quite a lot
    bot: I cannot read “quite a lot”; I need an airflow, such as 80 cfm or 38 L/s.
         How much air does the fan really move? The number /duct gives or a measurement, not the carton’s.
    you: don't know
    bot: Airflow really delivered: taken as 20 to 80 cfm (9.4 to 38 L/s), most likely 45 cfm. Bath fans in
         lived-in houses were mostly found to move 20 to 80 cfm; /duct or a bag test tells.
         How long is the longest shower, or all of them in a row?
    you: 10
    bot: Length of the shower, or of all in a row: 10 min.
         What is the humidity of the house, outside the bathroom?
    you: back
    bot: Took back: Length of the shower, or of all in a row.
         How long is the longest shower, or all of them in a row?
    you: 12 min
    bot: Length of the shower, or of all in a row: 12 min.
         What is the humidity of the house, outside the bathroom?
    you: 45 %
    bot: Relative humidity of the house: 45 %.
         How warm is the house?
    you: don't know
    bot: Temperature of the house: taken as 66 to 73 °F (19 to 23 °C), most likely 70 °F. Ordinary heated
         rooms.
         Does the fan run during the shower too?
           1  Yes
           2  No
    you: no
    bot: Fan on during the shower: No.
         Does somebody squeegee the wet walls after the shower?
           1  Yes
           2  No
    you: no
    bot: Wet walls squeegeed after the shower: No.

         This fan needs more than an hour after a shower: more air, not more time.

         Caution: Give it more air, not more time: more than an hour, about 3 h, would be needed. Reckoned at
                  the low end of the airflow, 20 cfm; at the likeliest, 45 cfm, it is more than an hour too.
         Advice:  Tell the customer: leave the fan on for more than an hour after each shower for now, with
                  the bathroom door shut and the gap under it clear; the fan seems to move too little air,
                  and we come back to you about that.
         Advice:  The air is back under 60 % humidity about 2 h 59 min after the shower, usually 44 min or
                  far longer.
         Advice:  The mirror fogs, and clears about 2 h 47 min after the shower, usually 30 min or far
                  longer.
         Advice:  Wet walls and curtain are dry about 2 h 28 min after the shower, usually 41 min or far
                  longer.
         Advice:  Half as much air again: 30 cfm: that shortens it most, by about 59 min. Check with /makeup
                  first that the door lets that much in.
         Advice:  To be surer, find out the airflow at the grille: within what is likely, that alone makes it
                  48 min or far longer.
         Advice:  Water standing on the floor takes far longer than walls: one study ran the fan 90 to
                  120 minutes. Mop it up.
         Advice:  These times are about right, not exact. The model was fitted to one published drying test,
                  so it is a fit and not a proof.
    "
  `);
});
