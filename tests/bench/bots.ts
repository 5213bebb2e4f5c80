import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import packageFile from '../../package.json' with { type: 'json' };
import type { StandIn } from '../support/stand-in/stand-in.ts';

/** The two bots that are compared: the least one can be, and this one. */
export type Which = 'bare' | 'fanwright';

const scripts: Readonly<Record<Which, string>> = {
  bare: fileURLToPath(new URL('../support/stand-in/bare-bot.ts', import.meta.url)),
  fanwright: fileURLToPath(new URL('../../src/main.ts', import.meta.url)),
};
const loader = import.meta.resolve('tsx');
/** What `npm start` tells the runtime, so that both are measured as it runs. */
const flags = packageFile.scripts.start.split(' ').filter((word) => word.startsWith('--'));

export interface RunningBot {
  /** Megabytes in memory, where the system tells. */
  memory(): number | undefined;
  /** Milliseconds of processor time used so far, where the system tells. */
  processorTime(): number | undefined;
  stop(): Promise<void>;
}

/** Starts a bot in a process and a folder of its own. */
export function startBot(which: Which, standIn: StandIn): RunningBot {
  const folder = mkdtempSync(join(tmpdir(), 'fanwright-bench-'));
  const child = spawn(process.execPath, [...flags, '--import', loader, scripts[which]], {
    cwd: folder,
    // A handful of people stand for hundreds here, so the pace of one person is not held.
    env: { ...process.env, ...standIn.environment, LOG_LEVEL: 'warn', FANWRIGHT_PACE: '0' },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  return {
    memory: () => residentMegabytes(child),
    processorTime: () => processorMilliseconds(child),
    async stop() {
      const closed = once(child, 'close');
      child.kill('SIGTERM');
      await closed;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The unit in which Linux counts processor time. */
const tick = 10;

function processorMilliseconds({ pid }: ChildProcess): number | undefined {
  try {
    // The name of the program comes first, in brackets; user and system time are fields 14 and 15.
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ');
    return (Number(fields[11]) + Number(fields[12])) * tick;
  } catch {
    return undefined;
  }
}

function residentMegabytes({ pid }: ChildProcess): number | undefined {
  try {
    const kilobytes = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    return kilobytes === undefined ? undefined : Number(kilobytes) / 1024;
  } catch {
    return undefined;
  }
}
