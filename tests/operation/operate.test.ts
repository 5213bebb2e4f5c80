import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { backupsIn } from '#operation/backups.ts';
import { isOperation, operate } from '#operation/operate.ts';
import { openStore } from '#store/store.ts';
import { kept } from '../chat/terminal/streams.ts';
import { contentsOf } from '../store/contents.ts';
import { answer, folder, ladder, storeAt } from '../store/workbench.ts';

function scene() {
  const place = folder();
  const database = join(place, 'records.sqlite');
  const store = storeAt(database);
  const crew = store.scoped('crew');
  const { number } = crew.openSheet({ ...ladder, name: 'Elm' });
  const asked = async (operation: 'backup' | 'restore' | 'health', ...words: readonly string[]) => {
    const output = kept();
    const plan = { folder: join(place, 'backups'), hours: 24, kept: 3 };
    const code = await operate(operation, words, { database, plan, health: undefined, output });
    return { code, said: output.text() };
  };
  return { place, database, store, asked, note: (value: string) => crew.addFact(number, answer('note', value)) };
}

describe('asked for by hand', () => {
  it('a backup is made while the records are in use, in the folder or where it is said', async () => {
    const { place, database, asked } = scene();
    const file = join(place, 'stick.sqlite');
    expect(await asked('backup', file)).toEqual({ code: 0, said: `Backed up ${database} to ${file}.\n` });
    expect(contentsOf(file)).toBe(contentsOf(database));
    expect(await asked('backup')).toMatchObject({ code: 0 });
    expect(backupsIn(join(place, 'backups'))).toHaveLength(1);
  });

  it('a restore brings back what was backed up and sets aside what was there', async () => {
    const { database, store, asked, note } = scene();
    await asked('backup');
    const [{ file } = { file: '' }] = backupsIn(join(database, '..', 'backups'));
    const before = contentsOf(file);
    note('later');
    await expect(asked('restore', file)).rejects.toMatchObject({ code: 'locked' });
    store.close();
    const { code, said } = await asked('restore', file);
    expect(code).toBe(0);
    const aside = /What was there before is in (\S+)\.\n$/.exec(said)?.[1] ?? '';
    expect(existsSync(aside)).toBe(true);
    expect(contentsOf(database)).toBe(before);
    openStore(aside).close();
  });

  it('what is not understood is said, and nothing is done', async () => {
    const { asked, database } = scene();
    const before = contentsOf(database);
    expect(await asked('restore')).toMatchObject({
      code: 2,
      said: expect.stringMatching(/^Name the backup to restore/),
    });
    expect(await asked('backup', 'a', 'b')).toMatchObject({ code: 2, said: expect.stringMatching(/^Name one file/) });
    expect(await asked('health')).toMatchObject({ code: 1, said: expect.stringContaining('FANWRIGHT_HEALTH') });
    expect(contentsOf(database)).toBe(before);
  });

  it('no command of a crew is taken for it', () => {
    expect(['backup', 'restore', 'health', 'job', undefined].filter(isOperation)).toEqual([
      'backup',
      'restore',
      'health',
    ]);
  });
});
