import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import { keptFiles } from '#chat/terminal/reply-files.ts';
import { secretsCheck } from '#operation/machine-checks.ts';
import { openStore } from '#store/store.ts';

/** A folder that was there before, which everybody on the machine may look into. */
function openFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  chmodSync(folder, 0o755);
  return folder;
}

/** What others may do with each file of a folder; the lock beside the records holds nothing. */
const openToOthers = (folder: string): readonly string[] =>
  readdirSync(folder).filter(
    (name) =>
      !name.endsWith('.lock') &&
      statSync(join(folder, name)).isFile() &&
      (statSync(join(folder, name)).mode & 0o077) !== 0,
  );

it('the records, their log and their copies are their owner’s alone, whoever made the folder', async () => {
  const folder = openFolder();
  const file = join(folder, 'records.sqlite');
  const store = openStore(file);
  store.scoped('crew').openSheet({ channel: 'jobs', who: 'ana', name: 'Elm' });
  expect(readdirSync(folder)).toContain('records.sqlite-wal');
  expect(openToOthers(folder)).toEqual([]);
  const backing = store.backup(join(folder, 'copy.sqlite'));
  expect(openToOthers(folder)).toEqual([]);
  await backing;
  store.close();
  expect(openToOthers(folder)).toEqual([]);
});

it('so is the copy kept before the records are brought up to date', () => {
  const folder = openFolder();
  const file = join(folder, 'records.sqlite');
  const earlier = new Database(file);
  earlier.exec(readFileSync(new URL('../store/fixtures/version-1.sql', import.meta.url), 'utf8'));
  earlier.close();
  chmodSync(file, 0o600);
  openStore(file).close();
  expect(readdirSync(folder)).toContain('records.sqlite.version-1');
  expect(openToOthers(folder)).toEqual([]);
});

it('so is a paper or a list in the terminal’s folder, and its name leads nowhere else', async () => {
  const folder = openFolder();
  mkdirSync(join(folder, 'charts'));
  const names = ['../../job-1.json', '/etc/job.csv', 'job-1.json'];
  const files = names.map((name) => ({ name, type: 'text/csv' as const, text: 'Elm' }));
  const said = await keptFiles(join(folder, 'charts'), { headline: '', findings: [], files });
  expect(said.every((line) => line.startsWith(`File: ${join(folder, 'charts')}/`))).toBe(true);
  expect(readdirSync(join(folder, 'charts'))).toHaveLength(3);
  expect(openToOthers(join(folder, 'charts'))).toEqual([]);
});

it('a backup does not follow a link that lies in its place', async () => {
  const folder = openFolder();
  const store = openStore(join(folder, 'records.sqlite'));
  onTestFinished(() => store.close());
  symlinkSync(join(folder, 'elsewhere.sqlite'), join(folder, 'copy.sqlite.part'));
  symlinkSync(join(folder, 'elsewhere.sqlite'), join(folder, 'copy.sqlite'));
  await store.backup(join(folder, 'copy.sqlite'));
  expect(readdirSync(folder)).not.toContain('elsewhere.sqlite');
});

it('the doctor says where records of before can be read by others', () => {
  const file = join(openFolder(), 'records.sqlite');
  openStore(file).close();
  chmodSync(file, 0o644);
  expect(secretsCheck(file, 'the records')).toMatchObject([
    { state: 'note', says: `Keep the records to yourself: chmod 600 ${file}` },
  ]);
});
