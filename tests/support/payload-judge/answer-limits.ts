import { type APIInteractionResponse, InteractionResponseType, InteractionType, MessageFlags } from 'discord.js';
import { type MessageBody, type MessageCase, messageLimits } from './message-limits.ts';
import { modalLimits } from './modal-limits.ts';
import { overLimit, type Problem } from './problem.ts';

/** The interaction a first answer is given to, where it is known. */
export interface Answering {
  readonly type: InteractionType;
  /** Whether a message was there already, under whose button, menu or form this happened. */
  readonly onMessage: boolean;
}

const suggesting: readonly InteractionResponseType[] = [InteractionResponseType.ApplicationCommandAutocompleteResult];
const updating: readonly InteractionResponseType[] = [
  InteractionResponseType.DeferredMessageUpdate,
  InteractionResponseType.UpdateMessage,
];

/** What the documentation says of the first answer to an interaction. */
export function answerLimits(
  answer: APIInteractionResponse,
  surroundings: Omit<MessageCase, 'at' | 'body' | 'editing'>,
  answering?: Answering,
): readonly Problem[] {
  return [...(answering ? fittingLimits(answer, answering) : []), ...contentLimits(answer, surroundings)];
}

function fittingLimits({ type }: APIInteractionResponse, answering: Answering): readonly Problem[] {
  const refuse = (says: string) => [overLimit('type', says)];
  const asksForChoices = answering.type === InteractionType.ApplicationCommandAutocomplete;
  if (asksForChoices !== suggesting.includes(type)) {
    return refuse(asksForChoices ? 'a partial word is answered with choices' : 'choices answer a partial word only');
  }
  if (updating.includes(type) && !answering.onMessage) return refuse('there is no message to update');
  if (type === InteractionResponseType.Modal && answering.type === InteractionType.ModalSubmit) {
    return refuse('a form cannot be answered with a form');
  }
  return [];
}

function contentLimits(
  answer: APIInteractionResponse,
  { standing, ...surroundings }: Omit<MessageCase, 'at' | 'body' | 'editing'>,
): readonly Problem[] {
  switch (answer.type) {
    case InteractionResponseType.ChannelMessageWithSource:
      return messageLimits({ ...surroundings, at: 'data', body: answer.data as MessageBody, editing: false });
    case InteractionResponseType.UpdateMessage: {
      const body = (answer.data ?? {}) as MessageBody;
      return messageLimits({ ...surroundings, ...(standing ? { standing } : {}), at: 'data', body, editing: true });
    }
    case InteractionResponseType.DeferredChannelMessageWithSource: {
      const extra = (answer.data?.flags ?? 0) & ~MessageFlags.Ephemeral;
      return extra === 0 ? [] : [overLimit('data.flags', 'only the ephemeral flag can be promised beforehand')];
    }
    case InteractionResponseType.Modal:
      return modalLimits('data', answer.data);
    default:
      return [];
  }
}
