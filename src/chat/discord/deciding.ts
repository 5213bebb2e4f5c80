import type { ChatInputCommandInteraction } from 'discord.js';
import { SheetTrouble } from '#store/sheet-trouble.ts';
import type { ScopedStore } from '#store/store.ts';
import type { DeskCommand, DeskOption, Start } from '../command.ts';
import { begin } from '../conversation.ts';
import { acted, refusal } from '../desk.ts';
import { sheetTroubleText } from '../sheet-trouble-text.ts';
import { type Answerable, type Decision, say } from './decision.ts';
import { decidedTaking, deskDecision } from './desk-pressing.ts';
import { deskOf, type House, languageOf, speakerOf, wordsFor } from './house.ts';
import { decidedPress } from './pressing.ts';
import { optionUpload } from './uploads.ts';

/** Settles what is done, and marks the event as seen. To be kept in the records as one. */
export function decided(house: House, store: ScopedStore, interaction: Answerable): Decision {
  if (house.store.seenBefore(interaction.id)) return { does: 'nothing' };
  const settled = () =>
    interaction.isChatInputCommand()
      ? decidedCommand(house, store, interaction)
      : decidedPress(house, store, interaction);
  try {
    return store.together(settled);
  } catch (error) {
    // It is undone, and yet it was seen: told again, it is not refused a second time.
    if (error instanceof SheetTrouble) return say(sheetTroubleText(error, languageOf(store, interaction)));
    throw error;
  }
}

type Options = Pick<ChatInputCommandInteraction['options'], 'getString' | 'getAttachment'>;

const givenOf = (
  ids: readonly Pick<DeskOption, 'id' | 'file' | 'photo'>[],
  options: Options,
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    ids.flatMap(({ id, file, photo }) => {
      const text = file || photo ? (options.getAttachment(id)?.id ?? null) : options.getString(id);
      return text === null ? [] : [[id, text]];
    }),
  );

function decidedCommand(house: House, store: ScopedStore, interaction: ChatInputCommandInteraction): Decision {
  const command = house.commands.find(({ name }) => name === interaction.commandName);
  if (!command) return say(wordsFor(store, interaction).commandGone);
  if (command.kind === 'desk') return decidedDesk(house, store, command, interaction);
  const given = givenOf(command.takes, interaction.options);
  const screen = begin(store, command, given, speakerOf(store, interaction));
  const fromTheSheet = screen.reply !== undefined && Object.keys(given).length === 0;
  const notes = fromTheSheet ? [wordsFor(store, interaction).fromTheSheet] : [];
  return { does: 'show', screen: { ...screen, notes: [...screen.notes, ...notes] }, where: 'new' };
}

function decidedDesk(
  house: House,
  store: ScopedStore,
  command: DeskCommand,
  interaction: ChatInputCommandInteraction,
): Decision {
  const name = interaction.options.getSubcommand(false) ?? '';
  const action = command.actions.find((each) => each.name === name);
  if (!action) return say(wordsFor(store, interaction).actionGone(command.name, name));
  const desk = deskOf(house, store, interaction);
  const refused = refusal(action, desk);
  if (refused !== undefined) return say(refused);
  const given = givenOf(action.options, interaction.options);
  const sent = action.options.filter(({ file, photo }) => file || photo);
  const uploads = sent.flatMap((option) => optionUpload(interaction, option));
  if (uploads.length > 0) {
    return decidedTaking(house, store, interaction, { command: command.name, action, given, uploads });
  }
  const reply = acted(action, desk, given);
  if ('start' in reply) return decidedStart(house, store, reply, interaction);
  return deskDecision(command.name, reply, 'new');
}

/** Begins the command a desk names, with the answers it gives. */
function decidedStart(
  house: House,
  store: ScopedStore,
  { start, given, notes, line }: Start,
  interaction: ChatInputCommandInteraction,
): Decision {
  const command = house.commands.find(({ name }) => name === start);
  if (command?.kind !== 'answer') return say(wordsFor(store, interaction).commandGone);
  const screen = begin(store, command, given, { ...speakerOf(store, interaction), line });
  return { does: 'show', screen: { ...screen, noted: [], notes: [...notes, ...screen.notes] }, where: 'new' };
}
