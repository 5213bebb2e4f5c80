import { DiscordAPIError, HTTPError } from 'discord.js';

const levels = ['debug', 'info', 'warn', 'error', 'silent'] as const;
export type LogLevel = (typeof levels)[number];

/** One line of JSON per event on standard error: level, what, and plain fields. */
export type Log = (
  level: Exclude<LogLevel, 'silent'>,
  what: string,
  fields?: Readonly<Record<string, string | number | boolean | undefined>>,
) => void;

export const logTo =
  (write: (line: string) => void, least: LogLevel, now: () => Date): Log =>
  (level, what, fields = {}) => {
    if (levels.indexOf(level) < levels.indexOf(least)) return;
    write(`${JSON.stringify({ at: now().toISOString(), level, what, ...fields })}\n`);
  };

/**
 * What of an error may be logged. An API error's address and body hold the token of the interaction and what people
 * typed, so only its code, status, method and route go in.
 */
export function loggable(error: unknown): Record<string, string | number | undefined> {
  if (error instanceof DiscordAPIError || error instanceof HTTPError) {
    return {
      error: error.name,
      code: error instanceof DiscordAPIError ? error.code : undefined,
      status: error.status,
      method: error.method,
      route: error.url.replace(/^.*\/api\/v\d+/, '').replace(/(\/(?:interactions|webhooks)\/[^/]+)\/[^/?]+/, '$1/…'),
    };
  }
  if (!(error instanceof Error)) return { error: typeof error };
  return {
    error: error.name,
    message: error.message.replace(/[\w-]{20,}\.[\w-]{6,}\.[\w-]{20,}/g, '…'),
    stack: error.stack?.split('\n').slice(1, 4).join(' '),
  };
}
