import {
  type APIApplicationCommand,
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandInteractionDataOption,
  type APIApplicationCommandOption,
  ApplicationCommandType,
  InteractionContextType,
  ApplicationCommandOptionType as Type,
} from 'discord.js';
import { apiChannel, type Channel } from './fixtures.ts';
import type { Doer, InteractionData } from './interactions.ts';
import { apiAttachment, keepFile } from './messages.ts';
import { isUpload, type Upload } from './uploads.ts';
import type { World } from './world.ts';

/** What a person may put into an option: text, a number, yes or no, a file, or the id of a person, role or channel. */
type OptionValue = string | number | boolean | Upload;
export type Options = Readonly<Record<string, OptionValue | undefined>>;

export interface Typed {
  /** The command and its subcommand: `duct`, `job open`. */
  readonly words: string;
  readonly options: Options;
  /** The option being typed, for suggestions. */
  readonly focused?: string;
  /** Sends it even where the platform's own program would not let a person. */
  readonly force?: boolean | undefined;
}

interface Resolved {
  readonly attachments: Record<string, unknown>;
  readonly users: Record<string, unknown>;
  readonly members: Record<string, unknown>;
  readonly roles: Record<string, unknown>;
  readonly channels: Record<string, unknown>;
}

/** The command as the platform sends it, after the checks its own program makes while a person types. */
export function commandData(world: World, doer: Doer, typed: Typed): InteractionData {
  const [name = '', ...path] = typed.words.split(' ');
  const command = commandNamed(world, doer, name, typed.force);
  const resolved: Resolved = { attachments: {}, users: {}, members: {}, roles: {}, channels: {} };
  const options = command
    ? branch(`/${typed.words}`, command.options ?? [], path, (level) => filled(world, doer, typed, level, resolved))
    : guessed(world, doer, typed, path, resolved);
  const used = Object.entries(resolved).filter(([, entries]) => Object.keys(entries).length > 0);
  return {
    id: command?.id ?? world.nextId(),
    name,
    type: ApplicationCommandType.ChatInput,
    ...(command?.guild_id ? { guild_id: command.guild_id } : {}),
    options,
    ...(used.length > 0 ? { resolved: Object.fromEntries(used) } : {}),
  };
}

function commandNamed(world: World, doer: Doer, name: string, force = false): APIApplicationCommand | undefined {
  const all = [doer.guild.id, 'global'].flatMap((scope) => world.commands.get(scope) ?? []);
  if (all.length === 0) return undefined;
  const command = all.find((candidate) => candidate.name === name);
  if (force) return command;
  if (!command) throw new Error(`There is no /${name}. There are: ${all.map((it) => `/${it.name}`).join(' ')}.`);
  const needed = BigInt(command.default_member_permissions ?? 0);
  if ((BigInt(doer.permissions) & needed) !== needed) {
    throw new Error(`${doer.user.global_name} does not see /${name}: it needs permissions ${needed}.`);
  }
  if (command.contexts && !command.contexts.includes(InteractionContextType.Guild)) {
    throw new Error(`/${name} is not offered in servers.`);
  }
  return command;
}

type Filled = readonly APIApplicationCommandInteractionDataOption[];

/** Follows the words of a subcommand down to its own options. */
function branch(
  said: string,
  level: readonly APIApplicationCommandOption[],
  path: readonly string[],
  fill: (options: readonly APIApplicationCommandBasicOption[]) => Filled,
): APIApplicationCommandInteractionDataOption[] {
  const branches = level.filter(({ type }) => type === Type.Subcommand || type === Type.SubcommandGroup);
  const [next, ...rest] = path;
  if (next === undefined) {
    if (branches.length === 0) return [...fill(level as readonly APIApplicationCommandBasicOption[])];
    throw new Error(`${said} goes on with one of: ${branches.map(({ name }) => name).join(', ')}.`);
  }
  const found = branches.find(({ name }) => name === next);
  if (!found) throw new Error(`${said} has no "${next}". It has: ${branches.map(({ name }) => name).join(', ')}.`);
  const inner = 'options' in found ? (found.options ?? []) : [];
  return [{ name: next, type: found.type, options: branch(said, inner, rest, fill) } as Filled[number]];
}

