import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '#store/job-file.ts';
import type { ScopedStore } from '#store/store.ts';
import { answer, crew, folder, happened, ladder, lee, photo, storeAt } from './workbench.ts';

const office = { who: 'office' };

/** A job as two people left it: answers, one taken back, a signature, an override, a note, a photo of two steps, closed and open again. */
function worked(store: ScopedStore) {
  store.saveMember(lee, office);
  const { number } = store.openSheet({ ...ladder, name: '14 Maple St' });
  store.addFacts(number, [
    answer('collar', '4 in', { who: lee.who }),
    answer('room-length', 9, { how: 'unknown', value: null }),
  ]);
  store.retractNewest(number, { who: 'apprentice', fact: 'room-length' });
  store.addWalkEvents(number, [
    happened('e-1', { step: null, what: 'started', value: { facts: { 'house-age': 'unknown' } } }),
    happened('e-2', { step: 'sign-dead@fan', what: 'signed', value: {} }),
    happened('e-3', { step: 'grille', what: 'overridden', value: { reason: 'the owner keeps the old one' } }),
    happened('e-4', { step: null, what: 'noted', value: { says: 'ring first' }, who: 'apprentice' }),
  ]);
  for (const step of ['S04', 'S05']) store.addPhoto(number, { ...photo, step });
  store.closeSheet(number, { who: lee.who });
  store.reopenSheet(number, { who: lee.who });
  store.renameSheet(number, { name: '14 Maple Street', who: 'apprentice' });
  return number;
}

const asText = (file: unknown): string => JSON.stringify(file);

function broughtInto(store: ScopedStore, text: string): number {
  const read = store.importJob(text, { who: 'bo' });
  if ('rejected' in read) throw new Error(read.rejected);
  return read.value.number;
}

/** A job file without what says that it was brought in, and by whom: what is left is what somebody said or did. */
function content(file: JobFile): unknown {
  const plain = JSON.parse(asText(file).replaceAll('"imported: ', '"')) as JobFile;
  return { ...plain, events: plain.events.filter(({ what }) => what !== 'imported') };
}

describe('a job that travels as a file', () => {
  it('is the same job with another crew, and the same file again from there', () => {
    const here = crew();
    const file = here.exportJob(worked(here));
    const there = storeAt().scoped('another crew');
    there.openSheet({ ...ladder, name: 'theirs' });
    const again = there.exportJob(broughtInto(there, asText(file)));
    expect(content(again)).toEqual(content(file));
    expect(again.events.at(-1)).toMatchObject({ what: 'imported', who: 'bo' });
    const third = storeAt().scoped('a third crew');
    const onceMore = third.exportJob(broughtInto(third, asText(again)));
    expect({ ...onceMore, events: [] }).toEqual({ ...again, events: [] });
  });

  it('may come back to the crew it left, twice over, beside what is there', () => {
    const store = crew();
    const number = worked(store);
    const before = store.exportJob(number);
    const copies = [broughtInto(store, asText(before)), broughtInto(store, asText(before))];
    expect(copies).toEqual([2, 3]);
    for (const copy of copies) expect(content(store.exportJob(copy))).toEqual(content(before));
    expect(store.exportJob(number)).toEqual(before);
  });

  it('lies open in no channel, and its answers count as those of nobody here', () => {
    const here = crew();
    const text = asText(here.exportJob(worked(here)));
    const there = storeAt().scoped('another crew');
    there.saveMember({ ...lee, kinds: ['lead'] }, office);
    const number = broughtInto(there, text);
    expect(there.currentSheet(ladder).number).not.toBe(number);
    const fact = there.newestFacts(number).get('collar');
    expect(fact).toMatchObject({ typed: '4 in', who: 'imported: <@11>' });
    expect(there.standing('<@11>').kinds).toEqual(['lead']);
    expect(there.standing(fact?.who ?? '')).toEqual({ name: null, kinds: [], qualifications: [] });
    // Not even a member whose name looks like it lends a file a standing.
    there.saveMember({ ...lee, who: 'imported: <@11>' }, office);
    expect(there.standing('imported: <@11>').kinds).toEqual([]);
  });

  it('brings no signature that counts: what was walked elsewhere is kept apart from what is walked here', () => {
    const here = crew();
    const there = storeAt().scoped('another crew');
    const number = broughtInto(there, asText(here.exportJob(worked(here))));
    expect([there.walkEvents(number), there.walkEvents(number, 'swap'), there.photos(number)]).toEqual([[], [], []]);
    expect(there.importedWalkEvents(number).map(({ list, step, who }) => [list, step, who])).toEqual([
      ['swap', null, '<@11>'],
      ['swap', 'sign-dead@fan', '<@11>'],
      ['swap', 'grille', '<@11>'],
      ['swap', null, 'apprentice'],
    ]);
    // A thing that really happens here under an id the file has used is kept all the same.
    expect(there.addWalkEvent(number, happened('e-2')).fresh).toBe(true);
    expect(there.walkEvents(number)).toHaveLength(1);
  });
});

