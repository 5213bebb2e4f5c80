import type Database from 'better-sqlite3';
import { removeCopiesBeforeUpdates } from './database.ts';
import type { Queries } from './queries.ts';
import { StoreTrouble } from './trouble.ts';

/** The queries, and what an erasing calls when it has deleted. */
interface Traceless {
  readonly whole: Queries;
  /** Clears what deleting leaves in the file: at once, or when the work it is part of is done and can no longer be undone. */
  onErased(): void;
}

export function traceless(db: Database.Database, file: string, plain: Queries): Traceless {
  let waiting = false;

  /**
   * Overwriting deleted rows is not enough: a row that was moved when its page filled up leaves a copy in the unused part
   * of the page (measured: in eight files of thirty). Writing the file anew leaves nothing, and emptying the log takes the rest.
   */
  const clear = (): void => {
    waiting = false;
    if (db.memory) return;
    removeCopiesBeforeUpdates(file);
    plain.change('VACUUM');
    const [log] = plain.all<{ busy: number }>('PRAGMA wal_checkpoint(TRUNCATE)');
    if (log?.busy !== 0) {
      const says = `The records are deleted, but another program holds ${file} and traces stay in its log, so close that program and start Fanwright again.`;
      throw new StoreTrouble('locked', says);
    }
  };

  return {
    whole: {
      ...plain,
      together(work) {
        if (db.inTransaction) return plain.together(work);
        waiting = false;
        const result = plain.together(work);
        if (waiting) clear();
        return result;
      },
    },
    onErased() {
      if (db.inTransaction) waiting = true;
      else clear();
    },
  };
}
