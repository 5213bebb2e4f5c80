import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { NewFact } from '#store/facts.ts';
import type { NewMember } from '#store/members.ts';
import type { NewPhoto } from '#store/photos.ts';
import type { NewShelfFan } from '#store/shelf.ts';
import { openStore, type Store } from '#store/store.ts';
import { StoreTrouble } from '#store/trouble.ts';
import type { NewWalkEvent } from '#store/walk-events.ts';

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

export const lee: NewMember = {
  who: '<@11>',
  name: 'Lee',
  kinds: ['lead'],
  qualifications: [{ kind: 'licensed-electrician', number: 'EL-20419', expires: '2026-06-30' }],
};

export const shelfFan = (name: string, more: Partial<NewShelfFan> = {}): NewShelfFan => ({
  name,
  label: { 'fan-curve': '84@0.1 66@0.25', collar: '4 in' },
  units: 'inch-pound',
  demo: false,
  ...more,
});

export const happened = (id: string, more: Partial<NewWalkEvent> = {}): NewWalkEvent => ({
  id,
  list: 'swap',
  step: 'E04',
  what: 'reading',
  value: { volts: 0 },
  who: '<@11>',
  ...more,
});

export const photo: NewPhoto = {
  list: 'swap',
  step: 'S04',
  message: 'thread-1/900',
  checksum: 'f00dfeed',
  size: 81_234,
  who: 'apprentice',
};

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
