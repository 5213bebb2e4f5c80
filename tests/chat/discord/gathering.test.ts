import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { gathering } from '#chat/discord/gathering.ts';
import { openStore, type ScopedStore } from '#store/store.ts';

function crew(): ScopedStore {
  const store = openStore(':memory:');
  onTestFinished(() => store.close());
  return store.scoped('crew');
}

const sheetNamed = (name: string) => ({ channel: 'thread', name, who: 'Ann' });

/** The store with every outermost writing counted, or refused. */
function watched(store: ScopedStore, refuse?: Error): { readonly store: ScopedStore; readonly writings: () => number } {
  let writings = 0;
  let depth = 0;
  const together = <Result>(work: () => Result): Result => {
    writings += depth === 0 ? 1 : 0;
    depth += 1;
    try {
      const result = store.together(work);
      if (depth === 1 && refuse) throw refuse;
      return result;
    } finally {
      depth -= 1;
    }
  };
  return { store: { ...store, together }, writings: () => writings };
}

describe('what arrives at the same moment', () => {
  it('is written in one go, in the order it came', async () => {
    const { store, writings } = watched(crew());
    const { gather } = gathering();
    const numbers = await Promise.all(
      ['a', 'b', 'c'].map((name) => gather(store, () => store.openSheet(sheetNamed(name)).number)),
    );
    expect(numbers).toEqual([1, 2, 3]);
    expect(writings()).toBe(1);
    await gather(store, () => store.openSheet(sheetNamed('d')));
    expect(writings()).toBe(2);
  });

  it('is not done all in one go: between two, those who wait let those go first who cannot', async () => {
    const { store, writings } = watched(crew());
    const { gather, behind } = gathering();
    const order: string[] = [];
    const piece = (name: string, urgency: 'now' | 'later') => gather(store, () => void order.push(name), urgency);
    const all = Array.from({ length: 7 }, (_, nth) => piece(`waits ${nth}`, 'later'));
    expect(behind()).toBe(false);
    all.push(...Array.from({ length: 10 }, (_, nth) => piece(`urgent ${nth}`, 'now')));
    expect(behind()).toBe(true);
    await Promise.all(all);
    expect(order.slice(0, 8)).toEqual([
      ...['urgent 0', 'urgent 1', 'urgent 2', 'waits 0'],
      ...['urgent 3', 'urgent 4', 'urgent 5', 'waits 1'],
    ]);
    expect(order.slice(12)).toEqual(['urgent 9', 'waits 3', 'waits 4', 'waits 5', 'waits 6']);
    expect(order).toHaveLength(17);
    expect(writings()).toBe(5);
    expect(behind()).toBe(false);
  });

  it('is let go where the program ends first: nothing of it is done, and whoever waits hears so', async () => {
    const { store, writings } = watched(crew());
    const { gather, letGo } = gathering();
    const waits = gather(store, () => store.openSheet(sheetNamed('a')));
    letGo();
    const late = gather(store, () => store.openSheet(sheetNamed('b')));
    const outcomes = await Promise.allSettled([waits, late]);
    expect(outcomes.map((outcome) => outcome.status === 'rejected' && outcome.reason.name)).toEqual([
      'NotBegun',
      'NotBegun',
    ]);
    expect(writings()).toBe(0);
    expect(store.listSheets({ limit: 9 })).toEqual([]);
  });

  it('stands alone: what fails is undone, and the rest is kept', async () => {
    const store = crew();
    const { gather } = gathering();
    const outcomes = await Promise.allSettled([
      gather(store, () => store.openSheet(sheetNamed('a')).number),
      gather(store, () => {
        store.openSheet(sheetNamed('b'));
        throw new Error('half way');
      }),
      gather(store, () => store.openSheet(sheetNamed('c')).number),
    ]);
    expect(
      outcomes.map((outcome) => (outcome.status === 'fulfilled' ? outcome.value : String(outcome.reason))),
    ).toEqual([1, 'Error: half way', 2]);
    expect(store.listSheets({ limit: 9 }).map(({ name }) => name)).toEqual(['c', 'a']);
  });

  it('is told only once it is kept: when the disk refuses, nobody hears of success', async () => {
    const { store } = watched(crew(), new Error('the disk is full'));
    const { gather } = gathering();
    const outcomes = await Promise.allSettled([gather(store, () => 'told'), gather(store, () => 'told too')]);
    expect(outcomes.map(({ status }) => status)).toEqual(['rejected', 'rejected']);
  });

  it('is refused as one when the disk is full in the middle, and nothing of it is kept', async () => {
    const watching = vi.spyOn(Database.prototype, 'pragma');
    const store = crew();
    const [db] = watching.mock.contexts as Database.Database[];
    watching.mockRestore();
    db?.pragma(`max_page_count = ${db.pragma('page_count', { simple: true })}`);
    const { gather } = gathering();
    const outcomes = await Promise.allSettled([
      gather(store, () => store.openSheet(sheetNamed('a')).number),
      gather(store, () => store.openSheet(sheetNamed('b'.repeat(20_000))).number),
      gather(store, () => store.openSheet(sheetNamed('c')).number),
    ]);
    expect(outcomes).toMatchObject(
      Array(3).fill({ status: 'rejected', reason: { name: 'StoreTrouble', code: 'full' } }),
    );
    expect(store.listSheets({ limit: 9 })).toEqual([]);
  });
});
