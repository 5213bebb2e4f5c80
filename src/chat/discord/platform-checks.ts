import {
  ApplicationFlags,
  ApplicationFlagsBitField,
  DiscordAPIError,
  REST,
  type RESTGetAPIApplicationCommandsResult,
  type RESTGetAPIGatewayBotResult,
  type RESTGetCurrentApplicationResult,
  Routes,
} from 'discord.js';
import { type Check, fix, good, note } from '#operation/check.ts';
import type { Command } from '../command.ts';
import { registeredCommands } from './registration.ts';
import { troubleOf } from './start-troubles.ts';

interface Given {
  readonly token: string | undefined;
  readonly api: string | undefined;
  readonly guild: string | undefined;
  readonly commands: readonly Command[];
}

/** The application a token belongs to: its first part is the number, written in base 64. */
function applicationOf(token: string): string | undefined {
  const [first, ...rest] = token.split('.');
  const id = Buffer.from(first ?? '', 'base64url').toString('latin1');
  return rest.length === 2 && rest.every((part) => /^[\w-]{5,}$/.test(part)) && /^\d{5,20}$/.test(id) ? id : undefined;
}

/** What the platform says of the set-up. The token is shown to the platform and to nobody else. */
export async function platformChecks({ token, api, guild, commands }: Given): Promise<readonly Check[]> {
  if (token === undefined) {
    return [
      note('token', 'To serve Discord, put DISCORD_TOKEN into .env. Without it the program talks in the terminal.'),
    ];
  }
  const application = applicationOf(token);
  if (application === undefined) {
    return [
      fix(
        'token',
        'Copy the bot token again from the Bot page of its application: DISCORD_TOKEN does not look like one.',
      ),
    ];
  }
  const rest = new REST({ retries: 0, timeout: 10_000, ...(api === undefined ? {} : { api }) }).setToken(token);
  try {
    const found = (await rest.get(Routes.currentApplication())) as RESTGetCurrentApplicationResult;
    return [
      good('token', `Discord takes it: application ${found.id}, ${found.name}.`),
      intentsCheck(found),
      gatewayCheck((await rest.get(Routes.gatewayBot())) as RESTGetAPIGatewayBotResult),
      await commandsCheck(rest, { application: found.id, guild, commands }),
    ];
  } catch (error) {
    return [fix('token', troubleOf(error).message)];
  }
}

const privileged = [
  ApplicationFlags.GatewayGuildMembers,
  ApplicationFlags.GatewayGuildMembersLimited,
  ApplicationFlags.GatewayMessageContent,
  ApplicationFlags.GatewayMessageContentLimited,
  ApplicationFlags.GatewayPresence,
  ApplicationFlags.GatewayPresenceLimited,
];

function intentsCheck({ flags }: RESTGetCurrentApplicationResult): Check {
  return new ApplicationFlagsBitField(flags ?? []).any(privileged)
    ? note('intents', 'Switch the privileged intents off on the Bot page: none is needed.')
    : good('intents', 'No privileged intent is on, and none is needed.');
}

const fewStarts = 20;

function gatewayCheck({ shards, session_start_limit: { remaining, reset_after } }: RESTGetAPIGatewayBotResult): Check {
  const hours = Math.ceil(reset_after / 3_600_000);
  if (remaining < fewStarts) {
    const says = `Find out what starts the program again and again: Discord takes ${remaining} more starts in the next ${hours} hours.`;
    return fix('connection', says);
  }
  return good('connection', `Discord recommends ${shards === 1 ? '1 connection' : `${shards} connections`}.`);
}

async function commandsCheck(
  rest: REST,
  { application, guild, commands }: Pick<Given, 'guild' | 'commands'> & { readonly application: string },
): Promise<Check> {
  const where = guild === undefined ? 'everywhere' : `in server ${guild}`;
  const route =
    guild === undefined ? Routes.applicationCommands(application) : Routes.applicationGuildCommands(application, guild);
  try {
    const there = (await rest.get(route)) as RESTGetAPIApplicationCommandsResult;
    const names = (list: readonly { readonly name: string }[]) =>
      list
        .map(({ name }) => name)
        .toSorted()
        .join(' ');
    if (names(there) === names(registeredCommands(commands))) {
      return good('commands', `${there.length} are registered ${where}.`);
    }
    const says = `Start the program to register the commands ${where}: ${there.length} of ${commands.length} are there.`;
    return note('commands', says);
  } catch (error) {
    if (!(error instanceof DiscordAPIError)) throw error;
    // Not being in a server reads as one that is not there, or as one that may not be looked at.
    if (error.code !== 50_001 && error.code !== 10_004) throw error;
    return fix(
      'commands',
      'Invite the bot to the server DISCORD_GUILD names, with the scopes bot and applications.commands.',
    );
  }
}
