import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { restoreStore } from '#store/backup.ts';
import { openStore } from '#store/store.ts';
import { answer, clock, folder, ladder, storeAt, troubleFrom } from './workbench.ts';

const now = clock();
const longNotes = Array.from({ length: 800 }, (_, count) => answer('note', `${count}${'x'.repeat(900)}`));

function atWork() {
  const place = folder();
  const path = join(place, 'records.sqlite');
  const store = storeAt(path);
  const crew = store.scoped('crew');
  const { number } = crew.openSheet({ ...ladder, name: 'Elm' });
  const collarIn = (file: string) => storeAt(file).scoped('crew').newestFacts(number).get('collar')?.value;
  crew.addFact(number, answer('collar', '4 in'));
  return { place, path, store, crew, number, backup: join(place, 'backup.sqlite'), collarIn };
}

describe('a backup', () => {
  it('made while the crew works is whole, alone in its file, and opens', async () => {
    const { store, crew, number, backup, place } = atWork();
    crew.addFacts(number, longNotes);
    let done = false;
    const backing = store.backup(backup).then(() => {
      done = true;
    });
    let meanwhile = 0;
    while (!done) {
      crew.addFact(number, answer('meanwhile', ++meanwhile));
      await new Promise((resolve) => setImmediate(resolve));
    }
    await backing;
    expect(meanwhile).toBeGreaterThan(3);
    expect(readdirSync(place).filter((name) => name.startsWith('backup'))).toEqual(['backup.sqlite']);
    // "Database file format", bytes 18 and 19 of the head: 1 needs no log beside the file, so a write-protected disk will do.
    expect([...readFileSync(backup).subarray(18, 20)]).toEqual([1, 1]);
    const copy = storeAt(backup).scoped('crew');
    expect(copy.factHistory(number).filter(({ fact }) => fact === 'note')).toHaveLength(800);
    expect(copy.findSheet(number)).toEqual(crew.findSheet(number));
  });

  it('takes the place of an earlier one of the same name, also when two are asked for at once', async () => {
    const { store, crew, number, backup, collarIn } = atWork();
    await store.backup(backup);
    crew.addFact(number, answer('collar', '6 in'));
    await Promise.all([store.backup(backup), store.backup(backup)]);
    expect(collarIn(backup)).toBe('6 in');
  });

  it('goes well with erasing in the middle', async () => {
    const { store, crew, number, backup } = atWork();
    const other = crew.openSheet({ ...ladder, name: 'Oak' }).number;
    crew.addFacts(number, longNotes);
    const backing = store.backup(backup);
    await new Promise((resolve) => setImmediate(resolve));
    await new Promise((resolve) => setImmediate(resolve));
    crew.eraseSheet(number);
    await backing;
    const copy = storeAt(backup).scoped('crew');
    expect(copy.findSheet(other)?.name).toBe('Oak');
    expect(copy.findSheet(number)).toBeUndefined();
  });

  it('of records in memory can be made too', async () => {
    const store = storeAt();
    store.scoped('crew').openSheet({ ...ladder, name: 'Elm' });
    const backup = join(folder(), 'backup.sqlite');
    await store.backup(backup);
    expect(storeAt(backup).scoped('crew').findSheet('elm')?.number).toBe(1);
  });

  it('is refused over the file in use and into a folder that is not there', async () => {
    const { store, path, place } = atWork();
    await expect(store.backup(path)).rejects.toMatchObject({ name: 'StoreTrouble', code: 'other' });
    await expect(store.backup(join(place, 'no', 'backup.sqlite'))).rejects.toMatchObject({ code: 'no-folder' });
    await expect(store.backup(place)).rejects.toMatchObject({ name: 'StoreTrouble' });
    expect(readdirSync(place).filter((name) => name.includes('part'))).toEqual([]);
  });

  it('cut short by closing leaves nothing half made', async () => {
    const { store, crew, number, backup, place } = atWork();
    crew.addFacts(number, longNotes);
    const backing = store.backup(backup);
    store.close();
    await expect(backing).rejects.toThrow();
    expect(readdirSync(place).filter((name) => name.startsWith('backup'))).toEqual([]);
  });
});