function filled(
  world: World,
  doer: Doer,
  { words, options, focused, force }: Typed,
  level: readonly APIApplicationCommandBasicOption[],
  resolved: Resolved,
): Filled {
  const given = Object.keys(options).filter((name) => options[name] !== undefined);
  const strange = given.filter((name) => !level.some((option) => option.name === name));
  if (strange.length > 0) {
    throw new Error(`/${words} has no ${strange.join(', ')}. It has: ${level.map(({ name }) => name).join(', ')}.`);
  }
  return level.flatMap((option): Filled => {
    const value = options[option.name];
    if (option.name === focused) {
      if (!('autocomplete' in option && option.autocomplete)) throw new Error(`${focused} offers no suggestions.`);
      return [{ name: option.name, type: option.type, value: String(value ?? ''), focused: true } as Filled[number]];
    }
    if (value === undefined) {
      if (option.required && focused === undefined && !force) throw new Error(`/${words} needs ${option.name}.`);
      return [];
    }
    if (!force) checkValue(option, value);
    return [taken(world, doer, { name: option.name, type: option.type, value }, resolved)];
  });
}

/** Where no command is registered, the kind of each option is guessed from what was put in. */
function guessed(world: World, doer: Doer, { options }: Typed, path: readonly string[], resolved: Resolved) {
  const level = Object.entries(options).flatMap(([name, value]) =>
    value === undefined ? [] : [taken(world, doer, { name, type: guessedType(value), value }, resolved)],
  );
  return path.reduceRight<APIApplicationCommandInteractionDataOption[]>(
    (inner, name) => [{ name, type: Type.Subcommand, options: inner } as Filled[number]],
    level,
  );
}

function guessedType(value: OptionValue): Type {
  if (isUpload(value)) return Type.Attachment;
  if (typeof value === 'boolean') return Type.Boolean;
  return typeof value === 'number' ? Type.Number : Type.String;
}

interface Given {
  readonly name: string;
  readonly type: Type;
  readonly value: OptionValue;
}

function taken(world: World, doer: Doer, { name, type, value }: Given, resolved: Resolved): Filled[number] {
  const id = isUpload(value) ? attached(world, doer.channel, value, resolved) : String(value);
  if (type === Type.User || type === Type.Mentionable) resolveUser(world, doer, id, resolved);
  if (type === Type.Role) resolved.roles[id] = [...doer.guild.roles.values()].find((role) => role.id === id);
  if (type === Type.Channel) resolveChannel(world, id, resolved);
  return { name, type, value: isUpload(value) ? id : value } as Filled[number];
}

/** Puts an upload where the bot can fetch it, and its description among the resolved ones; gives its id. */
export function attached(
  world: World,
  channel: Channel,
  upload: Upload,
  resolved: Pick<Resolved, 'attachments'>,
): string {
  const file = keepFile(world, { ...upload, channelId: channel.id, description: undefined, ephemeral: true });
  resolved.attachments[file.id] = apiAttachment(file);
  return file.id;
}

function resolveUser(world: World, { guild }: Doer, id: string, resolved: Resolved): void {
  resolved.users[id] = world.users.get(id);
  const member = guild.members.get(id);
  if (!member) return;
  const { user, deaf, mute, ...partial } = member;
  resolved.members[id] = { ...partial, permissions: '0' };
}

function resolveChannel(world: World, id: string, resolved: Resolved): void {
  const channel = world.channels.get(id);
  if (channel) resolved.channels[id] = { ...apiChannel(channel, world.bot.id), permissions: '0' };
}

const valueTypes: Partial<Record<Type, string>> = {
  [Type.String]: 'string',
  [Type.Integer]: 'number',
  [Type.Number]: 'number',
  [Type.Boolean]: 'boolean',
};

/** What the platform's own program refuses while a person types. */
function checkValue(option: APIApplicationCommandBasicOption, value: OptionValue): void {
  const refuse = (why: string) => {
    throw new Error(`${option.name} does not take ${JSON.stringify(value)}: ${why}.`);
  };
  if (option.type === Type.Attachment ? !isUpload(value) : typeof value !== (valueTypes[option.type] ?? 'string')) {
    refuse(`it is an option of type ${Type[option.type]}`);
  }
  if (option.type === Type.Integer && !Number.isInteger(value)) refuse('it wants a whole number');
  if ('choices' in option && option.choices && option.choices.length > 0) {
    const values = option.choices.map((choice) => choice.value);
    if (!values.some((one) => one === value)) refuse(`it is one of ${values.join(', ')}`);
  }
  if (typeof value === 'number' && 'min_value' in option) {
    if (value < (option.min_value ?? -Infinity) || value > (option.max_value ?? Infinity)) refuse('it is out of range');
  }
  if (typeof value === 'string' && option.type === Type.String) {
    if (value.length < (option.min_length ?? 0) || value.length > (option.max_length ?? 6000)) {
      refuse('it is too long or too short');
    }
  }
}
