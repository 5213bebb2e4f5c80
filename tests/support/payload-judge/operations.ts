import {
  ApplicationCommandAutocompleteCallbackRequestSchema,
  ApplicationCommandCreateRequestSchema,
  ApplicationCommandPatchRequestPartialSchema,
  ApplicationCommandUpdateRequestSchema,
  CreateMessageInteractionCallbackRequestSchema,
  CreateTextThreadWithMessageRequestSchema,
  CreateTextThreadWithoutMessageRequestSchema,
  IncomingWebhookRequestPartialSchema,
  IncomingWebhookUpdateRequestPartialSchema,
  MessageCreateRequestSchema,
  MessageEditRequestPartialSchema,
  ModalInteractionCallbackRequestSchema,
  PongInteractionCallbackRequestSchema,
  UpdateMessageInteractionCallbackRequestSchema,
  UpdateThreadRequestPartialSchema,
} from 'discord-api-spec/zod';
import * as z from 'zod/mini';
import type { $ZodType } from 'zod/v4/core';

/** What the body of a request means, which decides the limits it is held to. */
export type Meaning =
  | 'first-answer'
  | 'new-message'
  | 'message-edit'
  | 'every-command'
  | 'one-command'
  | 'command-edit'
  | 'thread';

/** One request the bot may send with a body. */
export interface Operation {
  readonly method: 'POST' | 'PUT' | 'PATCH';
  /** The path as the platform's description writes it. */
  readonly template: string;
  readonly meaning: Meaning;
  readonly schema: $ZodType;
}

const firstAnswer = z.union([
  PongInteractionCallbackRequestSchema,
  CreateMessageInteractionCallbackRequestSchema,
  UpdateMessageInteractionCallbackRequestSchema,
  ApplicationCommandAutocompleteCallbackRequestSchema,
  ModalInteractionCallbackRequestSchema,
]);
// 130 is what the description says over all kinds of command; 100 chat commands is a limit of its own.
const everyCommand = z.array(ApplicationCommandUpdateRequestSchema).check(z.maxLength(130));

const commandsOf = (owner: string): readonly Operation[] => [
  { method: 'PUT', template: `${owner}/commands`, meaning: 'every-command', schema: everyCommand },
  {
    method: 'POST',
    template: `${owner}/commands`,
    meaning: 'one-command',
    schema: ApplicationCommandCreateRequestSchema,
  },
  {
    method: 'PATCH',
    template: `${owner}/commands/{command_id}`,
    meaning: 'command-edit',
    schema: ApplicationCommandPatchRequestPartialSchema,
  },
];

const edit = (template: string, schema: $ZodType): Operation => ({
  method: 'PATCH',
  template,
  meaning: 'message-edit',
  schema,
});

const thread = (method: 'POST' | 'PATCH', template: string, schema: $ZodType): Operation => ({
  method,
  template,
  meaning: 'thread',
  schema,
});

/** Those with the most fixed words first, so that `@original` is not taken for a message id. */
const operations: readonly Operation[] = [
  ...commandsOf('/applications/{application_id}'),
  ...commandsOf('/applications/{application_id}/guilds/{guild_id}'),
  {
    method: 'POST',
    template: '/interactions/{interaction_id}/{interaction_token}/callback',
    meaning: 'first-answer',
    schema: firstAnswer,
  },
  edit('/webhooks/{webhook_id}/{webhook_token}/messages/@original', IncomingWebhookUpdateRequestPartialSchema),
  edit('/webhooks/{webhook_id}/{webhook_token}/messages/{message_id}', IncomingWebhookUpdateRequestPartialSchema),
  {
    method: 'POST',
    template: '/webhooks/{webhook_id}/{webhook_token}',
    meaning: 'new-message',
    schema: IncomingWebhookRequestPartialSchema,
  },
  {
    method: 'POST',
    template: '/channels/{channel_id}/messages',
    meaning: 'new-message',
    schema: MessageCreateRequestSchema,
  },
  edit('/channels/{channel_id}/messages/{message_id}', MessageEditRequestPartialSchema),
  thread('POST', '/channels/{channel_id}/threads', CreateTextThreadWithoutMessageRequestSchema),
  thread('POST', '/channels/{channel_id}/messages/{message_id}/threads', CreateTextThreadWithMessageRequestSchema),
  thread('PATCH', '/channels/{channel_id}', UpdateThreadRequestPartialSchema),
];

const patterns = operations.map((operation) => ({
  operation,
  pattern: new RegExp(`^${operation.template.replace(/\{\w+\}/g, '[^/]+')}$`),
}));

/** The path without the prefix, version and query: `/api/v10/channels/1/messages?x=y` is `/channels/1/messages`. */
export const barePath = (path: string): string => path.replace(/\?.*$/, '').replace(/^(\/api)?(\/v\d+)?(?=\/)/, '');

/** The operation a request performs, if its body is one that can be judged. */
export function operationOf(method: string, path: string): Operation | undefined {
  const bare = barePath(path);
  return patterns.find(({ operation, pattern }) => operation.method === method && pattern.test(bare))?.operation;
}
