import { describe, expect, it } from 'vitest';
import { crew, storeAt } from './workbench.ts';

describe('crew settings', () => {
  it('are the newest saved, and every change is kept with who made it', () => {
    const store = crew();
    expect(store.setting('units')).toBeUndefined();
    store.saveSetting('units', { value: 'metric', who: 'lead' });
    store.saveSetting('altitude', { value: '1600 m', who: 'lead' });
    store.saveSetting('units', { value: 'inch-pound', who: 'office' });
    expect([store.setting('units'), store.setting('altitude')]).toEqual(['inch-pound', '1600 m']);
    expect(store.settingHistory('units')).toMatchObject([
      { value: 'metric', who: 'lead' },
      { value: 'inch-pound', who: 'office' },
    ]);
  });

  it('can be taken away again', () => {
    const store = crew();
    store.saveSetting('altitude', { value: '1600 m', who: 'lead' });
    store.saveSetting('altitude', { value: null, who: 'lead' });
    expect(store.setting('altitude')).toBeUndefined();
    expect(store.settingHistory('altitude')).toHaveLength(2);
  });
});

describe('what the program keeps for itself', () => {
  it('notes are the last saved', () => {
    const store = storeAt();
    expect(store.note('commands')).toBeUndefined();
    store.saveNote('commands', 'a1');
    store.saveNote('commands', 'b2');
    expect(store.note('commands')).toBe('b2');
  });

  it('an event delivered twice is known the second time', () => {
    const store = storeAt();
    expect([store.seenBefore('1'), store.seenBefore('2'), store.seenBefore('1'), store.seenBefore('2')]).toEqual([
      false,
      false,
      true,
      true,
    ]);
  });

  it('events older than a day are forgotten, younger ones are not', () => {
    let now = new Date('2026-03-02T08:00:00Z');
    const store = storeAt(':memory:', () => now);
    store.seenBefore('old');
    now = new Date('2026-03-03T07:00:00Z');
    store.seenBefore('young');
    now = new Date('2026-03-03T09:00:00Z');
    for (let count = 0; count < 250; count += 1) store.seenBefore(`later-${count}`);
    expect(store.seenBefore('young')).toBe(true);
    expect(store.seenBefore('old')).toBe(false);
  });
});
