import {
  type APIChannel,
  type APIGuildMember,
  type APIRole,
  type APIUser,
  ChannelType,
  type GuildMemberFlags,
  OverwriteType,
  PermissionFlagsBits,
  type PermissionsString,
  type RoleFlags,
  type UserFlags,
} from 'discord.js';

/** The permissions an invited bot is asked for, and no more. */
export const usualBotPermissions: readonly PermissionsString[] = [
  'ViewChannel',
  'SendMessages',
  'SendMessagesInThreads',
  'CreatePublicThreads',
  'ManageThreads',
  'EmbedLinks',
  'AttachFiles',
  'ReadMessageHistory',
];

/** What a member of a crew may do in an ordinary server. */
export const usualPermissions: readonly PermissionsString[] = [
  'ViewChannel',
  'SendMessages',
  'SendMessagesInThreads',
  'CreatePublicThreads',
  'EmbedLinks',
  'AttachFiles',
  'ReadMessageHistory',
  'UseApplicationCommands',
];

/** Permissions as the platform writes them: a sum of bits in decimal digits. */
export const permissionBits = (names: readonly PermissionsString[]): string =>
  String(names.reduce((sum, name) => sum | PermissionFlagsBits[name], 0n));

export const everyPermission = Object.keys(PermissionFlagsBits) as PermissionsString[];

export const apiUser = (id: string, name: string, bot = false): APIUser => ({
  id,
  username: name.toLowerCase().replace(/[^\w.]+/g, '_'),
  global_name: bot ? null : name,
  discriminator: bot ? '0001' : '0',
  avatar: null,
  avatar_decoration_data: null,
  banner: null,
  accent_color: null,
  primary_guild: null,
  bot,
  flags: 0 as UserFlags,
  public_flags: 0 as UserFlags,
});

export const apiRole = (role: {
  readonly id: string;
  readonly name: string;
  readonly permissions: readonly PermissionsString[];
  readonly position: number;
}): APIRole => ({
  id: role.id,
  name: role.name,
  permissions: permissionBits(role.permissions),
  position: role.position,
  color: 0,
  colors: { primary_color: 0, secondary_color: null, tertiary_color: null },
  hoist: false,
  icon: null,
  unicode_emoji: null,
  managed: false,
  mentionable: false,
  flags: 0 as RoleFlags,
});

export const apiMember = (user: APIUser, roles: readonly string[], joinedAt: number): APIGuildMember => ({
  user,
  roles: [...roles],
  joined_at: new Date(joinedAt).toISOString(),
  premium_since: null,
  communication_disabled_until: null,
  nick: null,
  avatar: null,
  banner: null,
  deaf: false,
  mute: false,
  pending: false,
  flags: 0 as GuildMemberFlags,
});

/** A place to talk: a text channel, or a thread under one. */
export interface Channel {
  readonly id: string;
  readonly guildId: string;
  name: string;
  readonly parentId?: string;
  /** From the top; the first if not said. */
  readonly position?: number;
  /** Whether the bot may not write here. */
  readonly isClosed?: boolean;
  archived: boolean;
}

const isThread = ({ parentId }: Channel): boolean => parentId !== undefined;

export const apiChannel = (channel: Channel, ownerId: string): APIChannel =>
  channel.parentId === undefined
    ? {
        id: channel.id,
        type: ChannelType.GuildText,
        guild_id: channel.guildId,
        name: channel.name,
        position: channel.position ?? 0,
        permission_overwrites: channel.isClosed
          ? [{ id: channel.guildId, type: OverwriteType.Role, allow: '0', deny: permissionBits(['SendMessages']) }]
          : [],
        nsfw: false,
        topic: null,
        parent_id: null,
        last_message_id: null,
        rate_limit_per_user: 0,
      }
    : {
        id: channel.id,
        type: ChannelType.PublicThread,
        guild_id: channel.guildId,
        name: channel.name,
        parent_id: channel.parentId,
        owner_id: ownerId,
        last_message_id: null,
        message_count: 0,
        member_count: 1,
        total_message_sent: 0,
        rate_limit_per_user: 0,
        thread_metadata: {
          archived: channel.archived,
          auto_archive_duration: 10_080,
          archive_timestamp: new Date(0).toISOString(),
          locked: false,
        },
        applied_tags: [],
      };

export interface Guild {
  readonly id: string;
  readonly name: string;
  readonly ownerId: string;
  readonly roles: Map<string, APIRole>;
  readonly channels: Map<string, Channel>;
  readonly members: Map<string, APIGuildMember>;
  joinedAt: number;
  systemChannel?: string;
}

/** What GUILD_CREATE carries to a bot that asks for the Guilds intent only: of the members, itself. */
export function guildCreate(guild: Guild, botId: string) {
  const channels = [...guild.channels.values()];
  return {
    ...apiGuild(guild),
    joined_at: new Date(guild.joinedAt).toISOString(),
    large: false,
    unavailable: false,
    member_count: guild.members.size,
    members: [...guild.members.values()].filter(({ user }) => user.id === botId),
    channels: channels.filter((channel) => !isThread(channel)).map((channel) => apiChannel(channel, botId)),
    threads: channels.filter(isThread).map((channel) => apiChannel(channel, botId)),
    voice_states: [],
    presences: [],
    stage_instances: [],
    guild_scheduled_events: [],
    soundboard_sounds: [],
  };
}

/** A server as `GET /guilds/{id}` tells it. */
export const apiGuild = (guild: Guild) => ({
  id: guild.id,
  name: guild.name,
  icon: null,
  splash: null,
  discovery_splash: null,
  description: null,
  banner: null,
  owner_id: guild.ownerId,
  region: 'us-east',
  afk_channel_id: null,
  afk_timeout: 300,
  widget_enabled: false,
  widget_channel_id: null,
  verification_level: 1,
  default_message_notifications: 1,
  explicit_content_filter: 0,
  roles: [...guild.roles.values()],
  emojis: [],
  stickers: [],
  features: [],
  mfa_level: 0,
  application_id: null,
  system_channel_id: guild.systemChannel ?? null,
  system_channel_flags: 0,
  rules_channel_id: null,
  public_updates_channel_id: null,
  safety_alerts_channel_id: null,
  max_members: 500_000,
  max_presences: null,
  max_video_channel_users: 25,
  max_stage_video_channel_users: 50,
  vanity_url_code: null,
  premium_tier: 0,
  premium_subscription_count: 0,
  premium_progress_bar_enabled: false,
  preferred_locale: 'en-US',
  nsfw_level: 0,
  nsfw: false,
  hub_type: null,
  incidents_data: null,
});
