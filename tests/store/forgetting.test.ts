import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mentionsOf } from '#store/mentions.ts';
import { migrate } from '#store/migrate.ts';
import { migrations } from '#store/migrations.ts';
import type { ScopedStore } from '#store/store.ts';
import { answer, folder, happened, ladder, lee, photo, shelfFan, storeAt } from './workbench.ts';

/** Which files in the folder still hold the text, whatever they are called. */
const holding = (place: string, text: string): string[] =>
  readdirSync(place).filter((name) => readFileSync(join(place, name)).includes(text));

const zoe = { who: '<@777>', name: 'Zoë Quill', kinds: ['lead'], qualifications: lee.qualifications } as const;
const at = { channel: 'thread-1', who: zoe.who };

/** A crew in whose records Zoë stands everywhere somebody can stand. */
function fillWith(crew: ScopedStore) {
  crew.saveMember(zoe, { who: 'office' });
  crew.saveMember({ ...lee, name: 'Lee (not Zoë Quill)' }, { who: zoe.who });
  const { number } = crew.openSheet({ ...at, name: 'Zoë Quill’s own bath' });
  crew.renameSheet(number, { name: 'The bath of ZOË QUILL', who: zoe.who });
  crew.addFact(
    number,
    answer('note', { says: 'ask zoë quill', by: ['Zoë Quill'] }, { typed: 'ask zoë quill', who: zoe.who }),
  );
  crew.addFact(number, answer('collar', '4 in', { who: zoe.who }));
  crew.retractNewest(number, { who: zoe.who });
  crew.startTalk({ ...at, sheet: number, command: 'duct', state: '{"draft":"Zoë Quill says 4 in"}' });
  crew.saveSetting('leads', { value: 'Lee, Zoë Quill', who: zoe.who });
  crew.saveShelfFans([shelfFan('Zoë Quill spare', { label: { collar: '4 in', note: 'Zoë Quill’s' } })], {
    who: zoe.who,
  });
  crew.addWalkEvent(number, happened('w-1', { who: zoe.who, value: { note: 'signed Zoë Quill' } }));
  crew.addWalkEvent(number, happened('w-2', { who: 'apprentice', value: { note: 'waited for <@777>' } }));
  crew.addPhoto(number, { ...photo, message: 'IMG_zoë-quill2.jpg', who: zoe.who });
  const named = { reference: 'IMG_zoë-quill2.jpg', checksum: photo.checksum, size: photo.size };
  crew.addWalkEvent(number, happened('w-3', { who: zoe.who, what: 'photo', value: named }));
  crew.closeSheet(number, { who: zoe.who });
  return number;
}

