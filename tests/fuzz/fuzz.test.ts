import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { quickly } from '../chat/discord/stage.ts';
import { discordWalker } from './discord-walker.ts';
import { terminalWalker } from './terminal-walker.ts';
import { walked } from './walker.ts';
import { workedTime } from './worked-time.ts';

/** So many steps on each seed: a few seconds. `npx tsx tests/fuzz/long.ts` walks further. */
const seeds = [1, 2, 3];
const steps = { terminal: 100, discord: 80 };

function folder(): string {
  const path = mkdtempSync(join(tmpdir(), 'fanwright-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  return path;
}

describe('whatever is typed and pressed, in whatever order', { timeout: 180_000 }, () => {
  it.each(seeds)('in the terminal leads on, prints nothing unseen and breaks nothing (seed %i)', async (seed) => {
    const walker = await terminalWalker(seed);
    onTestFinished(() => walker.close());
    expect((await walked(walker, (done) => done >= steps.terminal)).problems).toEqual([]);
  });

  it.each(seeds)(
    'in Discord is answered in time and as the platform wants it, and mentions nobody (seed %i)',
    async (seed) => {
      const file = join(folder(), 'records.sqlite');
      const walker = await discordWalker(seed, { file, draw: quickly, now: workedTime(), patience: 60_000 });
      onTestFinished(() => walker.close());
      expect((await walked(walker, (done) => done >= steps.discord)).problems).toEqual([]);
    },
  );
});
