import { realpathSync } from 'node:fs';
import Database from 'better-sqlite3';
import { asTrouble, StoreTrouble } from './trouble.ts';

/** Two ways of writing the path of one file must meet at one lock. */
function realPath(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    return file;
  }
}

/**
 * Keeps a second instance away from the same file. The lock is an exclusive transaction held open on a side file: the
 * operating system lets go of it when the process dies, however it dies, so no stale lock is ever left behind. The side
 * file itself stays; removing it would let two instances each lock a file of the same name.
 *
 * @returns lets go of the lock.
 * @throws StoreTrouble `locked` when another instance holds it.
 */
export function takeLock(file: string): () => void {
  const side = `${realPath(file)}.lock`;
  let lock: Database.Database | undefined;
  try {
    lock = new Database(side, { timeout: 0 });
    lock.pragma('journal_mode = MEMORY');
    lock.exec('BEGIN EXCLUSIVE');
    const held = lock;
    return () => {
      held.close();
    };
  } catch (error) {
    lock?.close();
    const trouble = asTrouble(error, side);
    if (!(trouble instanceof StoreTrouble) || trouble.code !== 'locked') throw trouble;
    const says = `${file} is already in use by another Fanwright, so stop that one first or name another file in FANWRIGHT_DB.`;
    throw new StoreTrouble('locked', says, { cause: error });
  }
}
