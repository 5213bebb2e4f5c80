import type { Channel } from '../support/stand-in/fixtures.ts';
import type { LoadResult } from '../support/stand-in/load.ts';
import type { Begun, Person } from '../support/stand-in/person.ts';
import { type StandIn, startStandIn } from '../support/stand-in/stand-in.ts';
import { startBot, type Which } from './bots.ts';
import { median, type Row, type Section } from './rows.ts';

const inFlight = 16;
const seconds = 3;
const rounds = 3;

/** A dialogue has about this many answers; each goes on in a place of its own, as jobs do in threads. */
const answersInPlace = 8;

/** As many servers, so that none holds more records than a crew would have. */
const crews = 25;

const places = (standIn: StandIn): ((nth: number) => Person) => {
  const people = Array.from({ length: crews }, (_, crew) =>
    standIn.user({ guild: crew === 0 ? standIn.guild() : standIn.addGuild({ name: `Crew ${crew}` }) }),
  );
  let place: Person | undefined;
  return (nth) => {
    if (place && nth % answersInPlace !== 0) return place;
    const channel: Channel = { ...standIn.channel(), id: String(10n ** 17n + BigInt(nth)) };
    place = people[Math.trunc(nth / answersInPlace) % crews]?.in(channel) ?? standIn.user();
    return place;
  };
};

/** Each stores an answer on a job sheet and asks the next question. */
const answers = (at: (nth: number) => Person): ((nth: number) => Begun) => {
  return (nth) => at(nth).begin.slash('size', { 'room-length': `${6 + (nth % 8)} ft` }, { force: true });
};

const wholeRun = (at: (nth: number) => Person): ((nth: number) => Begun) => {
  return (nth) =>
    at(nth).begin.slash(
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
};

interface Measured {
  readonly answers: LoadResult;
  readonly whole: LoadResult | undefined;
  readonly memory: number | undefined;
}

async function measured(which: Which): Promise<Measured> {
  const standIn = await startStandIn({ judging: false, patience: 30_000 });
  const bot = startBot(which, standIn);
  await standIn.connected();
  const at = places(standIn);
  await at(0).slash('help', {}, { force: true });
  await standIn.load({ inFlight, seconds: 1, make: answers(at) });
  const result = await standIn.load({ inFlight, seconds, make: answers(at) });
  const memory = bot.memory();
  const whole = which === 'bare' ? undefined : await standIn.load({ inFlight, seconds, make: wholeRun(at) });
  await bot.stop();
  await standIn.close();
  return { answers: result, whole, memory };
}

const milliseconds = ({ p50, p99 }: LoadResult['acknowledgement']) =>
  `p50 ${p50.toFixed(1)} ms, p99 ${p99.toFixed(1)} ms`;

export const interactions: Section = {
  title: `Interactions a second, ${inFlight} in flight (median of ${rounds}, in turns); bot and stand-in share the machine`,
  async measure() {
    const all: Record<Which, Measured[]> = { bare: [], fanwright: [] };
    for (let round = 0; round < rounds; round += 1) {
      for (const which of ['bare', 'fanwright'] as const) all[which].push(await measured(which));
    }
    const rate = (which: Which) => median(all[which].map((each) => each.answers.perSecond));
    const memory = (which: Which) => median(all[which].flatMap((each) => each.memory ?? []));
    const share = rate('fanwright') / rate('bare');
    const missed = all.fanwright.reduce((sum, each) => sum + each.answers.missed + (each.whole?.missed ?? 0), 0);
    const [ours] = all.fanwright;
    const wholes = all.fanwright.flatMap(({ whole }) => whole ?? []);
    const rows: readonly Row[] = [
      { what: 'bare bot, one line back', measured: rate('bare').toFixed(0) },
      {
        what: 'Fanwright, each answer kept on disk before it is told',
        measured: `${rate('fanwright').toFixed(0)}, ${(100 * share).toFixed(0)} % of it`,
        aim: { says: 'at least half', met: share >= 0.5 },
      },
      ...(ours
        ? [{ what: 'Fanwright, until acknowledged', measured: milliseconds(ours.answers.acknowledgement) }]
        : []),
      {
        what: 'Fanwright, whole /duct answers with their chart (20 different)',
        measured: median(wholes.map(({ perSecond }) => perSecond)).toFixed(0),
      },
      ...(wholes[0]
        ? [{ what: 'whole /duct, until acknowledged', measured: milliseconds(wholes[0].acknowledgement) }]
        : []),
      {
        what: 'not acknowledged within three seconds',
        measured: String(missed),
        aim: { says: 'none', met: missed === 0 },
      },
      { what: 'memory, bare bot', measured: `${memory('bare').toFixed(0)} MB` },
      { what: 'memory, Fanwright', measured: `${memory('fanwright').toFixed(0)} MB` },
    ];
    return rows;
  },
};
