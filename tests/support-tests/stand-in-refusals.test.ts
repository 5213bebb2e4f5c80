import { MessageFlags } from 'discord.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Person } from '../support/stand-in/person.ts';
import { type StandIn, startStandIn } from '../support/stand-in/stand-in.ts';
import { listenForWarnings } from '../support/stand-in/warnings.ts';
import { type EchoBot, startEchoBot } from './echo-bot.ts';

const warnings = listenForWarnings();
let standIn: StandIn;
let bot: EchoBot;
let ann: Person;

beforeEach(async () => {
  standIn = await startStandIn();
  bot = await startEchoBot(standIn);
  ann = standIn.user();
});
afterEach(async () => {
  await bot.stop();
  await standIn.close();
  expect(warnings.said).toEqual([]);
});

const seconds = 1000;
const minutes = 60 * seconds;

/** Lets the bot hear of a command and does something before it answers. */
function whenHeard(act: () => void): void {
  bot.client.prependListener('interactionCreate', act);
}

/** Sends a request as the bot, past the chat library. */
const request = (method: string, path: string, body?: unknown) =>
  fetch(`${standIn.api}/v10${path}`, {
    method,
    headers: { authorization: `Bot ${standIn.token}`, 'content-type': 'application/json' },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });

interface Told {
  readonly code?: number;
  readonly content?: string;
}
const told = async (response: Response): Promise<Told> => (await response.json()) as Told;
const codeOf = async (response: Response) => [response.status, (await told(response)).code];

describe('an answer', () => {
  it('after three seconds is refused: unknown interaction', async () => {
    whenHeard(() => standIn.clock.advance(3.1 * seconds));
    ann.begin.slash('say', { words: 'Late' });
    await expect.poll(() => bot.errors).toEqual([10_062]);
    expect(standIn.messages()).toEqual([]);
  });

  it('within three seconds is taken', async () => {
    whenHeard(() => standIn.clock.advance(2.9 * seconds));
    expect((await ann.slash('say', { words: 'Just' })).content).toBe('Just');
  });

  it('given twice is refused the second time: already acknowledged', async () => {
    const { interactionId } = await ann.slash('say', { words: 'Once' });
    const [sent] = standIn.requests.filter(({ path }) => path.includes(interactionId ?? 'none'));
    const again = await request('POST', sent?.path ?? '', sent?.body);
    expect(await codeOf(again)).toEqual([400, 40_060]);
  });

  it('with a bad payload is refused with the places of what is wrong, and the judge keeps them', async () => {
    ann.begin.slash('say', { words: 'Too many', how: 'badly' });
    await expect.poll(() => bot.errors).toEqual([50_035]);
    expect(standIn.violations).toHaveLength(1);
    expect(standIn.violations[0]).toContain('data.components.0.components.0.options');
    const { status } = standIn.requests.at(-1) ?? {};
    expect(status).toBe(400);
  });

  it('may be edited for a quarter of an hour', async () => {
    const answer = await ann.slash('say', { words: 'Long ago' });
    const [sent] = standIn.requests.filter(({ path }) => path.includes(answer.interactionId ?? 'none'));
    const token = sent?.path.split('/')[3];
    const path = `/webhooks/${standIn.botId}/${token}/messages/@original`;
    const body = { content: 'Edited', allowed_mentions: { parse: [] } };
    standIn.clock.advance(14 * minutes);
    expect((await request('PATCH', path, body)).status).toBe(200);
    expect(ann.look(answer)?.content).toBe('Edited');
    standIn.clock.advance(2 * minutes);
    const late = await request('PATCH', path, body);
    expect(await codeOf(late)).toEqual([401, 50_027]);
  });

  it('can be looked at and taken away', async () => {
    const answer = await ann.slash('say', { words: 'Gone' });
    const [sent] = standIn.requests.filter(({ path }) => path.includes(answer.interactionId ?? 'none'));
    const path = `/webhooks/${standIn.botId}/${sent?.path.split('/')[3]}/messages/@original`;
    expect((await told(await request('GET', path))).content).toBe('Gone');
    expect((await request('DELETE', path)).status).toBe(204);
    expect((await request('GET', path)).status).toBe(404);
    expect(ann.look(answer)).toBeUndefined();
  });

  it('is waited for through a rate limit, as long as its header says', async () => {
    standIn.fail({ path: /callback$/, status: 429, retryAfter: 1 });
    const started = performance.now();
    expect((await ann.slash('say', { words: 'Slowly' })).content).toBe('Slowly');
    expect(performance.now() - started).toBeGreaterThan(990);
  });

  it('is lost when the platform stumbles and the library is told not to try again', async () => {
    standIn.fail({ path: /callback$/, status: 500 });
    ann.begin.slash('say', { words: 'Lost' });
    await expect.poll(() => bot.errors).toHaveLength(1);
    expect(standIn.messages()).toEqual([]);
  });
});

