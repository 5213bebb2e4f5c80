import { type APIChatInputApplicationCommandInteraction, GatewayDispatchEvents } from 'discord.js';
import { MessageResponseSchema } from 'discord-api-spec/zod';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { safeParse } from 'zod/v4/core';
import { strict } from '../support/payload-judge/strict-schema.ts';
import type { Person } from '../support/stand-in/person.ts';
import { type StandIn, startStandIn } from '../support/stand-in/stand-in.ts';
import { photo } from '../support/stand-in/uploads.ts';
import { type EchoBot, startEchoBot } from './echo-bot.ts';

// What the stand-in says is measured against what the platform publishes about its own answers and events.

let standIn: StandIn;
let bot: EchoBot;
let ann: Person;

beforeAll(async () => {
  standIn = await startStandIn();
  bot = await startEchoBot(standIn);
  ann = standIn.user({ name: 'Ann', roles: ['Lead'], permissions: ['ManageGuild'], locale: 'en-GB' });
});
afterAll(async () => {
  await bot.stop();
  await standIn.close();
});

it('a message is what the published schema says a message is', async () => {
  await ann.slash('say', { words: 'Hello' });
  const pictured = await ann.slash('say', { words: 'Curves', how: 'file' });
  const pressed = await ann.press(await ann.slash('say', { words: 'Again' }), 'Again');
  const form = await ann.pressExpectingForm(pressed, 'Measure');
  await ann.submit(form, { length: '8 ft', size: '4' });
  await ann.submit(await ann.slashExpectingForm('measure'), { length: '9 ft', size: '5' });
  const raw = await fetch(`${standIn.api}/v10/channels/${pictured.channelId}/messages`, {
    headers: { authorization: `Bot ${standIn.token}` },
  });
  const messages = (await raw.json()) as readonly unknown[];
  expect(messages).toHaveLength(4);
  for (const message of messages)
    expect(safeParse(strict(MessageResponseSchema), message).error?.issues).toBeUndefined();
});

it('an interaction carries what the platform documents', async () => {
  const heard = new Promise<APIChatInputApplicationCommandInteraction>((resolve) => {
    bot.client.ws.once(GatewayDispatchEvents.InteractionCreate, resolve);
  });
  const file = photo();
  await ann.slash('job photo', { file });
  const { data, member, message, ...event } = await heard;
  const guild = standIn.guild();
  const channel = standIn.channel();
  expect(event).toMatchObject({
    type: 2,
    version: 1,
    application_id: standIn.botId,
    guild_id: guild.id,
    guild: { id: guild.id, features: [], locale: 'en-US' },
    channel_id: channel.id,
    channel: { id: channel.id, name: 'general', type: 0 },
    locale: 'en-GB',
    guild_locale: 'en-US',
    context: 0,
    entitlements: [],
    authorizing_integration_owners: { 0: guild.id },
    attachment_size_limit: 10 * 1024 * 1024,
  });
  expect(event.app_permissions).toMatch(/^\d+$/);
  expect(message).toBeUndefined();
  expect(member).toMatchObject({ user: { id: ann.id, global_name: 'Ann' }, roles: [standIn.role('Lead')] });
  // Manage Server is bit 5 of the permissions.
  expect(BigInt(member?.permissions ?? 0) & 32n).toBe(32n);
  const [sub] = data.options ?? [];
  const [id = ''] = Object.keys(data.resolved?.attachments ?? {});
  expect(sub).toMatchObject({ name: 'photo', type: 1, options: [{ name: 'file', type: 11, value: id }] });
  expect(data.resolved?.attachments?.[id]).toMatchObject({ filename: 'photo.png', size: file.bytes.length });
});

it('ids tell the time they were made', async () => {
  const { id } = await ann.slash('say', { words: 'Now' });
  const made = Number(BigInt(id) >> 22n) + 1_420_070_400_000;
  expect(Math.abs(made - standIn.clock.now())).toBeLessThan(5000);
});
