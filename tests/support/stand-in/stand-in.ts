import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import type { APIApplicationCommand, PermissionsString } from 'discord.js';
import { warmUp } from '../payload-judge/judge.ts';
import { type Clock, clock } from './clock.ts';
import type { Fault } from './faults.ts';
import { apiMember, apiUser, type Channel, type Guild, guildCreate, usualPermissions } from './fixtures.ts';
import { type Gateway, gateway } from './gateway.ts';
import { type GuildOptions, newGuild, removeChannel, required, roleNamed } from './guilds.ts';
import { type LoadOptions, type LoadResult, load } from './load.ts';
import { type Person, person } from './person.ts';
import { report } from './report.ts';
import { restServer } from './rest.ts';
import { type Seen, seen } from './seen.ts';
import { emptyWorld, type Logged, type Registration } from './world.ts';

export interface StandInOptions {
  /** Servers the bot is in; one called "Crew" with the channel "general" if not said. */
  readonly guilds?: readonly GuildOptions[];
  readonly token?: string;
  readonly shards?: number;
  /** Milliseconds between heartbeats. */
  readonly heartbeatInterval?: number;
  /** Intents that need leave and have it; none if not said. */
  readonly allowedIntents?: number;
  /** Milliseconds a test waits for the bot before it fails. */
  readonly patience?: number;
  /** The clock the stand-in follows. */
  readonly now?: () => number;
  /** Whether payloads are judged; only a benchmark does without. */
  readonly judging?: boolean;
  /** The largest file taken, in bytes. */
  readonly fileLimit?: number;
}

interface UserOptions {
  readonly name?: string;
  readonly guild?: Guild;
  readonly channel?: Channel;
  /** Names of roles; one the server lacks is made. */
  readonly roles?: readonly string[];
  /** Besides those every member has. */
  readonly permissions?: readonly PermissionsString[];
  readonly locale?: string;
}

/** A loopback stand-in of the chat platform. */
export interface StandIn {
  /** For the client: `rest: { api: standIn.api }`. */
  readonly api: string;
  readonly token: string;
  /** For a bot in a process of its own: where the platform is and who the bot is. */
  readonly environment: { readonly DISCORD_API_BASE: string; readonly DISCORD_TOKEN: string };
  readonly botId: string;
  readonly gateway: Gateway;
  readonly clock: Clock;
  /** Every request of the bot, oldest first. */
  readonly requests: readonly Logged[];
  /** The path of every file somebody fetched, oldest first. */
  readonly fetched: readonly string[];
  /** Every payload problem found, one line each. Most tests end by expecting none. */
  readonly violations: readonly string[];
  /** Every time the bot registered commands. */
  readonly registrations: readonly Registration[];
  /** The commands a server has now; without one those for all servers. */
  commands(guild?: Guild): readonly APIApplicationCommand[];
  user(options?: UserOptions): Person;
  /** The server of that name; the first if not said. */
  guild(name?: string): Guild;
  channel(name?: string, guild?: Guild): Channel;
  /** Invites the bot into a new server. */
  addGuild(options: GuildOptions): Guild;
  /** The id of a role, which is made if the server lacks it. */
  role(name: string, guild?: Guild): string;
  /** Somebody deletes a channel or thread. */
  removeChannel(channel: Channel): void;
  /** Somebody deletes a message. */
  removeMessage(message: Seen): void;
  /** A server that was unavailable is there again. */
  returnGuild(guild: Guild): void;
  /** Throws the bot out, or only makes the server unavailable for a while. */
  removeGuild(guild: Guild, how?: { readonly unavailable: boolean }): void;
  /** All messages of a channel that are not for one person's eyes only, oldest first. */
  messages(channel?: Channel): readonly Seen[];
  /** Waits for a message in a channel that looks as wanted. */
  message(wanted: (message: Seen) => boolean, channel?: Channel): Promise<Seen>;
  /** Plans something to go wrong. */
  fail(fault: Fault): void;
  /** Takes permissions from the bot in a channel; none gives all back. */
  withhold(channel: Channel, permissions: readonly PermissionsString[]): void;
  /** Waits until the bot is connected. */
  connected(connections?: number): Promise<void>;
  /** Waits until something is found. */
  until<T>(look: () => T | undefined, patience?: number): Promise<T>;
  /** The whole platform is gone: no address answers. */
  goDown(): Promise<void>;
  /** The platform is back under the same address. */
  comeBack(): Promise<void>;
  load(options: LoadOptions): Promise<LoadResult>;
  close(): Promise<void>;
}

