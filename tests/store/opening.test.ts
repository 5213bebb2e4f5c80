import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '#store/database.ts';
import { facts } from '#store/facts.ts';
import { members } from '#store/members.ts';
import { ourMark } from '#store/migrate.ts';
import { photos } from '#store/photos.ts';
import { queries, scopedQueries } from '#store/queries.ts';
import { sheets } from '#store/sheets.ts';
import { shelf } from '#store/shelf.ts';
import { openStore } from '#store/store.ts';
import { walkEvents } from '#store/walk-events.ts';
import {
  answer,
  clock,
  crew,
  folder,
  happened,
  ladder,
  lee,
  photo,
  shelfFan,
  storeAt,
  troubleFrom,
} from './workbench.ts';

const oneSentence = /^[^.]+(\.[^. ]+)*[^.]*\.$/;

/** What comes of opening the file as somebody who may not write anything: root may, so as root it is tried as nobody. */
function openedAsOrdinaryUser(path: string): string {
  const script = fileURLToPath(new URL('./another-instance.ts', import.meta.url));
  const nobody = process.geteuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
  const { stdout } = spawnSync(process.execPath, ['--import', 'tsx', script, 'open', path], {
    ...nobody,
    encoding: 'utf8',
    timeout: 15_000,
  });
  return stdout.trim();
}

describe('opening the records', () => {
  it('makes the folder when only the folder is missing, for its owner alone', () => {
    const data = join(folder(), 'data');
    storeAt(join(data, 'records.sqlite'));
    expect(statSync(data).mode & 0o777).toBe(0o700);
  });

  it('does not grow a tree of folders from a mistyped path', () => {
    const place = folder();
    const trouble = troubleFrom(() => openStore(join(place, 'dta', 'records', 'records.sqlite')));
    expect(trouble.code).toBe('no-folder');
    expect(existsSync(join(place, 'dta'))).toBe(false);
  });

  it('says so when the folder cannot be made because a file is in the way', () => {
    const place = folder();
    writeFileSync(join(place, 'data'), '');
    expect(troubleFrom(() => openStore(join(place, 'data', 'records.sqlite'))).code).toBe('no-folder');
  });

  it('says so when the path is a folder, or nothing', () => {
    expect(troubleFrom(() => openStore(folder())).message).toContain('is a folder');
    expect(troubleFrom(() => openStore('  ')).message).toContain('has no name');
  });

  it('does not touch a file that is no database', () => {
    const path = join(folder(), 'records.sqlite');
    const shoppingList = `foil tape, 4 in clamps\n${'screws\n'.repeat(1000)}`;
    writeFileSync(path, shoppingList);
    expect(troubleFrom(() => openStore(path)).code).toBe('corrupt');
    expect(readFileSync(path, 'utf8')).toBe(shoppingList);
  });

  it('does not touch the database of another program', () => {
    const path = join(folder(), 'records.sqlite');
    const theirs = new Database(path);
    theirs.exec('CREATE TABLE recipes (name TEXT)');
    theirs.close();
    const before = readFileSync(path);
    expect(troubleFrom(() => openStore(path)).code).toBe('not-ours');
    expect(readFileSync(path)).toEqual(before);
  });

  it('notices a damaged page', () => {
    const path = join(folder(), 'records.sqlite');
    const store = openStore(path);
    const { number } = crew(store).currentSheet(ladder);
    for (let count = 0; count < 50; count += 1) crew(store).addFact(number, answer('note', 'x'.repeat(500)));
    store.close();
    const bytes = readFileSync(path);
    bytes.fill(0xff, bytes.length - 3 * 4096, bytes.length - 2 * 4096);
    writeFileSync(path, bytes);
    expect(troubleFrom(() => openStore(path)).code).toBe('corrupt');
  });

  it('leaves a file of a newer version alone and names both versions', () => {
    const path = join(folder(), 'records.sqlite');
    openStore(path).close();
    const later = new Database(path);
    later.pragma('user_version = 99');
    later.close();
    const trouble = troubleFrom(() => openStore(path));
    expect(trouble.code).toBe('newer');
    expect(trouble.message).toContain('version 99');
  });

  it('lets go of the lock when opening fails', () => {
    const path = join(folder(), 'records.sqlite');
    writeFileSync(path, 'no database at all, and long enough to be looked at as one'.repeat(10));
    expect(troubleFrom(() => openStore(path)).code).toBe('corrupt');
    expect(troubleFrom(() => openStore(path)).code).toBe('corrupt');
  });

  it('turns away a second opening in the same process until the first is closed', () => {
    const path = join(folder(), 'records.sqlite');
    const first = openStore(path);
    expect(troubleFrom(() => openStore(path)).code).toBe('locked');
    first.close();
    first.close();
    storeAt(path);
  });

  it('knows a file by whatever name it is called', () => {
    const place = folder();
    const path = join(place, 'records.sqlite');
    storeAt(path);
    symlinkSync(path, join(place, 'also.sqlite'));
    symlinkSync(place, join(place, 'here'));
    expect(troubleFrom(() => openStore(join(place, 'also.sqlite'))).code).toBe('locked');
    expect(troubleFrom(() => openStore(join(place, 'here', 'records.sqlite'))).code).toBe('locked');
  });

  it('does not wait long for another program that is writing', () => {
    const path = join(folder(), 'records.sqlite');
    openStore(path).close();
    const browser = new Database(path);
    browser.exec('BEGIN IMMEDIATE');
    const trouble = troubleFrom(() => openStore(path));
    browser.close();
    expect(trouble.code).toBe('locked');
    expect(trouble.message).toContain('held by another program');
  });

  it('names a file that may not be written at once, not at the first answer', () => {
    const place = folder();
    const path = join(place, 'records.sqlite');
    openStore(path).close();
    // The folder and the lock can be written, so that only the records stand in the way.
    chmodSync(place, 0o777);
    chmodSync(`${path}.lock`, 0o666);
    chmodSync(path, 0o444);
    expect(openedAsOrdinaryUser(path)).toBe('read-only');
    chmodSync(`${path}.lock`, 0o444);
    expect(openedAsOrdinaryUser(path)).toBe('read-only');
  });

  it('says in one plain sentence what is wrong and what to do', () => {
    const place = folder();
    const text = join(place, 'text.sqlite');
    writeFileSync(text, 'not a database'.repeat(100));
    mkdirSync(join(place, 'sub'));
    for (const path of [text, join(place, 'sub'), join(place, 'no', 'such', 'folder.sqlite')]) {
      const { message, name } = troubleFrom(() => openStore(path));
      expect(name).toBe('StoreTrouble');
      expect(message).toMatch(oneSentence);
      expect(message).toMatch(/, so (restore|name|make) /);
    }
  });

  it('keeps records in memory without a lock, each on its own', () => {
    const [one, other] = [storeAt(), storeAt()];
    crew(one).currentSheet(ladder);
    expect(other.scopes()).toEqual([]);
  });
});

