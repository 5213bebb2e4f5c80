import {
  type APIAttachment,
  type APIEmbed,
  type APIMessage,
  type APIMessageTopLevelComponent,
  type APIUser,
  ComponentType,
  MessageFlags,
  MessageType,
} from 'discord.js';
import { everyComponent, shownMedia } from '../payload-judge/component-limits.ts';
import type { MessageBody, Standing } from '../payload-judge/message-limits.ts';
import type { Interaction } from './interactions.ts';
import type { ReceivedFile } from './multipart.ts';
import type { Served } from './uploads.ts';
import type { World } from './world.ts';

/** A file that can be fetched again from the stand-in. */
export interface StoredFile {
  readonly id: string;
  readonly name: string;
  readonly contentType: string;
  readonly bytes: Uint8Array;
  readonly url: string;
  readonly description: string | undefined;
  readonly ephemeral: boolean;
  readonly served?: Served | undefined;
  readonly claimedSize?: number | undefined;
  /** What the platform gives out as its address. */
  readonly address?: string | undefined;
}

/** What a message shows at one time. */
export interface Showing {
  readonly content: string;
  readonly embeds: readonly APIEmbed[];
  readonly components: readonly APIMessageTopLevelComponent[];
  readonly files: readonly StoredFile[];
  readonly flags: number;
}

export interface StoredMessage {
  readonly id: string;
  readonly channelId: string;
  readonly author: APIUser;
  readonly createdAt: number;
  /** The only person who sees it, if it is not for everybody. */
  readonly onlyFor: string | undefined;
  /** The interaction that led to it. */
  readonly interaction: Interaction | undefined;
  showing: Showing;
  readonly earlier: Showing[];
  editedAt: number | undefined;
  /** Promised and not yet there: the platform shows that the bot is thinking. */
  pending: boolean;
  deleted: boolean;
}

const blank: Showing = { content: '', embeds: [], components: [], files: [], flags: 0 };

export interface Posting {
  readonly channelId: string;
  readonly body: MessageBody;
  readonly files: readonly ReceivedFile[];
  readonly onlyFor?: string | undefined;
  readonly interaction?: Interaction | undefined;
  readonly pending?: boolean;
}

/** A new message by the bot. */
export function post(world: World, posting: Posting): StoredMessage {
  const { channelId, body, files, onlyFor, interaction, pending = false } = posting;
  const message: StoredMessage = {
    id: world.nextId(),
    channelId,
    author: world.bot,
    createdAt: world.clock.now(),
    onlyFor,
    interaction,
    showing: { ...blank, flags: (body.flags ?? 0) | (onlyFor ? MessageFlags.Ephemeral : 0) },
    earlier: [],
    editedAt: undefined,
    pending,
    deleted: false,
  };
  message.showing = changed(world, message, body, files);
  world.messages.set(message.id, message);
  return message;
}

/** The message with what the body changes; the rest stays. A promised message is filled rather than edited. */
export function edit(world: World, message: StoredMessage, body: MessageBody, files: readonly ReceivedFile[]): void {
  const showing = changed(world, message, body, files);
  if (!message.pending) {
    message.earlier.push(message.showing);
    message.editedAt = world.clock.now();
  }
  message.showing = showing;
  message.pending = false;
}

function changed(world: World, message: StoredMessage, body: MessageBody, files: readonly ReceivedFile[]): Showing {
  const { showing } = message;
  const kept = body.attachments
    ? showing.files.filter(({ id }) => body.attachments?.some((it) => it.id === id))
    : showing.files;
  const all = [...kept, ...files.map((file) => stored(world, message, file, body))];
  const fromFile = (url: string) => all.find(({ name }) => url === `attachment://${name}`)?.url ?? url;
  return {
    content: body.content === undefined ? showing.content : (body.content ?? ''),
    embeds:
      body.embeds === undefined ? showing.embeds : (body.embeds ?? []).map((embed) => shownEmbed(embed, fromFile)),
    components: body.components === undefined ? showing.components : completed(body.components ?? [], fromFile),
    files: all,
    flags: showing.flags | ((body.flags ?? 0) & (MessageFlags.IsComponentsV2 | MessageFlags.SuppressEmbeds)),
  };
}

function stored(world: World, message: StoredMessage, file: ReceivedFile, body: MessageBody): StoredFile {
  const number = /\d+/.exec(file.field)?.[0];
  const about = body.attachments?.find(({ id }) => id === number);
  return keepFile(world, {
    channelId: message.channelId,
    name: about?.filename ?? file.name,
    contentType: file.contentType,
    bytes: file.bytes,
    description: about?.description ?? undefined,
    ephemeral: message.onlyFor !== undefined,
  });
}

