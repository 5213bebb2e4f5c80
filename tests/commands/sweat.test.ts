import { describe, expect, it, test } from 'vitest';
import { oneShot } from '#chat/one-shot.ts';
import sweat from '#commands/sweat.ts';
import file from '../worked-examples/figures/duct-condensation.json' with { type: 'json' };
import { asked, duct, feet, flow, stepOf, valueIn } from './sweating.ts';
import { findingOf, talked } from './talked.ts';

const rows = Object.entries(file.rows).flatMap(([id, row]) =>
  'given' in row && 'duct_in' in row.given ? [[id, row as (typeof file.rows)['duct-pub-1']] as const] : [],
);

describe('where it starts (own working, another program, 8 % or a foot)', () => {
  it('has the seven rows to go by', () => expect(rows).toHaveLength(7));

  test.each(rows)('%s', (_, { given, expected, tolerance }) => {
    const words = [
      `delivered-airflow=${given.delivered_cfm} cfm`,
      `duct-diameter=${given.duct_in} in`,
      `attic-duct-length=${given.length_ft} ft`,
      `duct-insulation=R-${given.R_ip}`,
      `attic-temperature=${given.T_attic_F} F`,
      `exhaust-humidity=${given.RH_in * 100} %`,
      `exhaust-temperature=${given.T_in_F} F`,
    ];
    const start = findingOf(asked(...words), 'condensation-starts');
    const room = Math.max(tolerance.x_onset.abs_ft, tolerance.x_onset.rel * expected.x_onset_ft);
    if (expected.condenses) {
      expect(start.weight).toBe('caution');
      expect(Math.abs(feet(start.value?.number) - expected.x_onset_ft)).toBeLessThan(room);
    } else {
      expect(start.value).toMatchObject({ number: null, shown: 'stays dry' });
      const told = Number(/would start (\d+) ft from the fan/.exec(start.says)?.[1]);
      expect(Math.abs(told - expected.x_onset_ft)).toBeLessThan(room);
      const longer = valueIn(
        'condensation-starts',
        ...words.map((each) => each.replace(/^attic-duct-length=.*/, 'attic-duct-length=95 ft')),
      );
      expect(Math.abs(feet(longer?.number) - expected.x_onset_ft)).toBeLessThan(room);
    }
    const dew = parseFloat(stepOf(start, /^Dew point/).value);
    expect(Math.abs(dew - expected.dew_F)).toBeLessThan(tolerance.dew_abs_F);
  });
});

describe('the laws of a sweating duct', () => {
  const start = (...words: readonly string[]) =>
    valueIn('condensation-starts', flow, ...duct, 'duct-insulation=R-2', ...words)?.number ?? Number.POSITIVE_INFINITY;
  const wrap = (...words: readonly string[]) =>
    valueIn('insulation-needed', flow, ...duct, ...words)?.number ?? Number.POSITIVE_INFINITY;

  it('more wrap never brings the water nearer', () => {
    const starts = ['none', 'R-1', 'R-2', 'R-4', 'R-8'].map((each) => start(`duct-insulation=${each}`));
    expect(starts).toEqual(starts.toSorted((a, b) => a - b));
    expect(starts[0]).toBe(0);
    expect(starts.at(-1)).toBe(Number.POSITIVE_INFINITY);
  });

  it('slower, damper, warmer exhaust and a colder attic bring it nearer and want more wrap', () => {
    for (const worse of [
      'delivered-airflow=30 cfm',
      'exhaust-humidity=90',
      'exhaust-temperature=80 F',
      'attic-temperature=0 F',
    ]) {
      expect(start(worse), worse).toBeLessThanOrEqual(start());
      expect(wrap(worse), worse).toBeGreaterThan(wrap());
    }
  });

  it('goes by the low end of the airflow, and says so', () => {
    const range = asked('delivered-airflow=40 to 80 cfm', ...duct, 'duct-insulation=R-3');
    const low = asked('delivered-airflow=40 cfm', ...duct, 'duct-insulation=R-3');
    for (const id of ['condensation-starts', 'insulation-needed'])
      expect(findingOf(range, id).value?.number).toBe(findingOf(low, id).value?.number);
    expect(findingOf(range, 'condensation-starts').says).toContain('low end of the airflow, 40 cfm');
  });

  it('tells metric crews the same place', () => {
    const metric = oneShot(
      sweat,
      [
        'delivered-airflow=37.7557954',
        'duct-diameter=101.6',
        'attic-duct-length=12.192',
        'duct-insulation=RSI 0.7396641',
        'attic-temperature=-6.6666667',
        'exhaust-humidity=80',
        'exhaust-temperature=23.8888889',
      ],
      { units: 'metric' },
    );
    const here = valueIn(
      'condensation-starts',
      flow,
      'duct-diameter=4 in',
      'attic-duct-length=40 ft',
      'duct-insulation=R-4.2',
      'attic-temperature=20 F',
      'exhaust-humidity=80',
      'exhaust-temperature=75 F',
    );
    expect((findingOf(metric, 'condensation-starts').value?.number ?? 0) / (here?.number ?? 1)).toBeCloseTo(1, 3);
  });
});

