import { existsSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '#store/database.ts';
import { migrate, versionOf } from '#store/migrate.ts';
import { type Migration, migrations } from '#store/migrations.ts';
import { openStore } from '#store/store.ts';
import { folder, storeAt, troubleFrom } from './workbench.ts';

type Row = Readonly<Record<string, string | number | null>>;

const ofSheet = { scope: 'crew', sheet: 1, who: 'lead', at: '2025-01-01T08:00:00.000Z' };

/** A row or two for every table, written in the columns the table began with. A new table gets its row here. */
const rows: Readonly<Record<string, readonly Row[]>> = {
  crews: [{ scope: 'crew', sheets_opened: 1, since: '2025-01-01T08:00:00.000Z' }],
  sheets: [
    {
      scope: 'crew',
      number: 1,
      name: 'García upstairs',
      name_folded: 'garcia upstairs',
      state: 'open',
      opened_at: '2025-01-01T08:00:00.000Z',
      opened_by: 'lead',
    },
  ],
  sheet_events: [{ id: 1, ...ofSheet, what: 'opened', detail: 'García upstairs' }],
  channels: [{ scope: 'crew', channel: 'thread-1', sheet: 1 }],
  facts: ['4 in', '6 in'].map((typed, index) => ({
    id: index + 1,
    ...ofSheet,
    fact: 'collar',
    typed,
    units: 'inch-pound',
    value: JSON.stringify(typed),
    how: 'measured',
    entered_at: '2025-01-01T08:00:00.000Z',
  })),
  retractions: [{ id: 1, ...ofSheet, fact_row: 2 }],
  talks: [
    {
      id: 'k3v9x0w2bq',
      scope: 'crew',
      channel: 'thread-1',
      sheet: 1,
      command: 'duct',
      who: 'lead',
      state: '{}',
      revision: 3,
      turn: 9,
      started_at: '2025-01-01T08:00:00.000Z',
      saved_at: '2025-01-01T08:05:00.000Z',
    },
  ],
  settings: [{ id: 1, scope: 'crew', key: 'units', value: 'metric', who: 'lead', at: '2025-01-01T08:00:00.000Z' }],
  crew_members: [
    {
      id: 1,
      scope: 'crew',
      who: 'lead',
      entry: '{"name":"Lee","kinds":["lead"],"qualifications":[]}',
      entered_by: 'office',
      at: '2025-01-01T08:00:00.000Z',
    },
  ],
  shelf_fans: [
    {
      id: 1,
      scope: 'crew',
      name: 'Invented 80',
      name_folded: 'invented 80',
      label: '{"fan-curve":"84@0.1 66@0.25"}',
      units: 'inch-pound',
      demo: 1,
      who: 'lead',
      at: '2025-01-01T08:00:00.000Z',
    },
  ],
  walk_events: [
    {
      row: 1,
      id: 'w-1',
      ...ofSheet,
      list: 'swap',
      step: 'E04',
      what: 'reading',
      value: '0',
      standing: '{"name":"Lee","kinds":["lead"],"qualifications":[]}',
      entered_at: '2025-01-01T08:00:00.000Z',
    },
  ],
  photos: [{ id: 1, ...ofSheet, list: 'swap', step: 'S04', message: 'thread-1/9', checksum: 'f00d', size: 81234 }],
  row_counts: ['crew_members', 'facts', 'photos', 'sheets', 'shelf_fans', 'talks', 'walk_events'].map((kind) => ({
    scope: 'crew',
    kind,
    rows: kind === 'facts' ? 2 : 1,
  })),
  seen: [{ interaction: '112', at: '2025-01-01T08:00:00.000Z' }],
  notes: [{ key: 'commands', value: 'a1b2', at: '2025-01-01T08:00:00.000Z' }],
};

const tablesOf = (db: Database.Database): string[] =>
  db
    .prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name",
    )
    .pluck()
    .all() as string[];

/** A file as the program left it when only the first `version` steps existed. */
function fileOfVersion(version: number): { path: string; tables: string[] } {
  const path = join(folder(), 'records.sqlite');
  const db = new Database(path);
  migrate(db, path, migrations.slice(0, version));
  db.pragma('foreign_keys = OFF');
  const tables = tablesOf(db);
  // The counts are kept by the tables that are counted.
  for (const table of tables.filter((each) => each !== 'row_counts')) {
    for (const row of rows[table] ?? []) {
      const columns = Object.keys(row);
      db.prepare(`INSERT INTO ${table} (${columns}) VALUES (${columns.map((column) => `@${column}`)})`).run(row);
    }
  }
  db.close();
  return { path, tables };
}

const olderVersions = migrations.map((_, index) => index).slice(1);

