import { execFileSync, spawn } from 'node:child_process';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statfsSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStore } from '#store/store.ts';
import { type Ended, ended, started } from '../chat/terminal/program.ts';
import { contentsOf } from '../store/contents.ts';
import { answer, ladder } from '../store/workbench.ts';

const loader = import.meta.resolve('tsx');
const preload = `--import=${loader} --import=${new URL('./full-disk.ts', import.meta.url).href}`;
const main = join(import.meta.dirname, '../../src/main.ts');

/** As somebody who may not write what others own: root may, so as root it is tried as nobody. */
function startedAsOrdinaryUser(folder: string, environment: Readonly<Record<string, string>>) {
  const nobody = process.geteuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
  return spawn(process.execPath, ['--import', loader, main], {
    cwd: folder,
    env: { PATH: process.env['PATH'], HOME: folder, ...environment },
    stdio: ['pipe', 'pipe', 'pipe'],
    ...nobody,
  });
}

/** A disk of its own for one file, full to the last byte; nothing where this process may not make one. */
function fullDisk(place: string): { readonly file: string; readonly gone: () => void } | undefined {
  mkdirSync(place);
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=4m', 'tmpfs', place], { stdio: 'ignore' });
  } catch {
    return undefined;
  }
  const file = join(place, 'records.sqlite');
  filled(file);
  const { bavail, bsize } = statfsSync(place);
  writeFileSync(join(place, 'photos'), new Uint8Array(bavail * bsize));
  return { file, gone: () => execFileSync('umount', [place]) };
}

function filled(file: string): void {
  const store = openStore(file);
  const crew = store.scoped('terminal');
  const { number } = crew.openSheet({ ...ladder, name: 'Elm' });
  for (let count = 0; count < 50; count += 1) crew.addFact(number, answer('note', `${count}${'x'.repeat(500)}`));
  store.close();
}

// Starting takes a second on a machine at rest, so all are started together.
describe('the program on records it cannot work with', { timeout: 300_000 }, () => {
  const home = mkdtempSync(join(tmpdir(), 'fanwright-'));
  const file = (name: string) => join(home, `${name}.sqlite`);
  const bytes: Record<string, Buffer> = {};
  let disk: ReturnType<typeof fullDisk>;
  let browser: Database.Database;
  let runs: Readonly<Record<string, Promise<Ended>>>;

  beforeAll(() => {
    disk = fullDisk(join(home, 'disk'));
    for (const name of ['corrupt', 'newer', 'busy', 'full', 'read-only', 'copied']) filled(file(name));
    const damaged = readFileSync(file('corrupt'));
    damaged.fill(0xff, damaged.length - 3 * 4096, damaged.length - 2 * 4096);
    writeFileSync(file('corrupt'), damaged);
    const later = new Database(file('newer'));
    later.pragma('user_version = 99');
    later.close();
    chmodSync(home, 0o755);
    chmodSync(file('read-only'), 0o444);
    chmodSync(`${file('read-only')}.lock`, 0o666);
    browser = new Database(file('busy'));
    browser.exec('BEGIN IMMEDIATE');
    for (const name of ['corrupt', 'newer', 'full', 'read-only']) bytes[name] = readFileSync(file(name));
    const run = (
      name: string,
      more: Readonly<Record<string, string>> = {},
      lines = '',
      words: readonly string[] = [],
    ) => ended(started(home, words, { FANWRIGHT_DB: file(name), FANWRIGHT_BACKUP_HOURS: '0', ...more }), lines);
    runs = {
      corrupt: run('corrupt'),
      newer: run('newer'),
      busy: run('busy'),
      full: run('full', { NODE_OPTIONS: preload }, 'job open name=Oak\n'.repeat(150)),
      ...(disk ? { disk: run('disk', { FANWRIGHT_DB: disk.file }) } : {}),
      'read-only': ended(startedAsOrdinaryUser(home, { FANWRIGHT_DB: file('read-only') })),
      backup: run('copied', { FANWRIGHT_BACKUPS: join(home, 'copies') }, '', ['backup']),
      health: run('copied', {}, '', ['health']),
    };
  }, 60_000);

  afterAll(() => {
    browser.close();
    disk?.gone();
    rmSync(home, { recursive: true, force: true });
  });

  it.each([
    ['corrupt', /corrupt\.sqlite is damaged, so restore the latest backup or name another file in FANWRIGHT_DB\.\n$/],
    [
      'newer',
      /newer\.sqlite was written by a newer Fanwright \(version 99, this one knows \d+\), so update the program/,
    ],
    [
      'read-only',
      /read-only\.sqlite cannot be written, so allow writing to the file and to its folder or name another/,
    ],
    ['busy', /busy\.sqlite is held by another program, so close that program and try again\.\n$/],
  ])('%s: ends with 1 and one sentence, and leaves the file as it was', async (name, sentence) => {
    const { code, out, errors } = (await runs[name]) as Ended;
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(errors).toMatch(sentence);
    expect(errors.trim().split('\n')).toHaveLength(1);
    if (bytes[name]) expect(readFileSync(file(name)).equals(bytes[name])).toBe(true);
  });

  it('a disk that fills up while somebody types: says so, goes on, keeps nothing by halves, and ends with 1', async () => {
    const { code, out, errors } = (await runs['full']) as Ended;
    const read = out.replaceAll(/\s+/g, ' ');
    expect(read).toContain(`There is no room left for ${file('full')}, so free some disk space and try again.`);
    expect({ code, errors }).toEqual({ code: 1, errors: '' });
    const db = new Database(file('full'));
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(db.prepare("SELECT count(*) FROM facts WHERE fact = 'note'").pluck().get()).toBe(50);
    db.close();
  });

  it('a disk that is full already: ends with 1 and one sentence', async (context) => {
    if (!disk) return context.skip('no disk of its own can be mounted here; the test before fills the file instead');
    const { code, out, errors } = (await runs['disk']) as Ended;
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(errors).toMatch(/^There is no room left for \S+records\.sqlite, so free some disk space and try again\.\n$/);
    rmSync(join(home, 'disk', 'photos'));
    const store = openStore(disk.file);
    expect(store.scoped('terminal').findSheet('elm')?.number).toBe(1);
    store.close();
  });

  it('backup by hand: says where it is, and it holds everything; health without a file: says what to set', async () => {
    const { code, out, errors } = (await runs['backup']) as Ended;
    expect({ code, errors }).toEqual({ code: 0, errors: '' });
    const [name = ''] = readdirSync(join(home, 'copies'));
    expect(out).toBe(`Backed up ${file('copied')} to ${join(home, 'copies', name)}.\n`);
    expect(contentsOf(join(home, 'copies', name))).toBe(contentsOf(file('copied')));
    expect(await runs['health']).toMatchObject({ code: 1, out: expect.stringContaining('FANWRIGHT_HEALTH') });
  });
});
