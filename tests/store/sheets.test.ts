import { describe, expect, it } from 'vitest';
import { SheetTrouble } from '#store/sheet-trouble.ts';
import { answer, crew, ladder } from './workbench.ts';

const office = { channel: 'office', who: 'office' };
const named = (name: string) => ({ ...office, name });

describe('the sheet that lies open in a channel', () => {
  it('is there without anybody opening a job, and stays the same one', () => {
    const store = crew();
    const sheet = store.currentSheet(ladder);
    expect(sheet).toEqual({
      number: 1,
      name: null,
      state: 'open',
      openedAt: '2026-03-02T08:00:01.000Z',
      openedBy: 'apprentice',
      closedAt: null,
      closedBy: null,
    });
    expect(store.currentSheet({ channel: 'thread-1', who: 'lead' })).toEqual(sheet);
  });

  it('is another one in another channel', () => {
    const store = crew();
    expect(store.currentSheet(ladder).number).toBe(1);
    expect(store.currentSheet(office).number).toBe(2);
    expect(store.currentSheet(ladder).number).toBe(1);
  });

  it('is the one just opened, and the one before is still there', () => {
    const store = crew();
    store.currentSheet(ladder);
    const opened = store.openSheet({ ...ladder, name: '12 Elm' });
    expect(opened).toMatchObject({ number: 2, name: '12 Elm', state: 'open' });
    expect(store.currentSheet(ladder)).toEqual(opened);
    expect(store.findSheet(1)?.state).toBe('open');
  });

  it('makes way for a clean one, and can be laid open again', () => {
    const store = crew();
    const first = store.openSheet(named('Elm'));
    expect(store.freshSheet(office)).toMatchObject({ number: 2, name: null, state: 'open' });
    expect(store.currentSheet(office).number).toBe(2);
    expect(store.useSheet({ ...office, sheet: 1 })).toEqual(first);
    expect(store.currentSheet(office).number).toBe(1);
  });

  it('lies open in two channels when two people work on it', () => {
    const store = crew();
    store.openSheet(named('Elm'));
    store.useSheet({ ...ladder, sheet: 1 });
    expect([store.currentSheet(office).number, store.currentSheet(ladder).number]).toEqual([1, 1]);
  });

  it('is a clean one after the job was closed, erased or closed from elsewhere', () => {
    const store = crew();
    store.openSheet(named('Elm'));
    store.closeSheet(1, { who: 'lead' });
    expect(store.currentSheet(office).number).toBe(2);
    store.eraseSheet(2);
    expect(store.currentSheet(office).number).toBe(3);
  });
});

describe('a job number', () => {
  it('never comes to mean another job, even after erasing the newest', () => {
    const store = crew();
    store.openSheet(named('Elm'));
    store.openSheet(named('Oak'));
    store.eraseSheet(2);
    expect(store.openSheet(named('Ash')).number).toBe(3);
  });
});

describe('closing, reopening and renaming', () => {
  it('say who did it and when', () => {
    const store = crew();
    store.openSheet(named('Elm'));
    const closed = store.closeSheet(1, { who: 'lead' });
    expect(closed).toMatchObject({ state: 'closed', closedBy: 'lead' });
    expect(closed.closedAt).toMatch(/^2026-03-02T08:00:\d\d\.000Z$/);
    expect(store.reopenSheet(1, { who: 'office' })).toMatchObject({ state: 'open', closedAt: null, closedBy: null });
    store.renameSheet(1, { name: ' 12  Elm\n', who: 'lead' });
    const { events } = store.sheetAsJson(1);
    expect(events.map(({ what, detail, who }) => [what, detail, who])).toEqual([
      ['opened', 'Elm', 'office'],
      ['used', 'office', 'office'],
      ['closed', null, 'lead'],
      ['reopened', null, 'office'],
      ['renamed', '12 Elm', 'lead'],
    ]);
  });

  it('done twice are one event', () => {
    const store = crew();
    store.openSheet(named('Elm'));
    const closed = store.closeSheet(1, { who: 'lead' });
    expect(store.closeSheet(1, { who: 'office' })).toEqual(closed);
    store.reopenSheet(1, { who: 'lead' });
    store.reopenSheet(1, { who: 'lead' });
    expect(store.sheetAsJson(1).events.map(({ what }) => what)).toEqual(['opened', 'used', 'closed', 'reopened']);
  });

  it('a blank name is no name, and a name can be taken away', () => {
    const store = crew();
    expect(store.openSheet(named(' \t ')).name).toBeNull();
    store.renameSheet(1, { name: 'Elm', who: 'lead' });
    expect(store.findSheet('elm')?.number).toBe(1);
    expect(store.renameSheet(1, { name: null, who: 'lead' }).name).toBeNull();
    expect(store.findSheet('elm')).toBeUndefined();
  });

  it('a closed job takes no more answers until it is reopened', () => {
    const store = crew();
    store.openSheet(named('Elm'));
    store.addFact(1, answer('collar', '4 in'));
    store.closeSheet(1, { who: 'lead' });
    const refused = new SheetTrouble('closed', 1);
    expect(refused.message).toBe('Job 1 is closed. /job open 1 opens it again.');
    expect(() => store.addFact(1, answer('collar', '6 in'))).toThrow(refused);
    expect(() => store.retractNewest(1, { who: 'lead' })).toThrow(refused);
    expect(() => store.useSheet({ ...ladder, sheet: 1 })).toThrow(refused);
    expect(store.newestFacts(1).get('collar')?.value).toBe('4 in');
    store.reopenSheet(1, { who: 'lead' });
    expect(store.addFact(1, answer('collar', '6 in')).value).toBe('6 in');
  });

  it('a job that is not there is said so, in words for the crew', () => {
    const store = crew();
    const missing = new SheetTrouble('no-such-sheet', 4);
    expect(missing.message).toBe('There is no job 4 here.');
    for (const attempt of [
      () => store.useSheet({ ...ladder, sheet: 4 }),
      () => store.closeSheet(4, { who: 'lead' }),
      () => store.reopenSheet(4, { who: 'lead' }),
      () => store.renameSheet(4, { name: 'Elm', who: 'lead' }),
      () => store.addFact(4, answer('collar', '4 in')),
      () => store.retractNewest(4, { who: 'lead' }),
      () => store.startTalk({ ...ladder, sheet: 4, command: 'duct', state: '{}' }),
      () => store.sheetAsJson(4),
    ]) {
      expect(attempt).toThrow(missing);
    }
    expect(store.findSheet(4)).toBeUndefined();
    expect(store.newestFacts(4).size).toBe(0);
    expect(store.eraseSheet(4)).toBe(false);
  });
});

