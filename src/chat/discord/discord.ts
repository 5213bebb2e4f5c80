import { setTimeout as delay } from 'node:timers/promises';
import { Client, Events, GatewayIntentBits, Options } from 'discord.js';
import type { BackupPlan } from '#operation/backups.ts';
import { healthFile } from '#operation/health.ts';
import { upkeep } from '#operation/upkeep.ts';
import { migrations } from '#store/migrations.ts';
import type { Store } from '#store/store.ts';
import { version } from '../../version.ts';
import type { Command } from '../command.ts';
import { chartPictures, drawnChart } from './chart-pictures.ts';
import { fetching } from './fetching.ts';
import { gathering } from './gathering.ts';
import { usualPatience } from './house.ts';
import { type LogLevel, logTo } from './log.ts';
import { pace } from './pace.ts';
import { register } from './register.ts';
import { serve } from './serve.ts';
import { farewell, troubleOf } from './start-troubles.ts';
import { typedBefore } from './typed-before.ts';
import { vitalsOf } from './vitals.ts';

interface Given {
  readonly store: Store;
  readonly commands: readonly Command[];
  readonly plan: BackupPlan;
  readonly settings: {
    readonly FANWRIGHT_DB: string;
    readonly FANWRIGHT_HEALTH?: string | undefined;
    readonly FANWRIGHT_PACE: number;
    readonly DISCORD_TOKEN: string;
    readonly DISCORD_API_BASE?: string | undefined;
    readonly DISCORD_GUILD?: string | undefined;
    readonly LOG_LEVEL: LogLevel;
  };
}

/** Milliseconds that what is under way gets to finish when the program ends, and that the rest gets to be told it will not be. */
const longestGoodbye = { finishing: 5000, telling: 2000 } as const;

/** Nothing of what people or messages are is kept: every event brings what is needed to answer it. */
const clientFor = ({ DISCORD_API_BASE: api }: Given['settings']): Client =>
  new Client({
    intents: [GatewayIntentBits.Guilds],
    // As many connections as the platform recommends: one up to some thousand servers, more beyond.
    shards: 'auto',
    allowedMentions: { parse: [], repliedUser: false },
    makeCache: Options.cacheWithLimits({
      ...Options.DefaultMakeCacheSettings,
      MessageManager: 0,
      GuildMemberManager: { maxSize: 0, keepOverLimit: (member) => member.id === member.client.user.id },
      UserManager: { maxSize: 0, keepOverLimit: (user) => user.id === user.client.user?.id },
      PresenceManager: 0,
      ReactionManager: 0,
      ThreadMemberManager: 0,
      VoiceStateManager: 0,
    }),
    rest: api === undefined ? {} : { api },
  });

/**
 * Serves the commands in Discord until the process is told to end; what was acknowledged by then is finished.
 *
 * @returns the exit code.
 * @throws StartTrouble in one plain sentence when the platform will not have us, now or any more.
 */
export async function discord({ store, commands, plan, settings }: Given): Promise<number> {
  const log = logTo(
    (line) => process.stderr.write(line),
    settings.LOG_LEVEL,
    () => new Date(),
  );
  const client = clientFor(settings);
  const house = {
    store,
    commands,
    pictures: chartPictures(drawnChart),
    typed: typedBefore(),
    ...gathering(),
    fetchFile: fetching(settings.DISCORD_API_BASE),
    patience: usualPatience,
    pace: pace(settings.FANWRIGHT_PACE),
  };
  const service = serve(client, house, log);
  const present = () => (vitalsOf(client).state === 'ready' ? new Set(client.guilds.cache.keys()) : undefined);
  const care = upkeep({ store, plan, present, report: log });
  const health =
    settings.FANWRIGHT_HEALTH &&
    healthFile({
      file: settings.FANWRIGHT_HEALTH,
      version,
      backups: plan.folder,
      look: () => vitalsOf(client),
      report: log,
    });
  const ending = Promise.race([toldToEnd(), sentAway(client)]);
  const starting = started(client, settings.DISCORD_TOKEN).then((ready) =>
    register(ready, { store, commands, guild: settings.DISCORD_GUILD, log }).then(() => {
      if (health) health.write();
      log('info', 'ready', {
        version,
        database: settings.FANWRIGHT_DB,
        databaseVersion: migrations.length,
        servers: ready.guilds.cache.size,
        shards: ready.ws.shards.size,
        as: ready.user.username,
      });
    }),
  );
  try {
    const early = await Promise.race([starting, ending]);
    const reason = early ?? (await ending);
    if (reason.why === 'sent away') throw farewell(reason.code);
    log('info', 'ending');
  } catch (error) {
    throw troubleOf(error);
  } finally {
    // Nobody waits for the start any more when the end came first.
    starting.catch(() => {});
    const finished = Promise.all([service.finished(), care.stop()]);
    await Promise.race([finished, delay(longestGoodbye.finishing, undefined, { ref: false })]);
    house.letGo();
    await Promise.race([finished, delay(longestGoodbye.telling, undefined, { ref: false })]);
    await client.destroy();
    if (health) health.end();
    // A connection that was being made goes on being made; it must not keep the program.
    setTimeout(() => process.exit(), 1000).unref();
  }
  return 0;
}

type Ending = { readonly why: 'told' } | { readonly why: 'sent away'; readonly code: number };

const toldToEnd = () =>
  new Promise<Ending>((resolve) => {
    process.once('SIGINT', () => resolve({ why: 'told' }));
    process.once('SIGTERM', () => resolve({ why: 'told' }));
  });

/** Some goodbyes of the platform are final; staying up after one would only look like service. */
const sentAway = (client: Client) =>
  new Promise<Ending>((resolve) => {
    client.once(Events.ShardDisconnect, ({ code }) => resolve({ why: 'sent away', code }));
  });

async function started(client: Client, token: string): Promise<Client<true>> {
  // Asked for before logging in: on a near line the answer is there before `login` is done.
  const ready = new Promise<Client<true>>((resolve) => client.once(Events.ClientReady, resolve));
  await client.login(token);
  return ready;
}
