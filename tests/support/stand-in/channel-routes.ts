import type { MessageBody } from '../payload-judge/message-limits.ts';
import { apiChannel, apiGuild, type Channel } from './fixtures.ts';
import { apiMessage, edit, post, type StoredMessage, standing } from './messages.ts';
import {
  type Answer,
  archivedThread,
  found,
  missingAccess,
  missingPermissions,
  nothing,
  notYourMessage,
  unknownChannel,
  unknownGuild,
  unknownMember,
  unknownMessage,
} from './refusals.ts';
import type { Request, Route } from './route.ts';
import type { World } from './world.ts';

const id = '(\\d+)';
const channelPath = `^/channels/${id}`;
const messagePath = `${channelPath}/messages/${id}`;

export const channelRoutes: readonly Route[] = [
  {
    method: 'GET',
    pattern: new RegExp(`${channelPath}$`),
    handle: (world, _, channelId) =>
      inChannel(world, channelId, [], (channel) => found(apiChannel(channel, world.bot.id))),
  },
  { method: 'PATCH', pattern: new RegExp(`${channelPath}$`), handle: changeThread },
  { method: 'GET', pattern: new RegExp(`${channelPath}/messages$`), handle: listMessages },
  { method: 'POST', pattern: new RegExp(`${channelPath}/messages$`), handle: postMessage },
  {
    method: 'GET',
    pattern: new RegExp(`${messagePath}$`),
    handle: (world, _, channelId, messageId) =>
      withMessage(world, channelId, messageId, ['ReadMessageHistory'], (message) => found(apiMessage(message))),
  },
  { method: 'PATCH', pattern: new RegExp(`${messagePath}$`), handle: editMessage },
  { method: 'DELETE', pattern: new RegExp(`${messagePath}$`), handle: deleteMessage },
  {
    method: 'POST',
    pattern: new RegExp(`${channelPath}/threads$`),
    handle: (world, request, channelId) => openThread(world, request, channelId),
  },
  { method: 'POST', pattern: new RegExp(`${messagePath}/threads$`), handle: openThread },
  {
    method: 'PUT',
    pattern: new RegExp(`${channelPath}/thread-members/(@me|\\d+)$`),
    handle: (world, _, channelId) => inChannel(world, channelId, [], () => nothing),
  },
  { method: 'GET', pattern: new RegExp(`^/guilds/${id}$`), handle: getGuild },
  { method: 'GET', pattern: new RegExp(`^/guilds/${id}/members/${id}$`), handle: getMember },
];

/** Acts in a channel the bot sees, if it has the permissions named. */
function inChannel(
  world: World,
  channelId: string | undefined,
  needed: readonly string[],
  act: (channel: Channel) => Answer,
): Answer {
  const channel = world.channels.get(channelId ?? '');
  if (!channel) return unknownChannel;
  const withheld = world.withheld.get(channel.id) ?? world.withheld.get(channel.parentId ?? '');
  if (withheld?.has('ViewChannel')) return missingAccess;
  return needed.some((name) => withheld?.has(name)) ? missingPermissions : act(channel);
}

function withMessage(
  world: World,
  channelId: string | undefined,
  messageId: string | undefined,
  needed: readonly string[],
  act: (message: StoredMessage, channel: Channel) => Answer,
): Answer {
  return inChannel(world, channelId, needed, (channel) => {
    const message = world.messages.get(messageId ?? '');
    // A message for one person's eyes cannot be reached by this door.
    if (!message || message.deleted || message.onlyFor || message.channelId !== channel.id) return unknownMessage;
    return act(message, channel);
  });
}

function postMessage(world: World, request: Request, channelId: string | undefined): Answer {
  const body = request.body as MessageBody;
  const thread = world.channels.get(channelId ?? '')?.parentId !== undefined;
  const needed = [
    thread ? 'SendMessagesInThreads' : 'SendMessages',
    ...(request.files.length > 0 ? ['AttachFiles'] : []),
    ...((body.embeds ?? []).length > 0 ? ['EmbedLinks'] : []),
  ];
  return inChannel(world, channelId, needed, (channel) => {
    const refused = request.judged();
    if (refused) return refused;
    // Writing into a sleeping thread wakes it.
    channel.archived = false;
    return found(apiMessage(post(world, { channelId: channel.id, body, files: request.files })));
  });
}

function editMessage(world: World, request: Request, channelId?: string, messageId?: string): Answer {
  return withMessage(world, channelId, messageId, [], (message, channel) => {
    if (message.author.id !== world.bot.id) return notYourMessage;
    if (channel.archived) return archivedThread;
    const refused = request.judged({ standing: standing(message) });
    if (refused) return refused;
    edit(world, message, request.body as MessageBody, request.files);
    return found(apiMessage(message));
  });
}

function deleteMessage(world: World, _: Request, channelId?: string, messageId?: string): Answer {
  return withMessage(world, channelId, messageId, [], (message) => {
    message.deleted = true;
    return nothing;
  });
}

function listMessages(world: World, { query }: Request, channelId?: string): Answer {
  return inChannel(world, channelId, ['ReadMessageHistory'], (channel) => {
    const limit = Number(query.get('limit') ?? 50);
    const all = [...world.messages.values()].filter(
      (message) => message.channelId === channel.id && !message.deleted && !message.onlyFor,
    );
    return found(all.reverse().slice(0, limit).map(apiMessage));
  });
}

function openThread(world: World, request: Request, channelId?: string, messageId?: string): Answer {
  return inChannel(world, channelId, ['CreatePublicThreads'], (parent) => {
    const refused = request.judged();
    if (refused) return refused;
    if (messageId !== undefined && !world.messages.has(messageId)) return unknownMessage;
    const { name } = request.body as { readonly name: string };
    const thread: Channel = {
      // A thread under a message has the id of that message.
      id: messageId ?? world.nextId(),
      guildId: parent.guildId,
      name,
      parentId: parent.id,
      archived: false,
    };
    world.channels.set(thread.id, thread);
    world.guilds.get(parent.guildId)?.channels.set(thread.id, thread);
    const told = apiChannel(thread, world.bot.id);
    world.dispatch('THREAD_CREATE', { ...told, newly_created: true }, parent.guildId);
    return { ...found(told), status: 201 };
  });
}

function changeThread(world: World, request: Request, channelId?: string): Answer {
  return inChannel(world, channelId, ['ManageThreads'], (channel) => {
    const refused = request.judged();
    if (refused) return refused;
    const { name, archived } = request.body as { readonly name?: string; readonly archived?: boolean };
    channel.name = name ?? channel.name;
    channel.archived = archived ?? channel.archived;
    const told = apiChannel(channel, world.bot.id);
    world.dispatch('THREAD_UPDATE', told, channel.guildId);
    return found(told);
  });
}

function getGuild(world: World, _: Request, guildId?: string): Answer {
  const guild = world.guilds.get(guildId ?? '');
  return guild ? found(apiGuild(guild)) : unknownGuild;
}

function getMember(world: World, _: Request, guildId?: string, userId?: string): Answer {
  const guild = world.guilds.get(guildId ?? '');
  if (!guild) return unknownGuild;
  const member = guild.members.get(userId ?? '');
  return member ? found(member) : unknownMember;
}