describe('a duct nobody measured', () => {
  const answer = asked('delivered-airflow=20 to 60 cfm', 'duct-run=25 ft 4 in flex; wall cap', 'duct-insulation=R-4');

  it('may read from the fan to staying dry, and names what would tell', () => {
    const start = findingOf(answer, 'condensation-starts');
    expect(start.value?.low).toBe(0);
    expect(start.value?.high).toBeUndefined();
    expect(start.value?.shown).toContain('to staying dry');
    expect(findingOf(answer, 'measure-next').says).toContain('how humid the exhaust is');
  });

  it('gives the wrap a range that may end in more than can be fitted', () => {
    const { low, high, shown } = findingOf(answer, 'insulation-needed').value ?? {};
    expect(low).toBeGreaterThan(0);
    expect(high).toBeUndefined();
    expect(shown).toContain('to more than can be fitted');
  });

  it('takes it as bare until somebody looks', () => {
    const bare = asked('delivered-airflow=60 cfm', 'duct-run=14 ft 4 in flex; wall cap');
    expect(findingOf(bare, 'condensation-starts').value?.number).toBe(0);
    expect(bare.reply?.assumed?.join(' ')).toContain('Insulation on the duct: none');
    expect(
      findingOf(
        asked('delivered-airflow=60 cfm', 'duct-run=14 ft 4 in flex', 'duct-insulation=bare'),
        'condensation-starts',
      ).value?.number,
    ).toBe(0);
  });
});

describe('a run of several sizes', () => {
  const base = [
    flow,
    'duct-insulation=R-4',
    'attic-temperature=20 F',
    'exhaust-humidity=80',
    'exhaust-temperature=75 F',
  ] as const;

  it('is followed piece by piece, and sweats in the wide piece first', () => {
    const narrow = valueIn('condensation-starts', ...base, 'duct-run=22 ft 4 in smooth');
    const widened = findingOf(
      asked(...base, 'duct-run=10 ft 4 in smooth; increaser 4 to 7 in; 12 ft 7 in smooth'),
      'condensation-starts',
    );
    expect(narrow?.number).toBeNull();
    expect(feet(widened.value?.number)).toBeCloseTo(10, 6);
    expect(stepOf(widened, /^Air that enters the 7 in piece, 10 ft from the fan/).value).toMatch(/°F$/);
  });

  it('pieces of one size in a row are one duct', () => {
    const [one, two] = ['duct-run=40 ft 4 in smooth', 'duct-run=15 ft 4 in flex; elbow 90; 25 ft 4 in smooth'].map(
      (run) => valueIn('condensation-starts', ...base, run)?.number,
    );
    expect(two).toBe(one);
  });

  it('counts only what lies in the cold, from the fan outward', () => {
    const run = 'duct-run=40 ft 4 in smooth; roof cap';
    expect(valueIn('condensation-starts', ...base, run)?.number).not.toBeNull();
    const cut = asked(...base, run, 'attic-duct-length=12 ft');
    expect(findingOf(cut, 'condensation-starts').value?.number).toBeNull();
    expect(cut.reply?.assumed?.join(' ')).toContain('the first 12 ft from the fan');
  });

  it('a run up to a roof cap wants a trap', () => {
    const ids = (run: string) => asked(...base, run).reply?.findings.map(({ id }) => id);
    expect(ids('duct-run=15 ft 4 in smooth; roof cap')).toContain('vertical-run');
    expect(ids('duct-run=15 ft 4 in smooth; wall cap')).not.toContain('vertical-run');
  });
});

