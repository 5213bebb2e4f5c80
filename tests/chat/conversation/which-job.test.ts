import { describe, expect, it } from 'vitest';
import { begin, hear } from '#chat/conversation.ts';
import type { Screen } from '#chat/screen.ts';
import { recalledTalk } from '#chat/talk.ts';
import { commands as all } from '#commands/index.ts';
import type { ScopedStore } from '#store/store.ts';
import { clock, crew, storeAt } from '../../store/workbench.ts';

const answering = all.filter((command) => command.kind === 'answer');
const office = { channel: 'office', who: 'office' };

function command(name: string) {
  const found = answering.find((each) => each.name === name);
  if (!found) throw new Error(`there is no ${name}`);
  return found;
}

const callback = (store: ScopedStore, complaint?: string): Screen =>
  begin(store, command('callback'), complaint === undefined ? {} : { complaint }, office);

function said(store: ScopedStore, screen: Screen, text: string): Screen {
  const talk = recalledTalk(store, answering, screen.talk ?? '');
  if (!talk) throw new Error('there is no such talk');
  return hear(store, talk, { answers: { [screen.asking?.question.id ?? 'none']: text } }, office.who);
}

const complaintOn = (store: ScopedStore, sheet: number) => store.newestFacts(sheet).get('complaint')?.typed;
const jobs = (store: ScopedStore) =>
  store.listSheets({ limit: 9 }).map(({ number, name }) => `${number} ${name ?? 'no name'}`);

describe('a second caller', () => {
  it('is asked about before a word is noted, and gets a sheet of its own', () => {
    const store = crew();
    callback(store, '14 Maple St: mirror still fogged');
    const asked = callback(store, 'Fan hums at 9 Oak Ave');
    expect(asked.asking?.prompt).toBe(
      'The line names 9 Oak Ave. Open here is Job 1, 14 Maple St. Which job is it about?',
    );
    expect(asked.asking?.choices.map(({ label }) => label)).toEqual(['New sheet: 9 Oak Ave', 'Job 1, 14 Maple St']);
    expect(complaintOn(store, 1)).toBe('14 Maple St: mirror still fogged');
    const on = said(store, asked, 'new');
    expect(on.notes[0]).toBe(
      'Job 2, 9 Oak Ave is open for it now. Job 1, 14 Maple St was open here, and is unchanged.',
    );
    expect([complaintOn(store, 1), complaintOn(store, 2)]).toEqual([
      '14 Maple St: mirror still fogged',
      'Fan hums at 9 Oak Ave',
    ]);
    expect(store.currentSheet(office).number).toBe(2);
  });

  it('goes on the sheet that is named after the house, also a closed one', () => {
    const store = crew();
    store.openSheet({ ...office, name: '9 Oak Avenue' });
    store.closeSheet(1, office);
    store.openSheet({ ...office, name: '14 Maple St' });
    const asked = callback(store, 'Fan hums at 9 Oak Ave');
    expect(asked.asking?.choices.map(({ label }) => label)).toEqual([
      'Job 1, 9 Oak Avenue',
      'New sheet: 9 Oak Ave',
      'Job 2, 14 Maple St',
    ]);
    said(store, asked, 'known');
    expect(store.currentSheet(office)).toMatchObject({ number: 1, state: 'open' });
    expect([complaintOn(store, 1), complaintOn(store, 2)]).toEqual(['Fan hums at 9 Oak Ave', undefined]);
  });

  it('stays on the open sheet where that is said', () => {
    const store = crew();
    callback(store, '14 Maple St: mirror still fogged');
    const on = said(store, callback(store, 'Mrs. Lee: fan hums'), 'here');
    expect(on.noted?.map(({ id }) => id)).toEqual(['complaint']);
    expect(complaintOn(store, 1)).toBe('Mrs. Lee: fan hums');
    expect(jobs(store)).toEqual(['1 14 Maple St']);
  });

  it('is kept apart where nobody knows: nothing on the first sheet changes', () => {
    const store = crew();
    callback(store, '14 Maple St: mirror still fogged');
    said(store, callback(store, 'Mr. Ortiz: fan hums'), 'don’t know');
    expect(jobs(store)).toEqual(['2 Mr. Ortiz', '1 14 Maple St']);
    expect(complaintOn(store, 1)).toBe('14 Maple St: mirror still fogged');
  });

  it('is asked about too where the complaint comes as an answer, and nothing else is one', () => {
    const store = crew();
    store.openSheet({ ...office, name: '14 Maple St' });
    const asked = said(store, callback(store), 'fan hums, 9 Oak Ave');
    expect(asked.asking?.question.id).toBe('which-job');
    expect(said(store, asked, 'perhaps').asking?.question.id).toBe('which-job');
    expect([...store.newestFacts(1).keys()]).toEqual([]);
  });

  it.each(['at once', 'as an answer'])('with a danger told %s hears of the danger first, on a sheet apart', (how) => {
    const store = crew();
    const danger = '9 Oak Ave: burning smell from the fan';
    store.openSheet({ ...office, name: '14 Maple St' });
    const stopped = how === 'at once' ? callback(store, danger) : said(store, callback(store), danger);
    expect(stopped.reply?.findings[0]?.weight).toBe('stop');
    expect(stopped.notes).toContain(
      'Job 2, 9 Oak Ave is open for it now. Job 1, 14 Maple St was open here, and is unchanged.',
    );
    expect([complaintOn(store, 1), complaintOn(store, 2)]).toEqual([undefined, danger]);
  });
});

describe('the sheet it goes on', () => {
  it('takes the name of the house from the first line on it', () => {
    const store = crew();
    const screen = callback(store, '14 Maple St: mirror still fogged');
    expect(screen.notes[0]).toBe('Job 1 is called 14 Maple St now. /job open opens another.');
    expect(callback(store, 'at 14 maple street the fan hums').asking?.question.id).not.toBe('which-job');
    expect(jobs(store)).toEqual(['1 14 Maple St']);
  });

  it('of another day is said, and one word takes what was noted to a sheet of its own', () => {
    let hours = 0;
    const tick = clock();
    const store = crew(storeAt(':memory:', () => new Date(tick().getTime() + hours * 3_600_000)));
    begin(store, command('size'), { 'room-length': '9 ft', 'ceiling-height': '8 ft' }, office);
    hours = 7;
    expect(begin(store, command('size'), {}, office).mayGoElsewhere).toBeUndefined();
    hours = 24;
    const screen = begin(store, command('size'), { 'room-length': '12 ft' }, office);
    expect(screen.notes[0]).toBe(
      'This goes on Job 1, no name yet, last used on 2026-03-02. Another customer or address? Say “another job”.',
    );
    const on = said(store, screen, 'another job');
    expect(on.notes[0]).toBe('This is on Job 2, no name yet now. On Job 1, no name yet it no longer counts.');
    const lengths = [1, 2].map((sheet) => store.newestFacts(sheet).get('room-length')?.typed);
    expect(lengths).toEqual(['9 ft', '12 ft']);
    expect(store.newestFacts(2).has('ceiling-height')).toBe(false);
    expect(on.asking?.question.id).toBe('room-width');
  });

  it('is said beside an earlier complaint', () => {
    const store = crew();
    callback(store, 'mirror still fogged');
    const screen = callback(store, 'fan hums');
    expect(screen.notes[0]).toBe(
      'This goes on Job 1, no name yet, which holds a complaint already. Another customer or address? Say “another job”.',
    );
    said(store, screen, 'another job');
    expect([complaintOn(store, 1), complaintOn(store, 2)]).toEqual(['mirror still fogged', 'fan hums']);
  });
});
