import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { folder } from '../../store/workbench.ts';
import { type StandIn, startStandIn } from '../../support/stand-in/stand-in.ts';
import { type Bot, startBot } from './bot.ts';

async function scene(options: { readonly file?: string } = {}) {
  const standIn = await startStandIn();
  const bot = await startBot(standIn, { greets: true, ...options });
  onTestFinished(() => standIn.close());
  return { standIn, bot };
}

const textsIn = (standIn: StandIn, name: string, server: string): readonly string[] =>
  standIn.messages(standIn.channel(name, standIn.guild(server))).map(({ content }) => content);

/** A server that answers shows that everything told before it has been heard. */
const settled = async (standIn: StandIn): Promise<void> => {
  await standIn.user().slash('help');
};

const ended = async (standIn: StandIn, bot: Bot): Promise<void> => {
  await bot.stop();
  expect(standIn.violations).toEqual([]);
};

it('greets a server it is taken into where that welcomes people, in three lines and a caution', async () => {
  const { standIn, bot } = await scene();
  const server = { name: 'New', channels: ['rules', 'welcome'], systemChannel: 'welcome' };
  standIn.addGuild(server);
  const { content } = await standIn.message(() => true, standIn.channel('welcome', standIn.guild('New')));
  const lines = content.split('\n');
  expect(lines).toHaveLength(4);
  expect(lines[1]).toMatch(/\/demo.*\/ask.*\/help/);
  expect(lines[2]).toContain('/crew');
  expect(lines[3]).toMatch(/can kill.*no permission.*carbon monoxide/);
  expect(textsIn(standIn, 'rules', 'New')).toEqual([]);
  expect(standIn.messages()).toEqual([]);
  expect(bot.logged).toEqual([]);
  await ended(standIn, bot);
});

it('greets in the first channel it may write in, where the one for welcomes is closed to it or there is none', async () => {
  const { standIn, bot } = await scene();
  const channels = ['rules', 'welcome', 'jobs', 'talk'];
  standIn.addGuild({ name: 'Closed', channels, systemChannel: 'welcome', closed: ['rules', 'welcome'] });
  await standIn.message(() => true, standIn.channel('jobs', standIn.guild('Closed')));
  standIn.addGuild({ name: 'Open', channels });
  await standIn.message(() => true, standIn.channel('rules', standIn.guild('Open')));
  expect(textsIn(standIn, 'talk', 'Closed')).toEqual([]);
  expect(bot.logged).toEqual([]);
  await ended(standIn, bot);
});

it('says nothing where it may write nowhere, and where writing is refused after all it goes on serving', async () => {
  const { standIn, bot } = await scene();
  standIn.addGuild({ name: 'Shut', channels: ['rules'], closed: ['rules'] });
  standIn.fail({ method: 'POST', path: /\/channels\/\d+\/messages$/, status: 403, code: 50_013 });
  standIn.addGuild({ name: 'Refusing' });
  await standIn.until(() => (bot.logged.length > 0 ? true : undefined));
  await settled(standIn);
  expect(bot.logged).toMatchObject([{ level: 'warn', what: 'a server could not be greeted', code: 50_013 }]);
  expect(textsIn(standIn, 'rules', 'Shut')).toEqual([]);
  await ended(standIn, bot);
});

it('greets a server once: not when the line comes back, not when it was away, not after a restart, not when invited anew', async () => {
  const file = join(folder(), 'records.sqlite');
  const { standIn, bot } = await scene({ file });
  const guild = standIn.addGuild({ name: 'New' });
  await standIn.until(() => (textsIn(standIn, 'general', 'New').length === 1 ? true : undefined));
  standIn.removeGuild(guild, { unavailable: true });
  standIn.returnGuild(guild);
  standIn.gateway.invalidateSessions();
  await standIn.until(() => (standIn.gateway.counts.identified === 2 ? true : undefined));
  await settled(standIn);
  await bot.stop();
  const again = await startBot(standIn, { greets: true, file });
  await settled(standIn);
  standIn.removeGuild(guild);
  standIn.returnGuild(guild);
  await settled(standIn);
  expect(again.client.guilds.cache.has(guild.id)).toBe(true);
  await ended(standIn, again);
  // What was under way is finished by now.
  expect(standIn.requests.filter(({ path }) => /^\/channels\/\d+\/messages$/.test(path))).toHaveLength(1);
});

it('greets nobody it has been with before', async () => {
  const { standIn, bot } = await scene();
  await settled(standIn);
  expect(standIn.messages()).toHaveLength(1);
  await ended(standIn, bot);
});
