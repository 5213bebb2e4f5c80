import type { LoadResult } from '../support/stand-in/load.ts';
import type { Begun, Person } from '../support/stand-in/person.ts';
import { startStandIn } from '../support/stand-in/stand-in.ts';
import { type RunningBot, startBot, type Which } from './bots.ts';
import { places } from './crews-at-work.ts';
import { median, type Row, type Section } from './rows.ts';

const inFlight = 16;
const seconds = 0.5;
const turns = 20;

/** Each stores an answer on a job sheet and asks the next question. */
const answers = (person: Person, nth: number): Begun =>
  person.begin.slash('size', { 'room-length': `${6 + (nth % 97) / 10} ft` }, { force: true });

/** Each is a whole answer with a chart, one of twenty. */
const wholeRun = (person: Person, nth: number): Begun =>
  person.begin.slash(
    'duct',
    {
      'fan-curve': '96@0 84@0.1 66@0.25 0@0.5',
      collar: '4 in',
      'duct-run': `${5 + (nth % 20)} ft 4 in flex; 2 x elbow 90; wall cap`,
      'airflow-needed': '80 cfm',
      'fan-settings': 'none',
      'rated-sones': '1.5',
    },
    { force: true },
  );

interface Turn {
  readonly load: LoadResult;
  /** Milliseconds of processor time for each answer. */
  readonly effort: number | undefined;
}

interface Driven {
  readonly bot: RunningBot;
  one(deed: (person: Person, nth: number) => Begun): Promise<unknown>;
  turn(deed: (person: Person, nth: number) => Begun, length?: number): Promise<Turn>;
  end(): Promise<void>;
}

async function driven(which: Which): Promise<Driven> {
  const standIn = await startStandIn({ judging: false, patience: 30_000 });
  const bot = startBot(which, standIn);
  await standIn.connected();
  const at = places(standIn);
  let done = 0;
  return {
    bot,
    one(deed) {
      done += 1;
      return deed(at(done), done).answer();
    },
    async turn(deed, length = seconds) {
      const before = bot.processorTime();
      const make = () => {
        done += 1;
        return deed(at(done), done);
      };
      const load = await standIn.load({ inFlight, seconds: length, make });
      const after = bot.processorTime();
      const effort = before === undefined || after === undefined ? undefined : (after - before) / load.answered;
      return { load, effort };
    },
    async end() {
      await bot.stop();
      await standIn.close();
    },
  };
}

const timesOf = (all: readonly Turn[]): string => {
  const middle = (share: 'p50' | 'p99') => median(all.map(({ load }) => load.acknowledgement[share])).toFixed(1);
  return `p50 ${middle('p50')} ms, p99 ${middle('p99')} ms`;
};
const rateOf = (all: readonly Turn[]): number => median(all.map(({ load }) => load.perSecond));
const effortOf = (all: readonly Turn[]): string => {
  const efforts = all.flatMap(({ effort }) => effort ?? []);
  return efforts.length === 0 ? 'not told here' : `${median(efforts).toFixed(2)} ms`;
};
const megabytes = (bot: RunningBot): string => `${bot.memory()?.toFixed(0) ?? '?'} MB`;

export const interactions: Section = {
  title: `Interactions a second, ${inFlight} in flight; both bots up, loaded in turns (median of ${turns} turns of ${seconds} s)`,
  async measure() {
    const bare = await driven('bare');
    const ours = await driven('fanwright');
    await bare.turn(answers, 2);
    await ours.turn(answers, 2);
    const pairs: { readonly bare: Turn; readonly ours: Turn }[] = [];
    for (let turn = 0; turn < turns; turn += 1) {
      pairs.push({ bare: await bare.turn(answers), ours: await ours.turn(answers) });
    }
    const memory = { bare: megabytes(bare.bot), ours: megabytes(ours.bot) };
    for (let each = 0; each < 20; each += 1) await ours.one(wholeRun);
    const wholes = [await ours.turn(wholeRun, 2), await ours.turn(wholeRun, 2)];
    const afterCharts = megabytes(ours.bot);
    await bare.end();
    await ours.end();
    const share = median(pairs.map((pair) => pair.ours.load.perSecond / pair.bare.load.perSecond));
    const oursAll = pairs.map((pair) => pair.ours);
    const bareAll = pairs.map((pair) => pair.bare);
    const missed = [...oursAll, ...wholes].reduce((sum, { load }) => sum + load.missed, 0);
    const rows: readonly Row[] = [
      { what: 'bare bot, one line back', measured: rateOf(bareAll).toFixed(0) },
      {
        what: 'Fanwright, each answer kept on disk before it is told',
        measured: `${rateOf(oursAll).toFixed(0)}, ${(100 * share).toFixed(0)} % of it turn by turn`,
        aim: { says: 'at least half', met: share >= 0.5 },
      },
      { what: 'until acknowledged, bare bot', measured: timesOf(bareAll) },
      { what: 'until acknowledged, Fanwright', measured: timesOf(oursAll) },
      { what: 'processor time for each, bare bot', measured: effortOf(bareAll) },
      { what: 'processor time for each, Fanwright', measured: effortOf(oursAll) },
      { what: 'whole /duct answers with chart, of 20 drawn before', measured: rateOf(wholes).toFixed(0) },
      { what: 'whole /duct answers, until acknowledged', measured: timesOf(wholes) },
      {
        what: 'not acknowledged within three seconds',
        measured: String(missed),
        aim: { says: 'none', met: missed === 0 },
      },
      { what: 'memory, bare bot', measured: memory.bare },
      { what: 'memory, Fanwright', measured: `${memory.ours}, ${afterCharts} once it has drawn` },
    ];
    return rows;
  },
};
