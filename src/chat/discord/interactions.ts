import {
  type AutocompleteInteraction,
  type ButtonInteraction,
  type ChatInputCommandInteraction,
  type Interaction,
  MessageFlags,
  type ModalSubmitInteraction,
  PermissionFlagsBits,
  type StringSelectMenuInteraction,
} from 'discord.js';
import type { Choice } from '#interview/question.ts';
import type { ScopedStore, Store } from '#store/store.ts';
import { unitsOf } from '../answers.ts';
import type { AnswerCommand, Command, Desk, DeskCommand, Speaker } from '../command.ts';
import { begin, type Heard, hear, recalledTalk, screenOf, type Talk } from '../conversation.ts';
import type { Screen } from '../screen.ts';
import { formOf } from './form.ts';
import { type Message, messageOf, type Picture } from './message.ts';
import { type Press, pressed } from './press.ts';
import { notKnownChoice } from './registration.ts';
import { pieces, workingLines } from './text.ts';

/** What the Discord side works with. */
export interface House {
  readonly store: Store;
  readonly commands: readonly Command[];
  /** Draws the chart of a screen's reply. */
  drawn(screen: Screen): Promise<Picture | undefined>;
}

type Component = ButtonInteraction | StringSelectMenuInteraction;
type Answerable = ChatInputCommandInteraction | Component | ModalSubmitInteraction;

const whoOf = (interaction: { user: { id: string } }): string => `<@${interaction.user.id}>`;
const speakerOf = (interaction: Answerable | AutocompleteInteraction): Speaker => ({
  channel: interaction.channelId ?? 'direct',
  who: whoOf(interaction),
});

/** Answers one event of the platform, whatever its kind. */
export async function answerInteraction(house: House, interaction: Interaction): Promise<void> {
  if (!interaction.inGuild()) return;
  const store = house.store.scoped(interaction.guildId);
  if (interaction.isAutocomplete()) return interaction.respond(suggestions(house, store, interaction));
  if (house.store.seenBefore(interaction.id)) return;
  if (interaction.isChatInputCommand()) return answerSlash(house, store, interaction);
  if (interaction.isButton() || interaction.isStringSelectMenu() || interaction.isModalSubmit()) {
    return answerPress(house, store, interaction);
  }
}

async function answerSlash(house: House, store: ScopedStore, interaction: ChatInputCommandInteraction): Promise<void> {
  const command = house.commands.find(({ name }) => name === interaction.commandName);
  if (!command) return privately(interaction, 'This command is no longer here. Type / to see those that are.');
  if (command.kind === 'desk') return show(house, interaction, deskScreen(house, store, command, interaction));
  const given = Object.fromEntries(
    command.takes.flatMap(({ id }) => {
      const text = interaction.options.getString(id);
      return text === null ? [] : [[id, text]];
    }),
  );
  return show(house, interaction, begin(store, command, given, speakerOf(interaction)));
}

const deskOf = (house: House, store: ScopedStore, speaker: Speaker): Desk => ({
  store,
  speaker,
  commands: house.commands,
  telling: { units: unitsOf(store) },
});

function deskScreen(
  house: House,
  store: ScopedStore,
  command: DeskCommand,
  interaction: ChatInputCommandInteraction,
): Screen {
  const name = interaction.options.getSubcommand(false) ?? '';
  const action = command.actions.find((each) => each.name === name);
  const screen = { revision: 0, command: command.name };
  if (!action) return { ...screen, notes: ['This part of the command is no longer here.'] };
  const given = Object.fromEntries(
    action.options.flatMap(({ id }) => {
      const text = interaction.options.getString(id);
      return text === null ? [] : [[id, text]];
    }),
  );
  return { ...screen, notes: [], reply: action.act(deskOf(house, store, speakerOf(interaction)), given) };
}

async function answerPress(
  house: House,
  store: ScopedStore,
  interaction: Component | ModalSubmitInteraction,
): Promise<void> {
  const press = pressed(interaction.customId);
  if (!press) return privately(interaction, 'This button is out of date. Start again with a command such as /duct.');
  if (press.act === 'start') return startFrom(house, store, interaction, press.command);
  const talk = recalledTalk(store, answering(house), press.talk);
  if (!talk)
    return privately(interaction, 'This question is no longer open. Start again with a command such as /duct.');
  if (press.act === 'working') return showWorking(store, interaction, talk);
  if (talk.who !== whoOf(interaction)) {
    return privately(interaction, `${talk.who} is answering this. Start your own with /${talk.command.name}.`);
  }
  if (press.turn !== talk.revision) {
    const now = screenOf(store, talk, ['That was an earlier step. Here is where it stands.']);
    return show(house, interaction, now);
  }
  if (press.act === 'form' && !interaction.isModalSubmit()) return openForm(store, interaction, talk);
  const heard = heardFrom(store, talk, press, interaction);
  if (!heard) return privately(interaction, 'That choice is not among the ones offered now.');
  return show(house, interaction, hear(store, talk, heard, whoOf(interaction)));
}

const answering = (house: House): AnswerCommand<unknown>[] =>
  house.commands.filter((command) => command.kind === 'answer');

function startFrom(
  house: House,
  store: ScopedStore,
  interaction: Component | ModalSubmitInteraction,
  name: string,
): Promise<void> {
  const command = answering(house).find((each) => each.name === name);
  if (!command) return privately(interaction, `There is no /${name} any more.`);
  return show(house, interaction, begin(store, command, {}, speakerOf(interaction)), 'new message');
}

