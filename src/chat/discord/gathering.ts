import type { ScopedStore } from '#store/store.ts';
import { StoreTrouble } from '#store/trouble.ts';

/** Work on the records, kept for good by the time the promise resolves. */
export type Gather = <Result>(store: ScopedStore, work: () => Result) => Promise<Result>;

interface Piece {
  readonly store: ScopedStore;
  /** Does the work, and says how to tell what came of it once it is kept. */
  readonly done: () => () => void;
  readonly failed: (error: unknown) => void;
}

/**
 * Gathers what arrives at the same moment, so that it is written to the disk in one go: the disk is what takes long, however
 * little is written. Each piece still stands alone: one that fails is undone and the others are kept; only what the disk
 * refuses, it refuses for all. Nothing is told before all of it is kept.
 */
export function gathering(): Gather {
  let waiting: Piece[] = [];

  const keep = (): void => {
    const pieces = waiting;
    waiting = [];
    const tellings: (() => void)[] = [];
    const each = (piece: Piece): (() => void) => {
      try {
        return piece.store.together(piece.done);
      } catch (error) {
        // A full disk undoes everything begun, not this piece alone: nothing of it may be told as kept.
        if (error instanceof StoreTrouble) throw error;
        return () => piece.failed(error);
      }
    };
    try {
      pieces[0]?.store.together(() => {
        for (const piece of pieces) tellings.push(each(piece));
      });
    } catch (error) {
      for (const piece of pieces) piece.failed(error);
      return;
    }
    for (const tell of tellings) tell();
  };

  return (store, work) =>
    new Promise((resolve, failed) => {
      const done = () => {
        const result = work();
        return () => resolve(result);
      };
      if (waiting.push({ store, done, failed }) === 1) setImmediate(keep);
    });
}
