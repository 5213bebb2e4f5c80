import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { describe, expect, it, vi } from 'vitest';
import { backupsIn } from '#operation/backups.ts';
import { type Report, upkeep } from '#operation/upkeep.ts';
import { contentsOf } from '../store/contents.ts';
import { folder, ladder, storeAt } from '../store/workbench.ts';
import { clockwork } from './clockwork.ts';

const hour = 3_600_000;
const day = 24 * hour;

function atWork({ hours = 24 } = {}) {
  const place = folder();
  const time = clockwork();
  const path = join(place, 'records.sqlite');
  const store = storeAt(path, time.now);
  const backups = join(place, 'backups');
  const reported: string[] = [];
  const report: Report = (level, what, fields) => reported.push(`${level}: ${what} ${JSON.stringify(fields)}`);
  let copying: Promise<void> = Promise.resolve();
  const watched = {
    ...store,
    backup: (to: string) => {
      copying = store.backup(to);
      return copying;
    },
  };
  const plan = { folder: backups, hours, kept: 3 };
  const care = upkeep({ store: watched, plan, report, now: time.now, every: time.every });
  /** Resolves when what the clock set off is finished. */
  const quiet = async () => {
    await nextTurn();
    await copying.catch(() => undefined);
    await nextTurn();
  };
  return { path, store, backups, time, care, reported, quiet };
}

describe('while the program runs', () => {
  it('a backup is made at the start and every day, and the newest are kept', async () => {
    const { backups, time, care, quiet } = atWork();
    await quiet();
    expect(backupsIn(backups)).toHaveLength(1);
    await time.moveOn(23 * hour);
    expect(backupsIn(backups)).toHaveLength(1);
    await time.moveOn(4 * day, quiet);
    await care.stop();
    expect(backupsIn(backups).map(({ at }) => at.toISOString())).toEqual([
      '2026-03-05T03:00:00.000Z',
      '2026-03-04T03:00:00.000Z',
      '2026-03-03T03:00:00.000Z',
    ]);
  });

  it('a start soon after another makes no second backup, and 0 hours makes none', async () => {
    const { store, backups, time, care } = atWork();
    await care.stop();
    const plan = { folder: backups, hours: 24, kept: 3 };
    await upkeep({ store, plan, report: () => undefined, now: time.now, every: time.every }).stop();
    expect(backupsIn(backups)).toHaveLength(1);
    const none = atWork({ hours: 0 });
    await none.time.moveOn(3 * day);
    await none.care.stop();
    expect(backupsIn(none.backups)).toEqual([]);
  });

  it('the backup holds everything, table by table, that the records held', async () => {
    const { path, store, backups, care } = atWork();
    store.scoped('crew').openSheet({ ...ladder, name: 'Elm' });
    await care.stop();
    store.close();
    expect(contentsOf(backupsIn(backups)[0]?.file ?? '')).toBe(contentsOf(path));
  });

  it('a backup that fails is told of and tried again an hour later', async () => {
    const { backups, time, care, reported, quiet } = atWork();
    await quiet();
    rmSync(backups, { recursive: true });
    writeFileSync(backups, 'a file where the folder was');
    await time.moveOn(day, quiet);
    expect(reported).toContainEqual(
      expect.stringMatching(/^error: no backup was made .*is missing and could not be made/),
    );
    rmSync(backups);
    await time.moveOn(hour, quiet);
    await care.stop();
    expect(reported.at(-1)).toMatch(/^info: backup made/);
  });

  it('closed jobs whose time is over go within a day', async () => {
    const { store, time, care } = atWork({ hours: 0 });
    const crew = store.scoped('crew');
    const { number } = crew.openSheet({ ...ladder, name: 'Elm' });
    crew.closeSheet(number, { who: 'lead' });
    crew.saveRetention(1, { who: 'lead' });
    await time.moveOn(27 * day);
    expect(crew.findSheet(number)).toBeDefined();
    await time.moveOn(6 * day);
    await care.stop();
    expect(crew.findSheet(number)).toBeUndefined();
  });

  it('a clock set ahead by years erases nothing until it has gone on steadily for a day', async () => {
    const { store, time, care } = atWork({ hours: 0 });
    const crew = store.scoped('crew');
    const { number } = crew.openSheet({ ...ladder, name: 'Elm' });
    crew.closeSheet(number, { who: 'lead' });
    crew.saveRetention(1, { who: 'lead' });
    await time.moveOn(2 * day);
    time.jump(2000 * day);
    await time.moveOn(23 * hour);
    expect(crew.findSheet(number)).toBeDefined();
    await time.moveOn(2 * hour);
    await care.stop();
    expect(crew.findSheet(number)).toBeUndefined();
  });

  it('what a server kept goes a month after the bot was sent away, and not when it is back meanwhile', async () => {
    const store = storeAt(join(folder(), 'records.sqlite'));
    const time = clockwork();
    for (const scope of ['300000000000000001', '300000000000000002', 'terminal']) {
      store.scoped(scope).openSheet({ ...ladder, name: 'Elm' });
    }
    let here: Set<string> | undefined = new Set(['300000000000000001', '300000000000000002']);
    const plan = { folder: folder(), hours: 0, kept: 1 };
    const { now, every } = time;
    const care = upkeep({ store, plan, present: () => here, report: () => undefined, now, every });
    const quiet = () => nextTurn();
    here = new Set();
    await time.moveOn(20 * day, quiet);
    here = new Set(['300000000000000002']);
    await time.moveOn(hour, quiet);
    here = undefined;
    await time.moveOn(30 * day, quiet);
    expect(store.scopes()).toHaveLength(3);
    here = new Set();
    await time.moveOn(hour, quiet);
    await care.stop();
    expect(store.scopes()).toEqual(['300000000000000002', 'terminal']);
  });

  it('nothing waits for the clock once it is stopped, and nothing keeps the program from ending', async () => {
    const { time, care } = atWork();
    expect(time.waiting()).toBe(1);
    await care.stop();
    expect(time.waiting()).toBe(0);
    const timer = vi.spyOn(globalThis, 'setInterval');
    const store = storeAt();
    const plain = upkeep({ store, plan: { folder: folder(), hours: 0, kept: 1 }, report: () => undefined });
    const keepsUp = timer.mock.results.map(({ value }) => (value as NodeJS.Timeout).hasRef());
    timer.mockRestore();
    expect(keepsUp).toEqual([false]);
    await plain.stop();
  });
});