function heardFrom(
  store: ScopedStore,
  talk: Talk,
  press: Exclude<Press, { act: 'start' }>,
  interaction: Component | ModalSubmitInteraction,
): Heard | undefined {
  if (press.act === 'back' || press.act === 'why' || press.act === 'not-known') return { turn: press.act };
  const asking = screenOf(store, talk).asking;
  if (interaction.isModalSubmit()) {
    const typed = interaction.fields.fields.map((field) => [
      field.customId,
      interaction.fields.getTextInputValue(field.customId),
    ]);
    return { answers: Object.fromEntries(typed) };
  }
  if (interaction.isStringSelectMenu()) {
    if (press.act === 'change') return { change: interaction.values[0] ?? '' };
    return asking ? { answers: { [asking.question.id]: interaction.values.join(', ') } } : undefined;
  }
  const choice = asking?.choices[Number(press.choice)];
  return asking && choice ? { answers: { [asking.question.id]: choice.id } } : undefined;
}

async function openForm(store: ScopedStore, interaction: Component, talk: Talk): Promise<void> {
  const asking = screenOf(store, talk).asking;
  if (!asking) return privately(interaction, 'Nothing is being asked just now.');
  await interaction.showModal(
    formOf(asking, `${talk.command.name}: ${asking.question.brief}`, { talk: talk.id, turn: talk.revision }),
  );
}

async function showWorking(
  store: ScopedStore,
  interaction: Component | ModalSubmitInteraction,
  talk: Talk,
): Promise<void> {
  const reply = screenOf(store, talk).reply;
  if (!reply) return privately(interaction, 'There is no answer to show the working of yet.');
  const [first = 'Nothing to show.', ...rest] = pieces(workingLines(reply));
  await privately(interaction, first);
  for (const piece of rest.slice(0, 4)) {
    await interaction.followUp({ content: piece, flags: MessageFlags.Ephemeral });
  }
}

async function privately(interaction: Answerable, content: string): Promise<void> {
  await interaction.reply({ content, flags: MessageFlags.Ephemeral });
}

/** Puts a screen in front of people: a new message after a slash command, the same message edited after a press. */
async function show(
  house: House,
  interaction: Answerable,
  screen: Screen,
  where: 'in place' | 'new message' = 'in place',
): Promise<void> {
  const mayAttach = interaction.appPermissions.has(PermissionFlagsBits.AttachFiles);
  const picture = mayAttach ? await house.drawn(screen) : undefined;
  const lacking = screen.reply?.chart && !mayAttach ? ['I may not attach files here, so the chart is left out.'] : [];
  const message = messageOf({ ...screen, notes: [...screen.notes, ...lacking] }, picture);
  if (where === 'in place' && interaction.isMessageComponent()) await interaction.update(message);
  else if (where === 'in place' && interaction.isModalSubmit() && interaction.isFromMessage())
    await interaction.update(message);
  else await interaction.reply(forNew(message));
}

/** A new message has nothing to take away. */
const forNew = ({ attachments: _, ...message }: Message) => message;

const mostSuggestions = 25;

function suggestions(
  house: House,
  store: ScopedStore,
  interaction: AutocompleteInteraction,
): { name: string; value: string }[] {
  const command = house.commands.find(({ name }) => name === interaction.commandName);
  const { name, value } = interaction.options.getFocused(true);
  return choicesFor(house, store, command, interaction, { name, value })
    .map(({ id, label }) => ({ name: label.slice(0, 100), value: id.slice(0, 100) }))
    .slice(0, mostSuggestions);
}

function choicesFor(
  house: House,
  store: ScopedStore,
  command: Command | undefined,
  interaction: AutocompleteInteraction,
  typed: { name: string; value: string },
): readonly Choice[] {
  if (command?.kind === 'desk') {
    const sub = interaction.options.getSubcommand(false) ?? '';
    const option = command.actions.find(({ name }) => name === sub)?.options.find(({ id }) => id === typed.name);
    return option?.suggest?.(deskOf(house, store, speakerOf(interaction)), typed.value) ?? [];
  }
  const question = command?.takes.find(({ id }) => id === typed.name);
  if (!question) return [];
  const own: readonly Choice[] = typed.value.trim() === '' ? [] : [{ id: typed.value, label: typed.value }];
  const offered = question.growing
    ? question.growing.choices(typed.value).map(({ id, label }) => {
        const whole = typed.value.trim() === '' ? id : `${typed.value.replace(/[;\s]+$/, '')}; ${id}`;
        return { id: whole, label: typed.value.trim() === '' ? label : whole };
      })
    : question.widget.kind === 'text'
      ? [{ id: question.widget.placeholder, label: `for example ${question.widget.placeholder}` }]
      : severalChoices(question.widget.choices, typed.value);
  return [...own, ...offered, { id: notKnownChoice.value, label: notKnownChoice.name }];
}

/** Completes the last of several picks, so that "toilet, sh" offers "toilet, Shower". */
function severalChoices(choices: readonly Choice[], typed: string): readonly Choice[] {
  const parts = typed.split(',');
  const last = parts.at(-1)?.trim().toLowerCase() ?? '';
  const before = parts.slice(0, -1).map((part) => part.trim());
  return choices
    .filter(({ id, label }) => !before.includes(id) && label.toLowerCase().startsWith(last))
    .map(({ id }) => ({ id: [...before, id].join(', '), label: [...before, id].join(', ') }));
}
