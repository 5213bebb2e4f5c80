import type { AnswerCommand } from '#chat/command.ts';
import { optionsFrom } from '#chat/options.ts';
import { commands } from '#commands/index.ts';
import type { Channel } from '../support/stand-in/fixtures.ts';
import type { Begun, Person } from '../support/stand-in/person.ts';
import type { Seen } from '../support/stand-in/seen.ts';
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

/** What the example of a command tells, and the questions it leaves open. */
function exampleOf(command: AnswerCommand<unknown>) {
  const words = (command.example.match(/(?:[^\s"]+|"[^"]*")+/g) ?? []).map((word) => word.replaceAll('"', ''));
  const ids = command.takes.map(({ id }) => id);
  const { values: told } = optionsFrom(words, ids);
  return { told, open: ids.filter((id) => told[id] === undefined) };
}

/**
 * The example of a command, with "don't know" for what it leaves open but for the last few questions. A run gets another length
 * each time, so that charts are drawn anew.
 */
function example(command: AnswerCommand<unknown>, leftOpen: number): Deed {
  const { told, open } = exampleOf(command);
  const most = Math.min(open.length - leftOpen, mostOptions - Object.keys(told).length);
  const untold = Object.fromEntries(open.slice(0, Math.max(0, most)).map((id) => [id, 'don’t know']));
  return (person, nth) => {
    const given = Object.entries({ ...told, ...untold });
    const length = `${6 + (nth % 40) / 2} ft`;
    return person.begin.slash(
      command.name,
      Object.fromEntries(given.map(([id, text]) => [id, text.replace(/^\d+ ft/, length)])),
      { force: true },
    );
  };
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

/** How a crew works: how many questions a command leaves to be asked, and what is done with an answer. */
export interface Way {
  readonly leftOpen: number;
  readonly presses: boolean;
}

/** As people do: a command with what they have at hand, a press for each question it still asks, a look at the working. */
export const talking: Way = { leftOpen: 3, presses: true };

/** Harder than anybody: every command with all it can take at once, so that each is answered whole. */
export const allAtOnce: Way = { leftOpen: 0, presses: false };

/** The next press in a conversation, where there is one: at a question that nobody knows, at every second answer its working. */
function nextPress({ buttons, embeds }: Seen, nth: number): string | undefined {
  const wanted = embeds.length === 0 ? "Don't know" : nth % 2 === 0 ? 'Working' : undefined;
  return buttons.some(({ label, disabled }) => label === wanted && !disabled) ? wanted : undefined;
}

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

export async function atWork(way: Way = talking): Promise<AtWork> {
  const standIn = await startStandIn({ judging: false, patience: 30_000 });
  const bot = startBot('fanwright', standIn);
  await standIn.connected();
  const at = places(standIn);
  const deeds = [...commands.filter(isAnswer).map((command) => example(command, way.leftOpen)), ...others];
  const asked: { readonly person: Person; readonly message: Seen; readonly button: string }[] = [];
  let begun = 0;
  let done = 0;
  const goesOn = (person: Person, deed: Begun): Begun => {
    if (!way.presses) return deed;
    const nth = done;
    deed.answer().then(
      (message) => {
        const button = nextPress(message, nth);
        if (button !== undefined) asked.push({ person, message, button });
      },
      // What is not answered is counted as missed; nobody presses on it.
      () => {},
    );
    return deed;
  };
  return {
    standIn,
    bot,
    next() {
      done += 1;
      const open = asked.shift();
      if (open) return goesOn(open.person, open.person.begin.press(open.message, open.button));
      begun += 1;
      const deed = deeds[begun % deeds.length];
      if (!deed) throw new Error('there is nothing to do');
      const person = at(begun);
      return goesOn(person, deed(person, begun));
    },
    count: () => done,
    async end() {
      await bot.stop();
      await standIn.close();
    },
  };
}