const usualHeartbeatInterval = 41_250;
/** Under the five seconds after which a test is given up, so that it can still say what it saw. */
const usualPatience = 4000;
const usualFileLimit = 10 * 1024 * 1024;

export async function startStandIn(options: StandInOptions = {}): Promise<StandIn> {
  const { patience = usualPatience, heartbeatInterval = usualHeartbeatInterval, allowedIntents = 0 } = options;
  const world = emptyWorld({
    clock: clock(options.now),
    judging: options.judging ?? true,
    fileLimit: options.fileLimit ?? usualFileLimit,
    shards: options.shards ?? 1,
    token: options.token,
  });
  if (world.judging) warmUp();
  const { controls, welcome } = gateway(world, { heartbeatInterval, allowedIntents });
  const server = restServer(world);
  server.on('upgrade', welcome);

  const listen = async (port: number) => {
    server.listen(port, '127.0.0.1');
    await once(server, 'listening');
    return (server.address() as AddressInfo).port;
  };
  const goDown = async () => {
    const closed = once(server, 'close');
    server.close();
    controls.dropConnections();
    server.closeAllConnections();
    await closed;
  };
  const port = await listen(0);
  world.origin = `http://127.0.0.1:${port}`;
  for (const guild of options.guilds ?? [{ name: 'Crew' }]) newGuild(world, guild);

  const until = <T>(look: () => T | undefined, wait = patience) => world.signal.until(look, wait, () => report(world));
  const guildNamed = (name?: string) =>
    required(
      [...world.guilds.values()].find((guild) => name === undefined || guild.name === name),
      `server ${name}`,
    );
  const channelNamed = (name?: string, guild = guildNamed()) =>
    required(
      [...guild.channels.values()].find((it) => name === undefined || it.name === name),
      `channel ${name}`,
    );
  const messages = (channel = channelNamed()) =>
    [...world.messages.values()]
      .filter((message) => message.channelId === channel.id && !message.deleted && message.onlyFor === undefined)
      .map(seen);

  return {
    api: `${world.origin}/api`,
    token: world.token,
    environment: { DISCORD_API_BASE: `${world.origin}/api`, DISCORD_TOKEN: world.token },
    botId: world.bot.id,
    gateway: controls,
    clock: world.clock,
    requests: world.requests,
    fetched: world.fetched,
    violations: world.violations,
    registrations: world.registrations,
    commands: (guild) => world.commands.get(guild?.id ?? 'global') ?? [],
    user(about = {}) {
      const { name = 'Ann', locale = 'en-US' } = about;
      const guild =
        about.guild ?? (about.channel ? required(world.guilds.get(about.channel.guildId), 'server') : guildNamed());
      const channel = about.channel ?? channelNamed(undefined, guild);
      const user = apiUser(world.nextId(), name);
      const roles = (about.roles ?? []).map((role) => roleNamed(world, guild, role));
      world.users.set(user.id, user);
      guild.members.set(user.id, apiMember(user, roles, world.clock.now()));
      const permissions = [...usualPermissions, ...(about.permissions ?? [])];
      return person(world, { user, guild, channel, roles, permissions, locale, patience });
    },
    guild: guildNamed,
    channel: channelNamed,
    addGuild(about) {
      const guild = newGuild(world, about);
      world.dispatch('GUILD_CREATE', guildCreate(guild, world.bot.id), guild.id);
      return guild;
    },
    role: (name, guild = guildNamed()) => roleNamed(world, guild, name),
    removeChannel: (channel) => removeChannel(world, channel),
    removeMessage(message) {
      required(world.messages.get(message.id), 'message').deleted = true;
    },
    returnGuild: (guild) => world.dispatch('GUILD_CREATE', guildCreate(guild, world.bot.id), guild.id),
    removeGuild(guild, { unavailable } = { unavailable: false }) {
      if (!unavailable) world.guilds.delete(guild.id);
      world.dispatch('GUILD_DELETE', { id: guild.id, ...(unavailable ? { unavailable } : {}) }, guild.id);
    },
    messages,
    message: (wanted, channel) => until(() => messages(channel).find(wanted)),
    fail(fault) {
      world.faults.push(fault);
    },
    withhold(channel, permissions) {
      world.withheld.set(channel.id, new Set(permissions));
    },
    async connected(connections = 1) {
      await until(() => (controls.connections >= connections ? true : undefined));
    },
    until,
    goDown,
    async comeBack() {
      await listen(port);
    },
    load,
    async close() {
      if (server.listening) await goDown();
    },
  };
}
