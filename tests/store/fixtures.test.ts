import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '#store/database.ts';
import { migrate, versionOf } from '#store/migrate.ts';
import { migrations } from '#store/migrations.ts';
import { contentsOf } from './contents.ts';
import { folder, storeAt, troubleFrom } from './workbench.ts';

const fixtures = join(import.meta.dirname, 'fixtures');
const versions = readdirSync(fixtures).map((name) => Number(/^version-(\d+)\.sql$/.exec(name)?.[1]));

/** A file as that version of the program left it, written out once and never since. */
function fileOf(version: number): string {
  const path = join(folder(), 'records.sqlite');
  const db = new Database(path);
  db.exec(readFileSync(join(fixtures, `version-${version}.sql`), 'utf8'));
  db.close();
  return path;
}

const tablesOf = (db: Database.Database): string[] =>
  db
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'")
    .pluck()
    .all() as string[];

/** Every row of some tables in some columns: what was there before a step must be there after it. */
const rowsOf = (db: Database.Database, columns: ReadonlyMap<string, readonly string[]>) =>
  [...columns].map(([table, names]) => [
    table,
    db.prepare(`SELECT ${names.join(', ')} FROM ${table} ORDER BY ${names.join(', ')}`).all(),
  ]);

describe.each(versions)('a file that version %i left behind', (version) => {
  it('comes through every later step with each row as it was', () => {
    const path = fileOf(version);
    const before = new Database(path);
    const columns = new Map(
      tablesOf(before).map((table) => [
        table,
        (before.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => name),
      ]),
    );
    const rows = rowsOf(before, columns);
    before.close();
    expect(rows.flatMap(([, each]) => each).length).toBeGreaterThan(10);
    const db = openDatabase(path);
    expect(versionOf(db)).toBe(migrations.length);
    expect(rowsOf(db, columns)).toEqual(rows);
    expect(db.pragma('foreign_key_check')).toEqual([]);
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    db.close();
  });

  it('has the shape the steps still make, so no step was changed after it was given out', () => {
    const path = fileOf(version);
    const made = join(folder(), 'made.sqlite');
    const db = new Database(made);
    migrate(db, made, migrations.slice(0, version));
    db.close();
    const shapeOf = (file: string) =>
      contentsOf(file)
        .split('\n')
        .filter((line) => line.startsWith('{"name"'));
    expect(shapeOf(path)).toEqual(shapeOf(made));
  });

  it('is as it was, to the last byte, when a step fails half way', () => {
    const path = fileOf(version);
    const before = readFileSync(path);
    const contents = contentsOf(path);
    const broken = {
      brings: 'a mistake',
      sql: "CREATE TABLE half (id INTEGER) STRICT; UPDATE sheets SET name = 'gone'; INSERT INTO nowhere VALUES (1)",
    };
    const db = new Database(path);
    const trouble = troubleFrom(() => migrate(db, path, [...migrations.slice(0, version), broken]));
    db.close();
    expect(trouble.message).toContain(
      `could not be brought to version ${version + 1} (a mistake) and was left as it was`,
    );
    expect(contentsOf(path)).toBe(contents);
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  it('is read by the program as the crew left it', () => {
    const crew = storeAt(fileOf(version)).scoped('300000000000000001');
    expect(crew.findSheet('garcia upstairs')).toMatchObject({ number: 1, name: 'García upstairs' });
    expect(crew.newestFacts(1).get('collar')?.typed).toBe('4 in');
    expect(crew.openSheet({ channel: 'thread', who: '<@11>' }).number).toBe(4);
  });
});

it('there is such a file for every version before this one', () => {
  expect(versions.toSorted()).toEqual(Array.from({ length: versions.length }, (_, index) => index + 1));
  // A new step wants a file of the version before it: what `.dump` of the command-line shell writes, with the two PRAGMAs.
  expect(versions.length).toBeGreaterThanOrEqual(migrations.length - 1);
});
