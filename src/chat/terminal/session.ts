import type { Reply } from '#findings/reply.ts';
import type { ScopedStore } from '#store/store.ts';
import { unitsOf } from '../answers.ts';
import type { Command, Desk, DeskCommand } from '../command.ts';
import { begin, type Heard, hear, recalledTalk, screenOf, type Talk } from '../conversation.ts';
import { clipped, nearest, optionsFrom, wordsOf } from '../options.ts';
import type { Screen } from '../screen.ts';
import { type Paper, replyText, screenText, workingText } from './render.ts';

/** What a session needs from outside. */
export interface Outside {
  readonly store: ScopedStore;
  readonly commands: readonly Command[];
  readonly who: string;
  readonly paper: Paper;
  /** Draws the chart of a reply to a file and says where it is. */
  drawn(command: string, reply: Reply): Promise<string | undefined>;
}

/** A conversation in a terminal: one typed line in, the text to print out. It keeps no state that a restart would lose. */
export interface Session {
  greeting(): string;
  say(line: string): Promise<string>;
  /** Whether a question stands open. */
  asking(): boolean;
  /** The words that would complete what is typed so far. */
  completions(line: string): readonly string[];
}

const channel = 'terminal';

export function terminalSession(outside: Outside): Session {
  const { store, commands, who, paper } = outside;
  const speaker = { channel, who };
  const answering = commands.filter((command) => command.kind === 'answer');
  const desk = (): Desk => ({ store, speaker, commands, telling: { units: unitsOf(store) } });
  let open: Talk | undefined;
  let last: Reply | undefined;

  const shown = async (screen: Screen): Promise<string> => {
    open = screen.talk === undefined ? undefined : recalledTalk(store, answering, screen.talk);
    const text = screenText(screen, paper);
    if (!screen.reply) return text;
    last = screen.reply;
    const path = await outside.drawn(screen.command, screen.reply);
    return [
      text,
      '',
      ...(path ? [`Chart: ${path}`] : []),
      'Type working to see the sums, change to alter an answer, or another command.',
    ].join('\n');
  };

  const asking = (): Screen['asking'] => (open ? screenOf(store, open).asking : undefined);

  const started = (words: readonly string[]): Promise<string> | string => {
    const [name = '', ...rest] = words;
    const command = commands.find((each) => each.name === name.toLowerCase().replace(/^\//, ''));
    if (!command) return unknownCommand(name, commands);
    if (command.kind === 'desk') {
      open = undefined;
      return deskText(command, rest, desk(), paper);
    }
    const { values, problems } = optionsFrom(
      rest,
      command.takes.map(({ id }) => id),
    );
    return shown(withNotes(begin(store, command, values, speaker), problems));
  };

  const changed = (id: string): Promise<string> | string => {
    const talk = open;
    const given = talk ? (screenOf(store, talk).given ?? []) : [];
    const found = given.find((each) => each.id === id) ?? given[Number(id) - 1];
    if (talk && found) return shown(hear(store, talk, { change: found.id }, who));
    if (given.length === 0) return 'There is no answer to change yet.';
    return ['Which answer? Type change and its number or name.', ...given.map(givenLine)].join('\n');
  };

  return {
    greeting: () => greeting,
    asking: () => asking() !== undefined,
    completions: (line) => completions(line, commands, asking()?.choices.map(({ label }) => label) ?? []),
    async say(line) {
      const text = line.trim();
      if (text.startsWith('/')) return started(wordsOf(text.slice(1)));
      const now = asking();
      if (open && now) {
        if (text === '') return screenText(screenOf(store, open), paper);
        if (/^(stop|quit|cancel|exit)$/i.test(text)) {
          open = undefined;
          return 'Stopped. What was answered stays on the sheet.';
        }
        return shown(hear(store, open, heardIn(text, now), who));
      }
      if (text === '') return '';
      const [word = '', ...rest] = wordsOf(text);
      if (/^working$/i.test(word))
        return last ? workingText(last, paper) : 'There is no answer to show the working of yet.';
      if (/^change$/i.test(word)) return changed(rest.join(' '));
      return started([word, ...rest]);
    },
  };
}

const greeting = [
  'Fanwright: what a bathroom fan will really move, and what the room needs.',
  'Type size (air the room needs), duct (what a fan delivers through its duct), or help for the rest.',
  "At a question: an answer, don't know, why, back, or stop.",
].join('\n');

const givenLine = ({ brief, shown }: { brief: string; shown: string }, index: number) =>
  `  ${index + 1}  ${brief}: ${shown}`;

const withNotes = (screen: Screen, notes: readonly string[]): Screen => ({
  ...screen,
  notes: [...notes, ...screen.notes],
});

/** A typed number picks the choice with that number, as printed; anything else is an answer in words. */
function heardIn(text: string, { question, choices }: NonNullable<Screen['asking']>): Heard {
  const numbers = text.split(/[\s,]+/).map(Number);
  const picked = numbers.map((number) => choices[number - 1]?.id);
  const several = question.widget.kind === 'several';
  if (choices.length > 0 && picked.every((id) => id !== undefined) && (several || picked.length === 1)) {
    return { answers: { [question.id]: picked.join(', ') } };
  }
  return { answers: { [question.id]: text } };
}

function unknownCommand(name: string, commands: readonly Command[]): string {
  const names = commands.map((command) => command.name);
  const meant = nearest(name.toLowerCase(), names);
  return meant
    ? `There is no “${clipped(name)}” command. Did you mean ${meant}?`
    : `“${clipped(name)}” is not a command. Type one of: ${names.join(', ')}.`;
}

/** Runs a desk command from typed words: its action, then name=value pairs or plain words for its first option. */
export function deskText(command: DeskCommand, words: readonly string[], desk: Desk, paper: Paper): string {
  const named = command.actions.find(({ name }) => name !== '' && name === words[0]?.toLowerCase());
  const action = named ?? command.actions.find(({ name }) => name === '');
  const names = command.actions.map(({ name }) => name).filter((name) => name !== '');
  if (!action) return `Say which: ${names.map((name) => `${command.name} ${name}`).join(', ')}.`;
  const rest = named ? words.slice(1) : words;
  const pairs = rest.filter((word) => word.includes('='));
  const free = rest.filter((word) => !word.includes('=')).join(' ');
  const { values, problems } = optionsFrom(
    pairs,
    action.options.map(({ id }) => id),
  );
  const first = action.options[0];
  const options = free !== '' && first ? { [first.id]: free, ...values } : values;
  const lacking = action.options.filter(({ id, required }) => required && options[id] === undefined);
  const trouble = [
    ...problems,
    ...(free !== '' && !first ? [`${command.name} ${action.name} takes nothing after it.`] : []),
    ...lacking.map(({ id, brief }) => `Give ${id}: ${brief}.`),
  ];
  return trouble.length > 0 ? trouble.join('\n') : replyText(action.act(desk, options), paper);
}

function completions(line: string, commands: readonly Command[], choices: readonly string[]): readonly string[] {
  const typed = line.toLowerCase();
  const words = choices.length > 0 ? [...choices, "don't know", 'back', 'why', 'stop'] : commands.flatMap(commandWords);
  return words.filter((word) => word.toLowerCase().startsWith(typed));
}

const commandWords = (command: Command): readonly string[] =>
  command.kind === 'answer'
    ? [command.name, ...command.takes.map(({ id }) => `${command.name} ${id}=`)]
    : command.actions.map(({ name }) => `${command.name} ${name}`.trim());