describe('a message in a channel', () => {
  const hello = { content: 'Hello', allowed_mentions: { parse: [] } };

  it('needs the permissions for it', async () => {
    const channel = standIn.channel();
    const path = `/channels/${channel.id}/messages`;
    standIn.withhold(channel, ['SendMessages']);
    expect(await codeOf(await request('POST', path, hello))).toEqual([403, 50_013]);
    standIn.withhold(channel, ['ViewChannel']);
    expect(await codeOf(await request('POST', path, hello))).toEqual([403, 50_001]);
    standIn.withhold(channel, []);
    expect((await request('POST', path, hello)).status).toBe(200);
    // An answer to a command needs none of them.
    standIn.withhold(channel, ['SendMessages', 'ViewChannel']);
    expect((await ann.slash('say', { words: 'Anyway' })).content).toBe('Anyway');
  });

  it('can be edited and taken away by its number, but not one for a single pair of eyes', async () => {
    const channel = standIn.channel();
    await request('POST', `/channels/${channel.id}/messages`, hello);
    const [message] = standIn.messages();
    const path = `/channels/${channel.id}/messages/${message?.id}`;
    expect((await request('PATCH', path, { ...hello, content: 'Changed' })).status).toBe(200);
    expect(standIn.messages()[0]?.content).toBe('Changed');
    expect((await request('DELETE', path)).status).toBe(204);
    const secret = await ann.slash('say', { words: 'Psst', how: 'alone' });
    const closed = `/channels/${channel.id}/messages/${secret.id}`;
    expect(await codeOf(await request('PATCH', closed, { ...hello, flags: MessageFlags.SuppressEmbeds }))).toEqual([
      404, 10_008,
    ]);
  });

  it('is held to the same rules', async () => {
    const response = await request('POST', `/channels/${standIn.channel().id}/messages`, { ...hello, content: ' ' });
    expect(await codeOf(response)).toEqual([400, 50_006]);
    const large = new FormData();
    large.set('payload_json', JSON.stringify(hello));
    large.set('files[0]', new Blob([new Uint8Array(10 * 1024 * 1024 + 1)]), 'big.bin');
    const tooLarge = await fetch(`${standIn.api}/v10/channels/${standIn.channel().id}/messages`, {
      method: 'POST',
      headers: { authorization: `Bot ${standIn.token}` },
      body: large,
    });
    expect(await codeOf(tooLarge)).toEqual([413, 40_005]);
  });
});

describe('commands', () => {
  it('are kept by scope, every registration of them', async () => {
    expect(standIn.commands().map(({ name }) => name)).toEqual(['say', 'part', 'job', 'measure', 'boss']);
    const guild = standIn.guild();
    await bot.client.application.commands.set([{ name: 'here', description: 'Only here' }], guild.id);
    expect(standIn.commands(guild).map(({ name }) => name)).toEqual(['here']);
    expect(standIn.registrations.map(({ scope, commands }) => [scope, commands.length])).toEqual([
      ['global', 5],
      [guild.id, 1],
    ]);
    const listed = await bot.client.application.commands.fetch({ guildId: guild.id });
    expect(listed.map(({ name }) => name)).toEqual(['here']);
  });

  it('are refused to a stranger', async () => {
    const response = await fetch(`${standIn.api}/v10/applications/${standIn.botId}/commands`, {
      headers: { authorization: 'Bot somebody-else' },
    });
    expect(response.status).toBe(401);
  });
});