/** Letters that can be kept; the file refuses the others. */
const words = fc.string({ unit: 'grapheme', maxLength: 30 }).filter((said) => !/[\p{Cs}\0]/u.test(said));
const named = words.filter((said) => said.length > 0 && !said.startsWith('imported: '));
const values = fc
  .jsonValue({ maxDepth: 4 })
  .filter(
    (value) => !/[\p{Cs}]|\\u0000|\\ud[89a-f]|"(?:__proto__|constructor|prototype|imported: )/iu.test(asText(value)),
  );
const when = fc.date({ min: new Date('2020-01-01'), max: new Date('2026-03-01'), noInvalidDate: true });

const doings = fc.array(
  fc.oneof(
    fc.record({
      does: fc.constant('fact' as const),
      fact: fc.stringMatching(/^[a-z0-9-]{1,20}$/),
      typed: words,
      value: values,
      how: fc.constantFrom('measured', 'label', 'estimated', 'told', 'unknown'),
      units: fc.constantFrom('inch-pound', 'metric'),
      who: named,
      at: fc.option(when, { nil: undefined }),
    }),
    fc.record({ does: fc.constant('back' as const), who: named }),
    fc.record({
      does: fc.constant('walk' as const),
      list: fc.constantFrom('swap', 'swap~2', 'callback-visit'),
      step: fc.option(named, { nil: null }),
      what: fc.constantFrom('started', 'done', 'signed', 'overridden', 'undone', 'noted', 'photo', 'joined'),
      value: values,
      who: fc.oneof(named, fc.constant(lee.who)),
    }),
    fc.record({
      does: fc.constant('photo' as const),
      list: fc.constant('swap'),
      step: fc.option(named, { nil: null }),
      message: named,
      checksum: fc.stringMatching(/^[0-9a-f]{8}$/),
      size: fc.nat(),
      who: named,
    }),
    fc.record({ does: fc.constantFrom('rename' as const), name: fc.option(words, { nil: null }), who: named }),
    fc.record({ does: fc.constantFrom('close' as const), who: named }),
  ),
  { maxLength: 25 },
);

describe('any job at all', () => {
  it('goes out, comes in elsewhere and goes out again with nothing lost and nothing added', () => {
    const [one, other] = [storeAt(), storeAt()];
    let runs = 0;
    fc.assert(
      fc.property(doings, (done) => {
        runs += 1;
        const here = one.scoped(`crew ${runs}`);
        const there = other.scoped(`another crew ${runs}`);
        here.saveMember(lee, office);
        const { number } = here.openSheet(ladder);
        done.forEach((each, index) => {
          if (each.does === 'fact') here.addFact(number, each);
          else if (each.does === 'back') here.retractNewest(number, each);
          else if (each.does === 'walk') here.addWalkEvent(number, { ...each, id: `w-${index}` });
          else if (each.does === 'photo') here.addPhoto(number, each);
          else if (each.does === 'rename') here.renameSheet(number, each);
          else {
            here.closeSheet(number, each);
            if (index < done.length - 1) here.reopenSheet(number, each);
          }
        });
        const file = here.exportJob(number);
        const again = there.exportJob(broughtInto(there, asText(file)));
        expect(content(again)).toEqual(content(file));
      }),
      { numRuns: 120 },
    );
  });
});

/** A whole, sound file as an object that can be spoiled. */
function sound() {
  const store = crew();
  return JSON.parse(asText(store.exportJob(worked(store)))) as Record<string, unknown>;
}

type Spoil = (file: ReturnType<typeof sound>) => unknown;

const setAt =
  (path: readonly (string | number)[], value: unknown): Spoil =>
  (file) => {
    const holder = path.slice(0, -1).reduce<Record<string | number, unknown>>((each, key) => each[key] as never, file);
    holder[path.at(-1) ?? ''] = value;
    return file;
  };

