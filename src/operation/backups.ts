import { mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { StoreTrouble } from '#store/trouble.ts';

/** Where backups go, how often one is made and how many are kept. */
export interface BackupPlan {
  readonly folder: string;
  /** Hours between two; 0 makes none. */
  readonly hours: number;
  readonly kept: number;
}

/** A backup in the folder. */
export interface Backup {
  readonly file: string;
  readonly at: Date;
}

const named = /^fanwright-(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)Z\.sqlite$/;

const nameAt = (moment: Date): string => `fanwright-${moment.toISOString().slice(0, 19).replaceAll(':', '-')}Z.sqlite`;

/** The folder for backups when none is named: beside the records. */
export const usualFolder = (database: string): string => join(dirname(database), 'backups');

/** The backups made here by themselves, newest first. Files of other names are nobody's business. */
export function backupsIn(folder: string): readonly Backup[] {
  const names = statSync(folder, { throwIfNoEntry: false })?.isDirectory() ? readdirSync(folder) : [];
  return names
    .flatMap((name) => {
      const [, day, hours, minutes, seconds] = named.exec(name) ?? [];
      return day ? [{ file: join(folder, name), at: new Date(`${day}T${hours}:${minutes}:${seconds}Z`) }] : [];
    })
    .toSorted((one, other) => other.at.getTime() - one.at.getTime());
}

/** Whether so much time has passed since the last backup that the next one is wanted. */
export function isDue({ folder, hours }: BackupPlan, now: Date): boolean {
  if (hours === 0) return false;
  const [last] = backupsIn(folder);
  return last === undefined || now.getTime() - last.at.getTime() >= hours * 3_600_000;
}

/**
 * Makes a backup in the folder, and only then removes the oldest beyond those that are kept.
 *
 * @param copy Copies the records to a file.
 * @returns the file.
 * @throws StoreTrouble
 */
export async function backUpInto(
  { folder, kept }: BackupPlan,
  copy: (to: string) => Promise<void>,
  now: Date,
): Promise<string> {
  makeFolder(folder);
  const file = join(folder, nameAt(now));
  await copy(file);
  for (const { file: old } of backupsIn(folder).slice(Math.max(1, kept))) rmSync(old, { force: true });
  return file;
}

/** Its parent must be there, as for the records: a disk that is not mounted must not be taken for an empty folder. */
function makeFolder(folder: string): void {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return;
  try {
    mkdirSync(folder, { mode: 0o700 });
  } catch (cause) {
    const says = `The folder ${folder} for backups is missing and could not be made, so make it or name another in FANWRIGHT_BACKUPS.`;
    throw new StoreTrouble('no-folder', says, { cause });
  }
}
