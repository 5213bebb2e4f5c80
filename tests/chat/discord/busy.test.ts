import { InteractionResponseType } from 'discord.js';
import { describe, expect, it } from 'vitest';
import { question, stage } from './stage.ts';

const play = stage({ bot: { behind: () => true } });

const duct = {
  'fan-curve': '96@0 84@0.1 66@0.25 0@0.5',
  collar: '4 in',
  'duct-run': '14 ft 4 in flex; 2 x elbow 90; wall cap',
  'airflow-needed': '50 cfm',
  'fan-settings': 'none',
  'rated-sones': '1.5',
};

/** How the events since were first answered, in order. */
function firstAnswers(from: number): readonly unknown[] {
  return play.standIn.requests
    .slice(from)
    .filter(({ path }) => path.endsWith('/callback'))
    .map(({ body }) => (body as { type?: unknown }).type);
}

const { ChannelMessageWithSource, DeferredChannelMessageWithSource, UpdateMessage } = InteractionResponseType;

describe('a bot that is behind', () => {
  it('promises an answer before it works on it, and then gives it whole, with its chart', async () => {
    const { ann } = play.crew();
    const from = play.standIn.requests.length;
    const reply = await ann.slash('duct', duct);
    expect(firstAnswers(from)).toEqual([DeferredChannelMessageWithSource]);
    expect(reply.thinking).toBe(false);
    expect(reply.ephemeral).toBe(false);
    expect(reply.embeds[0]?.title).toMatch(/^About \d+ cfm/);
    expect(reply.files.map(({ name }) => name)).toEqual(['duct.png']);
    expect(reply.earlier).toHaveLength(0);
  });

  it('asks as it would have, and goes on by presses, which are answered at once', async () => {
    const { ann } = play.crew();
    const asked = await ann.slash('size', { 'room-length': '8 ft', 'room-width': '5 ft' });
    expect(question(asked)).toContain('How high');
    const from = play.standIn.requests.length;
    expect(question(await ann.press(asked, "Don't know"))).toContain('What stands in the room?');
    expect(firstAnswers(from)).toEqual([UpdateMessage]);
  });

  it('is told twice and answers once, without a complaint that the first was promised already', async () => {
    const { ann, channel } = play.crew();
    const from = play.standIn.requests.length;
    const reply = await ann.slash('duct', duct, { twice: true });
    expect(reply.embeds[0]?.title).toMatch(/^About \d+ cfm/);
    await play.standIn.until(() => (firstAnswers(from).length === 2 ? true : undefined));
    expect(play.standIn.messages(channel)).toHaveLength(1);
  });

  it('says at once what takes no time', async () => {
    const { ann } = play.crew();
    const from = play.standIn.requests.length;
    expect((await ann.slash('help')).text).toContain('**size**');
    expect(firstAnswers(from)).toEqual([ChannelMessageWithSource]);
  });
});
