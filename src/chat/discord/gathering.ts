import type { ScopedStore } from '#store/store.ts';
import { StoreTrouble } from '#store/trouble.ts';

/** Whose turn it is: whoever the platform waits for, or somebody it has been told will wait. */
type Urgency = 'now' | 'later';

/** Work on the records, kept for good by the time the promise resolves. */
export type Gather = <Result>(store: ScopedStore, work: () => Result, urgency?: Urgency) => Promise<Result>;

/** The program ends before the work was begun. */
export class NotBegun extends Error {
  override readonly name = 'NotBegun';
}

export interface Gathering {
  readonly gather: Gather;
  /** Lets go of what was not begun, now and from now on: whoever waits for it gets `NotBegun`. */
  letGo(): void;
  /** Whether so much is waiting that what comes now is better promised than waited for. */
  behind(): boolean;
}

interface Piece {
  readonly store: ScopedStore;
  /** Does the work, and says how to tell what came of it once it is kept. */
  readonly done: () => () => void;
  readonly failed: (error: unknown) => void;
}

/**
 * Pieces in one go: few, so that what arrives meanwhile is heard of in time. A plan is the longest piece, some 15 ms.
 */
const mostAtOnce = 4;
/** With so many waiting, what comes now may wait longer than a person notices. */
const manyWaiting = 8;

/**
 * Milliseconds between two goes while more than one comes at a time: so long they gather. Writing to the disk takes two of
 * them, however much is written.
 */
const pause = 15;

/** Does all of it in one go, and says how to tell each what came of it. */
function kept(pieces: readonly Piece[]): readonly (() => void)[] {
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
    return pieces[0]?.store.together(() => pieces.map(each)) ?? [];
  } catch (error) {
    return pieces.map(
      ({ failed }) =>
        () =>
          failed(error),
    );
  }
}

/**
 * Gathers what arrives at the same moment, so that it is written to the disk in one go: the disk is what takes long, however
 * little is written. Each piece still stands alone: one that fails is undone and the others are kept; only what the disk
 * refuses, it refuses for all. Nothing is told before all of it is kept. Between two goes the program looks up for what has
 * arrived, and what is urgent goes before what may wait. Who comes alone never waits.
 */
export function gathering(): Gathering {
  const waiting: Readonly<Record<Urgency, Piece[]>> = { now: [], later: [] };
  let over = false;
  const count = (): number => waiting.now.length + waiting.later.length;

  let goesAgain = 0;
  let pausing: NodeJS.Timeout | undefined;

  const soon = (): void => {
    const rest = goesAgain - performance.now();
    if (rest > 0 && count() < mostAtOnce) pausing = setTimeout(keep, rest);
    else setImmediate(keep);
  };
  const added = (): void => {
    if (count() === 1) soon();
    else if (pausing && count() >= mostAtOnce) {
      clearTimeout(pausing);
      pausing = undefined;
      setImmediate(keep);
    }
  };

  const keep = (): void => {
    pausing = undefined;
    // One of those who wait is always taken along, so that nobody waits for ever.
    const pieces = waiting.now.splice(0, mostAtOnce - Math.min(1, waiting.later.length));
    pieces.push(...waiting.later.splice(0, mostAtOnce - pieces.length));
    const tellings = kept(pieces);
    if (pieces.length > 1) goesAgain = performance.now() + pause;
    if (count() > 0) soon();
    for (const tell of tellings) tell();
  };

  return {
    gather: (store, work, urgency = 'now') =>
      new Promise((resolve, failed) => {
        if (over) throw new NotBegun();
        const done = () => {
          const result = work();
          return () => resolve(result);
        };
        waiting[urgency].push({ store, done, failed });
        added();
      }),
    letGo() {
      over = true;
      for (const { failed } of [...waiting.now.splice(0), ...waiting.later.splice(0)]) failed(new NotBegun());
    },
    behind: () => count() >= manyWaiting,
  };
}
