import { apiChannel, apiMember, apiRole, type Channel, type Guild, usualBotPermissions } from './fixtures.ts';
import type { World } from './world.ts';

export interface GuildOptions {
  readonly name: string;
  /** "general" if not said. */
  readonly channels?: readonly string[];
  /** The channel where the server welcomes people, of those; none if not said. */
  readonly systemChannel?: string;
  /** Those of the channels in which the bot may not write. */
  readonly closed?: readonly string[];
  readonly roles?: readonly string[];
}

/** What was looked for, or a plain failure. */
export function required<T>(found: T | undefined, what: string): T {
  if (found === undefined) throw new Error(`The stand-in has no ${what}.`);
  return found;
}

export function newGuild(
  world: World,
  { name, channels = ['general'], systemChannel, closed = [], roles = [] }: GuildOptions,
): Guild {
  const id = world.nextId();
  const everyone = apiRole({ id, name: '@everyone', permissions: usualBotPermissions, position: 0 });
  const guild: Guild = {
    id,
    name,
    ownerId: world.nextId(),
    roles: new Map([[everyone.name, everyone]]),
    channels: new Map(),
    members: new Map([[world.bot.id, apiMember(world.bot, [], world.clock.now())]]),
    joinedAt: world.clock.now(),
  };
  for (const channelName of channels) {
    const isClosed = closed.includes(channelName);
    const position = guild.channels.size;
    const channel: Channel = {
      id: world.nextId(),
      guildId: id,
      name: channelName,
      position,
      isClosed,
      archived: false,
    };
    if (isClosed) world.withheld.set(channel.id, new Set(['SendMessages']));
    if (channelName === systemChannel) guild.systemChannel = channel.id;
    guild.channels.set(channel.id, channel);
    world.channels.set(channel.id, channel);
  }
  world.guilds.set(id, guild);
  for (const role of roles) roleNamed(world, guild, role);
  return guild;
}

/** The id of a role, which is made and told to the bot if the server has none of that name. */
export function roleNamed(world: World, guild: Guild, name: string): string {
  const known = guild.roles.get(name);
  if (known) return known.id;
  const role = apiRole({ id: world.nextId(), name, permissions: [], position: guild.roles.size });
  guild.roles.set(name, role);
  world.dispatch('GUILD_ROLE_CREATE', { guild_id: guild.id, role }, guild.id);
  return role.id;
}

/** A channel or thread somebody deleted: gone for the bot and for everybody. */
export function removeChannel(world: World, channel: Channel): void {
  world.channels.delete(channel.id);
  world.guilds.get(channel.guildId)?.channels.delete(channel.id);
  for (const message of world.messages.values()) if (message.channelId === channel.id) message.deleted = true;
  const event = channel.parentId === undefined ? 'CHANNEL_DELETE' : 'THREAD_DELETE';
  world.dispatch(event, apiChannel(channel, world.bot.id), channel.guildId);
}
