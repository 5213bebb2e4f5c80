import { backUp } from './backup.ts';
import { makeRoomFor, openDatabase } from './database.ts';
import { type Erasing, erasing } from './erase.ts';
import { type Facts, facts } from './facts.ts';
import { type Forgetting, forgetting } from './forget.ts';
import { withoutGuards } from './guards.ts';
import { type JobTransfer, jobTransfer } from './job-transfer.ts';
import { takeLock } from './lock.ts';
import { type Members, members } from './members.ts';
import { type Notes, notes } from './notes.ts';
import { type Photos, photos } from './photos.ts';
import { queries, scopedQueries } from './queries.ts';
import { type SheetRecord, sheetRecord } from './record.ts';
import { type Retention, retention, tidyScope } from './retention.ts';
import { type Settings, settings } from './settings.ts';
import { type Sheets, sheets } from './sheets.ts';
import { type Shelf, shelf } from './shelf.ts';
import { type Talks, talks } from './talks.ts';
import { traceless } from './traces.ts';
import { StoreTrouble } from './trouble.ts';
import { type WalkEvents, walkEvents } from './walk-events.ts';

/** The records of one crew: a Discord server, or the terminal. Nothing of another crew can be reached from here. */
export interface ScopedStore
  extends Sheets,
    Facts,
    Talks,
    Settings,
    Members,
    Shelf,
    WalkEvents,
    Photos,
    JobTransfer,
    Retention,
    Erasing,
    Forgetting {
  readonly scope: string;
  /** This moment, by the clock that stamps what is kept. */
  now(): string;
  /** Everything kept about one job, as plain JSON. @throws SheetTrouble when the sheet is not there. */
  sheetAsJson(sheet: number): SheetRecord;
  /** All of the work is kept, or none of it, as for an answer and the step it leads to. Nothing in it may wait. */
  together<Result>(work: () => Result): Result;
}

export interface Store extends Notes {
  scoped(scope: string): ScopedStore;
  /** Every crew with records here, for letting go of those that have left. */
  scopes(): string[];
  /**
   * Erases the closed jobs each crew wants kept no longer, and the talks that are long over. Done at every opening; a
   * program that runs for weeks does it daily.
   *
   * @throws StoreTrouble when another program keeps traces from being cleared.
   */
  tidy(): { readonly sheets: number; readonly talks: number };
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
    const store = storeIn(file, { now, unlock });
    tidyUp(store);
    return store;
  } catch (error) {
    unlock();
    throw error;
  }
}

function tidyUp(store: Store): void {
  try {
    store.tidy();
  } catch (error) {
    // Whoever looks into the file with another program at that moment must not keep the crew from its records.
    if (error instanceof StoreTrouble && error.code === 'locked') return;
    store.close();
    throw error;
  }
}

function storeIn(file: string, { now, unlock }: { now: () => Date; unlock: () => void }): Store {
  const db = openDatabase(file);
  const { whole, onErased } = traceless(db, file, queries(db, file, now));

  const scopes = (): string[] =>
    whole.all<{ scope: string }>('SELECT scope FROM crews ORDER BY scope').map(({ scope }) => scope);

  /** One after another: two at once to the same place would write into each other. */
  let lastBackup: Promise<void> = Promise.resolve();

  return {
    ...notes(whole),

    scoped(scope) {
      if (scope === '') throw new Error('records belong to a crew, and this one has no name');
      const kept = scopedQueries(whole, scope);
      return {
        scope,
        now: kept.now,
        ...sheets(kept),
        ...facts(kept),
        ...talks(kept),
        ...settings(kept),
        ...members(kept),
        ...shelf(kept),
        ...walkEvents(kept),
        ...photos(kept),
        ...jobTransfer(kept),
        ...retention(kept),
        ...erasing(kept, onErased),
        ...forgetting(kept, {
          unguarded: (work) => whole.together(() => withoutGuards(db, work)),
          onErased,
        }),
        sheetAsJson: (sheet) => sheetRecord(kept, sheet),
        together: kept.together,
      };
    },

    scopes,

    tidy() {
      const gone = scopes().map((scope) => tidyScope(scopedQueries(whole, scope)));
      const total = {
        sheets: gone.reduce((sum, { sheets: each }) => sum + each, 0),
        talks: gone.reduce((sum, { talks: each }) => sum + each, 0),
      };
      if (total.sheets > 0) onErased();
      return total;
    },

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
