import { existsSync } from 'node:fs';
import { loadEnvFile } from 'node:process';
import { z } from 'zod';
import { StartTrouble } from './start-trouble.ts';

/** What the surroundings say: environment variables, which a `.env` file may set. */
const schema = z.object({
  DISCORD_TOKEN: z.string().trim().optional(),
  DISCORD_API_BASE: z.url().optional(),
  DISCORD_GUILD: z
    .string()
    .trim()
    .regex(/^\d{5,20}$/, 'DISCORD_GUILD is the number of a server, such as 123456789012345678')
    .optional(),
  FANWRIGHT_DB: z.string().min(1).default('data/fanwright.sqlite'),
  LOG_LEVEL: z.enum(['debug', 'info', 'warn', 'error', 'silent']).default('info'),
});

export type Settings = z.infer<typeof schema>;

/**
 * The settings in force. Empty variables count as not set.
 *
 * @throws StartTrouble whose message names every bad setting in a sentence.
 */
export function settingsFrom(environment: NodeJS.ProcessEnv = environmentWithFile()): Settings {
  const given = Object.fromEntries(Object.entries(environment).filter(([, value]) => value !== ''));
  const result = schema.safeParse(given);
  if (result.success) return result.data;
  throw new StartTrouble(result.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}.`).join(' '));
}

function environmentWithFile(): NodeJS.ProcessEnv {
  if (existsSync('.env')) loadEnvFile('.env');
  return process.env;
}
