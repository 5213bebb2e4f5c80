import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Health, healthFile, type Vitals, wellness } from '#operation/health.ts';
import { folder } from '../store/workbench.ts';
import { clockwork } from './clockwork.ts';

const minute = 60_000;
const shard = { id: 0, ready: true, lastHeartbeat: '2026-03-01T02:59:40.000Z' };

function watched(file = join(folder(), 'health.json')) {
  const time = clockwork();
  const reported: string[] = [];
  let vitals: Vitals = { state: 'starting', servers: 0, shards: [] };
  const health = healthFile({
    file,
    version: '0.1.0',
    backups: join(dirname(file), 'backups'),
    look: () => vitals,
    report: (_, what) => reported.push(what),
    now: time.now,
    every: time.every,
  });
  return {
    file,
    time,
    health,
    reported,
    become: (next: Vitals) => {
      vitals = next;
    },
    read: () => JSON.parse(readFileSync(file, 'utf8')) as Health,
    wellness: () => wellness(file, time.now()),
  };
}

const ready: Vitals = { state: 'ready', servers: 2, shards: [shard] };
const away: Vitals = { state: 'away', servers: 2, shards: [{ ...shard, ready: false }] };

describe('the health file', () => {
  it('says how the program is, anew every few seconds', async () => {
    const { read, time, become, file } = watched();
    expect(read()).toMatchObject({ state: 'starting', pid: process.pid, version: '0.1.0', lastReady: null });
    become(ready);
    await time.moveOn(15_000);
    expect(read()).toEqual({
      state: 'ready',
      servers: 2,
      shards: [shard],
      at: '2026-03-01T03:00:15.000Z',
      since: '2026-03-01T03:00:00.000Z',
      lastReady: '2026-03-01T03:00:15.000Z',
      pid: process.pid,
      version: '0.1.0',
      lastBackup: null,
    });
    expect(readdirSync(dirname(file))).toEqual(['health.json']);
  });

  it('calls the program well while it starts and while the platform is away for minutes', async () => {
    const { wellness, time, become } = watched();
    expect(wellness()).toMatchObject({ well: true, says: expect.stringContaining('is starting') });
    become(ready);
    await time.moveOn(minute);
    expect(wellness()).toMatchObject({ well: true, says: expect.stringContaining('is ready') });
    become(away);
    await time.moveOn(14 * minute);
    expect(wellness()).toMatchObject({ well: true, says: expect.stringContaining('is away') });
    await time.moveOn(2 * minute);
    expect(wellness()).toMatchObject({ well: false, says: expect.stringContaining('has not reached Discord since') });
  });

  it('calls it unwell when it has stopped writing, has ended or was never there', async () => {
    const { wellness: now, time, file, health } = watched();
    expect(wellness(file, new Date(time.now().getTime() + 2 * minute))).toEqual({
      well: false,
      says: 'Nothing was heard of the program for 120 seconds, so start it again.',
    });
    health.end();
    expect(now()).toMatchObject({ well: false, says: expect.stringContaining('The program ended at') });
    expect(time.waiting()).toBe(0);
    rmSync(file);
    expect(now()).toMatchObject({ well: false, says: expect.stringContaining('There is no health file') });
  });

  it('that cannot be written is told of once and ends nothing', async () => {
    const file = join(folder(), 'run', 'health.json');
    const { reported, time } = watched(file);
    await time.moveOn(minute);
    expect(reported).toEqual(['the health file cannot be written']);
    mkdirSync(dirname(file));
    await time.moveOn(minute);
    expect(existsSync(file)).toBe(true);
    expect(reported).toHaveLength(1);
  });
});
