import {
  type ChatInputCommandInteraction,
  type Client,
  DiscordAPIError,
  Events,
  type Interaction,
  MessageFlags,
} from 'discord.js';
import type { ScopedStore } from '#store/store.ts';
import { StoreTrouble } from '#store/trouble.ts';
import { discordWords } from '#words/discord.ts';
import { languageMeant } from '#words/language.ts';
import { decided } from './deciding.ts';
import type { Answerable } from './decision.ts';
import { NotBegun } from './gathering.ts';
import { greet } from './greeting.ts';
import { crewRecords, type House } from './house.ts';
import { hurrying } from './hurrying.ts';
import { type Log, loggable } from './log.ts';
import { recordsTroubleText } from './records-trouble.ts';
import { suggestions } from './suggestions.ts';
import { take } from './taking.ts';
import { tell } from './telling.ts';

/** What answers the events of a client. */
export interface Service {
  /** Resolves when everything acknowledged so far is finished. */
  finished(): Promise<void>;
}

/** Answers everything the client hears from now on. */
export function serve(client: Client, house: House, log: Log): Service {
  const underWay = new Set<Promise<void>>();
  const finish = (work: Promise<void>): void => {
    underWay.add(work);
    void work.finally(() => underWay.delete(work));
  };
  const means = { house, log, records: crewRecords(house.store) };
  client.on(Events.Error, (error) => log('error', 'client error', loggable(error)));
  client.on(Events.Warn, (message) => log('warn', message));
  client.on(Events.InteractionCreate, (interaction) => {
    const arrived = performance.now();
    const work = answered(means, interaction).then(
      () => log('debug', 'answered', { to: nameOf(interaction), ms: Math.round(performance.now() - arrived) }),
      (error: unknown) => apologise(log, interaction, error),
    );
    finish(work);
  });
  client.on(Events.GuildCreate, (guild) => {
    const fails = (error: unknown) => log('error', 'a server could not be greeted', loggable(error));
    finish(greet(guild, house.store, log).catch(fails));
  });
  return {
    async finished() {
      while (underWay.size > 0) await Promise.allSettled(underWay);
    },
  };
}

const nameOf = (interaction: Interaction): string =>
  interaction.isCommand() || interaction.isAutocomplete() ? `/${interaction.commandName}` : 'a press';

/** What events are answered with. */
interface Means {
  readonly house: House;
  readonly log: Log;
  records(guild: string): ScopedStore;
}

async function answered({ house, log, records }: Means, interaction: Interaction): Promise<void> {
  const answerable = isAnswerable(interaction);
  if (!interaction.inGuild()) {
    if (!answerable) return;
    await interaction.reply({ content: ownWords(interaction).onlyInServers, flags: 64 });
    return;
  }
  if ((answerable || interaction.isAutocomplete()) && (await hurrying(house, interaction))) return;
  const store = records(interaction.guildId);
  if (interaction.isAutocomplete()) return interaction.respond(suggestions(house, store, interaction));
  if (!answerable) return;
  // Told at once that the answer comes later, the platform waits for minutes instead of seconds.
  const promised = house.behind() && isAnswered(house, interaction) ? interaction.deferReply() : undefined;
  // Where it fails because another copy of the event was first, that is no trouble; else it is met with below.
  promised?.catch(() => {});
  const decision = await house.gather(store, () => decided(house, store, interaction), promised ? 'later' : 'now');
  if (decision.does === 'nothing') return;
  await promised;
  if (decision.does !== 'take') return tell({ house, store, log, interaction }, decision);
  if (interaction.isChatInputCommand() || interaction.isModalSubmit()) {
    await take({ house, store, log, interaction }, decision.deed);
  }
}

/** Whether a command is answered with a message for everybody, whatever is found: then it may be promised before. */
const isAnswered = ({ commands }: House, interaction: Answerable): interaction is ChatInputCommandInteraction =>
  interaction.isChatInputCommand() &&
  commands.some(({ kind, name }) => kind === 'answer' && name === interaction.commandName);

const isAnswerable = (interaction: Interaction): interaction is Answerable =>
  interaction.isChatInputCommand() ||
  interaction.isButton() ||
  interaction.isStringSelectMenu() ||
  interaction.isModalSubmit();

/** In the person's own language, since the records may be what failed. */
const ownWords = ({ locale }: Interaction) => discordWords[languageMeant(locale) ?? 'english'];

/** Why the platform would not take an answer, where an operator can do something about it. */
const meanings: Readonly<Record<number, string>> = {
  10062: 'the answer came later than the platform waits: is the machine busy, or its clock or network slow?',
  40060: 'it was answered already: does a second copy run with the same token?',
};

async function apologise(log: Log, interaction: Interaction, error: unknown): Promise<void> {
  const code = error instanceof DiscordAPIError ? Number(error.code) : 0;
  log(error instanceof NotBegun ? 'warn' : 'error', 'an event could not be answered', {
    to: nameOf(interaction),
    ...loggable(error),
    meaning: meanings[code],
    age: Date.now() - interaction.createdTimestamp,
  });
  if (code in meanings || !isAnswerable(interaction)) return;
  const { notBegun, oursFailed } = ownWords(interaction);
  const content =
    error instanceof StoreTrouble
      ? recordsTroubleText(error, languageMeant(interaction.locale))
      : error instanceof NotBegun
        ? notBegun
        : oursFailed;
  const message = { content, flags: MessageFlags.Ephemeral } as const;
  const sent = interaction.replied || interaction.deferred ? interaction.followUp(message) : interaction.reply(message);
  await sent.catch((again: unknown) => log('error', 'could not say so', loggable(again)));
}