describe('what is said beside it', () => {
  it('frost below freezing, and none above', () => {
    const cold = (attic: string) =>
      asked(
        'delivered-airflow=30 cfm',
        'duct-run=25 ft 4 in smooth',
        `attic-temperature=${attic}`,
        'exhaust-humidity=80',
        'exhaust-temperature=72 F',
      );
    expect(findingOf(cold('-20 F'), 'frost')).toMatchObject({ weight: 'caution' });
    expect(cold('45 F').reply?.findings.map(({ id }) => id)).not.toContain('frost');
  });

  it('pitch: a quarter inch in each foot, so 3 3/4 in over 15 ft', () => {
    const pitch = findingOf(asked(flow, ...duct), 'duct-pitch');
    expect(pitch.value?.number).toBeCloseTo(1 / 48, 9);
    expect(pitch.says).toContain('1/4 in for each foot');
    expect(pitch.says).toContain('3 3/4 in of fall over 15 ft');
  });

  it('the duct dries once the exhaust is under what its coldest wall holds', () => {
    const runOn = findingOf(asked(flow, ...duct), 'run-on');
    const [, wall, full] = /^(\d+) Pa at the wall.* ÷ (\d+) Pa/.exec(runOn.working[0]?.how ?? '')?.map(Number) ?? [];
    const limit = Math.round((100 * (wall ?? 0)) / (full ?? 1));
    expect(runOn.says).toContain(`under ${limit} % humidity`);
    const drier = (share: number) => valueIn('condensation-starts', flow, ...duct, `exhaust-humidity=${share}`);
    expect(drier(limit - 2)?.number).toBeNull();
    expect(drier(limit + 2)?.number).not.toBeNull();
    expect(runOn.value).toMatchObject({ number: 1200, unit: 's' });
  });

  it('the first minutes are wet in any case, and codes print no number', () => {
    const answer = asked(flow, ...duct, 'duct-insulation=R-8');
    expect(findingOf(answer, 'first-minutes').says).toContain('whatever the wrap');
    expect(findingOf(answer, 'code-insulation').says).toContain('Ask the local official');
  });

  it('a fan that moves nothing is said before any wrap', () => {
    const still = asked('delivered-airflow=0', ...duct);
    expect(findingOf(still, 'condensation-starts').says).toContain('No air moves');
    expect(findingOf(still, 'insulation-needed').says).toContain('No amount of wrap will keep it dry: no air moves');
  });
});

describe('the picture', () => {
  it('runs from the fan between round numbers, the dew point across it, and marks where the water starts', () => {
    const { chart } =
      asked(
        flow,
        'duct-diameter=4 in',
        'attic-duct-length=40 ft',
        'duct-insulation=R-4.2',
        'attic-temperature=20 F',
        'exhaust-humidity=80',
        'exhaust-temperature=75 F',
      ).reply ?? {};
    expect([chart?.x.min, chart?.x.max, chart?.y.min, chart?.y.max]).toEqual([0, 40, 66, 76]);
    expect(chart?.marks).toHaveLength(1);
    expect(chart?.marks[0]?.at[1]).toBeCloseTo(chart?.levels[0]?.at ?? Number.NaN, 6);
    expect(chart?.alt).toContain('It sweats from 31 ft on.');
  });

  it('marks nothing on a duct that stays dry', () => {
    const { chart } = asked(flow, ...duct, 'duct-insulation=R-8').reply ?? {};
    expect(chart?.marks).toEqual([]);
    expect(chart?.alt).toContain('stays dry');
  });
});

