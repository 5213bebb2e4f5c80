import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';

const main = fileURLToPath(new URL('../../../src/main.ts', import.meta.url));
const tsx = fileURLToPath(new URL('../../../node_modules/.bin/tsx', import.meta.url));
const loader = import.meta.resolve('tsx');

/** The whole program in a process of its own. */
export interface Program {
  /** What it said on standard error so far. */
  readonly said: () => string;
  /** Resolves when it has said something. */
  until(what: RegExp): Promise<void>;
  kill(signal: NodeJS.Signals): void;
  /** Its exit code, once it has ended. */
  readonly ended: Promise<number | null>;
}

/** @param how `as npm does` is slower by one process, which hands on the signals. */
export function startProgram(
  folder: string,
  environment: Readonly<Record<string, string>>,
  how: 'as npm does' | 'directly' = 'directly',
): Program {
  const { PATH = '', HOME = '' } = process.env;
  const [program, words] = how === 'directly' ? [process.execPath, ['--import', loader, main]] : [tsx, [main]];
  const child = spawn(program, words, {
    cwd: folder,
    // Tests go faster than people.
    env: { PATH, HOME, FANWRIGHT_PACE: '0', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = once(child, 'close').then(([code]) => code as number | null);
  let said = '';
  child.stderr.setEncoding('utf8').on('data', (chunk: string) => {
    said += chunk;
  });
  child.stdout.resume();
  return {
    said: () => said,
    async until(what) {
      const over = ended.then((code) => `it ended with ${code}: ${said}`);
      while (!what.test(said)) {
        const heard = once(child.stderr, 'data').then(() => undefined);
        const trouble = await Promise.race([heard, over]);
        if (trouble !== undefined && !what.test(said)) throw new Error(trouble);
      }
    },
    kill: (signal) => child.kill(signal),
    ended,
  };
}