describe('how carefully the records are kept', () => {
  it('writes are on the disk before they are acknowledged, and deleted rows are overwritten', () => {
    const db = openDatabase(join(folder(), 'records.sqlite'));
    const settingOf = (name: string) => db.pragma(name, { simple: true });
    // The numbers are those of the SQLite documentation, "PRAGMA statements": synchronous 2 is FULL.
    expect({
      journal: settingOf('journal_mode'),
      synchronous: settingOf('synchronous'),
      keys: settingOf('foreign_keys'),
      secureDelete: settingOf('secure_delete'),
      wait: settingOf('busy_timeout'),
      mark: settingOf('application_id'),
    }).toEqual({ journal: 'wal', synchronous: 2, keys: 1, secureDelete: 1, wait: 500, mark: ourMark });
    db.close();
  });

  it('a full disk is said so, keeps nothing of the answer and loses nothing from before', () => {
    const db = openDatabase(':memory:');
    const kept = scopedQueries(queries(db, 'records.sqlite', clock()), 'crew');
    const { number } = sheets(kept).currentSheet(ladder);
    facts(kept).addFact(number, answer('collar', '4 in'));
    db.pragma(`max_page_count = ${db.pragma('page_count', { simple: true })}`);
    const long = answer('note', 'x'.repeat(100_000));
    const trouble = troubleFrom(() => facts(kept).addFacts(number, [answer('collar', '6 in'), long]));
    expect(trouble.code).toBe('full');
    expect(trouble.message).toContain('free some disk space');
    expect([...facts(kept).newestFacts(number).values()].map(({ value }) => value)).toEqual(['4 in']);
    db.close();
  });

  it('a query that does not say whose records it wants is refused', () => {
    const db = openDatabase(':memory:');
    const kept = scopedQueries(queries(db, 'records.sqlite', clock()), 'crew');
    expect(() => kept.all('SELECT * FROM facts')).toThrow('forgets whose records');
    expect(() => kept.change('DELETE FROM facts')).toThrow('forgets whose records');
    expect(() => kept.first('SELECT @scopes', { scopes: 1 })).toThrow('forgets whose records');
    expect(kept.first('SELECT @scope AS scope', { scope: 'another crew' })).toEqual({ scope: 'crew' });
    db.close();
  });

  it('records without a crew are refused', () => {
    expect(() => storeAt().scoped('')).toThrow('belong to a crew');
  });

  it('nothing a person said can be changed afterwards, even by a mistaken query', () => {
    const db = openDatabase(':memory:');
    const kept = scopedQueries(queries(db, 'records.sqlite', clock()), 'crew');
    const { number } = sheets(kept).currentSheet(ladder);
    facts(kept).addFact(number, answer('collar', '4 in'));
    facts(kept).retractNewest(number, { who: 'lead' });
    kept.change("INSERT INTO settings (scope, key, value, who, at) VALUES (@scope, 'units', 'metric', 'lead', '')");
    members(kept).saveMember(lee, { who: 'office' });
    shelf(kept).saveShelfFans([shelfFan('Invented 80')], { who: 'lead' });
    walkEvents(kept).addWalkEvent(number, happened('w-1'));
    photos(kept).addPhoto(number, photo);
    const tables = ['facts', 'retractions', 'sheet_events', 'settings', 'shelf_fans', 'walk_events', 'photos'];
    for (const table of [...tables, 'crew_members']) {
      expect(() => db.prepare(`UPDATE ${table} SET at = '2020-01-01'`).run()).toThrow(/never changed/);
    }
    db.close();
  });
});
