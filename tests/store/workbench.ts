import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { NewFact } from '#store/facts.ts';
import { openStore, type Store } from '#store/store.ts';
import { StoreTrouble } from '#store/trouble.ts';

/** A folder of its own for one test, gone afterwards. */
export function folder(): string {
  const path = mkdtempSync(join(tmpdir(), 'fanwright-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  return path;
}

/** A clock that goes on by a second whenever somebody looks at it. */
export function clock(start = '2026-03-02T08:00:00.000Z'): () => Date {
  let seconds = 0;
  return () => new Date(Date.parse(start) + 1000 * seconds++);
}

/** A store that is closed when the test ends. */
export function storeAt(path = ':memory:', now = clock()): Store {
  const store = openStore(path, { now });
  onTestFinished(() => store.close());
  return store;
}

export const crew = (store = storeAt()) => store.scoped('crew');

export const ladder = { channel: 'thread-1', who: 'apprentice' };

export const answer = (fact: string, value: unknown, more: Partial<NewFact> = {}): NewFact => ({
  fact,
  typed: String(value),
  units: 'inch-pound',
  value,
  how: 'measured',
  who: 'apprentice',
  ...more,
});

/** The trouble that the work runs into. */
export function troubleFrom(work: () => unknown): StoreTrouble {
  try {
    work();
  } catch (error) {
    if (error instanceof StoreTrouble) return error;
    throw error;
  }
  throw new Error('nothing went wrong, though it should have');
}
