import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openStore, type ScopedStore } from '#store/store.ts';
import { quantile, type Row, type Section } from './rows.ts';

const sizes = [10, 1_000, 100_000] as const;
/** A crew of many years has this many jobs at most; the rest belong to others. */
const jobsOfOneCrew = 5_000;
const factsOnEach = 10;
const rounds = 300;
/** Within this a larger database counts as no slower: a deeper tree takes a page more, and a disk has its moods. */
const flat = 3;

/** Fills a file with invented jobs, as many for each crew as a crew may have. */
function fill(path: string, jobs: number): void {
  openStore(path).close();
  const db = new Database(path);
  db.pragma('foreign_keys = OFF');
  const counting = (most: number) =>
    `WITH RECURSIVE counting (n) AS (SELECT 0 UNION ALL SELECT n + 1 FROM counting WHERE n < ${most - 1})`;
  const job = (n: string) => `'crew ' || (${n} / ${jobsOfOneCrew}), ${n} % ${jobsOfOneCrew} + 1`;
  db.transaction(() => {
    db.exec(`${counting(Math.ceil(jobs / jobsOfOneCrew))}
      INSERT INTO crews (scope, sheets_opened, since) SELECT 'crew ' || n, ${Math.min(jobs, jobsOfOneCrew)}, '2020-01-01T08:00:00.000Z' FROM counting`);
    db.exec(`${counting(jobs)}
      INSERT INTO sheets (scope, number, name, name_folded, state, opened_at, opened_by)
      SELECT ${job('n')}, 'House ' || n, 'house ' || n, 'open', '2020-01-01T08:00:00.000Z', 'lead' FROM counting`);
    db.exec(`${counting(jobs)}
      INSERT INTO channels (scope, channel, sheet) SELECT 'crew ' || (n / ${jobsOfOneCrew}), 'thread ' || n, n % ${jobsOfOneCrew} + 1 FROM counting`);
    db.exec(`${counting(jobs * factsOnEach)}
      INSERT INTO facts (scope, sheet, fact, typed, units, value, how, who, at, entered_at)
      SELECT ${job(`(n / ${factsOnEach})`)}, 'fact-' || (n % ${factsOnEach}), '4 in', 'inch-pound', '0.1016', 'measured', 'lead',
        '2020-01-01T08:00:00.000Z', '2020-01-01T08:00:00.000Z' FROM counting`);
  })();
  db.close();
}

/** What happens at nearly every message, on a job picked anew each time. */
const lookUps: Readonly<Record<string, (crew: ScopedStore, job: number) => unknown>> = {
  'the sheet open in a channel': (crew, job) => crew.currentSheet({ channel: `thread ${job - 1}`, who: 'lead' }),
  'what counts on a sheet': (crew, job) => crew.newestFacts(job),
  'a job by its name': (crew, job) => crew.findSheet(`House ${job - 1}`),
  'the newest ten jobs': (crew) => crew.listSheets({ limit: 10 }),
  'jobs by a part of the name, as when completing': (crew, job) =>
    crew.listSheets({ limit: 25, search: `ouse ${job - 1}` }),
  'one answer kept': (crew, job) =>
    crew.addFact(job, {
      fact: 'collar',
      typed: '4 in',
      units: 'inch-pound',
      value: 0.1016,
      how: 'measured',
      who: 'lead',
    }),
  'a conversation begun': (crew, job) =>
    crew.startTalk({ channel: `thread ${job - 1}`, sheet: job, command: 'duct', who: 'lead', state: '{}' }),
};

function timed(path: string, jobs: number): Readonly<Record<string, number>> {
  const store = openStore(path);
  const crew = store.scoped('crew 0');
  const within = Math.min(jobs, jobsOfOneCrew);
  const slowest = Object.entries(lookUps).map(([what, look]) => {
    const times: number[] = [];
    for (let round = 0; round < rounds; round += 1) {
      // A fixed walk over the jobs, so that no two in a row lie side by side.
      const job = ((round * 7919) % within) + 1;
      const start = performance.now();
      look(crew, job);
      times.push(performance.now() - start);
    }
    return [what, quantile(times, 0.99)] as const;
  });
  store.close();
  return Object.fromEntries(slowest);
}

export const growth: Section = {
  title: `99 of 100 look-ups within, with ${sizes.map((size) => size.toLocaleString('en-US')).join(', ')} jobs on one database`,
  async measure() {
    const folder = mkdtempSync(join(tmpdir(), 'fanwright-growth-'));
    const measured = sizes.map((jobs) => {
      const path = join(folder, `${jobs}.sqlite`);
      fill(path, jobs);
      return timed(path, jobs);
    });
    rmSync(folder, { recursive: true, force: true });
    return Object.keys(lookUps).map((what): Row => {
      const times = measured.map((each) => each[what] ?? Number.NaN);
      const [least = Number.NaN, , most = Number.NaN] = times;
      return {
        what,
        measured: times.map((time) => `${time.toFixed(2)} ms`).join(', '),
        aim: {
          says: `flat: the last at most ${flat} times the first, or under 5 ms`,
          met: most < flat * least || most < 5,
        },
      };
    });
  },
};
