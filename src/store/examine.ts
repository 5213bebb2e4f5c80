import { accessSync, constants, existsSync, realpathSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { inspect } from './database.ts';
import { takeLock } from './lock.ts';
import { versionOf } from './migrate.ts';
import { migrations } from './migrations.ts';
import { asTrouble, StoreTrouble } from './trouble.ts';

/** What a look at a file of records finds. */
export interface Examined {
  /** In bytes. */
  readonly size: number;
  readonly version: number;
  /** The version this program brings a file to. */
  readonly newest: number;
  /** Whether a running program holds it. */
  readonly inUse: boolean;
}

/**
 * Looks a file of records over more thoroughly than a start does, and leaves it as it is. It may be in use meanwhile.
 *
 * @returns nothing where there is no file yet and one can be made.
 * @throws StoreTrouble
 */
export function examine(file: string): Examined | undefined {
  let db: Database.Database | undefined;
  try {
    const folder = existsSync(dirname(file)) ? dirname(file) : dirname(dirname(file));
    accessSync(folder, constants.W_OK | constants.X_OK);
    if (!existsSync(file)) return undefined;
    const inUse = isInUse(file);
    db = new Database(file, { fileMustExist: true, timeout: 500 });
    inspect(db, file);
    const problems = db.prepare('PRAGMA integrity_check(1)').pluck().get();
    const astray = db.pragma('foreign_key_check') as readonly unknown[];
    if (problems !== 'ok' || astray.length > 0) {
      throw new StoreTrouble('corrupt', `${file} is damaged, so restore the latest backup.`, { cause: problems });
    }
    const version = versionOf(db);
    db.exec(`BEGIN IMMEDIATE; PRAGMA user_version = ${version}; ROLLBACK`);
    return { size: statSync(file).size, version, newest: migrations.length, inUse };
  } catch (error) {
    throw asTrouble(error, file);
  } finally {
    db?.close();
  }
}

function isInUse(file: string): boolean {
  // Whoever works with a file has made the lock beside it, and looking at a backup must not leave one.
  if (!existsSync(`${realpathSync(file)}.lock`)) return false;
  try {
    takeLock(file)();
    return false;
  } catch (error) {
    if (error instanceof StoreTrouble && error.code === 'locked') return true;
    throw error;
  }
}
