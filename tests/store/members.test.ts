import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openStore } from '#store/store.ts';
import { clock, crew, folder, lee, storeAt } from './workbench.ts';

const noon = (day: string) => () => new Date(`${day}T12:00:00Z`);

describe('the crew', () => {
  it('is who was entered last, in the order of their names', () => {
    const store = crew();
    store.saveMember({ ...lee, name: 'Zoë' }, { who: 'office' });
    store.saveMember({ who: '<@12>', name: 'Ana', kinds: ['apprentice'], qualifications: [] }, { who: 'office' });
    store.saveMember(lee, { who: 'office' });
    expect(store.members().map(({ name, kinds }) => [name, kinds])).toEqual([
      ['Ana', ['apprentice']],
      ['Lee', ['lead']],
    ]);
    expect(store.member('<@11>')).toMatchObject({ name: 'Lee', enteredBy: 'office' });
  });

  it('no longer has a member who was removed, until entered again', () => {
    const store = crew();
    store.saveMember(lee, { who: 'office' });
    expect(store.removeMember('<@11>', { who: 'office' })).toBe(true);
    expect(store.removeMember('<@11>', { who: 'office' })).toBe(false);
    expect([store.member('<@11>'), store.members()]).toEqual([undefined, []]);
    store.saveMember({ ...lee, kinds: ['apprentice'] }, { who: 'office' });
    expect(store.member('<@11>')?.kinds).toEqual(['apprentice']);
  });

  it('is there after a restart', () => {
    const path = join(folder(), 'records.sqlite');
    const before = openStore(path, { now: clock() });
    before.scoped('crew').saveMember(lee, { who: 'office' });
    before.close();
    expect(storeAt(path).scoped('crew').member('<@11>')?.name).toBe('Lee');
  });

  it('takes names and people of any kind', () => {
    const store = crew();
    const awkward = ['__proto__', "Robert'); DROP TABLE facts;--", '\u001b[31mred', '@everyone', 'x'.repeat(500), '😀'];
    for (const name of awkward) store.saveMember({ ...lee, who: name, name }, { who: name });
    expect(new Set(store.members().map(({ who }) => who))).toEqual(new Set(awkward));
    expect(awkward.map((who) => store.member(who)?.name)).toEqual(awkward);
  });
});

describe('what somebody may do', () => {
  it('is nothing for a stranger', () => {
    expect(crew().standing('<@99>')).toEqual({ name: null, kinds: [], qualifications: [] });
  });

  it('lapses with the day after the last one, where the crew works', () => {
    // Denver is six hours behind in summer: at noon UTC on 1 July it is the morning of 1 July there, and at 05:00 UTC still 30 June.
    const lapsedAt = (now: string, zone: string | null) => {
      const store = storeAt(':memory:', () => new Date(now)).scoped('crew');
      store.saveMember(lee, { who: 'office' });
      if (zone) store.saveSetting('time-zone', { value: zone, who: 'office' });
      return store.standing('<@11>').qualifications.map(({ lapsed }) => lapsed);
    };
    expect(lapsedAt('2026-06-30T12:00:00Z', 'America/Denver')).toEqual([false]);
    expect(lapsedAt('2026-07-01T05:00:00Z', 'America/Denver')).toEqual([false]);
    expect(lapsedAt('2026-07-01T12:00:00Z', 'America/Denver')).toEqual([true]);
    // Nobody said where: the day ends where it ends first, fourteen hours ahead.
    expect(lapsedAt('2026-06-30T09:59:00Z', null)).toEqual([false]);
    expect(lapsedAt('2026-06-30T10:01:00Z', null)).toEqual([true]);
  });

  it('is told also where the machine does not know the crew’s time zone', () => {
    const store = storeAt(':memory:', noon('2026-03-02')).scoped('crew');
    store.saveMember(lee, { who: 'office' });
    store.saveSetting('time-zone', { value: 'Atlantis/Deep', who: 'office' });
    expect(store.standing('<@11>').qualifications).toMatchObject([{ number: 'EL-20419', lapsed: false }]);
  });
});
