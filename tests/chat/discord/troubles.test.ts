import { Events } from 'discord.js';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { AnswerCommand } from '#chat/command.ts';
import { loggable, logTo } from '#chat/discord/log.ts';
import { commands } from '#commands/index.ts';
import size from '#commands/size.ts';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { type BotOptions, startBot } from './bot.ts';
import { quickly } from './stage.ts';

const room = {
  'room-length': '8 ft',
  'room-width': '5 ft',
  'ceiling-height': '8 ft',
  fixtures: 'none',
  running: 'on-demand',
};

async function scene(options: BotOptions = {}) {
  const standIn = await startStandIn();
  const bot = await startBot(standIn, { draw: quickly, ...options });
  onTestFinished(async () => {
    await bot.stop();
    await standIn.close();
    expect(standIn.violations).toEqual([]);
  });
  return { standIn, bot, ann: standIn.user() };
}

/** What must never stand in a log: tokens, and what people typed. */
const secrets = (text: string, ...these: readonly string[]) => these.filter((secret) => text.includes(secret));

describe('when something of ours fails', () => {
  const broken = {
    ...(size as AnswerCommand<unknown>),
    answer: () => {
      throw new Error('divided by a closet');
    },
  };

  it('the person hears so in a sentence, keeps every answer, and the log tells what', async () => {
    const { ann, bot, standIn } = await scene({
      commands: commands.map((command) => (command.name === 'size' ? broken : command)),
    });
    const said = await ann.slash('size', room);
    expect(said.ephemeral).toBe(true);
    expect(said.content).toBe('Something of ours went wrong. Nothing you answered before is lost; try that once more.');
    expect(bot.logged).toMatchObject([
      { level: 'error', what: 'an event could not be answered', to: '/size', message: 'divided by a closet' },
    ]);
    // The rest of the house stands.
    expect((await ann.slash('help')).text).toContain('Commands');
    expect(standIn.messages()).toHaveLength(1);
  });
});

describe('when the platform fails', () => {
  it('an answer that came too late is logged with what to look at, and nothing of what was typed', async () => {
    const { ann, bot, standIn } = await scene();
    standIn.fail({ path: /callback/, status: 404, code: 10_062 });
    const begun = ann.begin.slash('size', { 'room-length': '1234 ft secret' });
    await expect.poll(() => bot.logged.length).toBe(1);
    const [line] = bot.logged;
    expect(line).toMatchObject({
      code: 10_062,
      method: 'POST',
      meaning: expect.stringContaining('later than the platform waits'),
    });
    expect(secrets(JSON.stringify(line), standIn.token, 'secret', `token-${begun.id}`)).toEqual([]);
    expect(standIn.requests.filter(({ path }) => path.includes('callback'))).toHaveLength(1);
  });

  it('an answer somebody gave already points at a second copy', async () => {
    const { ann, bot, standIn } = await scene();
    standIn.fail({ path: /callback/, status: 400, code: 40_060 });
    ann.begin.slash('help');
    await expect.poll(() => bot.logged.length).toBe(1);
    expect(bot.logged[0]).toMatchObject({ meaning: expect.stringContaining('second copy') });
  });

  it('and will not take a message, the person hears so and the next press shows where things stand', async () => {
    const { ann, bot, standIn } = await scene();
    const { running: _, ...rest } = room;
    const asked = await ann.slash('size', rest);
    standIn.fail({ path: /callback/, status: 400, code: 50_035 });
    const said = await ann.press(asked, 'When the room is used');
    expect(said).toMatchObject({ ephemeral: true, content: expect.stringContaining('Something of ours went wrong.') });
    expect(bot.logged).toMatchObject([{ code: 50_035 }]);
    const now = await ann.press(asked, 'When the room is used');
    expect(now.content).toContain('That was an earlier step. Here is where it stands.');
    expect(now.embeds[0]?.title).toBe('This room needs 50 cfm (23.6 L/s).');
  });

  it('and cannot even be told so, it is logged and the bot lives', async () => {
    const { ann, bot, standIn } = await scene();
    standIn.fail({ path: /callback/, times: 2, status: 400, code: 50_035 });
    ann.begin.slash('help');
    await expect
      .poll(() => bot.logged.map(({ what }) => what))
      .toEqual(['an event could not be answered', 'could not say so']);
    expect((await ann.slash('help')).text).toContain('Commands');
  });

  it('an error of the line is logged and ends nothing', async () => {
    const { bot, ann } = await scene();
    bot.client.emit(Events.Error, new Error('the line hissed'));
    expect(bot.logged).toMatchObject([{ what: 'client error', message: 'the line hissed' }]);
    expect((await ann.slash('help')).text).toContain('Commands');
  });
});

describe('outside a server', () => {
  it('a person is sent to one', async () => {
    const { bot } = await scene();
    const said: unknown[] = [];
    const interaction = {
      inGuild: () => false,
      isChatInputCommand: () => true,
      isCommand: () => true,
      isAutocomplete: () => false,
      commandName: 'size',
      locale: 'en-US',
      reply: async (message: unknown) => said.push(message),
    };
    bot.client.emit(Events.InteractionCreate, interaction as never);
    expect(said).toEqual([{ content: 'Use this in your crew’s server: a job belongs to a crew.', flags: 64 }]);
  });
});

describe('the log', () => {
  it('writes one line of JSON for each event, and only those that weigh enough', () => {
    const lines: string[] = [];
    const log = logTo(
      (line) => lines.push(line),
      'warn',
      () => new Date(0),
    );
    log('info', 'ready');
    log('error', 'a\nb', { code: 1 });
    expect(lines).toEqual(['{"at":"1970-01-01T00:00:00.000Z","level":"error","what":"a\\nb","code":1}\n']);
  });

  it('takes a token out of an error’s words', () => {
    const token = ['MTIzNDU2Nzg5MDEyMzQ1Njc4', 'abcdef', 'abcdefghijklmnopqrstuvwxyz0'].join('.');
    expect(loggable(new Error(`refused ${token} twice`))).toMatchObject({ message: 'refused … twice' });
    expect(loggable('thrown text')).toEqual({ error: 'string' });
  });
});
