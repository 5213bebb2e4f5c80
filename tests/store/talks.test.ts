import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openStore } from '#store/store.ts';
import { clock, crew, folder, ladder, storeAt } from './workbench.ts';

const begun = (store = crew()) => {
  const sheet = store.currentSheet(ladder).number;
  return { store, sheet, talk: store.startTalk({ ...ladder, sheet, command: 'duct', state: '{"draft":""}' }) };
};

describe('a talk', () => {
  it('is found again by its id, which is safe in a button and not to be guessed', () => {
    const { store, talk, sheet } = begun();
    expect(talk).toMatchObject({
      ...ladder,
      sheet,
      command: 'duct',
      state: '{"draft":""}',
      revision: 0,
      endedAt: null,
    });
    expect(store.talk(talk.id)).toEqual(talk);
    const ids = Array.from({ length: 200 }, () => begun(store).talk.id);
    expect(new Set(ids).size).toBe(200);
    expect(ids.filter((id) => !/^[0-9a-hj-km-np-tv-z]{10}$/.test(id))).toEqual([]);
    expect(store.talk('0000000000')).toBeUndefined();
  });

  it('goes on after a restart where it was', () => {
    const path = join(folder(), 'records.sqlite');
    const before = openStore(path, { now: clock() });
    const { talk } = begun(before.scoped('crew'));
    before.scoped('crew').saveTalk(talk.id, { revision: 0, state: '{"draft":"14 ft flex"}' });
    before.close();
    const after = storeAt(path).scoped('crew');
    expect(after.talk(talk.id)).toMatchObject({ revision: 1, state: '{"draft":"14 ft flex"}' });
    expect(after.latestTalk(ladder)?.id).toBe(talk.id);
  });

  it('pressed by two people at once goes on with the first', () => {
    const { store, talk } = begun();
    expect(store.saveTalk(talk.id, { revision: 0, state: '"first"' })).toBe(true);
    expect(store.saveTalk(talk.id, { revision: 0, state: '"second"' })).toBe(false);
    expect(store.talk(talk.id)).toMatchObject({ state: '"first"', revision: 1 });
    expect(store.saveTalk(talk.id, { revision: 1, state: '"third"' })).toBe(true);
  });

  it('that has ended takes nothing more and can still explain itself', () => {
    const { store, talk } = begun();
    expect(store.endTalk(talk.id)).toBe(true);
    expect(store.endTalk(talk.id)).toBe(false);
    expect(store.saveTalk(talk.id, { revision: 0, state: '"late"' })).toBe(false);
    expect(store.talk(talk.id)).toMatchObject({ state: '{"draft":""}', command: 'duct' });
    expect(store.talk(talk.id)?.endedAt).toMatch(/^2026-03-02T/);
    expect(store.saveTalk('0000000000', { revision: 0, state: '""' })).toBe(false);
    expect(store.endTalk('0000000000')).toBe(false);
  });
});

describe('the latest talk', () => {
  it('is the one this person touched last in this channel, even when the clock stands still', () => {
    const still = storeAt(':memory:', () => new Date('2026-03-02T08:00:00Z')).scoped('crew');
    const older = begun(still).talk;
    const newer = begun(still).talk;
    expect(still.latestTalk(ladder)?.id).toBe(newer.id);
    still.saveTalk(older.id, { revision: 0, state: '"pressed"' });
    expect(still.latestTalk(ladder)?.id).toBe(older.id);
    still.endTalk(older.id);
    expect(still.latestTalk(ladder)?.id).toBe(newer.id);
    still.endTalk(newer.id);
    expect(still.latestTalk(ladder)).toBeUndefined();
  });

  it('is nobody else’s and from nowhere else', () => {
    const { store } = begun();
    expect(store.latestTalk({ channel: 'thread-1', who: 'lead' })).toBeUndefined();
    expect(store.latestTalk({ channel: 'office', who: 'apprentice' })).toBeUndefined();
  });
});

describe('work done together', () => {
  it('is undone together when one part fails', () => {
    const { store, sheet, talk } = begun();
    const work = () =>
      store.together(() => {
        store.saveTalk(talk.id, { revision: 0, state: '"next"' });
        store.addFact(sheet, { fact: 'x', typed: '', units: 'metric', value: undefined, how: 'told', who: 'lead' });
      });
    expect(work).toThrow(TypeError);
    expect(store.talk(talk.id)).toEqual(talk);
    expect(store.together(() => store.saveTalk(talk.id, { revision: 0, state: '"next"' }))).toBe(true);
  });
});
