import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';
import type { ScopedStore } from '#store/store.ts';
import type { Command } from '../command.ts';
import { chartFile } from './chart-file.ts';
import { terminalSession } from './session.ts';

interface Streams {
  readonly input: Readable & { readonly isTTY?: boolean };
  readonly output: Writable & { readonly isTTY?: boolean; readonly columns?: number };
}

/**
 * Talks line by line until the input ends or the person leaves. From a pipe it prints the same words without a prompt.
 */
export async function terminal(
  given: { store: ScopedStore; commands: readonly Command[]; who: string; environment: NodeJS.ProcessEnv },
  { input, output }: Streams,
): Promise<void> {
  const { environment, ...rest } = given;
  const live = Boolean(input.isTTY && output.isTTY);
  const session = terminalSession({
    ...rest,
    paper: {
      width: Math.min(100, Math.max(40, output.columns ?? 88)),
      colour: live && environment['NO_COLOR'] === undefined && environment['TERM'] !== 'dumb',
    },
    drawn: (command, reply) => chartFile('charts', command, reply),
  });
  const lines = createInterface({
    input,
    output,
    terminal: live,
    prompt: live ? '> ' : '',
    completer: (line: string) => [session.completions(line), line],
  });
  output.write(`${session.greeting()}\n`);
  lines.prompt();
  for await (const line of lines) {
    if (/^\s*\/?(quit|exit|bye)\s*$/i.test(line) && !session.asking()) break;
    const answer = await session.say(line);
    output.write(answer === '' ? '' : `${answer}\n`);
    if (!live) output.write('\n');
    lines.prompt();
  }
  lines.close();
}
