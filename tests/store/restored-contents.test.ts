import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import { backUpFile, restoreStore } from '#store/backup.ts';
import { openStore } from '#store/store.ts';
import { contentsOf } from './contents.ts';
import { answer, clock, folder, ladder, storeAt } from './workbench.ts';

/** A day on which none of those talks is long over. */
const now = clock('2025-02-15T08:00:00.000Z');

/** Records with rows in every table, from an invented crew. */
function everyTable(): string {
  const path = join(folder(), 'records.sqlite');
  const db = new Database(path);
  db.exec(readFileSync(join(import.meta.dirname, 'fixtures', 'version-5.sql'), 'utf8'));
  db.close();
  openStore(path, { now }).close();
  return path;
}

const tables = (contents: string) => [...new Set(contents.match(/^[a-z_]+(?= \{)/gm))];

it('what is restored is what was backed up, table by table and row by row', async () => {
  const path = everyTable();
  const copy = join(folder(), 'copy.sqlite');
  const store = storeAt(path, now);
  const before = contentsOf(path);
  expect(tables(before)).toEqual(
    expect.arrayContaining([
      'crews',
      'facts',
      'walk_events',
      'photos',
      'talks',
      'crew_members',
      'shelf_fans',
      'seen',
      'notes',
    ]),
  );
  await store.backup(copy);
  const crew = store.scoped('300000000000000001');
  crew.addFact(3, answer('collar', '8 in'));
  crew.eraseSheet(1);
  store.close();
  expect(contentsOf(path)).not.toBe(before);
  restoreStore({ from: copy, to: path });
  expect(contentsOf(path)).toBe(before);
  // And once more through the program itself, which adds nothing of its own.
  openStore(path, { now }).close();
  expect(contentsOf(path)).toBe(before);
});

it('a copy asked for while another process goes on writing is whole and holds what was kept by then', {
  timeout: 120_000,
}, async () => {
  const path = join(folder(), 'records.sqlite');
  const script = fileURLToPath(new URL('./another-instance.ts', import.meta.url));
  const writer = spawn(process.execPath, ['--import', 'tsx', script, 'answers', path], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(writer, 'close');
  onTestFinished(async () => {
    writer.kill('SIGKILL');
    await ended;
  });
  let kept = 0;
  createInterface({ input: writer.stdout }).on('line', (line) => {
    kept = Number(line) || kept;
  });
  const copy = join(folder(), 'copy.sqlite');
  for (const least of [20, 60]) {
    await expect.poll(() => kept, { timeout: 60_000 }).toBeGreaterThan(least);
    const before = kept;
    await backUpFile(path, copy);
    const opened = openStore(copy);
    const facts = [...opened.scoped('crew').newestFacts(1).values()].map(({ value }) => value);
    opened.close();
    expect(facts.length).toBeGreaterThanOrEqual(before);
    expect(facts).toEqual(Array.from({ length: facts.length }, (_, index) => index + 1));
  }
  const then = kept;
  await expect.poll(() => kept, { timeout: 60_000 }).toBeGreaterThan(then);
});

it('records a crew just made are copied too', async () => {
  const path = join(folder(), 'records.sqlite');
  const store = storeAt(path);
  const { number } = store.scoped('crew').openSheet({ ...ladder, name: 'Elm' });
  const copy = join(folder(), 'copy.sqlite');
  await backUpFile(path, copy);
  expect(storeAt(copy).scoped('crew').findSheet('elm')?.number).toBe(number);
  await expect(backUpFile(join(folder(), 'none.sqlite'), copy)).rejects.toMatchObject({
    message: expect.stringMatching(/^There are no records at .*, so check FANWRIGHT_DB\.$/),
  });
});