describe('a file of an earlier version', () => {
  it.each(olderVersions)('version %i is brought up to date without losing a row', (version) => {
    const { path, tables } = fileOfVersion(version);
    const db = openDatabase(path);
    expect(versionOf(db)).toBe(migrations.length);
    for (const table of tables) {
      const [row] = rows[table] ?? [];
      const kept = db.prepare(`SELECT ${Object.keys(row ?? {})} FROM ${table}`).all();
      expect(kept, table).toEqual(rows[table]);
    }
    db.close();
  });

  it.each(olderVersions)('version %i is set aside as a copy first, and the copy opens', (version) => {
    const { path } = fileOfVersion(version);
    openStore(path).close();
    const copy = new Database(`${path}.version-${version}`, { readonly: true });
    expect(versionOf(copy)).toBe(version);
    expect(copy.prepare('SELECT typed FROM facts ORDER BY id').pluck().all()).toEqual(['4 in', '6 in']);
    copy.close();
  });

  it('version 1 is read as it was written', () => {
    const crew = storeAt(fileOfVersion(1).path).scoped('crew');
    expect(crew.findSheet('garcia upstairs')).toMatchObject({ number: 1, name: 'García upstairs' });
    expect(crew.newestFacts(1).get('collar')?.value).toBe('4 in');
    expect(crew.openSheet({ channel: 'thread-2', who: 'lead' }).number).toBe(2);
  });

  it('a new or present file is not copied', () => {
    const path = join(folder(), 'records.sqlite');
    openStore(path).close();
    openStore(path).close();
    expect(migrations.map((_, version) => existsSync(`${path}.version-${version}`))).not.toContain(true);
  });
});

it('a file from before rows were counted is counted', () => {
  const { path } = fileOfVersion(5);
  const db = openDatabase(path);
  expect(db.prepare('SELECT scope, kind, rows FROM row_counts').all()).toEqual(rows['row_counts']);
  db.close();
});

describe('a step', () => {
  const first: Migration = {
    brings: 'jobs',
    sql: `CREATE TABLE jobs (id INTEGER PRIMARY KEY) STRICT;
          CREATE TABLE steps (job INTEGER NOT NULL REFERENCES jobs ON DELETE CASCADE) STRICT;
          INSERT INTO jobs VALUES (7); INSERT INTO steps VALUES (7);`,
  };
  const takeSteps = (db: Database.Database, ...steps: Migration[]) => migrate(db, 'records.sqlite', steps);

  it('that fails half way changes nothing and is named', () => {
    const db = new Database(':memory:');
    takeSteps(db, first);
    const broken = { brings: 'photos', sql: 'CREATE TABLE photos (id INTEGER) STRICT; INSERT INTO nowhere VALUES (1)' };
    const trouble = troubleFrom(() => takeSteps(db, first, broken));
    expect(trouble.code).toBe('other');
    expect(trouble.message).toContain('version 2 (photos)');
    expect(versionOf(db)).toBe(1);
    expect(tablesOf(db)).toEqual(['jobs', 'steps']);
    expect(db.pragma('foreign_keys', { simple: true })).toBe(1);
    db.close();
  });

  it('may rebuild a table without taking along the rows that point at it', () => {
    const db = new Database(':memory:');
    takeSteps(db, first, {
      brings: 'names of jobs',
      sql: `CREATE TABLE named_jobs (id INTEGER PRIMARY KEY, name TEXT) STRICT;
            INSERT INTO named_jobs (id) SELECT id FROM jobs;
            DROP TABLE jobs;
            ALTER TABLE named_jobs RENAME TO jobs;`,
    });
    expect(db.prepare('SELECT name FROM steps JOIN jobs ON id = job').all()).toEqual([{ name: null }]);
    db.close();
  });

  it('that leaves a row pointing at nothing does not count', () => {
    const db = new Database(':memory:');
    takeSteps(db, first);
    expect(troubleFrom(() => takeSteps(db, first, { brings: 'a loss', sql: 'DELETE FROM jobs' })).code).toBe('other');
    expect(versionOf(db)).toBe(1);
    expect(db.prepare('SELECT count(*) FROM jobs').pluck().get()).toBe(1);
    db.close();
  });
});

describe('every table', () => {
  const db = new Database(':memory:');
  migrate(db, ':memory:', migrations);
  const columnsOf = (table: string) => db.pragma(`table_info(${table})`) as { name: string }[];
  const keysOf = (table: string) => db.pragma(`foreign_key_list(${table})`) as { table: string; on_delete: string }[];
  const ofACrew = tablesOf(db).filter((table) => columnsOf(table).some(({ name }) => name === 'scope'));
  const reachesCrews = (table: string): boolean =>
    table === 'crews' ||
    keysOf(table).some((key) => key.on_delete === 'CASCADE' && key.table !== table && reachesCrews(key.table));

  it('has a row in the test of earlier versions', () => {
    expect(Object.keys(rows).toSorted()).toEqual(tablesOf(db));
  });

  it('belongs to a crew, save the two the program keeps for itself', () => {
    expect(tablesOf(db).filter((table) => !ofACrew.includes(table))).toEqual(['notes', 'seen']);
  });

  it('is emptied of a crew by erasing the crew', () => {
    expect(ofACrew.filter((table) => !reachesCrews(table))).toEqual([]);
  });

  it('is strict about what it takes', () => {
    const lax = db.prepare("SELECT name FROM pragma_table_list WHERE NOT strict AND name NOT LIKE 'sqlite%'").pluck();
    expect(lax.all()).toEqual([]);
  });
});
