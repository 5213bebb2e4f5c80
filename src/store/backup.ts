import { chmodSync, copyFileSync, existsSync, realpathSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { inspect, makePrivate, makeRoomFor } from './database.ts';
import { takeLock } from './lock.ts';
import { asTrouble, StoreTrouble } from './trouble.ts';

const sides = ['-wal', '-shm', '-journal'] as const;

const removeWithSides = (file: string): void => {
  for (const side of ['', ...sides]) rmSync(file + side, { force: true });
};

/** Puts a finished file in the place of another in one move: at any instant the old or the new one is there. */
function moveOver(finished: string, place: string): void {
  // What the old file still had in its write-ahead log would otherwise be read into the new one.
  for (const side of sides) rmSync(place + side, { force: true });
  renameSync(finished, place);
}

const sameFile = (a: string, b: string): boolean =>
  existsSync(a) && existsSync(b) && realpathSync(a) === realpathSync(b);

/** Looks a copy over, and leaves it as one file that needs no other beside it. */
function settle(copy: string, named: string): void {
  const db = new Database(copy, { fileMustExist: true });
  try {
    db.pragma('journal_mode = DELETE');
    inspect(db, named);
  } finally {
    db.close();
  }
  // Customers' names and addresses are in there, as in the records themselves.
  chmodSync(copy, 0o600);
}

/** As many pages as there are. */
const allPages = 0x7fffffff;

/**
 * Copies the database while it is in use. The copy is made beside its place and moved there only when it is whole and
 * sound, so an earlier backup of the same name is never half overwritten.
 *
 * @param pages How many pages are copied before others get a turn. What this connection writes meanwhile goes into the copy
 * too; a write of another process makes the copying begin again, so where others write it is done in one go.
 * @throws StoreTrouble
 */
export async function backUp(
  db: Database.Database,
  to: string,
  { pages = 100 }: { readonly pages?: number } = {},
): Promise<void> {
  if (!existsSync(dirname(to))) {
    throw new StoreTrouble('no-folder', `The folder ${dirname(to)} for the backup is missing, so make it first.`);
  }
  if (sameFile(db.name, to)) {
    throw new StoreTrouble('other', `${to} is the file in use, so give the backup another name.`);
  }
  const part = `${to}.part`;
  try {
    removeWithSides(part);
    makePrivate(part);
    await db.backup(part, { progress: () => pages });
    settle(part, to);
    moveOver(part, to);
  } catch (error) {
    removeWithSides(part);
    throw asTrouble(error, to);
  }
}

/**
 * Copies a file of records that another process may be working with. It is not brought up to date and not locked, so the
 * crew is not kept waiting.
 *
 * @throws StoreTrouble
 */
export async function backUpFile(file: string, to: string): Promise<void> {
  if (!existsSync(file)) throw new StoreTrouble('other', `There are no records at ${file}, so check FANWRIGHT_DB.`);
  let db: Database.Database | undefined;
  try {
    db = new Database(file, { fileMustExist: true, timeout: 5000 });
    inspect(db, file);
    await backUp(db, to, { pages: allPages });
  } catch (error) {
    throw asTrouble(error, file);
  } finally {
    db?.close();
  }
}

/**
 * Writes what still lies in the log into the file itself, so that the file alone can be set aside. Where that cannot be
 * done, because the file is damaged or another program is reading it, the log is set aside too.
 */
function gather(file: string, aside: string): void {
  const logAside = `${aside}-wal`;
  if (existsSync(`${file}-wal`)) copyFileSync(`${file}-wal`, logAside);
  let db: Database.Database | undefined;
  try {
    db = new Database(file, { fileMustExist: true, timeout: 500 });
    inspect(db, file);
    const [log] = db.pragma('wal_checkpoint(TRUNCATE)') as readonly { busy: number }[];
    if (log?.busy === 0) rmSync(logAside, { force: true });
  } catch (error) {
    if (!(error instanceof StoreTrouble) || error.code !== 'not-ours') return;
    rmSync(logAside, { force: true });
    throw error;
  } finally {
    db?.close();
  }
}

/**
 * Puts a backup in the place of the records. What was there before is kept beside it.
 *
 * @returns where the earlier records are now, or `null` when there were none.
 * @throws StoreTrouble when the program is running, or the backup is damaged, newer than the program or not ours; the
 * records are then as they were.
 */
export function restoreStore(restoring: { from: string; to: string; now?: () => Date }): string | null {
  const { from, to, now = () => new Date() } = restoring;
  if (!existsSync(from)) throw new StoreTrouble('other', `There is no backup at ${from}, so check the name.`);
  if (sameFile(from, to)) throw new StoreTrouble('other', `${from} is the file in use, so name a backup of it.`);
  makeRoomFor(to);
  const unlock = takeLock(to);
  const part = `${to}.part`;
  try {
    removeWithSides(part);
    copyFileSync(from, part);
    settle(part, from);
    const aside = existsSync(to) ? `${to}.before-restore-${now().toISOString().replace(/[:.]/g, '-')}` : null;
    if (aside !== null) {
      gather(to, aside);
      copyFileSync(to, aside);
    }
    moveOver(part, to);
    return aside;
  } catch (error) {
    removeWithSides(part);
    throw asTrouble(error, from);
  } finally {
    unlock();
  }
}
