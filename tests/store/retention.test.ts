import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openStore } from '#store/store.ts';
import { answer, folder, ladder, storeAt } from './workbench.ts';

const by = { who: 'office' };

/** A store whose clock is set by hand. */
function dated(path = ':memory:') {
  let now = new Date('2024-01-31T12:00:00Z');
  const store = storeAt(path, () => now);
  const crew = store.scoped('crew');
  const on = (day: string) => {
    now = new Date(`${day}T12:00:00Z`);
  };
  return { store, crew, on };
}

describe('how long closed jobs are kept', () => {
  it('is for good until the crew says otherwise', () => {
    const { store, crew, on } = dated();
    const { number } = crew.openSheet({ ...ladder, name: 'Elm' });
    crew.closeSheet(number, by);
    on('2099-01-01');
    expect(crew.retention()).toBeNull();
    expect(store.tidy().sheets).toBe(0);
    crew.saveRetention(24, by);
    expect([crew.retention(), crew.expiredSheets()]).toEqual([24, [number]]);
    crew.saveRetention(null, by);
    expect([crew.retention(), crew.expiredSheets()]).toEqual([null, []]);
  });

  it('counts from the closing; an open job stays', () => {
    const { store, crew, on } = dated();
    const [elm, oak] = ['Elm', 'Oak'].map((name) => crew.openSheet({ ...ladder, name }).number) as [number, number];
    crew.saveRetention(1, by);
    crew.closeSheet(elm, by);
    // A month before 29 February 2024 is 29 January: closed on the 31st is not a month ago yet.
    on('2024-02-29');
    expect(crew.expiredSheets()).toEqual([]);
    on('2024-03-01');
    expect(crew.expiredSheets()).toEqual([elm]);
    expect(store.tidy()).toEqual({ sheets: 1, talks: 0 });
    expect([crew.findSheet(elm), crew.findSheet(oak)?.name]).toEqual([undefined, 'Oak']);
    crew.closeSheet(oak, by);
    crew.reopenSheet(oak, by);
    on('2030-01-01');
    expect(crew.expiredSheets()).toEqual([]);
  });

  it('touches no crew that wants its jobs kept', () => {
    const { store, crew, on } = dated();
    const other = store.scoped('other crew');
    for (const each of [crew, other]) each.closeSheet(each.openSheet({ ...ladder, name: 'Elm' }).number, by);
    crew.saveRetention(6, by);
    on('2030-01-01');
    expect(store.tidy().sheets).toBe(1);
    expect(other.findSheet('elm')?.number).toBe(1);
  });

  it('takes effect at the next opening, and nothing of the job stays in the file', () => {
    const place = folder();
    const path = join(place, 'records.sqlite');
    const before = openStore(path, { now: () => new Date('2024-01-31T12:00:00Z') });
    const crew = before.scoped('crew');
    const { number } = crew.openSheet({ ...ladder, name: 'ZEBEDEE' });
    crew.addFact(number, answer('note', 'ZEBEDEE is out on Fridays'));
    crew.closeSheet(number, by);
    crew.saveRetention(12, by);
    before.close();
    const after = storeAt(path, () => new Date('2026-01-01T00:00:00Z'));
    expect(after.scoped('crew').findSheet(number)).toBeUndefined();
    expect(readdirSync(place).filter((name) => readFileSync(join(place, name)).includes('ZEBEDEE'))).toEqual([]);
  });

  it('is kept for good where the setting makes no sense', () => {
    const { crew } = dated();
    for (const value of ['soon', '0', '-3', '1.5', '1e999', '']) {
      crew.saveSetting('retention-months', { value, who: 'office' });
      expect(crew.retention()).toBeNull();
    }
  });
});

describe('talks that are long over', () => {
  const talk = (crew: ReturnType<typeof dated>['crew']) =>
    crew.startTalk({ ...ladder, sheet: crew.currentSheet(ladder).number, command: 'duct', state: '{}' });

  it('are let go of thirty days after their end, at the daily tidying', () => {
    const { store, crew, on } = dated();
    const ended = talk(crew);
    crew.endTalk(ended.id);
    on('2024-02-29');
    store.tidy();
    expect(crew.talk(ended.id)).toBeDefined();
    on('2024-03-02');
    store.tidy();
    expect(crew.talk(ended.id)).toBeUndefined();
  });

  it('are let go of after half a year when nobody went on with them', () => {
    const { store, crew, on } = dated();
    const left = talk(crew);
    const wentOn = talk(crew);
    on('2024-07-01');
    crew.saveTalk(wentOn.id, { revision: 0, state: '{}' });
    expect(store.tidy().talks).toBe(0);
    on('2024-08-01');
    expect(store.tidy().talks).toBe(1);
    expect([crew.talk(left.id), crew.talk(wentOn.id)?.revision]).toEqual([undefined, 1]);
  });
});
