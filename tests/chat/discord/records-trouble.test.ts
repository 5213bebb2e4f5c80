import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, it, onTestFinished, vi } from 'vitest';
import { recordsTroubleText } from '#chat/discord/records-trouble.ts';
import { StoreTrouble } from '#store/trouble.ts';
import { contentsOf } from '../../store/contents.ts';
import { folder } from '../../store/workbench.ts';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { startBot } from './bot.ts';
import { question, quickly } from './stage.ts';

/** The bot on a file, with the very connection its records go through. */
async function scene() {
  const file = join(folder(), 'records.sqlite');
  const standIn = await startStandIn({ patience: 15_000 });
  const watching = vi.spyOn(Database.prototype, 'pragma');
  const bot = await startBot(standIn, { file, draw: quickly });
  const db = (watching.mock.contexts as Database.Database[]).find(({ name }) => name === file);
  watching.mockRestore();
  if (!db) throw new Error('the records were not opened');
  onTestFinished(async () => {
    await bot.stop();
    await standIn.close();
    expect(standIn.violations).toEqual([]);
  });
  const ann = standIn.user();
  const asked = await ann.slash('size', { 'room-length': '8 ft' });
  return { bot, ann, file, db, asked };
}

const shownAs = (message: string) => ({ ephemeral: true, content: expect.stringContaining(message) });

it('with a full disk a person hears so, nothing is half kept, and with room again the answer is taken', async () => {
  const { bot, ann, file, db, asked } = await scene();
  const before = contentsOf(file);
  db.pragma(`max_page_count = ${db.pragma('page_count', { simple: true })}`);
  // What still fits on the last page is kept, so it is filled first.
  let said = await ann.slash('help');
  for (let fits = 0; fits < 400 && !said.content.startsWith('The disk'); fits += 1) said = await ann.slash('help');
  expect(said).toMatchObject(
    shownAs('The disk is full, so that was not kept. Write it down, tell whoever runs this bot'),
  );
  expect(said.content).not.toContain(file);
  expect(bot.logged.at(-1)).toMatchObject({
    level: 'error',
    what: 'an event could not be answered',
    error: 'StoreTrouble',
  });
  const rows = (text: string) => text.split('\n').filter((line) => line.startsWith('facts ')).length;
  expect(rows(contentsOf(file))).toBe(rows(before));
  db.pragma('max_page_count = 1000000');
  expect(question(await ann.press(asked, "Don't know"))).not.toBe(question(asked));
});

it('while another program holds the records a person is asked to try again, and then it works', async () => {
  const { ann, file, asked } = await scene();
  const browser = new Database(file);
  browser.exec('BEGIN IMMEDIATE');
  expect(await ann.press(asked, "Don't know")).toMatchObject(shownAs('The records are busy just now'));
  browser.close();
  expect(question(await ann.press(asked, "Don't know"))).not.toBe(question(asked));
});

it('every trouble is told in sentences without a path of the machine', () => {
  for (const code of ['full', 'read-only', 'corrupt', 'locked', 'other'] as const) {
    const text = recordsTroubleText(new StoreTrouble(code, 'data/fanwright.sqlite is in trouble'));
    expect(text).not.toContain('fanwright.sqlite');
    expect(text).toMatch(/^The (disk|records) .*not kept\..* What was kept before is not touched\.$/);
  }
});