describe('finding a job', () => {
  const jobs = () => {
    const store = crew();
    for (const name of ['García upstairs', '100% Elm', '1000 Elm', 'a_b', 'axb', 'back\\slash'])
      store.openSheet(named(name));
    store.closeSheet(1, { who: 'lead' });
    store.freshSheet(office);
    return store;
  };
  const numbers = (search: string) =>
    jobs()
      .listSheets({ limit: 10, search })
      .map(({ number }) => number);

  it('lists the newest first, as many as asked for', () => {
    const list = (wanted: { limit: number; state?: 'open' | 'closed' }) =>
      jobs()
        .listSheets(wanted)
        .map(({ number }) => number);
    expect(list({ limit: 3 })).toEqual([7, 6, 5]);
    expect(list({ limit: 100 })).toHaveLength(7);
    expect(list({ limit: 100, state: 'closed' })).toEqual([1]);
    expect(list({ limit: 100, state: 'open' })).not.toContain(1);
    expect([list({ limit: 0 }), list({ limit: -1 })]).toEqual([[], []]);
  });

  it('searches parts of names without minding accents, capitals or doubled spaces', () => {
    expect(numbers('GARCIA')).toEqual([1]);
    expect(numbers('garcía  up')).toEqual([1]);
    expect(numbers('elm')).toEqual([3, 2]);
    expect(numbers('')).toHaveLength(7);
  });

  it('takes a typed %, _ or backslash for itself', () => {
    expect(numbers('%')).toEqual([2]);
    expect(numbers('0% e')).toEqual([2]);
    expect(numbers('_')).toEqual([4]);
    expect(numbers('a_b')).toEqual([4]);
    expect(numbers('\\')).toEqual([6]);
    expect(numbers("' OR 1=1 --")).toEqual([]);
  });

  it('searches numbers too', () => {
    expect(numbers('#5')).toEqual([5]);
    expect(numbers('1')).toEqual([3, 2, 1]);
  });

  it('goes by number first, then by whole name', () => {
    const store = jobs();
    expect(store.findSheet('3')?.number).toBe(3);
    expect(store.findSheet('# 3')?.number).toBe(3);
    expect(store.findSheet(3)?.number).toBe(3);
    expect(store.findSheet('garcia upstairs')?.number).toBe(1);
    expect(store.findSheet('garcia')).toBeUndefined();
    expect(store.findSheet('')).toBeUndefined();
  });

  it('goes by name when the name is a house number and no job has that number', () => {
    const store = jobs();
    const { number } = store.openSheet(named('1408'));
    expect(store.findSheet('1408')?.number).toBe(number);
  });

  it('of two jobs of one name finds the open one, then the newer', () => {
    const store = crew();
    for (let count = 0; count < 3; count += 1) store.openSheet(named('Elm'));
    expect(store.findSheet('elm')?.number).toBe(3);
    store.closeSheet(3, { who: 'lead' });
    expect(store.findSheet('elm')?.number).toBe(2);
  });
});
