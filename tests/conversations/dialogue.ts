import { join } from 'node:path';
import { terminalSession } from '#chat/terminal/session.ts';
import { commands } from '#commands/index.ts';
import { openStore } from '#store/store.ts';
import { clock, folder } from '../store/workbench.ts';

/** A line somebody types, a remark for the reader, or a restart of the program in the middle. */
export type Line = string | { readonly remark: string } | { readonly restart: true; readonly who?: string };

const speech = (who: string, text: string): string =>
  `${who}: ${text.replaceAll('\n', `\n${' '.repeat(who.length + 2)}`)}`.replace(/[ \t]+$/gm, '');

/**
 * Plays a conversation in the terminal as one reads it afterwards. The records are in a file, so a restart is a real one:
 * everything is closed and opened again.
 */
export async function dialogue(...lines: readonly Line[]): Promise<string> {
  const file = join(folder(), 'records.sqlite');
  const now = clock();
  const said: string[] = [];
  let store = openStore(file, { now });
  let session = sessionOf('apprentice');
  said.push(speech('bot', session.greeting()));
  for (const line of lines) {
    if (typeof line === 'string') {
      said.push(speech('you', line), speech('bot', await session.say(line)));
    } else if ('remark' in line) {
      said.push(`\n# ${line.remark}`);
    } else {
      store.close();
      store = openStore(file, { now });
      session = sessionOf(line.who ?? 'apprentice');
      said.push('\n# The program is started again.', speech('bot', session.greeting()));
    }
  }
  store.close();
  return `${said.join('\n')}\n`;

  function sessionOf(who: string) {
    return terminalSession({
      store: store.scoped('terminal'),
      commands,
      who,
      paper: { width: 90, colour: false },
      drawn: async (command, { chart }) => (chart ? `charts/${command}.png` : undefined),
    });
  }
}
