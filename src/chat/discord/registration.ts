import { createHash } from 'node:crypto';
import {
  ApplicationCommandOptionType,
  ApplicationCommandType,
  ApplicationIntegrationType,
  InteractionContextType,
  type RESTPutAPIApplicationCommandsJSONBody,
} from 'discord.js';
import type { AnyQuestion, Choice } from '#interview/question.ts';
import { worded } from '#interview/worded.ts';
import type { OtherLanguage } from '#words/language.ts';
import { standing } from '#words/standing.ts';
import type { Action, Command, DeskOption } from '../command.ts';
import { clipped } from './harmless.ts';

type Registered = RESTPutAPIApplicationCommandsJSONBody[number];
type Option = NonNullable<Extract<Registered, { options?: unknown }>['options']>[number];

/** The platform's limit of options on one command. */
const mostOptions = 25;

/** The choice that stands for "don't know" where the options are a fixed list. */
export const notKnownChoice = { name: "Don't know", value: "don't know" };

/** The same in the platform's Spanish locales, of Spain and of Latin America. */
function alsoIn(said: Readonly<Record<OtherLanguage, string>> | undefined) {
  if (said === undefined) return {};
  const spanish = clipped(said.spanish, 100);
  return { description_localizations: { 'es-ES': spanish, 'es-419': spanish } };
}

/** A choice of a list that is fixed, under the name it has in each language. */
function choiceNamed({ id, label }: Choice, spanish: Readonly<Record<string, string>> | undefined) {
  const other = spanish?.[id];
  const name = { name: clipped(label, 100), value: id };
  if (other === undefined || other === label) return name;
  return { ...name, name_localizations: { 'es-ES': clipped(other, 100), 'es-419': clipped(other, 100) } };
}

const spanishOf = (question: AnyQuestion): string => {
  const { widget, brief, accepts } = worded(question, 'spanish');
  return widget.kind === 'text' ? `${brief}: ${accepts}` : brief;
};

function questionOption(question: AnyQuestion): Option {
  const { id, brief, widget, accepts, words } = question;
  const description = clipped(widget.kind === 'text' ? `${brief}: ${accepts}` : brief, 100);
  const option = {
    type: ApplicationCommandOptionType.String,
    name: id,
    description,
    ...alsoIn(words && { spanish: spanishOf(question) }),
  } as const;
  return widget.kind === 'one' && widget.choices.length < mostOptions
    ? {
        ...option,
        choices: [
          ...widget.choices.map((choice) => choiceNamed(choice, words?.spanish.choices)),
          choiceNamed(
            { id: notKnownChoice.value, label: notKnownChoice.name },
            { [notKnownChoice.value]: standing.spanish.dontKnow },
          ),
        ],
      }
    : { ...option, autocomplete: true, max_length: 600 };
}

function deskOption(told: DeskOption): Option {
  const { id, brief, briefs, choices, choiceLabels, suggest, file, photo, longest = 200 } = told;
  const named = {
    name: id,
    description: clipped(brief, 100),
    ...alsoIn(briefs),
    required: told.required ?? false,
  };
  if (file || photo) return { type: ApplicationCommandOptionType.Attachment, ...named };
  const option = { type: ApplicationCommandOptionType.String, ...named } as const;
  if (choices) return { ...option, choices: choices.map((choice) => choiceNamed(choice, choiceLabels?.spanish)) };
  return { ...option, max_length: longest, ...(suggest ? { autocomplete: true } : {}) };
}

/** Nobody says here who they are: the platform knows. */
const optionsThere = (options: readonly DeskOption[]): Option[] =>
  options
    .filter(({ terminal }) => !terminal)
    .toSorted(byNeed)
    .map(deskOption);

/** The platform wants what must be given first. */
const byNeed = (one: DeskOption, other: DeskOption): number =>
  Number(other.required ?? false) - Number(one.required ?? false);

const subcommand = ({ name, summary, summaries, options }: Action): Option => ({
  type: ApplicationCommandOptionType.Subcommand,
  name,
  description: clipped(summary, 100),
  ...alsoIn(summaries),
  options: optionsThere(options) as never[],
});

/** The commands as the platform wants them. Only in servers: a job belongs to a crew. */
export const registeredCommands = (commands: readonly Command[]): RESTPutAPIApplicationCommandsJSONBody =>
  commands.map((command) => ({
    type: ApplicationCommandType.ChatInput,
    name: command.name,
    description: clipped(command.summary, 100),
    ...alsoIn(command.summaries),
    contexts: [InteractionContextType.Guild],
    integration_types: [ApplicationIntegrationType.GuildInstall],
    options: optionsOf(command),
  }));

function optionsOf(command: Command): Option[] {
  if (command.kind === 'answer') return command.takes.slice(0, mostOptions).map(questionOption);
  const [only] = command.actions;
  return only && only.name === '' ? optionsThere(only.options) : command.actions.map(subcommand);
}

/** Changes exactly when the commands change, so that they are sent only then. */
export const fingerprint = (body: RESTPutAPIApplicationCommandsJSONBody, where: string): string =>
  createHash('sha256')
    .update(`${where} ${JSON.stringify(body)}`)
    .digest('hex');
