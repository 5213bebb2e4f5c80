import { GatewayIntentBits } from 'discord.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { clientFor } from '../support/stand-in/client.ts';
import type { Person } from '../support/stand-in/person.ts';
import { type StandIn, startStandIn } from '../support/stand-in/stand-in.ts';
import { listenForWarnings } from '../support/stand-in/warnings.ts';
import { type EchoBot, startEchoBot } from './echo-bot.ts';

const warnings = listenForWarnings();
let standIn: StandIn;
let bots: EchoBot[];
let ann: Person;

/** Short heartbeats, so that a dead line is noticed within a test. */
beforeEach(async () => {
  standIn = await startStandIn({ heartbeatInterval: 150 });
  bots = [await startEchoBot(standIn)];
  ann = standIn.user();
});
afterEach(async () => {
  await Promise.all(bots.map((bot) => bot.stop()));
  await standIn.close();
  expect(standIn.violations).toEqual([]);
  expect(warnings.said).toEqual([]);
});

describe('a connection that breaks', () => {
  it('is taken up again, and what was said meanwhile is answered', async () => {
    standIn.gateway.dropConnections();
    expect((await ann.slash('say', { words: 'Still there' })).content).toBe('Still there');
    expect(standIn.gateway.counts).toMatchObject({ identified: 1, resumed: 1 });
  });

  it('is taken up again when the platform asks for it', async () => {
    standIn.gateway.askToReconnect();
    await standIn.until(() => (standIn.gateway.counts.resumed === 1 ? true : undefined));
    expect((await ann.slash('say', { words: 'Back' })).content).toBe('Back');
    expect(standIn.gateway.counts.identified).toBe(1);
  });

  it('is begun anew when the platform has forgotten it', async () => {
    standIn.gateway.invalidateSessions();
    await standIn.until(() => (standIn.gateway.counts.identified === 2 ? true : undefined));
    expect((await ann.slash('say', { words: 'New' })).content).toBe('New');
    expect(standIn.gateway.counts.resumed).toBe(0);
  });

  it('is noticed by a heart that is not heard', async () => {
    standIn.gateway.goSilent();
    expect((await ann.slash('say', { words: 'Late' })).content).toBe('Late');
    expect(standIn.gateway.counts).toMatchObject({ identified: 1, resumed: 1 });
    expect(standIn.gateway.counts.heartbeats).toBeGreaterThan(0);
  });

  it('comes back by itself after the whole platform was away', async () => {
    await standIn.goDown();
    const answer = ann.slash('say', { words: 'Home' });
    await standIn.comeBack();
    expect((await answer).content).toBe('Home');
  });
});

describe('a bot that is not let in', () => {
  it('hears that its token is wrong', async () => {
    const client = clientFor(standIn);
    await expect(client.login('wrong')).rejects.toMatchObject({ code: 'TokenInvalid' });
    standIn.gateway.refuseWith(4004);
    await expect(client.login(standIn.token)).rejects.toThrow('Authentication failed');
    await client.destroy();
  });

  it('hears that it wants to know too much', async () => {
    const client = clientFor(standIn, { intents: [GatewayIntentBits.Guilds, GatewayIntentBits.MessageContent] });
    await expect(client.login(standIn.token)).rejects.toThrow('Used disallowed intents');
    await client.destroy();
  });
});

describe('two of a kind', () => {
  it('get in the way of each other: one answers, the other hears that it was answered already', async () => {
    const second = await startEchoBot(standIn);
    bots.push(second);
    expect((await ann.slash('say', { words: 'Who' })).content).toBe('Who');
    await expect.poll(() => bots.flatMap(({ errors }) => errors)).toEqual([40_060]);
    expect(standIn.messages().map(({ content }) => content)).toEqual(['Who']);
  });

  it('come when the platform tells a thing twice', async () => {
    expect((await ann.slash('say', { words: 'Twice' }, { twice: true })).content).toBe('Twice');
    await expect.poll(() => bots.flatMap(({ errors }) => errors)).toEqual([40_060]);
  });
});

it('spreads its servers over as many connections as the platform asks for', async () => {
  const wide = await startStandIn({ shards: 2, guilds: [{ name: 'One' }, { name: 'Two' }, { name: 'Three' }] });
  const client = clientFor(wide, { shards: 'auto' });
  const ready = new Promise((resolve) => client.once('clientReady', resolve));
  await client.login(wide.token);
  await ready;
  const spread = client.guilds.cache.map(({ id, shardId }) => [BigInt(id) >> 22n, shardId] as const);
  expect(spread).toHaveLength(3);
  for (const [age, shard] of spread) expect(shard).toBe(Number(age % 2n));
  expect(wide.gateway.connections).toBe(2);
  await client.destroy();
  await wide.close();
});