const spoiled: readonly (readonly [string, Spoil, RegExp])[] = [
  ['another program’s JSON', () => ({ name: 'x' }), /is no job file/],
  ['a list', () => [1, 2], /is no job file/],
  ['nothing', () => null, /is no job file/],
  ['a form of later days', setAt(['version'], 2), /of form 2, and only form 1/],
  ['a form that is no number', setAt(['version'], '1'), /is no job file/],
  ['a field nobody knows', setAt(['admin'], true), /^At its top, something/],
  ['a field nobody knows in a standing', setAt(['walkEvents', 1, 'standing', 'boss'], true), /walkEvents, entry 2/],
  ['a fact without a value', setAt(['facts', 0, 'value'], undefined), /^In facts, entry 1, value,/],
  ['a number for a name', setAt(['job', 'name'], 7), /^In job, name,/],
  ['a state there is not', setAt(['job', 'state'], 'erased'), /^In job, state,/],
  ['a way of knowing there is not', setAt(['facts', 0, 'how'], 'certified'), /^In facts, entry 1, how,/],
  ['a fact with an odd id', setAt(['facts', 0, 'fact'], '../x'), /^In facts, entry 1, fact,/],
  [
    'a kind of member there is not',
    setAt(['walkEvents', 0, 'standing', 'kinds'], ['owner']),
    /standing, kinds, entry 1/,
  ],
  ['a day that is none', setAt(['facts', 0, 'at'], '2026-02-31T00:00:00.000Z'), /^In facts, entry 1, at,/],
  ['a day in words', setAt(['walkEvents', 0, 'at'], 'yesterday'), /^In walkEvents, entry 1, at,/],
  ['a day before the trade had phones', setAt(['photos', 0, 'at'], '1899-01-01T00:00:00.000Z'), /^In photos/],
  ['a day to come', setAt(['walkEvents', 0, 'enteredAt'], '2093-01-01T00:00:00.000Z'), /still to come/],
  ['a closing without a day', setAt(['job', 'state'], 'closed'), /whether the job is closed/],
  [
    'a closing before the opening',
    (file) =>
      setAt(['job'], {
        ...(file['job'] as object),
        state: 'closed',
        closedAt: '2001-01-01T00:00:00.000Z',
        closedBy: 'x',
      })(file),
    /closed before it is opened/,
  ],
  ['an id twice', setAt(['walkEvents', 1, 'id'], 'e-1'), /have the same id/],
  ['a photo twice', (file) => ({ ...file, photos: [file['photos'], file['photos']].flat() }), /photo is in it twice/],
  ['a size below nothing', setAt(['photos', 0, 'size'], -1), /^In photos, entry 1, size,/],
  ['a size in half bytes', setAt(['photos', 0, 'size'], 1.5), /^In photos, entry 1, size,/],
  ['half a letter', setAt(['job', 'name'], 'a\ud800'), /letters in it that cannot be kept/],
  ['the letter that ends texts', setAt(['facts', 0, 'typed'], 'a\0b'), /letters in it that cannot be kept/],
  ['a name as long as a book', setAt(['job', 'name'], 'x'.repeat(301)), /^In job, name,/],
  ['an answer longer than anybody types', setAt(['facts', 0, 'typed'], ' '.repeat(1001)), /^In facts, entry 1, typed,/],
  [
    'more facts than a job has',
    (file) =>
      setAt(
        ['facts'],
        Array.from({ length: 5001 }, () => 0),
      )(file),
    /^In facts, something|^In facts, entry/,
  ],
];

const soundText = (): string => asText(sound());

const broken: readonly (readonly [string, () => string, RegExp])[] = [
  ['nothing at all', () => '', /not JSON/],
  ['a file cut short', () => soundText().slice(0, -20), /not JSON/],
  ['a file of more than a megabyte', () => `${soundText()}${' '.repeat(1_000_000)}`, /larger than 1 MB/],
  ['a well a hundred thousand brackets deep', () => '['.repeat(100_000), /nested deeper/],
  ['a deep value in a sound file', () => soundText().replace('"4 in"', `${'['.repeat(40)}${']'.repeat(40)}`), /nested/],
  ['__proto__', () => soundText().replace('"name":', '"__proto__":{"kinds":["lead"]},"name":'), /named “__proto__”/],
  ['constructor', () => soundText().replace('{"facts":{', '{"constructor":1,"facts":{'), /named “constructor”/],
  ['prototype deep in a value', () => soundText().replace('{"says":', '{"prototype":{},"says":'), /named “prototype”/],
  ['a number beyond counting', () => soundText().replace('"size":81234', '"size":1e999'), /beyond counting/],
];

