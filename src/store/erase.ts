import type { Queries } from './queries.ts';

/**
 * Really deletes. Backups made earlier still hold what was erased; they must be let expire.
 */
export interface Erasing {
  /** A job with everything on it. False when there is no such job. */
  eraseSheet(sheet: number): boolean;
  /** Everything kept for this crew: jobs, conversations, settings. */
  eraseScope(): void;
}

/** @param onErased Clears what deleting leaves in the file. */
export function erasing(kept: Queries, onErased: () => void): Erasing {
  return {
    eraseSheet(sheet) {
      const erased = kept.change('DELETE FROM sheets WHERE scope = @scope AND number = @sheet', { sheet });
      onErased();
      return erased === 1;
    },

    eraseScope() {
      kept.change('DELETE FROM crews WHERE scope = @scope');
      onErased();
    },
  };
}
