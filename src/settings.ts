import { existsSync } from 'node:fs';
import { loadEnvFile } from 'node:process';
import { z } from 'zod';
import { type BackupPlan, usualFolder } from '#operation/backups.ts';
import { type Language, languageMeant } from '#words/language.ts';
import { StartTrouble } from './start-trouble.ts';

const wholeNumber = (least: number, most: number, error: string) =>
  z.coerce.number(error).int(error).min(least, error).max(most, error);

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
  FANWRIGHT_BACKUPS: z.string().trim().min(1, 'the path of a folder').optional(),
  FANWRIGHT_BACKUP_HOURS: wholeNumber(0, 8784, 'a whole number of hours between backups, 0 for none').default(24),
  FANWRIGHT_BACKUPS_KEPT: wholeNumber(1, 1000, 'how many backups to keep, from 1 to 1000').default(14),
  FANWRIGHT_HEALTH: z.string().trim().min(1, 'the path of a file').optional(),
  FANWRIGHT_PACE: wholeNumber(
    0,
    1000,
    'how much one person may do in 10 seconds, from 1 to 1000, or 0 for no limit',
  ).default(20),
  FANWRIGHT_LANGUAGE: z
    .string()
    .trim()
    .transform((text, { addIssue }): Language => {
      const meant = languageMeant(text);
      if (meant === undefined) addIssue('en or es');
      return meant ?? 'english';
    })
    .optional(),
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

/** Where and how often the records are backed up. Records in memory are not. */
export const backupPlanOf = (settings: Settings): BackupPlan => ({
  folder: settings.FANWRIGHT_BACKUPS ?? usualFolder(settings.FANWRIGHT_DB),
  hours: settings.FANWRIGHT_DB === ':memory:' ? 0 : settings.FANWRIGHT_BACKUP_HOURS,
  kept: settings.FANWRIGHT_BACKUPS_KEPT,
});

function environmentWithFile(): NodeJS.ProcessEnv {
  if (!existsSync('.env')) return process.env;
  try {
    loadEnvFile('.env');
  } catch (cause) {
    throw new StartTrouble('The file .env cannot be read, so put it right or remove it.', { cause });
  }
  return process.env;
}
