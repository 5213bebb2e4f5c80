import {
  type APIApplicationCommandInteractionDataOption,
  type APIInteractionResponse,
  type APIModalInteractionResponseCallbackData,
  type APIModalSubmissionComponent,
  type APIUser,
  InteractionType,
} from 'discord.js';
import {
  apiChannel,
  apiMember,
  type Channel,
  everyPermission,
  type Guild,
  permissionBits,
  usualBotPermissions,
} from './fixtures.ts';
import { apiMessage, type StoredMessage } from './messages.ts';
import { type Moment, moment } from './signal.ts';
import type { World } from './world.ts';

type Kind = 'command' | 'suggestion' | 'press' | 'form';

const types: Record<Kind, InteractionType> = {
  command: InteractionType.ApplicationCommand,
  suggestion: InteractionType.ApplicationCommandAutocomplete,
  press: InteractionType.MessageComponent,
  form: InteractionType.ModalSubmit,
};

/** Who does something, and where. */
export interface Doer {
  readonly user: APIUser;
  readonly guild: Guild;
  readonly channel: Channel;
  readonly roles: readonly string[];
  readonly permissions: string;
  readonly locale: string;
}

/** Something a person did that the bot is to answer. */
export interface Interaction {
  readonly id: string;
  readonly token: string;
  readonly kind: Kind;
  readonly type: InteractionType;
  /** The command's words or the custom id. */
  readonly name: string;
  readonly user: APIUser;
  readonly guildId: string;
  readonly channelId: string;
  readonly owners: Readonly<Record<string, string>>;
  readonly createdAt: number;
  /** When it was sent to the bot, by the computer's clock. */
  readonly firedAt: number;
  /** The message it was done on. */
  readonly on: StoredMessage | undefined;
  /** For a form: what it was shown in answer to. */
  readonly from: Interaction | undefined;
  /** What the bot first answered. */
  response: APIInteractionResponse | undefined;
  /** The message that `@original` means. */
  original: StoredMessage | undefined;
  readonly followUps: StoredMessage[];
  form: APIModalInteractionResponseCallbackData | undefined;
  readonly acknowledged: Moment;
  /** When the person has the answer: at once, or after a promise was kept. */
  readonly answered: Moment;
  /** The message that was the answer, unless it was a form or choices. */
  answer: StoredMessage | undefined;
  /** What was refused, for a person reading a failed test. */
  readonly refusals: string[];
}

/** What the different kinds of interaction carry. */
export interface InteractionData {
  readonly id?: string;
  readonly name?: string;
  readonly type?: number;
  readonly guild_id?: string;
  readonly custom_id?: string;
  readonly component_type?: number;
  readonly values?: readonly string[];
  readonly options?: readonly APIApplicationCommandInteractionDataOption[];
  readonly components?: readonly APIModalSubmissionComponent[];
  readonly resolved?: unknown;
}

export interface Deed {
  readonly kind: Kind;
  readonly name: string;
  readonly doer: Doer;
  readonly data: InteractionData;
  readonly on?: StoredMessage | undefined;
  readonly from?: Interaction | undefined;
  /** Delivers the event a second time, as happens after a connection was lost. */
  readonly twice?: boolean | undefined;
}

/** Tells the bot what a person did, and remembers it. */
export function begin(world: World, deed: Deed): Interaction {
  const { kind, name, doer, on, from } = deed;
  const id = world.nextId();
  const interaction: Interaction = {
    id,
    token: `token-${id}-${Math.random().toString(36).slice(2)}`,
    kind,
    type: types[kind],
    name,
    user: doer.user,
    guildId: doer.guild.id,
    channelId: doer.channel.id,
    owners: { 0: doer.guild.id },
    createdAt: world.clock.now(),
    firedAt: performance.now(),
    on,
    from,
    response: undefined,
    original: undefined,
    followUps: [],
    form: undefined,
    acknowledged: moment(),
    answered: moment(),
    answer: undefined,
    refusals: [],
  };
  world.interactions.set(id, interaction);
  world.interactionsByToken.set(interaction.token, interaction);
  const event = payload(world, interaction, deed);
  world.dispatch('INTERACTION_CREATE', event, doer.guild.id);
  if (deed.twice) world.dispatch('INTERACTION_CREATE', event, doer.guild.id);
  return interaction;
}

function payload(world: World, interaction: Interaction, { doer, data, on }: Deed) {
  const { guild, channel, user } = doer;
  return {
    id: interaction.id,
    application_id: world.bot.id,
    type: interaction.type,
    token: interaction.token,
    version: 1,
    data,
    guild_id: guild.id,
    guild: { id: guild.id, features: [], locale: 'en-US' },
    channel_id: channel.id,
    channel: { ...apiChannel(channel, world.bot.id), permissions: doer.permissions },
    member: { ...apiMember(user, doer.roles, guild.joinedAt), permissions: doer.permissions },
    app_permissions: botPermissions(world, channel.id),
    locale: doer.locale,
    guild_locale: 'en-US',
    entitlements: [],
    authorizing_integration_owners: interaction.owners,
    context: 0,
    attachment_size_limit: world.fileLimit,
    ...(on ? { message: apiMessage(on) } : {}),
  };
}

/** What the bot may do in a channel, as bits. */
const botPermissions = (world: World, channelId: string): string =>
  permissionBits(usualBotPermissions.filter((name) => !world.withheld.get(channelId)?.has(name)));

/** What a person may do, as bits: everything for an administrator. */
export const memberPermissions = (names: Parameters<typeof permissionBits>[0]): string =>
  permissionBits(names.includes('Administrator') ? everyPermission : names);

const timeToAnswer = 3000;
const timeToEdit = 15 * 60_000;

/** Whether it is too late for a first answer. */
export const tooLateToAnswer = (world: World, { createdAt }: Interaction): boolean =>
  world.clock.now() - createdAt > timeToAnswer;

/** Whether the token has run out. */
export const tokenHasExpired = (world: World, { createdAt }: Interaction): boolean =>
  world.clock.now() - createdAt > timeToEdit;
