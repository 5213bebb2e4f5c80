/** The package ships these schemas as plain JavaScript; only those used here are declared. */
declare module 'discord-api-spec/zod' {
  import type { $ZodType } from 'zod/v4/core';

  export const ApplicationCommandAutocompleteCallbackRequestSchema: $ZodType;
  export const ApplicationCommandCreateRequestSchema: $ZodType;
  export const ApplicationCommandPatchRequestPartialSchema: $ZodType;
  export const ApplicationCommandUpdateRequestSchema: $ZodType;
  export const CreateMessageInteractionCallbackRequestSchema: $ZodType;
  export const CreateTextThreadWithMessageRequestSchema: $ZodType;
  export const CreateTextThreadWithoutMessageRequestSchema: $ZodType;
  export const IncomingWebhookRequestPartialSchema: $ZodType;
  export const IncomingWebhookUpdateRequestPartialSchema: $ZodType;
  export const MessageCreateRequestSchema: $ZodType;
  export const MessageEditRequestPartialSchema: $ZodType;
  export const MessageResponseSchema: $ZodType;
  export const ModalInteractionCallbackRequestSchema: $ZodType;
  export const PongInteractionCallbackRequestSchema: $ZodType;
  export const UpdateMessageInteractionCallbackRequestSchema: $ZodType;
  export const UpdateThreadRequestPartialSchema: $ZodType;
}
