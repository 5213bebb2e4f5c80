import { mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { backUpInto, backupsIn, isDue, usualFolder } from '#operation/backups.ts';
import { folder, ladder, storeAt } from '../store/workbench.ts';

const at = (day: number, hour = 3) => new Date(Date.UTC(2026, 2, day, hour));

function place() {
  const backups = join(folder(), 'backups');
  const store = storeAt();
  store.scoped('crew').openSheet({ ...ladder, name: 'Elm' });
  return { backups, plan: { folder: backups, hours: 24, kept: 3 }, copy: (to: string) => store.backup(to) };
}

describe('backups in a folder', () => {
  it('are named by the moment, for the owner alone, and open', async () => {
    const { backups, plan, copy } = place();
    const file = await backUpInto(plan, copy, at(1));
    expect(readdirSync(backups)).toEqual(['fanwright-2026-03-01T03-00-00Z.sqlite']);
    expect([statSync(backups).mode & 0o777, statSync(file).mode & 0o777]).toEqual([0o700, 0o600]);
    expect(backupsIn(backups)).toEqual([{ file, at: at(1) }]);
    expect(storeAt(file).scoped('crew').findSheet('elm')?.number).toBe(1);
  });

  it('go when they are the oldest beyond those kept, and no other file does', async () => {
    const { backups, plan, copy } = place();
    mkdirSync(backups);
    for (const other of ['notes.txt', 'fanwright-before-move.sqlite']) writeFileSync(join(backups, other), '');
    for (const day of [1, 2, 3, 4, 5]) await backUpInto(plan, copy, at(day));
    expect(backupsIn(backups).map((backup) => backup.at)).toEqual([at(5), at(4), at(3)]);
    expect(readdirSync(backups)).toEqual(expect.arrayContaining(['notes.txt', 'fanwright-before-move.sqlite']));
  });

  it('stay, all of them, when the new one fails', async () => {
    const { backups, plan, copy } = place();
    for (const day of [1, 2, 3]) await backUpInto(plan, copy, at(day));
    const failing = () => Promise.reject(new Error('no room'));
    await expect(backUpInto(plan, failing, at(4))).rejects.toThrow('no room');
    expect(backupsIn(backups)).toHaveLength(3);
  });

  it('are wanted when none is there and when the last is a day old', async () => {
    const { plan, copy } = place();
    expect(isDue(plan, at(1))).toBe(true);
    await backUpInto(plan, copy, at(1));
    expect(isDue(plan, at(1, 23))).toBe(false);
    expect(isDue(plan, at(2))).toBe(true);
    expect(isDue({ ...plan, hours: 0 }, at(9))).toBe(false);
  });

  it('are not made into a tree of folders grown from a mistyped path', async () => {
    const { plan, copy } = place();
    const astray = { ...plan, folder: join(folder(), 'no', 'backups') };
    await expect(backUpInto(astray, copy, at(1))).rejects.toMatchObject({
      code: 'no-folder',
      message: expect.stringMatching(
        /is missing and could not be made, so make it or name another in FANWRIGHT_BACKUPS\.$/,
      ),
    });
  });

  it('lie beside the records unless another folder is named', () => {
    expect(usualFolder(join('data', 'fanwright.sqlite'))).toBe(join('data', 'backups'));
  });
});
