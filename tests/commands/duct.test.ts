import { describe, expect, it } from 'vitest';
import type { OneShot } from '#chat/one-shot.ts';
import duct from '#commands/duct.ts';
import { airflowAt } from '#engine/fan/fan-curve.ts';
import { pascals } from '#quantity/units.ts';
import { found } from './duct-inputs.ts';
import { findingOf, once } from './talked.ts';

const run = '14 ft 4 in flex compressed 4 %; 2 x elbow 90; wall cap';
const fan = '96@0 84@0.1 66@0.25 0@0.5';
const example = once(duct, `fan-curve=${fan}`, 'collar=4 in', `duct-run=${run}`);

const numberOf = (answer: OneShot, id: string): number => findingOf(answer, id).value?.number ?? Number.NaN;

const cfm = 0.3048 ** 3 / 60;
/** Pascals in an inch of water: NIST SP 811, appendix B.8, conventional. */
const inchOfWater = 249.08891;

/** Halves an interval until it is as good as a point. */
function bisected(low: number, high: number, tooLow: (at: number) => boolean): number {
  let [from, to] = [low, high];
  for (let count = 0; count < 80; count += 1) {
    const middle = (from + to) / 2;
    if (tooLow(middle)) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/**
 * The run of the example worked out by hand, away from the engine: losses in pascals at an airflow.
 * - Darcy and Weisbach with Colebrook and White: ASHRAE Handbook, Fundamentals (2021), chapter 21, equations 18 and 19.
 * - Flex 0.003 ft rough: the same, Table 1. Slack: equation 22, 1 + 58 c exp(−0.00496 D), D in mm; halfway between the
 *   formula at 4 in and at 6 in, the smallest duct it was measured on (own working).
 * - Standard air 0.075 lb/ft³, ASHRAE; viscosity 18.1 µPa·s near 20 °C.
 * - Elbows 0.42 each (own working between fittings CD3-1 and CD3-12), wall cap 2.2 (common practice), on velocity pressure.
 */
function byHand(airflow: number) {
  const diameter = 0.1016;
  const density = (0.075 * 0.45359237) / 0.3048 ** 3;
  const velocity = airflow / ((Math.PI / 4) * diameter ** 2);
  const velocityPressure = (density * velocity ** 2) / 2;
  const reynolds = (density * velocity * diameter) / 18.1e-6;
  const roughness = (0.003 * 0.3048) / diameter;
  const colebrook = (factor: number) =>
    1 / Math.sqrt(factor) + 2 * Math.log10(roughness / 3.7 + 2.51 / (reynolds * Math.sqrt(factor)));
  const factor = bisected(0.005, 0.2, (at) => colebrook(at) > 0);
  const slack = (inches: number) => 1 + 58 * 0.04 * Math.exp(-0.00496 * 25.4 * inches);
  const flex = factor * ((14 * 0.3048) / diameter) * velocityPressure * ((slack(4) + slack(6)) / 2);
  return {
    velocity,
    velocityPressure,
    flex,
    elbows: 2 * 0.42 * velocityPressure,
    cap: 2.2 * velocityPressure,
  };
}

describe('the fan, collar and run of the example', () => {
  const airflow = numberOf(example, 'delivered-airflow');
  const hand = byHand(airflow);
  const total = hand.flex + hand.elbows + hand.cap;

  it('loses in each part what it loses by hand, to one part in a hundred', () => {
    const rows =
      findingOf(example, 'pressure-shares').table?.rows.map(([, loss = '']) => Number.parseFloat(loss)) ?? [];
    const parts = [hand.flex, hand.elbows, hand.cap].map((loss) => loss / inchOfWater);
    rows.forEach((loss, index) => {
      // The table prints thousandths of an inch.
      expect(Math.abs(loss - (parts[index] as number))).toBeLessThan(0.01 * loss + 0.0005);
    });
    expect(rows).toHaveLength(3);
    expect(numberOf(example, 'pressure-shares') / total).toBeCloseTo(1, 2);
  });

  it('works against the sum of the losses, less the velocity pressure the rating has paid at the collar', () => {
    // AMCA 210: fan static pressure is fan total pressure less the velocity pressure at the outlet.
    expect(numberOf(example, 'static-pressure') / (total - hand.velocityPressure)).toBeCloseTo(1, 2);
    expect(numberOf(example, 'duct-velocity') / hand.velocity).toBeCloseTo(1, 4);
  });

  it('meets the fan between its two certified points, close to a straight line between them', () => {
    const pressure = numberOf(example, 'static-pressure') / inchOfWater;
    expect(pressure).toBeGreaterThan(0.1);
    expect(pressure).toBeLessThan(0.25);
    const straight = 84 - ((84 - 66) * (pressure - 0.1)) / (0.25 - 0.1);
    expect(Math.abs(airflow / cfm - straight)).toBeLessThan(2);
  });

  it('is where plain halving finds the two curves to cross', () => {
    const { result } = found({ fan, collar: '4 in', run });
    const { ready } = result;
    const curve = ready.curve(ready.typical);
    const demand = ready.staticDemand(ready.typical);
    const crossing = bisected(0, 1.5 * 96 * cfm, (at) => {
      const moved = at as Parameters<typeof demand>[0];
      return airflowAt(curve, demand(moved)) > at;
    });
    expect(result.airflow.typical / crossing).toBeCloseTo(1, 5);
    expect(airflow / crossing).toBeCloseTo(1, 5);
    expect(airflowAt(curve, pascals(0)) / cfm).toBeCloseTo(96, 6);
  });

  it('is answered in the shape that was published, with a range around it', () => {
    expect(example.status).toBe('answered');
    expect(findingOf(example, 'delivered-airflow').value).toMatchObject({
      unit: 'm3/s',
      shown: '70 cfm (32.9 L/s), usually 66 to 72 cfm',
    });
    const { low = 0, high = 0 } = findingOf(example, 'delivered-airflow').value ?? {};
    expect(low / cfm).toBeGreaterThan(60);
    expect(high / cfm).toBeLessThan(80);
    expect(low).toBeLessThan(airflow);
    expect(high).toBeGreaterThan(airflow);
  });
});

describe('what is said of a run', () => {
  const answer = (...words: string[]) => once(duct, `fan-curve=${fan}`, ...words);

  it('a collar wider than the duct is named, and the necking-down is counted', () => {
    const necked = answer('collar=5 in', `duct-run=${run}`);
    expect(findingOf(necked, 'necked-down')).toMatchObject({ weight: 'caution' });
    const [first] = findingOf(necked, 'pressure-shares').table?.rows ?? [];
    expect(first?.[0]).toBe('reducer 5 in to 4 in at the collar');
    expect(numberOf(necked, 'delivered-airflow')).toBeLessThan(numberOf(example, 'delivered-airflow'));
  });

  it('a duct without an end is a caution, and is reckoned with a bare end', () => {
    const open = answer('collar=4 in', 'duct-run=14 ft 4 in flex compressed 4 %; 2 x elbow 90');
    expect(findingOf(open, 'no-end')).toMatchObject({ weight: 'caution' });
    const rows = findingOf(open, 'pressure-shares').table?.rows.map(([part]) => part);
    expect(rows?.at(-1)).toBe('bare pipe end');
  });

  it('air against the need is enough, may fall short or is too little, by the ends of the range', () => {
    const weigh = (needed: string) => {
      const { weight, says } = findingOf(
        answer('collar=4 in', `duct-run=${run}`, `airflow-needed=${needed}`),
        'delivered-airflow',
      );
      return [weight, /enough|may fall short|too little/.exec(says)?.[0]];
    };
    expect(weigh('50')).toEqual(['good', 'enough']);
    expect(weigh('70')).toEqual(['caution', 'may fall short']);
    expect(weigh('90')).toEqual(['caution', 'too little']);
  });

  it('the need is taken from the room, where that is known, and is not asked for again', () => {
    const room = ['room-length=9 ft', 'room-width=8 ft', 'ceiling-height=8 ft', 'fixtures=toilet, tub'];
    const known = answer('collar=4 in', `duct-run=${run}`, ...room);
    expect(findingOf(known, 'delivered-airflow').says).toContain('against 72 cfm needed');
    expect(known.reply?.assumed).toContain(
      'Airflow the room needs: 72 cfm (34 L/s), worked out from the room on the sheet',
    );
    const told = answer('collar=4 in', `duct-run=${run}`, ...room, 'airflow-needed=60');
    expect(findingOf(told, 'delivered-airflow').says).toContain('against 60 cfm needed');
  });

  it('one elbow is an elbow', () => {
    const one = answer('collar=4 in', 'duct-run=5 ft 4 in smooth; elbow 90; wall cap');
    expect(findingOf(one, 'code-duct-length').says).toContain('1 elbow;');
    const none = answer('collar=4 in', 'duct-run=5 ft 4 in smooth; wall cap');
    expect(findingOf(none, 'code-duct-length').says).toContain('no elbows;');
  });

  it('two lengths of the same flex are one thing to look at', () => {
    const two = answer('collar=4 in', 'duct-run=7 ft 4 in flex; 7 ft 4 in flex; wall cap');
    const lines = findingOf(two, 'measure-next').working.map(({ what }) => what);
    expect(new Set(lines).size).toBe(lines.length);
  });

  it('a starved door is counted where its width and gap are known', () => {
    const words = ['collar=4 in', `duct-run=${run}`, 'door-width=30 in'];
    const tight = numberOf(answer(...words, 'door-gap=1/4 in'), 'delivered-airflow');
    const wide = numberOf(answer(...words, 'door-gap=1 in'), 'delivered-airflow');
    const free = numberOf(example, 'delivered-airflow');
    expect(tight).toBeLessThan(wide);
    expect(wide).toBeLessThan(free);
    expect(tight).toBeLessThan(0.95 * free);
  });
});

describe('fans of other kinds', () => {
  const on = (fanCurve: string, ...more: string[]) =>
    once(duct, `fan-curve=${fanCurve}`, 'collar=4 in', `duct-run=${run}`, ...more);

  it('a carton number gives a wider range than two certified points', () => {
    const width = (answer: OneShot) => {
      const { low = 0, high = 0 } = findingOf(answer, 'delivered-airflow').value ?? {};
      return high - low;
    };
    expect(width(on('84'))).toBeGreaterThan(1.5 * width(on('84@0.1 66@0.25')));
  });

  it('a constant-flow fan delivers what it holds, while the duct asks less than it can give', () => {
    expect(numberOf(on('constant 60 to 0.4'), 'delivered-airflow') / cfm).toBeCloseTo(60, 0);
  });

  it('of several settings the quietest that is surely enough is named', () => {
    const answer = on('110@0.1 95@0.25', 'fan-settings=50, 80, 110', 'airflow-needed=55');
    const setting = findingOf(answer, 'best-setting');
    expect(setting).toMatchObject({ weight: 'good', says: expect.stringContaining('Set it to 80 cfm') });
    expect(setting.table?.rows.map(([name]) => name)).toEqual(['50 cfm', '80 cfm', '110 cfm']);
    const none = findingOf(on('50@0.1 30@0.25', 'fan-settings=30, 50', 'airflow-needed=90'), 'best-setting');
    expect(none).toMatchObject({ weight: 'caution', says: expect.stringContaining('not enough') });
  });

  it('settings with points of their own need no selector', () => {
    const answer = on('low: 50@0.1 30@0.25; high: 110@0.1 95@0.25', 'fan-setting=low');
    expect(numberOf(answer, 'delivered-airflow') / cfm).toBeLessThan(50);
    expect(findingOf(answer, 'best-setting').table?.rows.map(([name]) => name)).toEqual(['low', 'high']);
  });
});

describe('a change of size that stands where it cannot', () => {
  const idsOf = (run: string) =>
    once(
      duct,
      'fan-curve=110',
      'collar=6 in',
      `duct-run=${run}`,
      'fan-settings=none',
      'rated-sones=1',
    ).reply?.findings.map(({ id }) => id);

  it('is named, and none is where the parts follow one another', () => {
    expect(idsOf('17 ft 4 in smooth; reducer 6 to 4 in; roof cap')).toContain('run-order');
    expect(idsOf('reducer 6 to 4 in; 17 ft 4 in smooth; roof cap')).not.toContain('run-order');
  });
});

describe('the loudness', () => {
  it('follows from its lines: decibels together, phons, and back to sones (ISO 131 and ISO 532)', () => {
    const { working, value } = findingOf(
      once(
        duct,
        'fan-curve=110@0.1 84@0.25',
        'collar=6 in',
        'duct-run=reducer 6 to 3 in; 20 ft 3 in smooth; wall cap',
        'rated-sones=1.5',
        'fan-settings=none',
      ),
      'sound',
    );
    const numbers = (what: string) =>
      [
        ...(working.find((step) => step.what.startsWith(what))?.value.replaceAll('−', '-') ?? '').matchAll(
          /-?\d+\.\d/g,
        ),
      ].map(Number);
    const changes = ['Change by speed', 'Change by pressure', 'Noise of the air', 'As screwed'].map(numbers);
    const [low = Number.NaN, high = Number.NaN] = numbers('All changes');
    expect(changes.reduce((sum, each) => sum + (each[0] ?? 0), 0)).toBeCloseTo(low, 0);
    expect(changes.reduce((sum, each) => sum + (each.at(-1) ?? 0), 0)).toBeCloseTo(high, 0);
    const [phons = Number.NaN] = numbers('The label’s sones');
    expect(2 ** ((phons + low - 40) / 10)).toBeCloseTo(value?.low ?? Number.NaN, 1);
    expect(2 ** ((phons + high - 40) / 10)).toBeCloseTo(value?.high ?? Number.NaN, 0);
  });
});
