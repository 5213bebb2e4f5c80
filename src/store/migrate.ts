import type Database from 'better-sqlite3';
import type { Migration } from './migrations.ts';
import { asTrouble, StoreTrouble } from './trouble.ts';

/** Written into the head of every file of ours, so that another program's database is never taken for one: "FanW". */
export const ourMark = 0x46_61_6e_57;

export const versionOf = (db: Database.Database): number => db.pragma('user_version', { simple: true }) as number;

/**
 * Brings the file up to date. Each step is one transaction that also sets the version, so a file is always at a whole
 * version, whatever happens in between.
 *
 * @throws StoreTrouble naming the step that failed; that step and the ones after it have changed nothing.
 */
export function migrate(db: Database.Database, file: string, steps: readonly Migration[]): void {
  // The switch works only outside a transaction. With keys on, rebuilding a table would delete what points at it.
  db.pragma('foreign_keys = OFF');
  try {
    for (const [index, step] of steps.entries()) takeStep(db, { file, version: index + 1, step });
  } finally {
    db.pragma('foreign_keys = ON');
  }
}

function takeStep(db: Database.Database, taken: { file: string; version: number; step: Migration }): void {
  const { file, version, step } = taken;
  try {
    db.transaction(() => {
      if (versionOf(db) >= version) return;
      db.exec(step.sql);
      const broken = db.pragma('foreign_key_check') as readonly unknown[];
      if (broken.length > 0) throw new Error(`${broken.length} rows point at rows that are not there`);
      db.pragma(`application_id = ${ourMark}`);
      db.pragma(`user_version = ${version}`);
    }).immediate();
  } catch (error) {
    const trouble = asTrouble(error, file);
    if (trouble instanceof StoreTrouble && trouble.code !== 'other') throw trouble;
    const says = `${file} could not be brought to version ${version} (${step.brings}) and was left as it was, so go back to the earlier program and report it.`;
    throw new StoreTrouble('other', says, { cause: error });
  }
}