describe('restoring', () => {
  it('brings back what the backup held and sets aside what was there', async () => {
    const { store, crew, number, path, backup, collarIn } = atWork();
    await store.backup(backup);
    crew.addFact(number, answer('collar', '6 in'));
    store.close();
    const aside = restoreStore({ from: backup, to: path, now });
    expect(collarIn(path)).toBe('4 in');
    expect(aside).toContain('before-restore-2026-03-02');
    expect(collarIn(aside ?? '')).toBe('6 in');
  });

  it('does not mix in what the records still had in their log when the program was killed', async () => {
    const { store, crew, number, path, backup, place, collarIn } = atWork();
    await store.backup(backup);
    crew.addFact(number, answer('collar', '6 in'));
    // The files of a running store are what a killed one leaves behind.
    const [file, log] = [readFileSync(path), readFileSync(`${path}-wal`)];
    expect(log.length).toBeGreaterThan(0);
    store.close();
    writeFileSync(path, file);
    writeFileSync(`${path}-wal`, log);
    const aside = restoreStore({ from: backup, to: path, now });
    expect(existsSync(`${aside}-wal`)).toBe(false);
    expect(collarIn(path)).toBe('4 in');
    expect(collarIn(aside ?? '')).toBe('6 in');
    expect(readdirSync(place).filter((name) => name.includes('part'))).toEqual([]);
  });

  it('works over a damaged file, where it is needed most, and keeps its log for whoever mends it', async () => {
    const { store, number, path, backup, collarIn } = atWork();
    await store.backup(backup);
    store.close();
    const killed = openStore(path);
    killed.scoped('crew').addFact(number, answer('collar', '6 in'));
    const log = readFileSync(`${path}-wal`);
    killed.close();
    writeFileSync(path, 'something wrote all over this file'.repeat(300));
    writeFileSync(`${path}-wal`, log);
    const aside = restoreStore({ from: backup, to: path, now });
    expect(readFileSync(aside ?? '', 'utf8')).toContain('something wrote all over');
    expect(readFileSync(`${aside}-wal`)).toEqual(log);
    expect(collarIn(path)).toBe('4 in');
  });

  it('works where nothing is yet', async () => {
    const { store, place, backup } = atWork();
    await store.backup(backup);
    const to = join(place, 'new', 'records.sqlite');
    expect(restoreStore({ from: backup, to })).toBeNull();
    expect(storeAt(to).scoped('crew').findSheet('elm')?.number).toBe(1);
  });

  it('is refused while the program is running', async () => {
    const { store, path, backup, crew, number } = atWork();
    await store.backup(backup);
    crew.addFact(number, answer('collar', '6 in'));
    expect(troubleFrom(() => restoreStore({ from: backup, to: path })).code).toBe('locked');
    expect(crew.newestFacts(number).get('collar')?.value).toBe('6 in');
  });

  it('is refused, and changes nothing, from a bad backup or over another program’s file', async () => {
    const { store, path, backup, place, collarIn } = atWork();
    await store.backup(backup);
    store.close();
    const damaged = join(place, 'damaged.sqlite');
    writeFileSync(damaged, 'no backup at all'.repeat(300));
    expect(troubleFrom(() => restoreStore({ from: damaged, to: path })).code).toBe('corrupt');
    expect(troubleFrom(() => restoreStore({ from: join(place, 'nothing'), to: path })).code).toBe('other');
    expect(troubleFrom(() => restoreStore({ from: path, to: path })).code).toBe('other');
    const theirs = join(place, 'theirs.sqlite');
    const database = new Database(theirs);
    database.exec('CREATE TABLE recipes (name TEXT)');
    database.close();
    expect(troubleFrom(() => restoreStore({ from: theirs, to: path })).code).toBe('not-ours');
    expect(troubleFrom(() => restoreStore({ from: backup, to: theirs })).code).toBe('not-ours');
    expect(collarIn(path)).toBe('4 in');
    expect(existsSync(`${path}.part`)).toBe(false);
  });

  it('of a newer backup into an older program is refused', async () => {
    const { store, path, backup } = atWork();
    await store.backup(backup);
    store.close();
    const later = new Database(backup);
    later.pragma('user_version = 99');
    later.close();
    expect(troubleFrom(() => restoreStore({ from: backup, to: path })).code).toBe('newer');
    openStore(path).close();
  });
});
