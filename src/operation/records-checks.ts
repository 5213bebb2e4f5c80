import { existsSync } from 'node:fs';
import { type Examined, examine } from '#store/examine.ts';
import { StoreTrouble } from '#store/trouble.ts';
import { type BackupPlan, backupsIn } from './backups.ts';
import { type Check, fix, good, note } from './check.ts';
import { wellness } from './health.ts';

/** What is wrong with a file of records as a check; anything else as it is. */
function attempt(about: string, work: () => Check): Check {
  try {
    return work();
  } catch (error) {
    if (error instanceof StoreTrouble) return fix(about, error.message);
    throw error;
  }
}

export const recordsCheck = (database: string): Check =>
  attempt('records', () => {
    const found = examine(database);
    return found
      ? good('records', described(database, found))
      : good('records', `${database} is made at the first start.`);
  });

function described(database: string, { size, version, newest, inUse }: Examined): string {
  const update = version < newest ? `; the next start brings it to ${newest} and keeps a copy` : '';
  const use = inUse ? ', in use by the program' : '';
  return `${database} is sound: ${Math.ceil(size / 1024)} kB, version ${version}${update}${use}.`;
}

const hour = 3_600_000;
/** A machine that was off for a night is no reason to worry. */
const grace = 12;

/** Whether the last backup is young enough, and sound. */
export function backupsCheck({ folder, hours }: BackupPlan, database: string, now: Date): Check {
  if (hours === 0)
    return note('backups', 'Backups are switched off: set FANWRIGHT_BACKUP_HOURS, or make them by hand.');
  const [last] = backupsIn(folder);
  if (last === undefined) {
    return existsSync(database)
      ? fix('backups', `Make a backup, with: npm start -- backup. There is none in ${folder} yet.`)
      : good('backups', `The first is made at the first start, in ${folder}.`);
  }
  const age = Math.floor((now.getTime() - last.at.getTime()) / hour);
  if (age > hours + grace) {
    return fix('backups', `Make a backup, with: npm start -- backup. The last one, ${last.file}, is ${age} hours old.`);
  }
  const checked = attempt('backups', () => {
    examine(last.file);
    return good('backups', `The last one, ${last.file}, is sound and ${age} hours old.`);
  });
  if (checked.state === 'good') return checked;
  return fix('backups', `Make a backup, with: npm start -- backup. The last one is of no use: ${checked.says}`);
}

export function healthCheck(file: string | undefined, now: Date): Check {
  if (file === undefined)
    return note('health', 'To let a service manager watch over the program, set FANWRIGHT_HEALTH.');
  if (!existsSync(file)) return note('health', `Nothing is in ${file} yet: it is written while the program runs.`);
  const { well, says } = wellness(file, now);
  return well ? good('health', says) : note('health', says);
}