it('asks for what is missing only', () => {
  expect(asked().missing.map(({ id }) => id)).toEqual(['delivered-airflow', 'duct-diameter', 'attic-duct-length']);
  expect(asked(flow, 'duct-run=15 ft 4 in smooth').status).toBe('answered');
});

it('is asked and answered by an apprentice', async () => {
  expect(
    await talked(
      sweat,
      'sweat delivered-airflow="60 cfm"',
      'round',
      '4 in',
      '15 ft',
      'wrapped',
      'why',
      'none',
      'back',
      'R-4.2',
      '10 F',
      "don't know",
      'back',
      '85 %',
      "don't know",
    ),
  ).toMatchInlineSnapshot(`
    "
    you: sweat delivered-airflow="60 cfm"
    bot: Airflow really delivered: 60 cfm (28.3 L/s).
         What is the inside diameter of the duct?
    you: round
    bot: I cannot read “round”; I need a length, such as 4 in or 100 mm.
         What is the inside diameter of the duct?
    you: 4 in
    bot: Inside diameter of the duct: 4 in (102 mm).
         How much duct lies in the cold, as it lies?
    you: 15 ft
    bot: Length of duct in the attic or other cold space: 15 ft (4.57 m).
         What insulation is on the duct? The R on the label, or none.
    you: wrapped
    bot: I cannot read “wrapped”; I need an insulation value, such as R-8 or RSI 1.4.
         What insulation is on the duct? The R on the label, or none.
    you: why
    bot: A bare duct in a cold attic sweats from its first foot. Squeezed wrap gives less than its label
         says.
         What insulation is on the duct? The R on the label, or none.
    you: none
    bot: Insulation on the duct: none.
         How cold does it get around the duct?
    you: back
    bot: Took back: Insulation on the duct.
         What insulation is on the duct? The R on the label, or none.
    you: R-4.2
    bot: Insulation on the duct: R-4.2 (RSI 0.74).
         How cold does it get around the duct?
    you: 10 F
    bot: Temperature around the duct on a cold night: 10 °F (-12 °C).
         How humid is the air that goes into the fan during a shower?
    you: don't know
    bot: Relative humidity of the exhaust: taken as 60 to 95 %, most likely 80 %. Dry by the end of a run,
         near saturation while the shower runs. Saturated air wets any cold duct.
         How warm is that air?
    you: back
    bot: Took back: Relative humidity of the exhaust.
         How humid is the air that goes into the fan during a shower?
    you: 85 %
    bot: Relative humidity of the exhaust: 85 %.
         How warm is that air?
    you: don't know
    bot: Temperature of the exhaust: taken as 70 to 79 °F (21 to 26 °C), most likely 73 °F. Room air during
         and after a shower.

         This duct sweats from about 3 ft on.

         Caution: The duct sweats from about 3 ft from the fan on: there its wall is under 69 °F, the dew
                  point of this exhaust; usually 2 to 4 ft from the fan.
         Advice:  Wrap it to at least R-7 as installed, not as labeled, to keep it dry in steady running;
                  usually R-6.5 to R-7.5.
         Advice:  Pitch level duct down to the outside, 1/4 in for each foot, and leave no low spots:
                  3 3/4 in of fall over 15 ft.
         Advice:  Run the fan on at least 20 min after the shower, longer if /runtime says so: the duct dries
                  once the exhaust is under 79 % humidity.
         Advice:  To be surer, find out how warm the exhaust is: within what is likely, that alone takes it
                  from sweating 12 in from the fan to sweating 4 ft from the fan.
         Advice:  The first minutes of a hot shower wet any cold duct, whatever the wrap. Pitch it outward
                  and run the fan a few minutes longer to dry it.
         Advice:  The model codes known to us print no R-value for a bath exhaust duct. State and local
                  amendments and programs ask for R-4 to R-8. Ask the local official.
    "
  `);
});
