import {
  ActionRowBuilder,
  type AutocompleteInteraction,
  ButtonBuilder,
  type ButtonInteraction,
  ButtonStyle,
  type ChatInputCommandInteraction,
  type Client,
  type ClientOptions,
  ComponentType,
  Events,
  FileUploadBuilder,
  type Interaction,
  LabelBuilder,
  MessageFlags,
  ModalBuilder,
  type ModalSubmitInteraction,
  SlashCommandBuilder,
  StringSelectMenuBuilder,
  type StringSelectMenuInteraction,
  TextInputBuilder,
  TextInputStyle,
} from 'discord.js';
import { clientFor } from '../support/stand-in/client.ts';
import type { StandIn } from '../support/stand-in/stand-in.ts';

/** A bot with one of everything, to try the stand-in with. */
export interface EchoBot {
  readonly client: Client<true>;
  /** What went wrong inside it: the number of the platform's error, or its words. */
  readonly errors: (number | string)[];
  stop(): Promise<void>;
}

const commands = [
  new SlashCommandBuilder()
    .setName('say')
    .setDescription('Says it again')
    .addStringOption((option) =>
      option.setName('words').setDescription('What to say').setRequired(true).setMaxLength(400),
    )
    .addStringOption((option) =>
      option
        .setName('how')
        .setDescription('How to say it')
        .addChoices(
          { name: 'to you alone', value: 'alone' },
          { name: 'after a while', value: 'later' },
          { name: 'with a file', value: 'file' },
          { name: 'with one choice too many', value: 'badly' },
        ),
    ),
  new SlashCommandBuilder()
    .setName('part')
    .setDescription('Finds a part')
    .addStringOption((option) => option.setName('name').setDescription('Part').setAutocomplete(true).setRequired(true)),
  new SlashCommandBuilder()
    .setName('job')
    .setDescription('Jobs')
    .addSubcommand((sub) =>
      sub
        .setName('open')
        .setDescription('Opens a job')
        .addIntegerOption((option) => option.setName('rooms').setDescription('Rooms').setMinValue(1).setMaxValue(9)),
    )
    .addSubcommand((sub) =>
      sub
        .setName('photo')
        .setDescription('Keeps a photo')
        .addAttachmentOption((option) => option.setName('file').setDescription('Photo').setRequired(true)),
    )
    .addSubcommand((sub) => sub.setName('thread').setDescription('Opens a thread')),
  new SlashCommandBuilder().setName('measure').setDescription('Asks for measures'),
  new SlashCommandBuilder().setName('boss').setDescription('For leads').setDefaultMemberPermissions(32),
];

const buttons = () =>
  new ActionRowBuilder<ButtonBuilder>().addComponents(
    new ButtonBuilder().setCustomId('again').setLabel('Again').setStyle(ButtonStyle.Primary),
    new ButtonBuilder().setCustomId('form').setLabel('Measure').setStyle(ButtonStyle.Secondary),
    new ButtonBuilder().setCustomId('off').setLabel('Off').setStyle(ButtonStyle.Danger).setDisabled(true),
  );

const menu = (count = 3) =>
  new ActionRowBuilder<StringSelectMenuBuilder>().addComponents(
    new StringSelectMenuBuilder()
      .setCustomId('size')
      .setPlaceholder('Which size')
      .setOptions(Array.from({ length: count }, (_, nth) => ({ label: `${nth + 3} in`, value: `${nth + 3}` }))),
  );

/** Past the library's own check of 25 choices. */
const tooManySizes = () => {
  const [sizes] = menu(25).toJSON().components;
  if (sizes?.type !== ComponentType.StringSelect) throw new Error('a menu was made and is none');
  return { ...sizes, options: [...sizes.options, { label: 'Another', value: 'another' }] };
};

const measureForm = () =>
  new ModalBuilder()
    .setCustomId('measured')
    .setTitle('The room')
    .addLabelComponents(
      new LabelBuilder()
        .setLabel('Length')
        .setTextInputComponent(new TextInputBuilder().setCustomId('length').setStyle(TextInputStyle.Short)),
      new LabelBuilder()
        .setLabel('Collar')
        .setStringSelectMenuComponent(menu().components[0] ?? new StringSelectMenuBuilder()),
      new LabelBuilder()
        .setLabel('Photo')
        .setFileUploadComponent(new FileUploadBuilder().setCustomId('photo').setRequired(false)),
    );

