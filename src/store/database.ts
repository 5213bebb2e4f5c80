import { closeSync, existsSync, mkdirSync, openSync, readdirSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { migrate, ourMark, versionOf } from './migrate.ts';
import { migrations } from './migrations.ts';
import { asTrouble, StoreTrouble } from './trouble.ts';

/**
 * Makes the folder of the file if it is missing. Its parent must be there: a mistyped path must not quietly grow a tree of
 * folders with an empty set of records at the end.
 *
 * @throws StoreTrouble `no-folder`, or `other` when the path is no place for a file.
 */
export function makeRoomFor(file: string): void {
  const folder = dirname(file);
  const says = (what: string) => `${what}, so name a file for the records in FANWRIGHT_DB.`;
  if (basename(file).trim() === '') throw new StoreTrouble('other', says('The file for the records has no name'));
  if (existsSync(file) && statSync(file).isDirectory()) throw new StoreTrouble('other', says(`${file} is a folder`));
  if (existsSync(folder) && statSync(folder).isDirectory()) return;
  try {
    // Customers' names and addresses are in there: nobody else on the machine needs to read them.
    mkdirSync(folder, { mode: 0o700 });
  } catch (cause) {
    const message = `The folder ${folder} is missing and could not be made, so make it or name another file in FANWRIGHT_DB.`;
    throw new StoreTrouble('no-folder', message, { cause });
  }
}

/**
 * Makes an empty file that its owner alone can read, for the database to be written into: it is then never open to others, not
 * even while it is being written. Files beside it (log, journal) take its permissions. One that is there stays as it is, and
 * where none can be made the database says so itself.
 */
export function makePrivate(file: string): void {
  if (file === ':memory:' || existsSync(file)) return;
  try {
    closeSync(openSync(file, 'a', 0o600));
  } catch {}
}

/**
 * Looks the file over without changing it.
 *
 * @throws StoreTrouble `corrupt`, `not-ours` or `newer`.
 */
export function inspect(db: Database.Database, file: string): void {
  const version = versionOf(db);
  const mark = db.pragma('application_id', { simple: true });
  const tables = db.prepare("SELECT count(*) FROM sqlite_schema WHERE type = 'table'").pluck().get() as number;
  if (mark !== ourMark && (version > 0 || tables > 0)) {
    const says = `${file} belongs to another program, so name another file in FANWRIGHT_DB.`;
    throw new StoreTrouble('not-ours', says);
  }
  if (version > migrations.length) {
    const says = `${file} was written by a newer Fanwright (version ${version}, this one knows ${migrations.length}), so update the program or restore an older backup.`;
    throw new StoreTrouble('newer', says);
  }
  const problems = db.prepare('PRAGMA quick_check(1)').pluck().get();
  if (problems !== 'ok') {
    const says = `${file} is damaged, so restore the latest backup or name another file in FANWRIGHT_DB.`;
    throw new StoreTrouble('corrupt', says, { cause: problems });
  }
}

/** The copies set aside before earlier updates of the file. */
function copiesBeforeUpdates(file: string): readonly string[] {
  const folder = dirname(file);
  const start = `${basename(file)}.version-`;
  return readdirSync(folder)
    .filter((name) => name.startsWith(start))
    .map((name) => join(folder, name));
}

/** Removes the copies set aside before updates: what is erased must not live on in them. */
export function removeCopiesBeforeUpdates(file: string): void {
  for (const copy of copiesBeforeUpdates(file)) rmSync(copy, { force: true });
}

function copyBeforeUpdate(db: Database.Database, file: string): void {
  removeCopiesBeforeUpdates(file);
  const copy = `${file}.version-${versionOf(db)}`;
  makePrivate(copy);
  db.prepare('VACUUM INTO ?').run(copy);
}

/**
 * Opens the database, looks it over and brings it up to date. A file of an earlier version is copied first, beside itself.
 *
 * @throws StoreTrouble
 */
export function openDatabase(file: string): Database.Database {
  let db: Database.Database | undefined;
  try {
    makePrivate(file);
    // Waiting is done standing still, so a longer wait would eat the three seconds Discord gives for a sign of life.
    db = new Database(file, { timeout: 500 });
    inspect(db, file);
    // Finds out now, not at the first answer, whether the file can be written: beginning to write is not enough for that.
    const version = versionOf(db);
    db.exec(`BEGIN IMMEDIATE; PRAGMA user_version = ${version}; ROLLBACK`);
    db.pragma('journal_mode = WAL');
    // The library's own choice for WAL may lose the last answers when the power goes.
    db.pragma('synchronous = FULL');
    db.pragma('secure_delete = ON');
    db.pragma('temp_store = MEMORY');
    db.pragma('trusted_schema = OFF');
    if (!db.memory && version > 0 && version < migrations.length) copyBeforeUpdate(db, file);
    migrate(db, file, migrations);
    return db;
  } catch (error) {
    db?.close();
    throw asTrouble(error, file);
  }
}
