import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import crew from '#commands/crew.ts';
import duct from '#commands/duct.ts';
import handoff from '#commands/handoff.ts';
import job from '#commands/job.ts';
import swap from '#commands/swap.ts';
import type { ScopedStore } from '#store/store.ts';
import { answer, folder, happened, ladder, photo, storeAt } from '../store/workbench.ts';
import { dialogue, done, wordsOfReply } from './at-a-desk.ts';

const commands = [swap, handoff, crew, job, duct];

const fileOf = (store: ScopedStore, options: Readonly<Record<string, string>> = {}): string => {
  const [file] = done(job, 'export', options, { store, commands }).files ?? [];
  if (!file) throw new Error('there is no file');
  return file.text;
};

const brought = (store: ScopedStore, text: string) => done(job, 'import', { json: text }, { store, commands });

/** A crew with Ana who leads and Ben who learns. */
function hired(scope = 'crew') {
  const store = storeAt(':memory:', () => new Date()).scoped(scope);
  const speaking = { store, commands };
  done(crew, 'add', { person: 'Ana', as: 'lead' }, speaking);
  done(crew, 'add', { person: 'Ben', as: 'apprentice' }, speaking);
  const say = (action: string, options: Readonly<Record<string, string>>) => done(swap, action, options, speaking);
  return { store, speaking, say };
}

/** What Ben finds when he loads the truck, step by step; then Ana signs. */
function loadedTruck() {
  const { store, speaking, say } = hired();
  done(job, 'open', { name: '14 Maple St' }, speaking);
  say('start', { list: 'before-leaving-the-shop', as: 'Ben' });
  const found = {
    B01: 'same',
    B02: 'yes',
    B03: '120 V',
    B04: '2',
    B05: 'sound',
    B06: 'yes',
    B07: 'coming',
    B08: 'yes',
  };
  for (const [step, value] of Object.entries(found)) say('done', { step, value, as: 'Ben' });
  say('sign', { step: 'B09', confirm: 'yes', as: 'Ana' });
  return store;
}

describe('a job brought in from a file', () => {
  it('opens no hold: what a lead of the same name signed elsewhere is signed anew here', () => {
    const text = fileOf(loadedTruck());
    const { store, speaking, say } = hired('another crew');
    const reply = brought(store, text);
    expect(reply.headline).toBe('Brought in as Job 1, 14 Maple St, with 0 answers. /job open 1 opens it.');
    expect(wordsOfReply(reply)).toContain('no signature, proof of being dead or reading in it counts here');
    done(job, 'open', { name: '1' }, speaking);
    expect(say('status', { as: 'Ana' }).headline).toBe('No list is started on this job. /swap start makes one.');
    say('start', { list: 'before-leaving-the-shop', as: 'Ben' });
    const status = wordsOfReply(say('status', { as: 'Ben' }));
    expect(status).toContain('0 of 9');
    expect(status).toContain('Truck checked (B09)');
    expect(say('sign', { step: 'B09', confirm: 'yes', as: 'Ana' }).headline).toMatch(/^Not yet: 8 still open/);
  });

  it('takes no precaution off the list by the word of somebody in the file', () => {
    const here = hired();
    done(job, 'open', { name: 'Elm' }, here.speaking);
    here.store.addFact(1, answer('roof-work', 'none', { who: 'Ana' }));
    const steps = (reply: { headline: string }) => Number(/: (\d+) steps/.exec(reply.headline)?.[1]);
    const there = hired('another crew');
    brought(there.store, fileOf(here.store));
    done(job, 'open', { name: '1' }, there.speaking);
    const withWord = here.say('start', { as: 'Ana' });
    const started = there.say('start', { as: 'Ana' });
    expect(steps(started)).toBeGreaterThan(steps(withWord));
    expect(wordsOfReply(started)).toContain('whoever said it is not in the crew');
  });

  it('is in the record for the file as what the file says, and the occupant’s page says nothing of it', () => {
    const text = fileOf(loadedTruck());
    const { store, speaking } = hired('another crew');
    brought(store, text);
    const [occupant, record] = done(handoff, '', { job: '1' }, speaking).papers ?? [];
    expect(JSON.stringify(record?.paper)).toContain('Brought in from a file: Before leaving the shop');
    expect(JSON.stringify(record?.paper)).toContain('Nothing in it was signed or proven here.');
    expect(JSON.stringify(occupant?.paper)).toContain('The work is not finished');
  });

  it('says where two jobs have one name, and what retention will do', () => {
    const { store, speaking } = hired();
    done(job, 'open', { name: '14 Maple St' }, speaking);
    store.closeSheet(1, { who: 'Ana' });
    const file = JSON.parse(fileOf(store, { name: '1' }));
    file.job = { ...file.job, openedAt: '2020-01-01T00:00:00.000Z', closedAt: '2020-02-01T00:00:00.000Z' };
    store.saveRetention(12, { who: 'Ana' });
    const said = wordsOfReply(brought(store, JSON.stringify(file)));
    expect(said).toContain('Job 1 has the same name');
    expect(said).toContain('will be erased with the next tidying');
  });

  it('comes out of a terminal’s file and goes into another, and a bad file is refused in a sentence', async () => {
    const path = join(folder(), 'job.json');
    writeFileSync(path, fileOf(loadedTruck()));
    const store = storeAt(':memory:', () => new Date()).scoped('terminal');
    expect(await dialogue({ store, commands }, `job import ${path}`)).toContain('Brought in as Job 1, 14 Maple St');
    writeFileSync(path, '{"format":"fanwright-job","version":1,"__proto__":{}}');
    const refused = await dialogue({ store, commands }, `job import ${path}`, 'job import');
    expect(refused.replace(/\s+/g, ' ')).toContain('Nothing was brought in. There is a field named “__proto__” in it');
    expect(refused).toContain('Give the JSON file that /job export wrote.');
    expect(store.listSheets({ limit: 9 })).toHaveLength(1);
  });
});

