import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';

const main = join(import.meta.dirname, '../../../src/main.ts');

/** What a run of the whole program came to. */
export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly errors: string;
}

/** The program as somebody starts it in a folder of their own, with nothing set but what is given. */
export function started(
  folder: string,
  words: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): ChildProcess {
  return spawn(process.execPath, ['--import', import.meta.resolve('tsx'), main, ...words], {
    cwd: folder,
    env: { PATH: process.env['PATH'], HOME: folder, ...environment },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
}

/** Waits for a started program to end, after giving it some lines. */
export async function ended(child: ChildProcess, lines = ''): Promise<Ended> {
  const parts = { out: '', errors: '' };
  child.stdout?.setEncoding('utf8').on('data', (text: string) => {
    parts.out += text;
  });
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    parts.errors += text;
  });
  child.stdin?.end(lines);
  const code = await new Promise<number | null>((onEnd) => child.once('close', onEnd));
  return { code, ...parts };
}
