import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openStore, type ScopedStore } from '#store/store.ts';
import { answer, happened, ladder, lee, photo, shelfFan, storeAt } from './workbench.ts';

const channels = ['thread-1', 'thread-2'];
type Move = { readonly does: string; readonly channel: string; readonly number: number; readonly text: string };

/** One thing a crew might do. Those that cannot be done (no such job, closed) do nothing. */
function make(crew: ScopedStore, { does, channel, number, text }: Move): void {
  const at = { channel, who: 'lead' };
  const sheet = crew.findSheet(number);
  if (does === 'open') crew.openSheet({ ...at, name: text });
  if (does === 'fresh') crew.freshSheet(at);
  if (does === 'setting') crew.saveSetting('units', { value: text, who: 'lead' });
  if (does === 'fact') crew.addFact(crew.currentSheet(at).number, answer('collar', text));
  if (does === 'undo') crew.retractNewest(crew.currentSheet(at).number, { who: 'lead' });
  if (does === 'talk') {
    crew.startTalk({ ...at, sheet: crew.currentSheet(at).number, command: 'duct', state: text });
  }
  if (does === 'save') {
    const talk = crew.latestTalk(at);
    if (talk) crew.saveTalk(talk.id, { revision: talk.revision, state: text });
  }
  if (does === 'member') crew.saveMember({ ...lee, who: text, name: text }, { who: 'lead' });
  if (does === 'unmember') crew.removeMember(text, { who: 'lead' });
  if (does === 'fan') crew.saveShelfFans([shelfFan(text)], { who: 'lead' });
  if (does === 'unfan') crew.removeShelfFan(text, { who: 'lead' });
  if (does === 'walk') crew.addWalkEvent(crew.currentSheet(at).number, happened(`${channel} ${text}`));
  if (does === 'photo') crew.addPhoto(crew.currentSheet(at).number, { ...photo, checksum: text });
  if (does === 'retention') crew.saveRetention(number, { who: 'lead' });
  if (does === 'forget') crew.forgetPerson([text]);
  if (does === 'erase crew') crew.eraseScope();
  if (!sheet) return;
  if (does === 'close') crew.closeSheet(number, { who: 'lead' });
  if (does === 'reopen') crew.reopenSheet(number, { who: 'lead' });
  if (does === 'rename') crew.renameSheet(number, { name: text, who: 'lead' });
  if (does === 'use' && sheet.state === 'open') crew.useSheet({ ...at, sheet: number });
  if (does === 'erase') crew.eraseSheet(number);
}

/** Everything a crew can see, save the row ids, which all crews share. */
function seenBy(crew: ScopedStore) {
  return {
    units: [crew.setting('units'), crew.settingHistory('units')],
    members: crew.members(),
    fans: crew.shelfFans(),
    retention: crew.retention(),
    named: crew.recordsNaming(['Elm']),
    talks: channels.map((channel) => {
      const talk = crew.latestTalk({ channel, who: 'lead' });
      return talk && { ...talk, id: '' };
    }),
    sheets: crew.listSheets({ limit: 1000 }).map(({ number }) => {
      const record = crew.sheetAsJson(number);
      return {
        ...record,
        facts: record.facts.map((fact) => ({ ...fact, id: 0 })),
        photos: record.photos.map((each) => ({ ...each, id: 0 })),
      };
    }),
  };
}

describe('two crews', () => {
  it('each see exactly what they would see if they were alone, whatever the other does', () => {
    const doings = ['open', 'fresh', 'setting', 'fact', 'fact', 'undo', 'talk', 'save', 'close', 'reopen', 'rename'];
    const crewDoings = ['member', 'unmember', 'fan', 'unfan', 'walk', 'photo', 'retention', 'forget'];
    const move = fc.record({
      crew: fc.constantFrom('north', 'south'),
      does: fc.constantFrom(...doings, ...crewDoings, 'use', 'erase', 'erase crew'),
      channel: fc.constantFrom(...channels),
      number: fc.integer({ min: 1, max: 5 }),
      text: fc.constantFrom('Elm', 'Oak', '4 in', '6 in'),
    });
    const noon = { now: () => new Date('2026-03-02T12:00:00Z') };
    const law = fc.property(fc.array(move, { minLength: 10, maxLength: 40 }), (moves) => {
      const shared = openStore(':memory:', noon);
      const alone = { north: openStore(':memory:', noon), south: openStore(':memory:', noon) };
      for (const made of moves) {
        make(shared.scoped(made.crew), made);
        make(alone[made.crew as 'north' | 'south'].scoped(made.crew), made);
      }
      for (const crew of ['north', 'south'] as const) {
        expect(seenBy(shared.scoped(crew))).toEqual(seenBy(alone[crew].scoped(crew)));
      }
      for (const store of [shared, alone.north, alone.south]) store.close();
    });
    fc.assert(law, { seed: 1, numRuns: 60 });
  });

  it('cannot reach each other’s jobs and talks by number or id', () => {
    const store = storeAt();
    const [north, south] = [store.scoped('north'), store.scoped('south')];
    const { number } = north.openSheet({ ...ladder, name: 'Elm' });
    north.addFact(number, answer('collar', '4 in'));
    const talk = north.startTalk({ ...ladder, sheet: number, command: 'duct', state: '{}' });
    north.saveMember(lee, { who: 'office' });
    north.saveShelfFans([shelfFan('Elm')], { who: 'lead' });
    north.addWalkEvent(number, happened('w-1'));
    north.addPhoto(number, photo);

    expect(south.findSheet(number)).toBeUndefined();
    expect(south.findSheet('Elm')).toBeUndefined();
    expect(south.listSheets({ limit: 10, search: 'elm' })).toEqual([]);
    expect(south.newestFacts(number).size).toBe(0);
    expect(south.factHistory(number)).toEqual([]);
    expect(() => south.sheetAsJson(number)).toThrow('There is no job 1 here.');
    expect(() => south.addFact(number, answer('collar', '6 in'))).toThrow('There is no job 1 here.');
    expect(south.talk(talk.id)).toBeUndefined();
    expect(south.latestTalk(ladder)).toBeUndefined();
    expect(south.saveTalk(talk.id, { revision: talk.revision, state: '"taken over"' })).toBe(false);
    expect(south.endTalk(talk.id)).toBe(false);
    expect(south.eraseSheet(number)).toBe(false);
    expect([south.member('<@11>'), south.members(), south.standing('<@11>').kinds]).toEqual([undefined, [], []]);
    expect([south.shelfFan('Elm'), south.shelfFans({ search: 'e' })]).toEqual([undefined, []]);
    expect([south.removeShelfFan('Elm', { who: 'x' }), south.removeMember('<@11>', { who: 'x' })]).toEqual([
      false,
      false,
    ]);
    expect([south.walkEvents(number), south.photos(number)]).toEqual([[], []]);
    expect(() => south.addWalkEvent(number, happened('w-1'))).toThrow('There is no job 1 here.');
    expect([south.recordsNaming(['Elm']), south.forgetPerson(['Elm'])]).toEqual([0, 0]);
    south.eraseScope();

    expect(north.talk(talk.id)).toEqual(talk);
    expect(north.newestFacts(number).get('collar')?.value).toBe('4 in');
    expect(north.walkEvents(number)).toMatchObject([{ id: 'w-1', who: '<@11>' }]);
    expect([north.shelfFan('elm')?.name, north.member('<@11>')?.name]).toEqual(['Elm', 'Lee']);
    expect(store.scopes()).toEqual(['north']);
  });
});