describe('a job as rows for a spreadsheet', () => {
  /** Cells, taken apart by the rules of RFC 4180 and by nothing of ours. */
  const cells = (csv: string): string[] =>
    [...csv.replace(/^\ufeff/, '').matchAll(/("(?:[^"]|"")*"|[^,\r\n]*)(?:,|\r\n)/g)].map(([, cell = '']) =>
      cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell,
    );

  const evil = [
    '=1+1',
    '+1',
    '-1',
    '@SUM(A1)',
    '\t=1',
    '\r=1',
    '\n=1',
    '=HYPERLINK("x","y")',
    '＝1',
    '＋1',
    '－1',
    '＠x',
  ];

  it('starts no cell with what a spreadsheet takes for a formula, wherever it was typed', () => {
    const store = storeAt().scoped('crew');
    for (const bad of evil) {
      const { number } = store.openSheet({ ...ladder, name: bad, who: bad });
      store.addFact(number, answer(bad, bad, { who: bad }));
      store.retractNewest(number, { who: bad });
      store.addWalkEvent(number, happened(`w ${bad}`, { list: bad, step: bad, what: bad, value: bad, who: bad }));
      store.addWalkEvent(number, happened(`v ${bad}`, { value: { [bad]: bad }, who: bad }));
      store.addPhoto(number, { ...photo, list: bad, step: bad, message: bad, checksum: bad, who: bad });
      const csv = fileOf(store, { name: String(number), as: 'csv' });
      expect(cells(csv).length).toBeGreaterThan(50);
      expect(cells(csv).filter((cell) => /^[\s]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/.test(cell))).toEqual([]);
    }
  });

  it('has a row for each thing, by the names the crew knows', () => {
    const { store, speaking } = hired();
    done(job, 'open', { name: '14 Maple St' }, speaking);
    store.addFact(1, answer('collar', '4 in', { who: 'Ana' }));
    store.addPhoto(1, photo);
    const csv = fileOf(store, { as: 'csv' });
    expect(csv.split('\r\n')[0]).toBe('\ufeffpart,what,answer,how known,by,when,entered,list,note');
    expect(csv).toMatch(/\r\nanswer,[^,]+,4 in,measured,Ana,/);
    expect(csv).toMatch(/\r\nphoto,S04,thread-1\/900,,apprentice,/);
  });
});