/** Puts a file where it can be fetched, under an address made like the platform's. */
export function keepFile(
  world: World,
  file: Omit<StoredFile, 'id' | 'url'> & { readonly channelId: string },
): StoredFile {
  const { channelId, ...rest } = file;
  const id = world.nextId();
  const place = file.ephemeral ? 'ephemeral-attachments' : 'attachments';
  const path = `/${place}/${channelId}/${id}/${encodeURIComponent(file.name)}`;
  const expires = Math.trunc(world.clock.now() / 1000) + 86_400;
  const kept = { ...rest, id, url: `${world.origin}${path}?ex=${expires.toString(16)}&is=0&hm=0` };
  world.files.set(path, kept);
  return kept;
}

export const apiAttachment = (file: StoredFile): APIAttachment => ({
  id: file.id,
  filename: file.name,
  size: file.claimedSize ?? file.bytes.length,
  url: file.address ?? file.url,
  proxy_url: file.url,
  content_type: file.contentType,
  ...(file.description === undefined ? {} : { description: file.description }),
  ...(file.ephemeral ? { ephemeral: true } : {}),
});

const shownEmbed = (embed: APIEmbed, fromFile: (url: string) => string): APIEmbed => ({
  type: 'rich' as NonNullable<APIEmbed['type']>,
  ...embed,
  ...(embed.image ? { image: { ...embed.image, url: fromFile(embed.image.url) } } : {}),
  ...(embed.thumbnail ? { thumbnail: { ...embed.thumbnail, url: fromFile(embed.thumbnail.url) } } : {}),
});

/** Components with what the platform adds: numbers, how many may be chosen, and the addresses of the files they show. */
function completed(
  components: readonly APIMessageTopLevelComponent[],
  fromFile: (url: string) => string,
): readonly APIMessageTopLevelComponent[] {
  const copy = structuredClone(components) as APIMessageTopLevelComponent[];
  const all = everyComponent('', copy).map(({ component }) => component);
  const taken = new Set(all.map(({ id }) => id));
  let next = 1;
  for (const component of all) {
    while (taken.has(next)) next += 1;
    if (!component.id) component.id = next++;
    if (component.type === ComponentType.StringSelect) {
      component.min_values ??= 1;
      component.max_values ??= 1;
    }
  }
  for (const { media } of shownMedia('', copy)) media.url = fromFile(media.url);
  return copy;
}

/** A message as the platform sends it. */
export function apiMessage(message: StoredMessage): APIMessage {
  const { showing, interaction, author } = message;
  const inEmbeds = new Set(showing.embeds.flatMap(({ image, thumbnail }) => [image?.url, thumbnail?.url]));
  return {
    id: message.id,
    type: interaction?.kind === 'command' ? MessageType.ChatInputCommand : MessageType.Default,
    channel_id: message.channelId,
    author,
    content: showing.content,
    embeds: [...showing.embeds],
    components: [...showing.components],
    // A picture that an embed shows is not shown again below it.
    attachments: showing.files.filter(({ url }) => !inEmbeds.has(url)).map(apiAttachment),
    flags: (showing.flags | (message.pending ? MessageFlags.Loading : 0)) as MessageFlags,
    timestamp: new Date(message.createdAt).toISOString(),
    edited_timestamp: message.editedAt === undefined ? null : new Date(message.editedAt).toISOString(),
    mentions: [],
    mention_roles: [],
    mention_everyone: false,
    pinned: false,
    tts: false,
    application_id: author.id,
    ...(interaction
      ? {
          webhook_id: author.id,
          interaction_metadata: metadata(interaction),
        }
      : {}),
  };
}

type Metadata = NonNullable<APIMessage['interaction_metadata']>;

/** What led to a message: a command, a press and on which message, a form and what it was shown for. */
const metadata = ({ id, type, user, owners, on, kind, from }: Interaction): Metadata =>
  ({
    id,
    type,
    user,
    authorizing_integration_owners: owners,
    ...(kind === 'press' ? { interacted_message_id: on?.id } : {}),
    ...(from ? { triggering_interaction_metadata: metadata(from) } : {}),
  }) as Metadata;

/** What the judge is told of a message that is being edited. */
export const standing = ({ showing: { content, embeds, components, files, flags } }: StoredMessage): Standing => ({
  flags,
  files: files.map(({ name }) => name),
  shows: { content, embeds, components },
});
