import type { Command, DeskCommand } from '#chat/command.ts';
import { deskFor } from '#chat/desk.ts';
import { terminalSession } from '#chat/terminal/session.ts';
import type { Reply } from '#findings/reply.ts';
import type { ScopedStore } from '#store/store.ts';

interface Speaking {
  readonly store: ScopedStore;
  readonly who?: string;
  readonly mayManage?: boolean;
  readonly commands?: readonly Command[];
}

const deskOf = ({ store, who = 'ann', mayManage = true, commands = [] }: Speaking) =>
  deskFor({ store: () => store, speaker: { channel: 'thread-1', who }, commands, mayManage });

export const actionOf = (command: DeskCommand, name: string) => {
  const action = command.actions.find((each) => each.name === name);
  if (!action) throw new Error(`${command.name} has no ${name}`);
  return action;
};

/** One action of a command, done with the options given. */
export const done = (
  command: DeskCommand,
  name: string,
  options: Readonly<Record<string, string>>,
  speaking: Speaking,
): Reply => {
  const reply = actionOf(command, name).act(deskOf(speaking), options);
  if ('start' in reply) throw new Error(`${command.name} ${name} begins ${reply.start}`);
  return reply;
};

/** What may follow what somebody has typed into an option. */
export const suggested = (command: DeskCommand, name: string, id: string, typed: string, speaking: Speaking) =>
  actionOf(command, name)
    .options.find((option) => option.id === id)
    ?.suggest?.(deskOf(speaking), typed)
    .map((choice) => choice.id);

/** A reply as all its words, for looking for one of them. */
export const wordsOfReply = ({ headline, findings, tables = [] }: Reply): string =>
  [
    headline,
    ...findings.map(({ says }) => says),
    ...tables.flatMap(({ title, columns, rows }) => [title, ...columns, ...rows.flat()]),
  ].join('\n');

/** What a person types and what comes back, line by line. */
export async function dialogue({ store, commands = [] }: Speaking, ...lines: readonly string[]): Promise<string> {
  const session = terminalSession({
    store,
    commands,
    who: 'ann',
    paper: { width: 96, colour: false },
    drawn: async () => undefined,
  });
  const said: string[] = [];
  for (const line of lines) said.push(`you: ${line}\nbot: ${(await session.say(line)).replace(/\n/g, '\n     ')}`);
  return `\n${said.join('\n').replace(/[ \t]+$/gm, '')}\n`;
}
