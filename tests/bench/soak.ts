import { setTimeout as delay } from 'node:timers/promises';
import { atWork } from './crews-at-work.ts';
import type { Row, Section } from './rows.ts';

const rate = 20;
const minutes = 10;
/** Until here caches fill and code is compiled; growth is counted from then on. */
const settled = 2;
/** What the rest may add, in megabytes: drawn charts are kept up to a bound, and the records themselves grow. */
const bound = 100;

/** Ten minutes at a steady rate: what is in memory at the end beside two minutes after the start. */
export const soak: Section = {
  title: `${minutes} minutes at ${rate} interactions a second, all commands in turn, with charts`,
  long: true,
  async measure() {
    const { standIn, bot, next, count, end } = await atWork();
    const memory: number[] = [];
    let missed = 0;
    let slowest = 0;
    for (let minute = 0; minute < minutes; minute += 1) {
      const load = await standIn.load({ rate, seconds: 60, make: next });
      missed += load.missed;
      slowest = Math.max(slowest, load.acknowledgement.p99);
      await delay(500);
      memory.push(bot.memory() ?? Number.NaN);
    }
    await end();
    const grown = (memory.at(-1) ?? Number.NaN) - (memory[settled - 1] ?? Number.NaN);
    const rows: readonly Row[] = [
      { what: 'interactions', measured: String(count()) },
      { what: 'memory after each minute', measured: `${memory.map((each) => each.toFixed(0)).join(', ')} MB` },
      {
        what: `growth after the first ${settled} minutes`,
        measured: `${grown.toFixed(0)} MB`,
        aim: { says: `under ${bound} MB`, met: grown < bound },
      },
      { what: 'until acknowledged, 99 of 100, in the worst minute', measured: `${slowest.toFixed(0)} ms` },
      {
        what: 'not acknowledged within three seconds',
        measured: String(missed),
        aim: { says: 'none', met: missed === 0 },
      },
    ];
    return rows;
  },
};
