import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openStore } from '#store/store.ts';
import { folder, storeAt, troubleFrom } from './workbench.ts';

const script = fileURLToPath(new URL('./another-instance.ts', import.meta.url));

function anotherInstance(what: 'open' | 'answers', path: string) {
  const child = spawn(process.execPath, ['--import', 'tsx', script, what, path], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<void>((resolve) => {
    child.once('close', () => resolve());
  });
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  return { child, ended, lines: createInterface({ input: child.stdout })[Symbol.asyncIterator]() };
}

const kill = async ({ child, ended }: { child: ChildProcess; ended: Promise<void> }): Promise<void> => {
  child.kill('SIGKILL');
  await ended;
};

describe('two instances and sudden deaths', { timeout: 20_000 }, () => {
  it('a second instance is turned away, and let in once the first was killed', async () => {
    const path = join(folder(), 'records.sqlite');
    const first = anotherInstance('open', path);
    expect(await first.lines.next()).toMatchObject({ value: 'opened' });

    const trouble = troubleFrom(() => openStore(path));
    expect(trouble.code).toBe('locked');
    expect(trouble.message).toContain('already in use by another Fanwright');

    await kill(first);
    expect(storeAt(path).scopes()).toEqual([]);
  });

  it('every answer that was acknowledged is there after the process was killed in the middle of writing', async () => {
    const path = join(folder(), 'records.sqlite');
    const writer = anotherInstance('answers', path);
    expect(await writer.lines.next()).toMatchObject({ value: 'opened' });
    let acknowledged = 0;
    while (acknowledged < 40) acknowledged = Number((await writer.lines.next()).value);
    await kill(writer);
    for (let line = await writer.lines.next(); !line.done; line = await writer.lines.next()) {
      acknowledged = Number(line.value);
    }

    const crew = storeAt(path).scoped('crew');
    const kept = [...crew.newestFacts(1).values()].map(({ value }) => value);
    // The last answer may have been kept without anybody having heard of it.
    expect(kept.length - acknowledged).toBeOneOf([0, 1]);
    expect(kept).toEqual(Array.from({ length: kept.length }, (_, index) => index + 1));
  });
});
