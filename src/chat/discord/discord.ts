import { Client, DiscordAPIError, Events, GatewayIntentBits, Options } from 'discord.js';
import type { Store } from '#store/store.ts';
import { StartTrouble } from '../../start-trouble.ts';
import type { Command } from '../command.ts';
import type { Screen } from '../screen.ts';
import { answerInteraction, type House } from './interactions.ts';
import { type Log, type LogLevel, loggable, logTo } from './log.ts';
import type { Picture } from './message.ts';
import { fingerprint, registeredCommands } from './registration.ts';

interface Given {
  readonly store: Store;
  readonly commands: readonly Command[];
  readonly settings: {
    readonly DISCORD_TOKEN: string;
    readonly DISCORD_API_BASE?: string | undefined;
    readonly DISCORD_GUILD?: string | undefined;
    readonly LOG_LEVEL: LogLevel;
  };
}

/**
 * Serves the commands in Discord until the process is told to end; what was acknowledged by then is finished.
 *
 * @throws StartTrouble in one plain sentence when the platform will not have us.
 */
export async function discord({ store, commands, settings }: Given): Promise<number> {
  const log = logTo(
    (line) => process.stderr.write(line),
    settings.LOG_LEVEL,
    () => new Date(),
  );
  const client = new Client({
    intents: [GatewayIntentBits.Guilds],
    allowedMentions: { parse: [], repliedUser: false },
    makeCache: Options.cacheWithLimits({
      ...Options.DefaultMakeCacheSettings,
      MessageManager: 0,
      GuildMemberManager: 1,
      UserManager: 1,
    }),
    rest: settings.DISCORD_API_BASE ? { api: settings.DISCORD_API_BASE } : {},
  });
  const house: House = { store, commands, drawn };
  const underWay = new Set<Promise<void>>();
  client.on(Events.Error, (error) => log('error', 'client error', loggable(error)));
  client.on(Events.Warn, (message) => log('warn', message));
  client.on(Events.InteractionCreate, (interaction) => {
    const work = answerInteraction(house, interaction).catch((error: unknown) => apologise(log, interaction, error));
    underWay.add(work);
    void work.finally(() => underWay.delete(work));
  });
  const ready = new Promise<void>((resolve) => client.once(Events.ClientReady, () => resolve()));
  try {
    await client.login(settings.DISCORD_TOKEN);
    await ready;
    await register(client, store, commands, settings.DISCORD_GUILD, log);
  } catch (error) {
    await client.destroy();
    throw startTrouble(error);
  }
  log('info', 'ready', { servers: client.guilds.cache.size, as: client.user?.username });
  await toldToEnd();
  log('info', 'ending');
  await Promise.allSettled(underWay);
  await client.destroy();
  return 0;
}

const toldToEnd = () =>
  new Promise<void>((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });

async function drawn({ command, reply }: Screen): Promise<Picture | undefined> {
  if (!reply?.chart) return undefined;
  const { chartPng } = await import('#pictures/chart-png.ts');
  return { name: `${command}.png`, bytes: await chartPng(reply.chart), alt: reply.chart.alt };
}

/** Registers the commands in one place only, and only when they changed. */
async function register(
  client: Client,
  store: Store,
  commands: readonly Command[],
  guild: string | undefined,
  log: Log,
): Promise<void> {
  const body = registeredCommands(commands);
  const mark = fingerprint(body, `${client.application?.id} ${guild ?? 'everywhere'}`);
  if (store.note('registered-commands') === mark) return;
  if (guild) await client.application?.commands.set(body, guild);
  else await client.application?.commands.set(body);
  store.saveNote('registered-commands', mark);
  log('info', 'commands registered', { count: body.length, where: guild ?? 'everywhere' });
}

async function apologise(
  log: Log,
  interaction: Parameters<typeof answerInteraction>[1],
  error: unknown,
): Promise<void> {
  log('error', 'an event could not be answered', {
    ...loggable(error),
    age: Date.now() - interaction.createdTimestamp,
  });
  const gone = error instanceof DiscordAPIError && (error.code === 10062 || error.code === 40060);
  if (gone || interaction.isAutocomplete() || interaction.replied) return;
  const content = 'Something of ours went wrong. Nothing you answered before is lost; try that once more.';
  await interaction
    .reply({ content, flags: 64 })
    .catch((again: unknown) => log('error', 'could not say so', loggable(again)));
}

/** Start-up troubles of the platform, each in one sentence that says what to do. */
function startTrouble(error: unknown): Error {
  const code = (error as { code?: unknown }).code;
  const text = error instanceof Error ? error.message : '';
  if (
    code === 'TokenInvalid' ||
    /invalid token|authentication failed/i.test(text) ||
    (error as { status?: unknown }).status === 401
  ) {
    return new StartTrouble('The platform refuses DISCORD_TOKEN: copy the bot token again from its application page.');
  }
  if (/disallowed intents/i.test(text)) {
    return new StartTrouble(
      'The platform disallows the intents asked for: only Guilds is needed, so check that the token belongs to this bot.',
    );
  }
  if (error instanceof DiscordAPIError && (error.code === 50001 || error.code === 10004)) {
    return new StartTrouble(
      'DISCORD_GUILD names a server the bot is not in: invite it there first, with the scopes bot and applications.commands.',
    );
  }
  if (/ECONNREFUSED|ENOTFOUND|EAI_AGAIN|ETIMEDOUT|fetch failed/i.test(`${String(code)} ${text}`)) {
    return new StartTrouble('The platform cannot be reached: check the network, then start again.');
  }
  return error instanceof Error ? error : new Error(String(error));
}
