import { beforeAll, expect, it } from 'vitest';
import demo from '#commands/demo.ts';
import { commands } from '#commands/index.ts';
import { demoHouse } from '#knowledge/demo-house.ts';
import { openStore } from '#store/store.ts';
import { done } from '../../commands/at-a-desk.ts';
import { labels, stage } from './stage.ts';

// Setting the papers of the hand-over takes a busy machine a while; the press is acknowledged before.
const play = stage({ platform: { patience: 30_000 } });

const { stops } = demoHouse;

beforeAll(() => {
  // What is made ready at the first use takes longer than the platform waits, on a machine that has all tests to do.
  const store = openStore(':memory:');
  stops.forEach((_, index) => {
    done(demo, '', { stop: String(index + 1) }, { store: store.scoped('crew'), commands });
  });
  store.close();
});

const nextTo = (place: number): string => `Next: ${stops[place]?.title}`;

it('/demo walks through all its stops with one button in one message, and leaves the channel’s sheet alone', {
  timeout: 60_000,
}, async () => {
  const { ann, guild, channel } = play.crew();
  await ann.slash('job open', { name: '14 Maple St' });
  let message = await ann.slash('demo');
  const { id } = message;
  for (let place = 1; place < stops.length; place += 1) {
    expect(message.content).toContain(`Demo, stop ${place} of ${stops.length}`);
    expect(message.content).toContain('invented');
    expect(labels(message)[0]).toBe(nextTo(place));
    message = await ann.press(message, nextTo(place));
    expect(message.id).toBe(id);
    expect(message.text).not.toMatch(/undefined|NaN|\[object/);
  }
  expect(labels(message)).toEqual(['Put the demo house away', 'Back']);
  const before = await ann.press(message, 'Back');
  expect(before.files.map(({ name }) => name)).toEqual([
    expect.stringMatching(/^occupant-job-\d+\.pdf$/),
    expect.stringMatching(/^record-job-\d+\.pdf$/),
  ]);
  const store = play.bot.store.scoped(guild.id);
  expect(store.currentSheet({ channel: channel.id, who: 'ann' }).name).toBe('14 Maple St');
  const away = await ann.press(await ann.press(before, nextTo(stops.length - 1)), 'Put the demo house away');
  expect(away.text).toContain('The demo house is put away');
  expect(store.listSheets({ limit: 9 }).map(({ name }) => name)).toEqual(['14 Maple St']);
});

it('a press of somebody else goes on too, and one from before the house was put away makes it anew', async () => {
  const { ann, guild, channel } = play.crew();
  const shown = await ann.slash('demo', { stop: '3' });
  expect(shown.text).toContain('This room needs 54 cfm');
  await ann.slash('demo', { stop: 'end' });
  const ben = play.standIn.user({ name: 'Ben', guild, channel });
  const next = await ben.press(shown, nextTo(3));
  expect(next.text).toContain('About 39 cfm');
});
