import {
  type APIApplicationCommandOption,
  ApplicationCommandOptionType,
  ApplicationCommandType,
  type RESTPostAPIChatInputApplicationCommandsJSONBody,
} from 'discord.js';
import { overLimit, type Problem, place } from './problem.ts';

/** Commands of the other kinds have fewer fields, all of them among these. */
type Command = RESTPostAPIChatInputApplicationCommandsJSONBody;

const chatCommands = 100;
const commandCharacters = 8000;
const commandName = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;

/** What the documentation says of the whole set of commands. */
export function everyCommandLimits(commands: readonly Command[]): readonly Problem[] {
  const found = commands.flatMap((command, nth) => commandLimits(String(nth), command));
  const chat = commands.filter(isChat);
  if (chat.length > chatCommands) found.push(overLimit('', `${chat.length} chat commands; ${chatCommands} fit`));
  const seen = new Set<string>();
  commands.forEach((command, nth) => {
    const mark = `${command.type ?? ApplicationCommandType.ChatInput} ${command.name}`;
    if (seen.has(mark)) found.push(overLimit(place(nth, 'name'), `two commands are called ${command.name}`));
    seen.add(mark);
  });
  return found;
}

/** What the documentation says of one command. */
export function commandLimits(at: string, command: Command): readonly Problem[] {
  if (!isChat(command)) return [];
  const characters = charactersOf(command);
  return [
    ...nameLimits(at, command.name),
    ...(command.description ? [] : [overLimit(place(at, 'description'), 'a chat command needs a description')]),
    ...(characters > commandCharacters
      ? [overLimit(at, `${characters} characters of names, descriptions and values; ${commandCharacters} fit`)]
      : []),
    ...optionsLimits(place(at, 'options'), command.options ?? []),
  ];
}

/** What holds when only part of a command is sent. */
export const commandEditLimits = (command: Partial<Command>): readonly Problem[] => [
  ...(command.name === undefined || !isChat(command) ? [] : nameLimits('', command.name)),
  ...optionsLimits('options', command.options ?? []),
];

const isChat = ({ type }: Partial<Command>): boolean =>
  (type ?? ApplicationCommandType.ChatInput) === ApplicationCommandType.ChatInput;

function nameLimits(at: string, name: string): readonly Problem[] {
  const where = place(at, 'name');
  if (!commandName.test(name)) return [overLimit(where, `${JSON.stringify(name)} holds signs no name may hold`)];
  return name === name.toLowerCase() ? [] : [overLimit(where, `${name} has capitals`)];
}

interface Worded {
  readonly name: string;
  readonly description?: string | undefined;
  readonly options?: readonly APIApplicationCommandOption[] | undefined;
  readonly choices?: readonly { readonly name: string; readonly value: string | number }[] | undefined;
}

const charactersOf = ({ name, description, options, choices }: Worded): number =>
  name.length +
  (description?.length ?? 0) +
  (options ?? []).reduce((sum, option) => sum + charactersOf(option), 0) +
  (choices ?? []).reduce((sum, choice) => sum + choice.name.length + String(choice.value).length, 0);

const branches: readonly ApplicationCommandOptionType[] = [
  ApplicationCommandOptionType.Subcommand,
  ApplicationCommandOptionType.SubcommandGroup,
];

function optionsLimits(at: string, options: readonly APIApplicationCommandOption[]): readonly Problem[] {
  const found: Problem[] = [];
  const kinds = new Set(options.map(({ type }) => branches.includes(type)));
  if (kinds.size > 1) found.push(overLimit(at, 'subcommands and plain options cannot stand side by side'));
  const seen = new Set<string>();
  let optionalCame = false;
  options.forEach((option, nth) => {
    const where = place(at, nth);
    found.push(...nameLimits(where, option.name), ...optionLimits(where, option));
    if (seen.has(option.name)) found.push(overLimit(place(where, 'name'), `two options are called ${option.name}`));
    seen.add(option.name);
    if (branches.includes(option.type)) return;
    if (option.required && optionalCame) found.push(overLimit(where, 'options that are needed come first'));
    optionalCame ||= !option.required;
  });
  return found;
}

function optionLimits(where: string, option: APIApplicationCommandOption): readonly Problem[] {
  switch (option.type) {
    case ApplicationCommandOptionType.Subcommand:
      return optionsLimits(place(where, 'options'), option.options ?? []);
    case ApplicationCommandOptionType.SubcommandGroup:
      return [
        ...((option.options ?? []).length === 0 ? [overLimit(where, 'a group needs a subcommand')] : []),
        ...optionsLimits(place(where, 'options'), option.options ?? []),
      ];
    case ApplicationCommandOptionType.String:
      return [...choicesLimits(where, option), ...orderLimits(where, option.min_length, option.max_length)];
    case ApplicationCommandOptionType.Integer:
    case ApplicationCommandOptionType.Number:
      return [...choicesLimits(where, option), ...orderLimits(where, option.min_value, option.max_value)];
    default:
      return [];
  }
}

function choicesLimits(
  where: string,
  option: { readonly autocomplete?: boolean | undefined; readonly choices?: Worded['choices'] },
): readonly Problem[] {
  const names = (option.choices ?? []).map(({ name }) => name);
  return [
    ...(option.autocomplete && names.length > 0
      ? [overLimit(place(where, 'choices'), 'an option has fixed choices or autocomplete, not both')]
      : []),
    ...(new Set(names).size < names.length ? [overLimit(place(where, 'choices'), 'two choices share a name')] : []),
  ];
}

const orderLimits = (where: string, low: number | undefined, high: number | undefined): readonly Problem[] =>
  low !== undefined && high !== undefined && low > high
    ? [overLimit(where, `at least ${low} but at most ${high}`)]
    : [];