describe('forgetting one person', () => {
  it('leaves the name in no file, and someone in its place wherever it stood', () => {
    const place = folder();
    const crew = storeAt(join(place, 'records.sqlite')).scoped('crew');
    const number = fillWith(crew);
    const spelled = ['Zoë Quill', 'ZOË QUILL', 'zoë quill', '<@777>', 'zoë-quill', 'EL-20419'];
    // Lee holds a licence of the same number here, so it is taken off before looking for it.
    crew.saveMember({ ...lee, qualifications: [] }, { who: zoe.who });
    expect(spelled.filter((text) => holding(place, text).length > 0)).toEqual(spelled);
    const named = crew.recordsNaming(['Zoë Quill']);
    expect(crew.forgetPerson(['Zoë Quill'])).toBe(named);
    expect(spelled.slice(0, 5).flatMap((text) => holding(place, text))).toEqual([]);

    const record = crew.sheetAsJson(number);
    expect(record.sheet).toMatchObject({ name: 'The bath of someone', openedBy: 'someone', closedBy: 'someone' });
    expect(record.facts).toMatchObject([
      { typed: 'ask someone', value: { says: 'ask someone', by: ['someone'] }, who: 'someone' },
      { typed: '4 in', value: '4 in', who: 'someone', retracted: { who: 'someone' } },
    ]);
    expect(record.events.map(({ detail }) => detail)).toContain('someone’s own bath');
    expect(record.talks).toMatchObject([{ who: 'someone', state: '{"draft":"someone says 4 in"}' }]);
    expect(record.walkEvents.map(({ who, value }) => [who, value])).toEqual([
      ['someone', { note: 'signed someone' }],
      ['apprentice', { note: 'waited for someone' }],
      ['someone', { reference: 'IMG_someone2.jpg', checksum: photo.checksum, size: photo.size }],
    ]);
    expect(record.photos).toMatchObject([{ who: 'someone', message: 'IMG_someone2.jpg' }]);
    expect(crew.findSheet('the bath of someone')?.number).toBe(number);
    expect(crew.shelfFan('SOMEONE spare')).toMatchObject({ label: { note: 'someone’s' }, who: 'someone' });
    expect(crew.setting('leads')).toBe('Lee, someone');
    expect(crew.recordsNaming(['Zoë Quill', '<@777>'])).toBe(0);
  });

  it('keeps what a signature rested on, without the number of the licence', () => {
    const crew = storeAt().scoped('crew');
    const number = fillWith(crew);
    crew.forgetPerson(['<@777>']);
    const [signed] = crew.walkEvents(number);
    expect(signed?.standing).toEqual({
      name: 'someone',
      kinds: ['lead'],
      qualifications: [{ kind: 'licensed-electrician', number: 'someone', expires: '2026-06-30', lapsed: false }],
    });
    expect(crew.members().map(({ name, enteredBy }) => [name, enteredBy])).toEqual([['Lee (not someone)', 'someone']]);
    expect(crew.member('<@11>')?.qualifications[0]?.number).toBe('EL-20419');
  });

  it('touches nobody else, in this crew or another', () => {
    const store = storeAt();
    const [crew, other] = [store.scoped('crew'), store.scoped('other crew')];
    const number = fillWith(crew);
    fillWith(other);
    const before = other.sheetAsJson(1);
    crew.addWalkEvent(
      crew.openSheet({ ...ladder, name: 'Zoë Quillan, Quill St' }).number,
      happened('w-3', { who: 'apprentice' }),
    );
    const untouched = crew.sheetAsJson(2);
    expect(crew.recordsNaming(['Zo'])).toBe(0);
    crew.forgetPerson(['Zoë Quill']);
    expect(crew.sheetAsJson(2)).toEqual(untouched);
    expect(other.sheetAsJson(1)).toEqual(before);
    expect(other.member(zoe.who)?.name).toBe('Zoë Quill');
    expect(crew.sheetAsJson(number).sheet.number).toBe(number);
  });

  it('leaves the records as guarded as they were, also when it fails half way', () => {
    const path = join(folder(), 'records.sqlite');
    const store = storeAt(path);
    const crew = store.scoped('crew');
    fillWith(crew);
    const guards = () => {
      const db = new Database(path, { readonly: true });
      const names = db.prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY name").all();
      db.close();
      return names;
    };
    const before = guards();
    expect(before.length).toBeGreaterThan(6);
    const failing = () =>
      crew.together(() => {
        crew.forgetPerson(['Zoë Quill']);
        throw new Error('the work failed');
      });
    expect(failing).toThrow('the work failed');
    expect(guards()).toEqual(before);
    expect(crew.member(zoe.who)?.name).toBe('Zoë Quill');
    crew.forgetPerson(['Zoë Quill']);
    expect(guards()).toEqual(before);
  });

  it('keeps a photo once where only the name told two files of it apart, and the count of photos with it', () => {
    const path = join(folder(), 'records.sqlite');
    const crew = storeAt(path).scoped('crew');
    const { number } = crew.openSheet({ ...ladder, name: 'Elm' });
    for (const message of ['zoe.jpg', 'ZOE.jpg']) crew.addPhoto(number, { ...photo, message });
    crew.addPhoto(number, { ...photo, message: 'zoe.jpg', checksum: 'cafe' });
    for (const step of ['own-lock@Zoe', 'own-lock@someone']) crew.addPhoto(number, { ...photo, step });
    expect(crew.forgetPerson(['Zoe'])).toBe(4);
    expect(crew.photos(number).map(({ step, message, checksum }) => [step, message, checksum])).toEqual([
      ['S04', 'someone.jpg', photo.checksum],
      ['S04', 'someone.jpg', 'cafe'],
      ['own-lock@someone', photo.message, photo.checksum],
    ]);
    const db = new Database(path, { readonly: true });
    expect(db.prepare("SELECT rows FROM row_counts WHERE kind = 'photos'").pluck().get()).toBe(3);
    db.close();
  });

  it('finds rows by the thousand', () => {
    const crew = storeAt().scoped('crew');
    const { number } = crew.openSheet({ ...ladder, name: 'Elm' });
    crew.addFacts(
      number,
      Array.from({ length: 2500 }, (_, count) => answer('note', `${count} Zoë Quill`)),
    );
    expect(crew.forgetPerson(['Zoë Quill'])).toBe(2500);
    expect(crew.factHistory(number).filter(({ typed }) => !/^\d+ someone$/.test(typed))).toEqual([]);
  });
});

