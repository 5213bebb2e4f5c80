import { allEntries } from '#lookup/entries.ts';
import { lookedUp } from '#lookup/lookup.ts';
import { queries } from '../lookup/queries.ts';
import { quantile, type Row, type Section } from './rows.ts';

/** Suggestions offered at once in chat. */
const most = 20;
const aim = 20;

/** Every beginning of every query, as an option is asked for suggestions while somebody types. */
const typedSoFar = queries.flatMap(([typed]) =>
  Array.from({ length: typed.length }, (_, letters) => typed.slice(0, letters + 1)),
);

export const lookUps: Section = {
  title: 'Looking up: suggestions while somebody types',
  async measure() {
    const start = performance.now();
    lookedUp(queries[0]?.[0] ?? '', most);
    const first = performance.now() - start;
    const effort = process.cpuUsage();
    const times = typedSoFar.map((typed) => {
      const before = performance.now();
      lookedUp(typed, most);
      return performance.now() - before;
    });
    const { user, system } = process.cpuUsage(effort);
    const right = queries.filter(([typed, wanted]) => lookedUp(typed, 1).entries[0]?.id === wanted).length;
    const p99 = quantile(times, 0.99);
    const rows: readonly Row[] = [
      {
        what: `index of ${allEntries().length} entries, built at the first look-up`,
        measured: `${first.toFixed(0)} ms`,
      },
      {
        what: `suggestions for ${typedSoFar.length} beginnings`,
        measured: `p50 ${quantile(times, 0.5).toFixed(1)} ms, p99 ${p99.toFixed(1)} ms`,
        aim: { says: `p99 under ${aim} ms`, met: p99 < aim },
      },
      {
        what: 'processor time for each',
        measured: `${((user + system) / 1000 / typedSoFar.length).toFixed(2)} ms on the average`,
      },
      { what: 'queries whose entry comes first', measured: `${right} of ${queries.length}` },
    ];
    return rows;
  },
};
