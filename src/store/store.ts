import { backUp } from './backup.ts';
import { makeRoomFor, openDatabase, removeCopiesBeforeUpdates } from './database.ts';
import { type Erasing, erasing } from './erase.ts';
import { type Facts, facts } from './facts.ts';
import { takeLock } from './lock.ts';
import { type Notes, notes } from './notes.ts';
import { queries, scopedQueries } from './queries.ts';
import { type SheetRecord, sheetRecord } from './record.ts';
import { type Settings, settings } from './settings.ts';
import { type Sheets, sheets } from './sheets.ts';
import { type Talks, talks } from './talks.ts';
import { StoreTrouble } from './trouble.ts';

/** The records of one crew: a Discord server, or the terminal. Nothing of another crew can be reached from here. */
export interface ScopedStore extends Sheets, Facts, Talks, Settings, Erasing {
  readonly scope: string;
  /** Everything kept about one job, as plain JSON. @throws SheetTrouble when the sheet is not there. */
  sheetAsJson(sheet: number): SheetRecord;
  /** All of the work is kept, or none of it, as for an answer and the step it leads to. Nothing in it may wait. */
  together<Result>(work: () => Result): Result;
}

export interface Store extends Notes {
  scoped(scope: string): ScopedStore;
  /** Every crew with records here, for letting go of those that have left. */
  scopes(): string[];
  /** Copies everything to a file while the program goes on. @throws StoreTrouble */
  backup(to: string): Promise<void>;
  /** Gathers everything into the one file and lets it go. */
  close(): void;
}

/**
 * Opens the file the records are kept in, or makes it. `:memory:` keeps them only while the program runs. What has been
 * written when a call returns outlives a crash and a power cut.
 *
 * @throws StoreTrouble
 */
export function openStore(path: string, options: { readonly now?: () => Date } = {}): Store {
  const { now = () => new Date() } = options;
  const file = path.trim();
  const onDisk = file !== ':memory:';
  if (onDisk) makeRoomFor(file);
  const unlock = onDisk ? takeLock(file) : () => {};
  try {
    return storeIn(file, { now, unlock });
  } catch (error) {
    unlock();
    throw error;
  }
}

function storeIn(file: string, { now, unlock }: { now: () => Date; unlock: () => void }): Store {
  const db = openDatabase(file);
  const whole = queries(db, file, now);

  /**
   * Overwriting deleted rows is not enough: a row that was moved when its page filled up leaves a copy in the unused part
   * of the page (measured: in eight files of thirty). Writing the file anew leaves nothing, and emptying the log takes the rest.
   */
  const clearTraces = (): void => {
    if (db.memory) return;
    removeCopiesBeforeUpdates(file);
    whole.change('VACUUM');
    const [log] = whole.all<{ busy: number }>('PRAGMA wal_checkpoint(TRUNCATE)');
    if (log?.busy !== 0) {
      const says = `The records are deleted, but another program holds ${file} and traces stay in its log, so close that program and start Fanwright again.`;
      throw new StoreTrouble('locked', says);
    }
  };

  /** One after another: two at once to the same place would write into each other. */
  let lastBackup: Promise<void> = Promise.resolve();

  return {
    ...notes(whole),

    scoped(scope) {
      if (scope === '') throw new Error('records belong to a crew, and this one has no name');
      const kept = scopedQueries(whole, scope);
      return {
        scope,
        ...sheets(kept),
        ...facts(kept),
        ...talks(kept),
        ...settings(kept),
        ...erasing(kept, clearTraces),
        sheetAsJson: (sheet) => sheetRecord(kept, sheet),
        together: kept.together,
      };
    },

    scopes: () => whole.all<{ scope: string }>('SELECT scope FROM crews ORDER BY scope').map(({ scope }) => scope),

    backup(to) {
      const backup = lastBackup.then(() => backUp(db, to));
      lastBackup = backup.catch(() => {});
      return backup;
    },

    close() {
      if (!db.open) return;
      try {
        db.pragma('wal_checkpoint(TRUNCATE)');
      } finally {
        db.close();
        unlock();
      }
    },
  };
}
