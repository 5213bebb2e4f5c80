import { expect, it } from 'vitest';
import { optionsFrom, wordsOf } from '#chat/options.ts';
import { commands } from '#commands/index.ts';
import { labels, stage } from './stage.ts';

// The examples of the commands; every house and fan in them is invented.

const play = stage();
const answering = commands.flatMap((command) => (command.kind === 'answer' ? [[command.name, command] as const] : []));

it.each(answering)('a crew that reads both systems has /%s within what the platform takes', async (_, command) => {
  const { guild, channel } = play.crew();
  const lead = play.standIn.user({ name: 'Lee', guild, channel, permissions: ['ManageGuild'] });
  expect((await lead.slash('crew set', { units: 'both' })).text).toContain('both');
  const { values } = optionsFrom(
    wordsOf(command.example),
    command.takes.map(({ id }) => id),
    command.inWords?.id,
  );
  let message = await lead.slash(command.name, values);
  while (message.embeds.length === 0) message = await lead.press(message, "Don't know");
  expect(message.text).not.toMatch(/undefined|NaN|\[object/);
  // The sums are longer still: they come as a message or, past its size, as a file.
  for (const label of labels(message).filter((each) => each.startsWith('Show '))) {
    const shown = await lead.press(message, label);
    expect(shown.content.length + shown.files.length).toBeGreaterThan(0);
  }
});
