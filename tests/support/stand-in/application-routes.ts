import {
  type APIApplicationCommand,
  ApplicationCommandType,
  type RESTPostAPIChatInputApplicationCommandsJSONBody,
} from 'discord.js';
import { type Answer, found, nothing, unauthorized, unknownCommand, unknownGuild, unknownUser } from './refusals.ts';
import type { Request, Route } from './route.ts';
import type { World } from './world.ts';

type CommandBody = RESTPostAPIChatInputApplicationCommandsJSONBody;

const id = '(\\d+)';
const global = `^/applications/${id}/commands`;
const inGuild = `^/applications/${id}/guilds/${id}/commands`;

type Act = (world: World, request: Request, scope: string, commandId?: string) => Answer;

/** The same command routes exist for all servers at once and for each server. */
const commandRoutes = (method: string, tail: string, act: Act): readonly Route[] => [
  {
    method,
    pattern: new RegExp(`${global}${tail}$`),
    handle: (world, request, application, commandId) =>
      application === world.bot.id ? act(world, request, 'global', commandId) : unauthorized,
  },
  {
    method,
    pattern: new RegExp(`${inGuild}${tail}$`),
    handle: (world, request, application, guildId = '', commandId) => {
      if (application !== world.bot.id) return unauthorized;
      return world.guilds.has(guildId) ? act(world, request, guildId, commandId) : unknownGuild;
    },
  },
];

const listed = (world: World, scope: string): readonly APIApplicationCommand[] => world.commands.get(scope) ?? [];

export const applicationRoutes: readonly Route[] = [
  ...commandRoutes('GET', '', (world, _, scope) => found(listed(world, scope))),
  ...commandRoutes('PUT', '', (world, request, scope) => {
    const refused = request.judged();
    if (refused) return refused;
    const commands = (request.body as readonly CommandBody[]).map((body) => registered(world, scope, body));
    return keep(world, scope, commands, commands);
  }),
  ...commandRoutes('POST', '', (world, request, scope) => {
    const refused = request.judged();
    if (refused) return refused;
    const command = registered(world, scope, request.body as CommandBody);
    const others = listed(world, scope).filter(({ name }) => name !== command.name);
    return { ...keep(world, scope, [...others, command], command), status: 201 };
  }),
  ...commandRoutes('PATCH', `/${id}`, (world, request, scope, commandId) => {
    const old = listed(world, scope).find((command) => command.id === commandId);
    if (!old) return unknownCommand;
    const refused = request.judged();
    if (refused) return refused;
    const command = { ...old, ...(request.body as Partial<APIApplicationCommand>), version: world.nextId() };
    return keep(
      world,
      scope,
      listed(world, scope).map((it) => (it === old ? command : it)),
      command,
    );
  }),
  ...commandRoutes('DELETE', `/${id}`, (world, _, scope, commandId) => {
    const left = listed(world, scope).filter((command) => command.id !== commandId);
    if (left.length === listed(world, scope).length) return unknownCommand;
    keep(world, scope, left, undefined);
    return nothing;
  }),
  {
    method: 'GET',
    pattern: /^\/gateway\/bot$/,
    handle: ({ origin, shards }) =>
      found({
        url: `${origin.replace('http', 'ws')}/gateway`,
        shards,
        session_start_limit: { total: 1000, remaining: 999, reset_after: 0, max_concurrency: 1 },
      }),
  },
  { method: 'GET', pattern: /^\/users\/@me$/, handle: ({ bot }) => found(bot) },
  {
    method: 'GET',
    pattern: new RegExp(`^/users/${id}$`),
    handle: ({ users }, _, userId = '') => {
      const user = users.get(userId);
      return user ? found(user) : unknownUser;
    },
  },
  {
    method: 'GET',
    pattern: /^\/(?:applications|oauth2\/applications)\/@me$/,
    handle: ({ bot }) => found(application(bot)),
  },
];

const application = ({ id: botId, username }: World['bot']) => ({
  id: botId,
  name: username,
  icon: null,
  description: '',
  bot_public: false,
  bot_require_code_grant: false,
  verify_key: '0'.repeat(64),
  flags: 0,
});

function registered(world: World, scope: string, body: CommandBody): APIApplicationCommand {
  // A command that is told again keeps its id; only its version is new.
  const before = listed(world, scope).find(({ name }) => name === body.name);
  return {
    type: ApplicationCommandType.ChatInput,
    default_member_permissions: null,
    nsfw: false,
    ...(body as Partial<APIApplicationCommand>),
    id: before?.id ?? world.nextId(),
    application_id: world.bot.id,
    version: world.nextId(),
    name: body.name,
    description: body.description,
    ...(scope === 'global' ? {} : { guild_id: scope }),
  } as APIApplicationCommand;
}

function keep(world: World, scope: string, commands: readonly APIApplicationCommand[], told: unknown): Answer {
  world.commands.set(scope, commands);
  world.registrations.push({ scope, commands });
  return found(told);
}
