import { describe, expect, it } from 'vitest';
import runtime from '#commands/runtime.ts';
import type { Step } from '#findings/finding.ts';
import { findingOf, once } from './talked.ts';

const room = ['room-length=8 ft', 'room-width=5 ft', 'ceiling-height=8 ft'] as const;
const workingOf = (id: string, words: readonly string[]): readonly Step[] =>
  findingOf(once(runtime, ...room, ...words), id).working;

function line(working: readonly Step[], what: RegExp): Step {
  const step = working.find((each) => what.test(each.what));
  if (!step) throw new Error(`no line ${what} among ${working.map((each) => each.what).join('; ')}`);
  return step;
}

/** The numbers of a line of working, in the order they stand. */
const numbersIn = (text = ''): number[] => [...text.matchAll(/\d+(?:\.\d+)?/g)].map(([number]) => Number(number));

describe('a run time redone by hand from its working', () => {
  const cases: string[][] = [
    ['delivered-airflow=60 cfm'],
    ['delivered-airflow=45 cfm', 'house-humidity=50'],
    ['delivered-airflow=110 cfm', 'shower-minutes=20', 'fan-during-shower=no'],
  ];

  it.each(cases)('carries the water out stretch by stretch to what is told of the shut room: %s', (...words) => {
    const working = workingOf('run-time', words);
    const lines = working.filter(({ what }) => /^From .* the fan carries out$/.test(what));
    expect(lines.length).toBeGreaterThan(2);
    let left = numbersIn(line(working, /^Water to be rid of/).value)[0] ?? Number.NaN;
    for (const { what, how, value } of lines) {
      const [from = 0, to = 0] = numbersIn(what);
      const [perMinute = 0, , minutes = 0, mean = 0] = numbersIn(how);
      const [drawn = 0, after = 0] = numbersIn(value);
      expect(minutes).toBeCloseTo(to - from, 5);
      // Three numbers of three or four figures each: their product is good to a hundredth part.
      expect(Math.abs(perMinute * minutes * mean - drawn)).toBeLessThan(0.01 * drawn + 0.1);
      expect(left - drawn).toBeCloseTo(after, 0);
      left = after;
    }
    const spread = line(working, /^Spread over the shut room/);
    const [house = 0, water = 0, dryAir = 0, , storage = 0] = numbersIn(spread.how);
    expect(water).toBe(left);
    expect(Math.abs(house + water / (dryAir * storage) - parseFloat(spread.value))).toBeLessThan(0.02);
    const crossing = line(working, /^If the fan stopped now/);
    expect(numbersIn(crossing.how)).toContain(parseFloat(spread.value));
  });

  it.each(cases)('follows the air, the glass and a wall through the minute that decides: %s', (...words) => {
    const air = workingOf('air-recovers', words);
    const loses = line(air, /^In the minute to .* the air loses$/);
    const [drawn = 0, given = 0, dryAir = 0, , storage = 0] = numbersIn(loses.how);
    expect(Math.abs((drawn - given) / (dryAir * storage) - parseFloat(loses.value))).toBeLessThan(0.002);
    const carries = line(air, /^It carries after/);
    const [before = 0, less = 0] = numbersIn(carries.how);
    expect(Math.abs(before - less - parseFloat(carries.value))).toBeLessThan(0.002);
    for (const [id, level] of [
      ['mirror-clears', /^The fog on the mirror falls/],
      ['surfaces-dry', /^The share left falls/],
    ] as const) {
      const working = workingOf(id, words);
      const gives = line(working, /^In the minute to .* gives up$/);
      const [each = 0, surface = 0, around = 0, wet = 0] = numbersIn(gives.how);
      const told = parseFloat(gives.value);
      expect(Math.abs((each * (surface - around) * wet) / 100 - told)).toBeLessThan(0.03 * told + 0.01);
      const [from = 0, , to = 0] = numbersIn(line(working, level).how);
      const film = numbersIn(working[0]?.how)[0] ?? 0;
      const change = id === 'mirror-clears' ? from - to : ((from - to) / 100) * film;
      // One straight minute of a curve: a twentieth part, or the last figure printed.
      expect(Math.abs(change - told)).toBeLessThan(0.05 * told + 0.02);
    }
  });
});
