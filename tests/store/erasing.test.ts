import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '#store/store.ts';
import { answer, clock, folder, ladder, storeAt, troubleFrom } from './workbench.ts';

/** Which files in the folder still hold the text, whatever they are called. */
const holding = (place: string, text: string): string[] =>
  readdirSync(place).filter((name) => readFileSync(join(place, name)).includes(text));

/**
 * Rows of uneven length that grow, so that pages fill, split and leave copies of moved rows in their unused parts. With these
 * very rows a name is still found there after overwriting alone: erasing must write the file anew.
 */
function busyStore(place: string) {
  const store = storeAt(join(place, 'records.sqlite'));
  const crew = store.scoped('crew');
  const sheets = ['ZEBEDEE', 'Oak', 'Ash'].map((name) => crew.openSheet({ ...ladder, name }).number);
  const [elm, oak] = sheets as [number, number];
  const talks: { id: string; revision: number; says: string }[] = [];
  let seed = 6;
  const upTo = (most: number): number => {
    // The minimal standard generator of Park and Miller, 1988, with the later multiplier: the same rows in every run.
    seed = (seed * 48271) % 2147483647;
    return seed % most;
  };
  const busyTurn = (count: number) => {
    const sheet = sheets[upTo(3)] ?? oak;
    const says = sheet === elm ? 'ZEBEDEE' : 'ordinary';
    const text = says + 'x'.repeat(upTo(count % 50 === 0 ? 9000 : 300));
    crew.addFact(sheet, answer('note', text, { who: says }));
    const { id } = crew.startTalk({ ...ladder, sheet, command: 'duct', state: text });
    talks.push({ id, revision: 0, says });
    const older = talks[upTo(talks.length)];
    if (older) crew.saveTalk(older.id, { revision: older.revision++, state: older.says + 'z'.repeat(upTo(700)) });
    if (count % 7 === 0) crew.retractNewest(sheet, { who: says });
  };
  crew.together(() => {
    for (let count = 0; count < 400; count += 1) busyTurn(count);
  });
  return { store, crew, elm, oak };
}

describe('erasing a job', () => {
  it('leaves no trace of a name in any file, and everything else as it was', () => {
    const place = folder();
    const { crew, elm, oak } = busyStore(place);
    expect(holding(place, 'ZEBEDEE')).not.toEqual([]);
    const other = crew.sheetAsJson(oak);
    expect(crew.eraseSheet(elm)).toBe(true);
    expect(holding(place, 'ZEBEDEE')).toEqual([]);
    expect(crew.findSheet(elm)).toBeUndefined();
    expect(crew.sheetAsJson(oak)).toEqual(other);
    expect(crew.eraseSheet(elm)).toBe(false);
  });

  it('takes along the copies set aside before updates', () => {
    const place = folder();
    const path = join(place, 'records.sqlite');
    const crew = storeAt(path).scoped('crew');
    const { number } = crew.openSheet({ ...ladder, name: 'Elm' });
    writeFileSync(`${path}.version-1`, 'an earlier copy that names ZEBEDEE');
    crew.eraseSheet(number);
    expect(existsSync(`${path}.version-1`)).toBe(false);
  });

  it('says so when another program keeps traces from being cleared, and clears them at the next closing', () => {
    const place = folder();
    const path = join(place, 'records.sqlite');
    const store = openStore(path, { now: clock() });
    const { number } = store.scoped('crew').openSheet({ ...ladder, name: 'ZEBEDEE' });
    const browser = new Database(path, { readonly: true });
    browser.exec('BEGIN');
    browser.prepare('SELECT * FROM sheets').all();
    const trouble = troubleFrom(() => store.scoped('crew').eraseSheet(number));
    expect(trouble.code).toBe('locked');
    expect(trouble.message).toContain('traces stay');
    expect(store.scoped('crew').findSheet(number)).toBeUndefined();
    browser.exec('COMMIT');
    store.close();
    expect(holding(place, 'ZEBEDEE')).toEqual([]);
    browser.close();
  });

  it('inside other work leaves no trace once that is done, and is undone with it', () => {
    const place = folder();
    const crew = storeAt(join(place, 'records.sqlite')).scoped('crew');
    const { number } = crew.openSheet({ ...ladder, name: 'ZEBEDEE' });
    const failing = () =>
      crew.together(() => {
        crew.eraseSheet(number);
        throw new Error('the work failed');
      });
    expect(failing).toThrow('the work failed');
    expect(crew.findSheet(number)?.name).toBe('ZEBEDEE');
    const stillThere = crew.together(() => {
      crew.together(() => crew.eraseSheet(number));
      return holding(place, 'ZEBEDEE');
    });
    expect(stillThere).not.toEqual([]);
    expect(holding(place, 'ZEBEDEE')).toEqual([]);
  });
});

describe('erasing a crew', () => {
  it('leaves nothing of it, in the rows or in the bytes, and nothing of another crew is lost', () => {
    const place = folder();
    const { store, crew } = busyStore(place);
    crew.saveSetting('leads', { value: 'QUENTIN', who: 'QUENTIN' });
    const other = store.scoped('other crew');
    other.openSheet({ ...ladder, name: 'Ash' });
    other.saveSetting('units', { value: 'metric', who: 'lead' });
    const before = other.sheetAsJson(1);

    crew.eraseScope();
    expect(['ZEBEDEE', 'QUENTIN'].flatMap((name) => holding(place, name))).toEqual([]);
    expect(store.scopes()).toEqual(['other crew']);
    expect(crew.listSheets({ limit: 10 })).toEqual([]);
    expect(crew.setting('leads')).toBeUndefined();
    expect(other.sheetAsJson(1)).toEqual(before);
    expect(other.setting('units')).toBe('metric');
  });

  it('lets it begin again from nothing', () => {
    const crew = storeAt().scoped('crew');
    crew.openSheet({ ...ladder, name: 'Elm' });
    crew.eraseScope();
    crew.eraseScope();
    expect(crew.currentSheet(ladder)).toMatchObject({ number: 1, name: null });
  });
});
