import { describe, expect, it, test } from 'vitest';
import duct from '#commands/duct.ts';
import reach from '#commands/reach.ts';
import type { Step } from '#findings/finding.ts';
import { reckoned } from '../support/calculator.ts';
import { findingOf, once } from './talked.ts';

/** Lines that say where a number is from, and hold no sum. */
const withoutSum = /^not told; |^no test of squeezed|^the length is halved|^the same sum, |^airflow × /;

const decimalsOf = (value: string): number => /\.(\d+)/.exec(value)?.[1]?.length ?? 0;

/** Rounded as printed, and the three digits that what goes into a line is printed with. */
const slipOf = (value: string): number => 10 ** -decimalsOf(value) + 0.004 * Math.abs(Number.parseFloat(value));

const numbersIn = (text: string): readonly number[] => (text.match(/\d+(?:\.\d+)?/g) ?? []).map(Number);

/** What a person with a calculator gets for one line, with the lines before it at hand. */
function byCalculator({ what, how = '', value }: Step, before: readonly Step[]): number {
  if (how.startsWith('Colebrook')) {
    // The equation has no solution in closed form: the printed factor is put in, and must come out.
    const [, wall = 0, re = 0] = /\(([\d.]+) ÷ 3\.7 \+ 2\.51 ÷ \((\d+)/.exec(how)?.map(Number) ?? [];
    return (-2 * Math.log10(wall / 3.7 + 2.51 / (re * Math.sqrt(Number(value))))) ** -2;
  }
  if (how.includes('of the way from the one to the other')) {
    const [share = 0] = numbersIn(how);
    const [from = 0, to = 0] = before.slice(-2).map((step) => Number(step.value));
    return from + (share / 100) * (to - from);
  }
  if (what.startsWith('The fan’s curve')) {
    // Printed a little to either side of the pressure, which lies in the middle.
    const flows = [...how.matchAll(/([\d.]+) (?:cfm|L\/s) at/g)].map(([, flow]) => Number(flow));
    expect(flows).toHaveLength(2);
    return flows.reduce((sum, flow) => sum + flow, 0) / 2;
  }
  return reckoned(how);
}

function expectFollowed(steps: readonly Step[], atLeast: number): void {
  const sums = steps.filter(({ how }) => how !== undefined && !withoutSum.test(how));
  expect(sums.length).toBeGreaterThanOrEqual(atLeast);
  for (const [index, step] of steps.entries()) {
    if (!sums.includes(step)) continue;
    const got = byCalculator(step, steps.slice(0, index));
    const line = `${step.what}: ${step.how} = ${step.value}`;
    expect(Math.abs(got - Number.parseFloat(step.value)), line).toBeLessThan(slipOf(step.value));
  }
}

const fans = {
  'a label with four points': '96@0 84@0.1 66@0.25 0@0.5',
  'a label with two points': '110@0.1 84@0.25',
  'a carton number alone': '110',
  'a fan that holds its airflow': 'constant 110 to 0.3',
};

const runs = [
  '14 ft 4 in flex compressed 4 %; 2 x elbow 90; wall cap',
  '12 ft 4 in flex; 2 x elbow 90; roof cap',
  'reducer 6 to 4 in; 20 ft 4 in smooth; elbow 45; 3 x elbow 90; roof cap',
  '6 ft 5 in spiral; 5 ft 4 in foil flex; elbow 90 4 in k=0.35; wall cap k=2.0',
  '18 ft 3 in flex; 4 x elbow 90; wall cap',
  '25 ft 6 in flex; roof cap',
];

describe.each(Object.entries(fans))('the working of %s', (_, fan) => {
  test.each(runs)('through %s can be followed with a calculator to what is printed', (run) => {
    const answer = once(duct, `fan-curve=${fan}`, 'collar=6 in', `duct-run=${run}`);
    const shares = findingOf(answer, 'pressure-shares');
    expectFollowed(shares.working, 8);
    expectFollowed(findingOf(answer, 'delivered-airflow').working, 4);
    expectFollowed(findingOf(answer, 'duct-velocity').working, 1);
    const losses = shares.table?.rows.map(([, loss = '']) => Number.parseFloat(loss)) ?? [];
    const together = losses.reduce((all, loss) => all + loss, 0);
    const total = numbersIn(shares.value?.shown ?? '')[0] ?? Number.NaN;
    expect(Math.abs(together - total)).toBeLessThan(0.005 + 0.0005 * losses.length);
  });
});

describe('the working of how far a duct can run', () => {
  it.each([
    ['flex', '4 in', '50'],
    ['smooth', '4 in', '80'],
    ['foil flex', '4 in', '60'],
    ['flex', '6 in', '90'],
  ])('%s of %s for %s cfm ends at the airflow wanted', (kind, size, need) => {
    const answer = once(
      reach,
      'fan-curve=110',
      `duct-kind=${kind}`,
      `duct-diameter=${size}`,
      'elbows=2',
      `airflow-needed=${need}`,
    );
    const { working } = findingOf(answer, 'longest-run');
    expectFollowed(working, 12);
    const crossing = working.find(({ what }) => what.startsWith('The fan’s curve'));
    expect(Number.parseFloat(crossing?.value ?? '')).toBeCloseTo(Number(need), 0);
  });

  it('says what is known of the code’s table, and no length that nobody gave', () => {
    const answer = once(reach, 'fan-curve=110', 'duct-kind=flex', 'duct-diameter=4 in', 'airflow-needed=50');
    const { says, working } = findingOf(answer, 'code-duct-length');
    expect([says, ...working.map(({ what }) => what)].join(' ')).not.toMatch(/this run|in the run/);
  });
});

describe('what is taken for granted of a duct and a fan', () => {
  const taken = (...words: string[]) =>
    once(duct, 'collar=4 in', ...words).reply?.assumed?.filter((line) => /^(?:Slack|The fan)/.test(line)) ?? [];

  it('is the slack of flex nobody described, and the fan past its label', () => {
    const [slack, fan] = taken('fan-curve=110@0.1 84@0.25', 'duct-run=12 ft 4 in flex; 2 x elbow 90; roof cap');
    expect(slack).toContain('Slack of the 4 in flex: 15 %, 4 % to 30 % may be');
    // Shut-off by the rule: 0.25 + 84² × 0.15 ÷ (110² − 84²) = 0.46 in. w.g.; half and one and a half of it past the label.
    expect(fan).toContain('84 cfm at 0.25 in. w.g.');
    expect(fan).toContain('nothing at 0.46 in. w.g. (0.35 in. w.g. to 0.56 in. w.g. may be)');
  });

  it('is nothing where both are told', () => {
    expect(taken('fan-curve=96@0 84@0.1 66@0.25 0@0.5', 'duct-run=12 ft 4 in flex tight; wall cap')).toEqual([]);
    expect(taken('fan-curve=110@0.1 84@0.25', 'duct-run=5 ft 4 in smooth; wall cap')).toEqual([]);
  });
});
