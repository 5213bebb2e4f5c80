import { DiscordAPIError, HTTPError } from 'discord.js';
import { StartTrouble } from '../../start-trouble.ts';

const troubles = {
  token: 'Discord refuses DISCORD_TOKEN: copy the bot token again from the Bot page of its application.',
  intents:
    'Discord disallows the intents asked for. Only Guilds is asked for, which needs no leave: check that DISCORD_TOKEN is the token of this bot.',
  server:
    'DISCORD_GUILD names a server the bot is not in: invite it there first, with the scopes bot and applications.commands.',
  network: 'Discord cannot be reached: check the network, and DISCORD_API_BASE if it is set, then start again.',
  commands: 'Discord would not take the commands: look at the lines above, then start again.',
  overloaded: 'Discord has trouble of its own just now: start again in a few minutes.',
} as const;

export type Trouble = keyof typeof troubles;

export const startTrouble = (trouble: Trouble): StartTrouble => new StartTrouble(troubles[trouble]);

/** Close codes after which the platform takes nobody back, with what to do about each. */
const farewells: Readonly<Record<number, Trouble>> = { 4004: 'token', 4013: 'intents', 4014: 'intents' };

/** What to tell whoever runs the program when the platform ended the connection for good. */
export function farewell(code: number): StartTrouble {
  const known = farewells[code];
  return known
    ? startTrouble(known)
    : new StartTrouble(
        `Discord ended the connection for good (${code}): start again, and update the program if it recurs.`,
      );
}

/** What went wrong while starting, in one sentence that says what to do; anything unforeseen as it is. */
export function troubleOf(error: unknown): Error {
  if (error instanceof StartTrouble) return error;
  const { code, status, cause } = error as { code?: unknown; status?: unknown; cause?: { code?: unknown } };
  const text = error instanceof Error ? error.message : '';
  if (code === 'TokenInvalid' || status === 401 || /authentication failed/i.test(text)) return startTrouble('token');
  if (/disallowed intents|invalid intents/i.test(text)) return startTrouble('intents');
  if (error instanceof DiscordAPIError) {
    return error.code === 50001 || error.code === 10004 ? startTrouble('server') : startTrouble('commands');
  }
  if (error instanceof HTTPError && error.status >= 500) return startTrouble('overloaded');
  const wire = `${String(code)} ${String(cause?.code)} ${text}`;
  if (/ECONN|ENOTFOUND|EAI_AGAIN|ETIMEDOUT|EHOSTUNREACH|UND_ERR|fetch failed|aborted/i.test(wire)) {
    return startTrouble('network');
  }
  return error instanceof Error ? error : new Error(String(error));
}
