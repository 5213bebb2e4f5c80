import type { Writable } from 'node:stream';
import { backUpFile, restoreStore } from '#store/backup.ts';
import { type BackupPlan, backUpInto } from './backups.ts';
import { wellness } from './health.ts';

/** What whoever runs the program may ask of it, beside what a crew asks. */
const operations = ['backup', 'restore', 'health'] as const;
type Operation = (typeof operations)[number];

export const isOperation = (word: string | undefined): word is Operation =>
  operations.some((operation) => operation === word);

interface Given {
  readonly database: string;
  readonly plan: BackupPlan;
  readonly health: string | undefined;
  readonly output: Pick<Writable, 'write'>;
}

/**
 * Does one thing for whoever runs the program and ends. These are not in Discord: a backup holds the records of every crew,
 * and nobody there may see those of another.
 *
 * @returns the exit code: 0 done or well, 1 not well, 2 asked in a way that was not understood.
 * @throws StoreTrouble
 */
export async function operate(operation: Operation, words: readonly string[], given: Given): Promise<number> {
  const { database, plan, output } = given;
  const say = (sentence: string) => output.write(`${sentence}\n`);
  if (operation === 'health') {
    const { well, says } = given.health
      ? wellness(given.health, new Date())
      : { well: false, says: 'Name the health file in FANWRIGHT_HEALTH, and start the program with it.' };
    say(says);
    return well ? 0 : 1;
  }
  const [file, ...more] = words;
  if (more.length > 0) {
    say(`Name one file, such as: ${operation} records-copy.sqlite`);
    return 2;
  }
  if (operation === 'restore') {
    if (file === undefined) {
      say('Name the backup to restore, such as: restore data/backups/fanwright-2026-11-30T03-00-00Z.sqlite');
      return 2;
    }
    const aside = restoreStore({ from: file, to: database });
    say(`Restored ${database} from ${file}.${aside === null ? '' : ` What was there before is in ${aside}.`}`);
    return 0;
  }
  const copy = (to: string) => backUpFile(database, to);
  const made = file === undefined ? await backUpInto(plan, copy, new Date()) : file;
  if (file !== undefined) await copy(file);
  say(`Backed up ${database} to ${made}.`);
  return 0;
}
