import { existsSync } from 'node:fs';
import { loadEnvFile } from 'node:process';
import { z } from 'zod';
import { StartTrouble } from './start-trouble.ts';

/** What the surroundings say: environment variables, which a `.env` file may set. The messages end "… must be". */
const schema = z.object({
  DISCORD_TOKEN: z
    .string()
    .trim()
    .regex(/^\S*$/, 'one word, as the developer portal shows it')
    .transform((token) => token || undefined)
    .optional(),
  DISCORD_API_BASE: z.url({ protocol: /^https?$/, error: 'a web address, such as https://example.org/api' }).optional(),
  DISCORD_GUILD: z
    .string()
    .trim()
    .regex(/^\d{5,20}$/, 'the number of a server, such as 123456789012345678')
    .optional(),
  FANWRIGHT_DB: z.string().trim().min(1, 'the path of a file').default('data/fanwright.sqlite'),
  LOG_LEVEL: z
    .enum(['debug', 'info', 'warn', 'error', 'silent'], { error: 'debug, info, warn, error or silent' })
    .default('info'),
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
  const sentences = result.error.issues.map(({ path, message }) => `${path.join('.')} must be ${message}.`);
  throw new StartTrouble([...new Set(sentences)].join(' '));
}

function environmentWithFile(): NodeJS.ProcessEnv {
  if (!existsSync('.env')) return process.env;
  try {
    loadEnvFile('.env');
  } catch (cause) {
    throw new StartTrouble('The file .env cannot be read, so put it right or remove it.', { cause });
  }
  return process.env;
}
