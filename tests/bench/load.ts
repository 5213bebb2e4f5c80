import { allAtOnce, atWork, talking, type Way } from './crews-at-work.ts';
import type { Row, Section } from './rows.ts';

const rate = 200;
const seconds = 60;
/** A bot that has been up for a while: the first thousands are slower, while the runtime compiles what is used. */
const warmUp = { rate: 100, seconds: 30 };

const ms = (value: number) => `${value.toFixed(0)} ms`;

async function measured(way: Way): Promise<readonly Row[]> {
  const { standIn, bot, next, end } = await atWork(way);
  await standIn.load({ ...warmUp, make: next });
  const before = bot.memory();
  const processor = bot.processorTime();
  const load = await standIn.load({ rate, seconds, make: next, untilAnswered: 60 });
  const used = (bot.processorTime() ?? Number.NaN) - (processor ?? Number.NaN);
  const after = bot.memory();
  await end();
  const { p50, p90, p99, max } = load.acknowledgement;
  return [
    { what: 'fired', measured: String(load.fired) },
    {
      what: 'until acknowledged',
      measured: `p50 ${ms(p50)}, p90 ${ms(p90)}, p99 ${ms(p99)}, longest ${ms(max)}`,
      aim: { says: 'p99 under 250 ms', met: p99 < 250 },
    },
    {
      what: 'until the answer stands, chart and all',
      measured: `p50 ${ms(load.answer.p50)}, p99 ${ms(load.answer.p99)}`,
    },
    {
      what: 'not acknowledged within three seconds',
      measured: String(load.missed),
      aim: { says: 'none', met: load.missed === 0 },
    },
    { what: 'answered', measured: `${load.answered} of ${load.fired}` },
    { what: 'processor time for each', measured: `${(used / load.fired).toFixed(2)} ms` },
    { what: 'memory before and after', measured: `${before?.toFixed(0)} MB, ${after?.toFixed(0)} MB` },
  ];
}

/** Sustained load, at a rate that does not wait for the bot. */
export const sustainedLoad: Section = {
  title: `${rate} interactions a second for ${seconds} s, every command in conversation, with charts`,
  long: true,
  measure: () => measured(talking),
};

/** The same, where each is a command with as many answers as it takes, answered whole: more than people do. */
export const heaviestLoad: Section = {
  title: `${rate} whole answers a second for ${seconds} s, every command in turn, with charts`,
  long: true,
  measure: () => measured(allAtOnce),
};
