import type { AnswerCommand } from '#chat/command.ts';
import { optionsFrom } from '#chat/options.ts';
import { commands } from '#commands/index.ts';
import type { Channel } from '../support/stand-in/fixtures.ts';
import type { Begun, Person } from '../support/stand-in/person.ts';
import type { StandIn } from '../support/stand-in/stand-in.ts';
import { startStandIn } from '../support/stand-in/stand-in.ts';
import { type RunningBot, startBot } from './bots.ts';

/** As many servers, so that none holds more records than a crew would have. */
const crews = 25;
/** A job is asked about this often before the next one is opened in a channel of its own. */
const deedsInPlace = 8;

/** Where the nth thing happens: a person of one of the crews, in the channel of one job. */
export function places(standIn: StandIn): (nth: number) => Person {
  const people = Array.from({ length: crews }, (_, crew) =>
    standIn.user({ guild: crew === 0 ? standIn.guild() : standIn.addGuild({ name: `Crew ${crew}` }) }),
  );
  const anywhere = standIn.user();
  return (nth) => {
    const job = Math.trunc(nth / deedsInPlace);
    const channel: Channel = { ...standIn.channel(), id: String(10n ** 17n + BigInt(job)) };
    return (people[job % crews] ?? anywhere).in(channel);
  };
}

type Deed = (person: Person, nth: number) => Begun;

const isAnswer = (command: (typeof commands)[number]): command is AnswerCommand<unknown> => command.kind === 'answer';

/** Discord shows a command with so many options at most. */
const mostOptions = 25;

/**
 * The example of a command, as Discord sends it, with "don't know" for what it leaves open, so that most are answered whole and
 * with their chart; a run gets another length each time, so that charts are drawn anew.
 */
function example(command: AnswerCommand<unknown>): Deed {
  const words = (command.example.match(/(?:[^\s"]+|"[^"]*")+/g) ?? []).map((word) => word.replaceAll('"', ''));
  const { values } = optionsFrom(
    words,
    command.takes.map(({ id }) => id),
  );
  const told = Object.entries(values);
  const open = command.takes.map(({ id }) => id).filter((id) => values[id] === undefined);
  const untold = open.slice(0, mostOptions - told.length).map((id) => [id, 'don’t know'] as const);
  return (person, nth) =>
    person.begin.slash(
      command.name,
      Object.fromEntries(
        [...told, ...untold].map(([id, text]) => [id, text.replace(/^\d+ ft/, `${6 + (nth % 40) / 2} ft`)]),
      ),
      { force: true },
    );
}

/** What a crew asks of what it keeps, and the quick questions. */
const others: readonly Deed[] = [
  (person) => person.begin.slash('help'),
  (person) => person.begin.slash('job list'),
  (person) => person.begin.slash('fan list'),
  (person) => person.begin.slash('crew show'),
  (person, nth) => person.begin.slash('ask', { text: `${4 + (nth % 9)}x10 bath 9 foot ceiling shower what cfm` }),
  // One answer into a job, the most frequent thing of all.
  (person, nth) => person.begin.slash('size', { 'room-length': `${6 + (nth % 97) / 10} ft` }, { force: true }),
  (person, nth) => person.begin.slash('duct', { collar: nth % 2 ? '4 in' : '6 in' }, { force: true }),
];

/** Every command in turn: whole answers with their charts, first questions, lists. */
const allCommands: readonly Deed[] = [...commands.filter(isAnswer).map(example), ...others];

/** A bot at work for many crews. */
interface AtWork {
  readonly standIn: StandIn;
  readonly bot: RunningBot;
  /** Does the next thing, without waiting. */
  next(): Begun;
  /** How many were done. */
  count(): number;
  end(): Promise<void>;
}

export async function atWork(): Promise<AtWork> {
  const standIn = await startStandIn({ judging: false, patience: 30_000 });
  const bot = startBot('fanwright', standIn);
  await standIn.connected();
  const at = places(standIn);
  let done = 0;
  return {
    standIn,
    bot,
    next() {
      done += 1;
      const deed = allCommands[done % allCommands.length];
      if (!deed) throw new Error('there is nothing to do');
      return deed(at(done), done);
    },
    count: () => done,
    async end() {
      await bot.stop();
      await standIn.close();
    },
  };
}