describe('a name in what was written', () => {
  const cases: readonly [name: string, text: string, without: string][] = [
    ['Al', 'Al fitted aluminium, al dente', 'Al fitted aluminium, al dente'],
    ['Ana', 'Ana, ANA’s, banana, ana_1, Ana2', 'someone, someone’s, banana, ana_1, Ana2'],
    ['José', 'Jose\u0301 and Jose and JOSÉ', 'someone and someone and someone'],
    ['a.b', 'a.b and aXb', 'someone and aXb'],
    ['R. (Bob) $1', 'R. (Bob) $1 [x]', 'someone [x]'],
    ['<@777>', 'ping <@777>, not <@7777>', 'ping someone, not <@7777>'],
    ['李雷', '李雷说 so, 李 did not', 'someone说 so, 李 did not'],
  ];
  it.each(cases)('%s', (name, text, without) => {
    expect(mentionsOf([name]).inText(text)).toBe(without);
  });

  const files: readonly [name: string, file: string, without: string][] = [
    [
      'Ana',
      'ana_1.jpg, IMG_Ana2.jpg, banana.jpg, Anabel.png',
      'someone_1.jpg, IMG_someone2.jpg, banana.jpg, Anabel.png',
    ],
    ['Zoe Quill', 'ZoeQuill zoe_quill zoe-quill zoe.quill.jpg zoe.jpg', 'someone someone someone someone.jpg zoe.jpg'],
    ['José', 'jose-hood.heic', 'someone-hood.heic'],
    ['Al', 'al.jpg', 'al.jpg'],
    ['777', '1777/2777/7773/777', '1777/2777/7773/someone'],
    ['李雷', '李雷1.jpg', 'someone1.jpg'],
  ];
  it.each(files)('in the name of a file: %s', (name, file, without) => {
    const { inFileName, inJson } = mentionsOf([name]);
    expect(inFileName(file)).toBe(without);
    expect(inJson(JSON.stringify({ reference: file, size: 1 }))).toBe(JSON.stringify({ reference: without, size: 1 }));
  });

  it('says who only when it is the whole of it', () => {
    const { asWho } = mentionsOf(['Ana']);
    expect(['Ana', 'ANA', 'Ana Lopez', ''].map(asWho)).toEqual(['someone', 'someone', 'Ana Lopez', '']);
  });

  it('in JSON is replaced in texts and keys, and what names nobody stays byte for byte', () => {
    const { inJson } = mentionsOf(['Ana']);
    expect(inJson('{"Ana":["ana",1,{"__proto__":"Ana"}]}')).toBe('{"someone":["someone",1,{"__proto__":"someone"}]}');
    expect(inJson('{ "x" : 1.50 }')).toBe('{ "x" : 1.50 }');
    expect(inJson('no json, Ana')).toBe('no json, someone');
    expect(mentionsOf(['A "B" C']).inJson(JSON.stringify(['by A "B" C']))).toBe('["by someone"]');
  });

  it('whatever it is made of, is gone, and a second look finds nothing', () => {
    const part = fc.string({
      unit: fc.constantFrom('a', 'B', 'é', '.', '*', '(', '\\', '^', '$', '-', '@', '/', ' '),
      minLength: 1,
      maxLength: 6,
    });
    const law = fc.property(part, part, (name, around) => {
      const mentions = mentionsOf([name]);
      expect(mentions.asWho(name)).toBe('someone');
      const once = mentions.inText(`${around} ${name} ${around}`);
      expect(mentions.inText(once)).toBe(once);
    });
    fc.assert(law, { seed: 1, numRuns: 200 });
  });
});

describe('every text a crew keeps', () => {
  /** Columns in which nobody is named: ids, dates, words of ours. A new column of a new table goes here or is searched for names. */
  const nameless: Readonly<Record<string, readonly string[]>> = {
    crews: ['scope', 'since'],
    sheets: ['scope', 'name_folded', 'state', 'opened_at', 'closed_at'],
    sheet_events: ['scope', 'what', 'at'],
    channels: ['scope', 'channel'],
    facts: ['scope', 'fact', 'units', 'how', 'at', 'entered_at'],
    retractions: ['scope', 'at'],
    talks: ['id', 'scope', 'channel', 'command', 'started_at', 'saved_at', 'ended_at'],
    settings: ['scope', 'key', 'at'],
    crew_members: ['scope', 'who', 'at'],
    shelf_fans: ['scope', 'name_folded', 'units', 'at'],
    walk_events: ['scope', 'id', 'list', 'step', 'what', 'at', 'entered_at'],
    photos: ['scope', 'list', 'step', 'checksum', 'at'],
    row_counts: ['scope', 'kind'],
  };

  it('is searched for names, save where nobody can be named', () => {
    const crew = storeAt().scoped('crew');
    fillWith(crew);
    const db = new Database(':memory:');
    migrate(db, ':memory:', migrations);
    const tables = db
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'")
      .pluck()
      .all();
    const unsearched = (tables as string[]).flatMap((table) =>
      (db.pragma(`table_info(${table})`) as { name: string; type: string }[])
        .filter(({ name, type }) => type === 'TEXT' && !nameless[table]?.includes(name))
        .map(({ name }) => `${table}.${name}`),
    );
    db.close();
    expect(unsearched.filter((column) => !/^(seen|notes)\./.test(column)).toSorted()).toEqual(searched);
  });

  const searched = [
    'crew_members.entered_by',
    'crew_members.entry',
    'facts.typed',
    'facts.value',
    'facts.who',
    'photos.message',
    'photos.who',
    'retractions.who',
    'settings.value',
    'settings.who',
    'sheet_events.detail',
    'sheet_events.who',
    'sheets.closed_by',
    'sheets.name',
    'sheets.opened_by',
    'shelf_fans.label',
    'shelf_fans.name',
    'shelf_fans.who',
    'talks.state',
    'talks.who',
    'walk_events.standing',
    'walk_events.value',
    'walk_events.who',
  ];
});