describe('a job file that means harm or is spoiled', () => {
  const store = () => {
    const there = storeAt().scoped('another crew');
    there.openSheet({ ...ladder, name: 'theirs' });
    return there;
  };
  const refusal = (there: ScopedStore, text: string): string => {
    const read = there.importJob(text, { who: 'bo' });
    return 'rejected' in read ? read.rejected : 'taken';
  };

  for (const [what, text, says] of [
    ...spoiled.map(([what, spoil, says]) => [what, () => asText(spoil(sound())), says] as const),
    ...broken,
  ]) {
    it(`with ${what} is refused in a sentence, and changes nothing`, () => {
      const there = store();
      const before = there.exportJob(1);
      expect(refusal(there, text())).toMatch(says);
      expect(there.listSheets({ limit: 9 }).map(({ number }) => number)).toEqual([1]);
      expect(there.exportJob(1)).toEqual(before);
      expect(there.openSheet(ladder).number).toBe(2);
    });
  }

  it('never throws and never leaves half a job, whatever is changed in it', () => {
    const there = store();
    const text = soundText();
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(12), fc.string({ maxLength: 12 }), (at, length, put) => {
        const before = there.listSheets({ limit: 999 }).length;
        const said = refusal(there, text.slice(0, at) + put + text.slice(at + length));
        expect(there.listSheets({ limit: 999 }).length).toBe(said === 'taken' ? before + 1 : before);
      }),
      { numRuns: 300 },
    );
  });
});

describe('what was brought in', () => {
  it('goes out and comes in again with the same photo hung here beside it, which then counts once', () => {
    const here = crew();
    const number = broughtInto(here, asText(here.exportJob(worked(here))));
    for (const step of ['S05', 'S06']) here.addPhoto(number, { ...photo, step });
    const file = here.exportJob(number);
    expect(file.photos.map(({ step }) => step)).toEqual(['S04', 'S05', 'S05', 'S06']);
    const there = storeAt().scoped('another crew');
    const photos = there.exportJob(broughtInto(there, asText(file))).photos;
    expect(photos.map(({ list, step }) => [list, step])).toEqual(
      ['S04', 'S05', 'S06'].map((step) => ['imported: swap', step]),
    );
  });

  it('is erased with its sheet, and a name in it can be forgotten, in the file too', () => {
    const here = crew();
    here.saveMember({ ...lee, who: 'Quillon', name: 'Quillon' }, office);
    const { number } = here.openSheet({ channel: 'x', who: 'Quillon', name: 'Elm' });
    here.addFact(number, answer('collar', '4 in', { who: 'Quillon' }));
    here.addWalkEvent(number, happened('e-1', { step: 'own-lock@Quillon', who: 'Quillon', value: { who: 'Quillon' } }));
    here.addPhoto(number, { ...photo, who: 'Quillon' });
    const text = asText(here.exportJob(number));

    const place = folder();
    const there = storeAt(join(place, 'records.sqlite')).scoped('another crew');
    const holding = () => readdirSync(place).filter((name) => readFileSync(join(place, name)).includes('Quillon'));
    const [kept, gone] = [broughtInto(there, text), broughtInto(there, text)];
    expect(holding()).not.toEqual([]);
    there.eraseSheet(gone);
    expect(there.findSheet(gone)).toBeUndefined();
    expect(there.forgetPerson(['Quillon'])).toBeGreaterThan(0);
    expect(holding()).toEqual([]);
    const record = there.sheetAsJson(kept);
    expect(record.facts[0]?.who).toBe('imported: someone');
    expect(record.walkEvents[0]).toMatchObject({
      step: 'own-lock@someone',
      who: 'imported: someone',
      standing: { name: 'someone', qualifications: [{ number: 'someone' }] },
    });
    expect(asText(there.exportJob(kept))).not.toContain('Quillon');
  });

  it('goes with the closed jobs the crew wants kept no longer', () => {
    const here = crew();
    const number = worked(here);
    here.closeSheet(number, { who: 'ann' });
    const text = asText(here.exportJob(number));
    let now = new Date('2026-03-03T00:00:00Z');
    const store = storeAt(':memory:', () => now);
    const there = store.scoped('another crew');
    there.saveRetention(12, office);
    const copy = broughtInto(there, text);
    expect(there.findSheet(copy)?.state).toBe('closed');
    now = new Date('2027-03-03T00:00:00Z');
    expect(store.tidy().sheets).toBe(1);
    expect(there.findSheet(copy)).toBeUndefined();
  });
});