async function onCommand(interaction: ChatInputCommandInteraction): Promise<unknown> {
  const sub = interaction.options.getSubcommand(false);
  if (sub === 'open') return interaction.reply(`Opened with ${interaction.options.getInteger('rooms') ?? 1} rooms`);
  if (sub === 'photo') {
    const photo = interaction.options.getAttachment('file', true);
    const bytes = await (await fetch(photo.url)).arrayBuffer();
    return interaction.reply(`${photo.name}: ${bytes.byteLength} of ${photo.size} bytes, ${photo.contentType}`);
  }
  if (sub === 'thread') {
    await interaction.reply('Here it is');
    const { channel } = interaction;
    if (!channel || !('threads' in channel)) return undefined;
    const thread = await channel.threads.create({ name: '12 Elm Street' });
    return thread.send('Talk about this job here.');
  }
  if (interaction.commandName === 'measure') return interaction.showModal(measureForm());
  if (interaction.commandName !== 'say') return interaction.reply(`/${interaction.commandName}`);
  const words = interaction.options.getString('words', true);
  switch (interaction.options.getString('how')) {
    case 'alone':
      return interaction.reply({ content: words, components: [buttons()], flags: MessageFlags.Ephemeral });
    case 'later':
      await interaction.deferReply();
      await interaction.editReply(`Nearly: ${words}`);
      await interaction.editReply(words);
      return interaction.followUp({ content: 'And one more thing', flags: MessageFlags.Ephemeral });
    case 'file':
      return interaction.reply({
        embeds: [{ title: words, image: { url: 'attachment://chart.png' } }],
        files: [{ attachment: Buffer.from('not really a chart'), name: 'chart.png', description: 'Two curves' }],
      });
    case 'badly':
      return interaction.reply({
        content: words,
        components: [{ ...menu(25).toJSON(), components: [tooManySizes()] }],
      });
    default:
      return interaction.reply({ content: words, components: [buttons(), menu()], withResponse: true });
  }
}

const onButton = (interaction: ButtonInteraction): Promise<unknown> =>
  interaction.customId === 'form'
    ? interaction.showModal(measureForm())
    : interaction.update({ content: `${interaction.message.content} ${interaction.customId}` });

async function onMenu(interaction: StringSelectMenuInteraction): Promise<unknown> {
  await interaction.deferUpdate();
  return interaction.editReply({ content: `Chose ${interaction.values.join()}`, components: [] });
}

async function onForm(interaction: ModalSubmitInteraction): Promise<unknown> {
  const { fields } = interaction;
  const photos = fields.getUploadedFiles('photo')?.map(({ name }) => name) ?? [];
  const said = [fields.getTextInputValue('length'), ...fields.getStringSelectValues('size'), ...photos].join(', ');
  return interaction.isFromMessage() ? interaction.update(`Measured ${said}`) : interaction.reply(`Measured ${said}`);
}

const parts = ['elbow 45', 'elbow 90', 'wall cap', 'roof cap'];
const onPartial = (interaction: AutocompleteInteraction): Promise<unknown> =>
  interaction.respond(
    parts
      .filter((part) => part.startsWith(interaction.options.getFocused()))
      .map((part) => ({ name: part, value: part })),
  );

function onInteraction(interaction: Interaction): Promise<unknown> {
  if (interaction.isChatInputCommand()) return onCommand(interaction);
  if (interaction.isAutocomplete()) return onPartial(interaction);
  if (interaction.isButton()) return onButton(interaction);
  if (interaction.isStringSelectMenu()) return onMenu(interaction);
  if (interaction.isModalSubmit()) return onForm(interaction);
  return Promise.resolve();
}

export async function startEchoBot(standIn: StandIn, options: Partial<ClientOptions> = {}): Promise<EchoBot> {
  const client = clientFor(standIn, options);
  const errors: (number | string)[] = [];
  const note = (error: Error & { readonly code?: number }) => errors.push(error.code ?? error.message);
  client.on(Events.InteractionCreate, (interaction) => {
    onInteraction(interaction).catch(note);
  });
  client.on(Events.Error, note);
  const ready = new Promise<Client<true>>((resolve) => client.once(Events.ClientReady, resolve));
  await client.login(standIn.token);
  const readyClient = await ready;
  await readyClient.application.commands.set(commands);
  return { client: readyClient, errors, stop: () => client.destroy() };
}
