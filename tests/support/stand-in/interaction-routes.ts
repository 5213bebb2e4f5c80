import { type APIInteractionResponse, InteractionResponseType, InteractionType, MessageFlags } from 'discord.js';
import type { MessageBody } from '../payload-judge/message-limits.ts';
import { type Interaction, tokenHasExpired, tooLateToAnswer } from './interactions.ts';
import { apiMessage, edit, post, type StoredMessage, standing } from './messages.ts';
import {
  type Answer,
  alreadyAcknowledged,
  found,
  invalidToken,
  nothing,
  unknownInteraction,
  unknownMessage,
  unknownWebhook,
} from './refusals.ts';
import type { Request, Route } from './route.ts';
import type { World } from './world.ts';

const part = '([^/]+)';
const webhook = `^/webhooks/${part}/${part}`;

export const interactionRoutes: readonly Route[] = [
  {
    method: 'POST',
    pattern: new RegExp(`^/interactions/${part}/${part}/callback$`),
    handle: (world, request, id = '', token = '') => {
      const interaction = world.interactions.get(id);
      if (!interaction || interaction.token !== token) return unknownInteraction;
      return noted(interaction, 'first answer', firstAnswer(world, request, interaction));
    },
  },
  {
    method: 'POST',
    pattern: new RegExp(`${webhook}$`),
    handle: (world, request, application, token) =>
      withToken(world, application, token, 'follow-up', (interaction) => followUp(world, request, interaction)),
  },
  {
    method: 'GET',
    pattern: new RegExp(`${webhook}/messages/${part}$`),
    handle: (world, _, application, token, id) =>
      withToken(world, application, token, 'look at its answer', (interaction) => {
        const message = messageOf(interaction, id);
        return message ? found(apiMessage(message)) : unknownMessage;
      }),
  },
  {
    method: 'PATCH',
    pattern: new RegExp(`${webhook}/messages/${part}$`),
    handle: (world, request, application, token, id) =>
      withToken(world, application, token, 'edit', (interaction) => editAnswer(world, request, interaction, id)),
  },
  {
    method: 'DELETE',
    pattern: new RegExp(`${webhook}/messages/${part}$`),
    handle: (world, _, application, token, id) =>
      withToken(world, application, token, 'removal', (interaction) => {
        const message = messageOf(interaction, id);
        if (!message) return unknownMessage;
        message.deleted = true;
        return nothing;
      }),
  },
];

/** Keeps what was refused with the interaction, for the report of a test that waits in vain. */
function noted(interaction: Interaction, what: string, answer: Answer): Answer {
  if (answer.status >= 400) interaction.refusals.push(`${what}: ${answer.status} ${JSON.stringify(answer.body)}`);
  return answer;
}

function withToken(
  world: World,
  application: string | undefined,
  token = '',
  what: string,
  act: (interaction: Interaction) => Answer,
): Answer {
  const interaction = world.interactionsByToken.get(token);
  if (!interaction || application !== world.bot.id) return unknownWebhook;
  if (tokenHasExpired(world, interaction)) return noted(interaction, what, invalidToken);
  if (!interaction.response) return noted(interaction, what, unknownWebhook);
  return noted(interaction, what, act(interaction));
}

function messageOf({ original, followUps }: Interaction, id: string | undefined): StoredMessage | undefined {
  const message = id === '@original' ? original : [original, ...followUps].find((it) => it?.id === id);
  return message?.deleted ? undefined : message;
}

function firstAnswer(world: World, request: Request, interaction: Interaction): Answer {
  if (interaction.response) return alreadyAcknowledged;
  if (tooLateToAnswer(world, interaction)) return unknownInteraction;
  const refused = request.judged({
    answering: { type: interaction.type, onMessage: interaction.on !== undefined },
    ...(interaction.on ? { standing: standing(interaction.on) } : {}),
  });
  if (refused) return refused;
  const response = request.body as APIInteractionResponse;
  interaction.response = response;
  interaction.acknowledged.happen(request.arrivedAt);
  perform(world, request, interaction, response);
  const promised = interaction.original?.pending || response.type === InteractionResponseType.DeferredMessageUpdate;
  if (!promised) answeredBy(interaction, interaction.original, request);
  return request.query.get('with_response') === 'true' ? found(withResponse(interaction, response)) : nothing;
}

function perform(world: World, { files }: Request, interaction: Interaction, response: APIInteractionResponse): void {
  switch (response.type) {
    case InteractionResponseType.ChannelMessageWithSource:
      interaction.original = postFor(world, interaction, response.data as MessageBody, files);
      break;
    case InteractionResponseType.DeferredChannelMessageWithSource:
      interaction.original = postFor(world, interaction, (response.data ?? {}) as MessageBody, [], true);
      break;
    case InteractionResponseType.UpdateMessage:
      interaction.original = interaction.on;
      if (interaction.on) edit(world, interaction.on, (response.data ?? {}) as MessageBody, files);
      break;
    case InteractionResponseType.DeferredMessageUpdate:
      interaction.original = interaction.on;
      break;
    case InteractionResponseType.Modal:
      interaction.form = response.data;
      break;
    default:
      break;
  }
}

const postFor = (
  world: World,
  interaction: Interaction,
  body: MessageBody,
  files: Request['files'],
  pending = false,
): StoredMessage =>
  post(world, {
    channelId: interaction.channelId,
    body,
    files,
    interaction,
    pending,
    onlyFor: (body.flags ?? 0) & MessageFlags.Ephemeral ? interaction.user.id : undefined,
  });

/** The first message to come is the answer. */
function answeredBy(interaction: Interaction, message: StoredMessage | undefined, { arrivedAt }: Request): void {
  if (interaction.answered.at === undefined) interaction.answer = message;
  interaction.answered.happen(arrivedAt);
}

function followUp(world: World, request: Request, interaction: Interaction): Answer {
  const { original } = interaction;
  const refused = request.judged();
  if (refused) return refused;
  const body = request.body as MessageBody;
  // The first follow-up to a promise keeps it: the platform fills the waiting message instead of adding one.
  if (original?.pending && !original.deleted) {
    edit(world, original, body, request.files);
    answeredBy(interaction, original, request);
    return found(apiMessage(original));
  }
  const message = postFor(world, interaction, body, request.files);
  interaction.followUps.push(message);
  answeredBy(interaction, message, request);
  return found(apiMessage(message));
}

function editAnswer(world: World, request: Request, interaction: Interaction, id: string | undefined): Answer {
  const message = messageOf(interaction, id);
  if (!message) return unknownMessage;
  const refused = request.judged({ standing: standing(message) });
  if (refused) return refused;
  edit(world, message, request.body as MessageBody, request.files);
  answeredBy(interaction, message, request);
  return found(apiMessage(message));
}

function withResponse(interaction: Interaction, response: APIInteractionResponse) {
  const { original } = interaction;
  return {
    interaction: {
      id: interaction.id,
      type: interaction.type,
      channel_id: interaction.channelId,
      guild_id: interaction.guildId,
      response_message_id: original?.id,
      response_message_loading: original?.pending ?? false,
      response_message_ephemeral: original?.onlyFor !== undefined,
    },
    ...(original && interaction.type !== InteractionType.ApplicationCommandAutocomplete
      ? { resource: { type: response.type, message: apiMessage(original) } }
      : {}),
  };
}
