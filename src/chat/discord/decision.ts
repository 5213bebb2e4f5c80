import type {
  ButtonInteraction,
  ChatInputCommandInteraction,
  ModalBuilder,
  ModalSubmitInteraction,
  StringSelectMenuInteraction,
} from 'discord.js';
import type { Reply } from '#findings/reply.ts';
import type { Screen } from '../screen.ts';
import type { Deed } from './doing.ts';

/** What is done about something a person did: settled and kept in the records before anything is sent. */
export type Decision =
  /** A screen everybody sees: a new message, or the message that was pressed, changed. */
  | { readonly does: 'show'; readonly screen: Screen; readonly where: 'new' | 'in place' }
  /** A sentence for the one who acted. */
  | { readonly does: 'say'; readonly text: string }
  /** Long text for the one who acted: the sums behind a reply, or all of it. */
  | {
      readonly does: 'explain';
      readonly what: 'working' | 'everything';
      readonly command: string;
      readonly reply: Reply;
    }
  | { readonly does: 'ask'; readonly form: ModalBuilder }
  /** Something files came with, which are to be fetched before it is done. */
  | { readonly does: 'take'; readonly deed: Deed }
  /** The platform told us twice. */
  | { readonly does: 'nothing' };

export type Component = ButtonInteraction | StringSelectMenuInteraction;
export type Answerable = ChatInputCommandInteraction | Component | ModalSubmitInteraction;

export const say = (text: string): Extract<Decision, { does: 'say' }> => ({ does: 'say', text });
