import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DiscordAPIError, HTTPError } from 'discord.js';
import { describe, expect, it, type TestContext } from 'vitest';
import { farewell, troubleOf } from '#chat/discord/start-troubles.ts';
import { StartTrouble } from '../../../src/start-trouble.ts';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { type Program, startProgram } from './program.ts';
import { question } from './stage.ts';

const ready = /"what":"ready"/;

/** What a person who starts the program reads of it, without the log. */
const sentences = (program: Program): readonly string[] =>
  program
    .said()
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('{'));

async function scene({ onTestFinished }: TestContext) {
  const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
  const standIn = await startStandIn({ patience: 20_000 });
  const programs: Program[] = [];
  onTestFinished(async () => {
    for (const program of programs) program.kill('SIGKILL');
    await standIn.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return {
    standIn,
    start(environment: Readonly<Record<string, string>> = {}, how: 'as npm does' | 'directly' = 'directly'): Program {
      const program = startProgram(folder, { ...standIn.environment, ...environment }, how);
      programs.push(program);
      return program;
    },
  };
}

describe.concurrent('the program, started with a token', { timeout: 60_000 }, () => {
  it.for<{ given: string; environment: Readonly<Record<string, string>>; sentence: RegExp }>([
    {
      given: 'that is wrong',
      environment: { DISCORD_TOKEN: 'wrong' },
      sentence: /^Discord refuses DISCORD_TOKEN: copy the bot token again/,
    },
    {
      given: 'and no folder for the records',
      environment: { FANWRIGHT_DB: 'no/such/place.sqlite' },
      sentence: /^The folder no\/such is missing and could not be made, so make it/,
    },
    {
      given: 'and a server it is not in',
      environment: { DISCORD_GUILD: '123456789012345678' },
      sentence: /^DISCORD_GUILD names a server the bot is not in: invite it there first/,
    },
  ])('$given: says so in one sentence and ends with 1', async ({ environment, sentence }, context) => {
    const { start } = await scene(context);
    const program = start(environment);
    context.expect(await program.ended).toBe(1);
    context.expect(sentences(program)).toEqual([expect.stringMatching(sentence)]);
  });

  it('whose intents the platform disallows: says so in one sentence and ends with 1', async (context) => {
    const { standIn, start } = await scene(context);
    standIn.gateway.refuseWith(4014);
    const program = start();
    context.expect(await program.ended).toBe(1);
    context.expect(sentences(program)).toEqual([expect.stringMatching(/^Discord disallows the intents asked for\./)]);
  });

  it('starts, turns a second copy away, finishes what is under way when told to end, and takes it up again', async (context) => {
    const { standIn, start } = await scene(context);
    const { expect } = context;
    const first = start({}, 'as npm does');
    await first.until(ready);
    const second = start();
    expect(await second.ended).toBe(1);
    expect(sentences(second)).toEqual([expect.stringMatching(/is already in use by another Fanwright, so stop that/)]);

    const ann = standIn.user();
    standIn.fail({ path: /callback/, slowBy: 300 });
    const answer = ann.slash('size', { 'room-length': '8 ft', 'room-width': '5 ft' });
    await standIn.until(() => (standIn.requests.at(-1)?.path.includes('callback') ? true : undefined));
    first.kill('SIGTERM');
    const asked = await answer;
    expect(question(asked)).toContain('How high is the ceiling?');
    expect(await first.ended).toBe(0);
    expect(sentences(first)).toEqual([]);
    expect(first.said()).not.toContain('"level":"error"');

    const again = start();
    await again.until(ready);
    expect(again.said()).toContain('"what":"commands unchanged"');
    expect(standIn.registrations).toHaveLength(1);
    expect(question(await ann.press(asked, "Don't know"))).toContain('What stands in the room?');
    again.kill('SIGINT');
    expect(await again.ended).toBe(0);
    expect(standIn.violations).toEqual([]);
  });

  it('ends cleanly when told while it still starts', async (context) => {
    const { standIn, start } = await scene(context);
    standIn.fail({ path: /gateway\/bot/, slowBy: 10_000 });
    const program = start();
    await standIn.until(() => (standIn.requests.length > 0 ? true : undefined));
    program.kill('SIGTERM');
    context.expect(await program.ended).toBe(0);
    context.expect(sentences(program)).toEqual([]);
  });

  it('does not linger when the platform sends it away for good', async (context) => {
    const { standIn, start } = await scene(context);
    const program = start();
    await program.until(ready);
    standIn.gateway.closeWith(4004);
    context.expect(await program.ended).toBe(1);
    context.expect(sentences(program)).toEqual([expect.stringMatching(/^Discord refuses DISCORD_TOKEN/)]);
  });
});

describe('what went wrong at the start is said in a sentence', () => {
  const at = { method: 'PUT', url: 'https://example.com', bodyData: { files: undefined, body: undefined } } as const;
  const refused = (code: number, status: number) =>
    new DiscordAPIError({ code, message: 'no' }, code, status, at.method, at.url, at.bodyData);

  it.each<readonly [string, unknown, string]>([
    [
      'the network',
      Object.assign(new TypeError('fetch failed'), { cause: { code: 'ECONNREFUSED' } }),
      'cannot be reached',
    ],
    ['the network', Object.assign(new Error('getaddrinfo'), { code: 'ENOTFOUND' }), 'cannot be reached'],
    [
      'the token',
      Object.assign(new Error('An invalid token was provided.'), { code: 'TokenInvalid' }),
      'DISCORD_TOKEN',
    ],
    ['the token', new Error('Authentication failed'), 'DISCORD_TOKEN'],
    ['the intents', new Error('Used disallowed intents'), 'intents'],
    ['the server', refused(50_001, 403), 'DISCORD_GUILD'],
    ['the commands', refused(50_035, 400), 'would not take the commands'],
    ['the platform', new HTTPError(503, 'no', at.method, at.url, at.bodyData), 'trouble of its own'],
    ['what was said already', new StartTrouble('Already said.'), 'Already said.'],
  ])('%s', (_, error, words) => {
    const trouble = troubleOf(error);
    expect(trouble).toBeInstanceOf(StartTrouble);
    expect(trouble.message).toContain(words);
    expect(trouble.message).toMatch(/^[A-Z].*\.$/);
  });

  it('and what nobody foresaw is passed on', () => {
    const error = new Error('the moon fell');
    expect(troubleOf(error)).toBe(error);
    expect(troubleOf('the moon').message).toBe('the moon');
  });

  it('as is a goodbye for good', () => {
    expect(farewell(4004).message).toContain('DISCORD_TOKEN');
    expect(farewell(4010).message).toContain('(4010)');
  });
});
