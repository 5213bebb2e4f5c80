import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';
import type { ScopedStore } from '#store/store.ts';
import { StoreTrouble } from '#store/trouble.ts';
import type { Language } from '#words/language.ts';
import { terminalWords } from '#words/terminal.ts';
import { crewLanguage } from '../answers.ts';
import type { Command } from '../command.ts';
import { chartFile } from './chart-file.ts';
import { paperOf, paragraph, safe } from './paper.ts';
import { keptFiles } from './reply-files.ts';
import { terminalSession } from './session.ts';

interface Given {
  readonly store: ScopedStore;
  readonly commands: readonly Command[];
  readonly who: string;
  /** The language asked for; the crew's own setting holds where it is left out. */
  readonly language?: Language | undefined;
  readonly environment: NodeJS.ProcessEnv;
}

interface Streams {
  readonly input: Readable & { readonly isTTY?: boolean };
  readonly output: Writable & { readonly isTTY?: boolean; readonly columns?: number };
}

/**
 * Talks line by line until the input ends or the person leaves. From a pipe it prints no prompt; each line read is printed
 * after a `>`, so that what comes out reads as the conversation it was.
 *
 * @returns the exit code: 0, or 1 when something of ours went wrong on the way.
 */
export async function terminal({ environment, ...given }: Given, { input, output }: Streams): Promise<0 | 1> {
  const live = Boolean(input.isTTY && output.isTTY);
  const paper = () => paperOf(output, environment);
  const words = () => terminalWords[given.language ?? crewLanguage(given.store) ?? 'english'];
  const session = terminalSession({
    ...given,
    get paper() {
      return paper();
    },
    drawn: (command, reply) => chartFile('charts', command, reply),
    kept: (reply) => keptFiles('lists', reply),
  });
  const lines = createInterface({
    input,
    output,
    terminal: live,
    prompt: live ? '> ' : '',
    completer: (line: string) => session.completions(line),
  });
  const say = (text: string) => output.write(text === '' ? '' : `${text}\n${live ? '' : '\n'}`);
  let faults = 0;
  let saidGoodbye = false;
  say(session.greeting());
  lines.prompt();
  for await (const line of lines) {
    if (!live) output.write(`> ${safe(line)}\n`);
    saidGoodbye = /^\s*\/?(quit|exit|bye|salir|adi[oó]s)\s*$/i.test(line);
    if (saidGoodbye) break;
    try {
      say(await session.say(line));
    } catch (error) {
      // One slip of ours does not end the conversation.
      faults += 1;
      say(paragraph(error instanceof StoreTrouble ? error.message : words().ours(messageOf(error)), paper()));
    }
    lines.prompt();
  }
  lines.close();
  if (live && !saidGoodbye) output.write('\n');
  if (session.asking()) say(paragraph(words().staysOpen, paper()));
  return faults === 0 ? 0 : 1;
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
