import type { ChatInputCommandInteraction, ModalSubmitInteraction } from 'discord.js';
import type { Reply } from '#findings/reply.ts';
import type { ScopedStore } from '#store/store.ts';
import { acted, refusal } from '../desk.ts';
import { type Component, type Decision, say } from './decision.ts';
import { type DeskPress, deskFilled, deskForm } from './desk-press.ts';
import { type Deed, refusedAtOnce } from './doing.ts';
import { clipped, harmless } from './harmless.ts';
import { deskOf, type House, wordsFor } from './house.ts';
import { limits } from './text.ts';
import { formUploads } from './uploads.ts';

/** How the reply of a desk is told: a form where it asks, a word to one person where nothing was done, else a message. */
export function deskDecision(
  command: string,
  reply: Reply,
  where: 'new' | 'in place',
  mayAsk = true,
): Exclude<Decision, { does: 'take' }> {
  if (reply.refused) return say(clipped(harmless(reply.headline), limits.content));
  const form = reply.asks && mayAsk ? deskForm(reply.asks) : undefined;
  if (form) return { does: 'ask', form };
  return { does: 'show', screen: { revision: 0, command, notes: reply.notes ?? [], reply }, where };
}

/** Settles that files are fetched, unless it can be told already that nothing would come of it. */
export function decidedTaking(
  house: House,
  store: ScopedStore,
  interaction: ChatInputCommandInteraction | ModalSubmitInteraction,
  deed: Deed,
): Decision {
  const refused = refusedAtOnce(house, store, interaction, deed);
  return refused === undefined ? { does: 'take', deed } : say(clipped(harmless(refused), limits.content));
}

/** Does what a desk's button or form says, as the one who pressed: what that person may do is for the records to say. */
export function decidedDeskPress(
  house: House,
  store: ScopedStore,
  interaction: Component | ModalSubmitInteraction,
  { command: name, action: called, given }: DeskPress,
): Decision {
  const command = house.commands.find((each) => each.kind === 'desk' && each.name === name);
  const action = command?.kind === 'desk' ? command.actions.find((each) => each.name === called) : undefined;
  const words = wordsFor(store, interaction);
  if (!action || interaction.isStringSelectMenu()) return say(words.buttonOld);
  const desk = deskOf(house, store, interaction);
  const refused = refusal(action, desk);
  if (refused !== undefined) return say(refused);
  const isForm = interaction.isModalSubmit();
  if (isForm) {
    const deed = {
      command: name,
      action,
      given: { ...deskFilled(interaction), ...given },
      uploads: formUploads(interaction),
    };
    if (deed.uploads.length > 0) return decidedTaking(house, store, interaction, deed);
  }
  const reply = acted(action, desk, isForm ? { ...deskFilled(interaction), ...given } : given);
  if ('start' in reply) return say(words.askedWith(name));
  return deskDecision(name, reply, 'in place', !isForm);
}
