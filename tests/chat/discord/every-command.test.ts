import { describe, expect, it } from 'vitest';
import { commands } from '#commands/index.ts';
import { labels, question, stage } from './stage.ts';

const play = stage();

/** More questions than any command asks. */
const most = 150;

describe('every command that asks', { timeout: 60_000 }, () => {
  it.each(commands.filter(({ kind }) => kind === 'answer').map(({ name }) => name))(
    '/%s comes to an answer when nobody knows anything, each message as the platform wants it',
    async (name) => {
      const { ann, channel } = play.crew();
      let message = await ann.slash(name);
      const first = message.id;
      for (let steps = 0; labels(message).includes("Don't know"); steps += 1) {
        expect(steps).toBeLessThan(most);
        const why = await ann.press(message, 'Why');
        expect(question(why)).toBe(question(message));
        message = await ann.press(why, "Don't know");
      }
      expect(message.id).toBe(first);
      expect(message.embeds.length).toBeGreaterThan(0);
      expect(message.text).not.toMatch(/undefined|NaN|\[object/);
      for (const label of labels(message).filter((each) => each.startsWith('Show '))) {
        const shown = await ann.press(message, label);
        expect(shown.ephemeral).toBe(true);
        expect(shown.content.length + shown.files.length).toBeGreaterThan(0);
      }
      expect(play.standIn.messages(channel)).toHaveLength(1);
    },
  );
});

describe('every command that keeps the books', { timeout: 60_000 }, () => {
  const actions = commands.flatMap((command) =>
    command.kind === 'desk'
      ? command.actions
          .filter(({ options }) => options.every(({ required }) => !required))
          .map(({ name }) => `${command.name} ${name}`.trim())
      : [],
  );
  it.each(actions)('/%s answers with nothing given', async (words) => {
    const { guild, channel } = play.crew();
    const lead = play.standIn.user({ name: 'Lee', guild, channel, permissions: ['ManageGuild'] });
    const message = await lead.slash(words);
    expect(message.text).not.toBe('');
    expect(message.text).not.toMatch(/undefined|NaN|\[object/);
  });
});
