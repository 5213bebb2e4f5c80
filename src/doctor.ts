import type { Writable } from 'node:stream';
import type { Command } from '#chat/command.ts';
import type { Check } from '#operation/check.ts';
import { fix } from '#operation/check.ts';
import { diskCheck, nodeCheck, secretsCheck, thisMachine, zoneCheck } from '#operation/machine-checks.ts';
import { pictureCheck } from '#operation/picture-check.ts';
import { backupsCheck, healthCheck, recordsCheck } from '#operation/records-checks.ts';
import { backupPlanOf, type Settings, settingsFrom } from './settings.ts';
import { StartTrouble } from './start-trouble.ts';
import { engines } from './version.ts';

interface Given {
  readonly commands: readonly Command[];
  readonly output: Pick<Writable, 'write'>;
}

/**
 * Looks the whole set-up over and says what to mend.
 *
 * @returns the exit code: 0 when nothing needs mending, 1 otherwise.
 */
export async function doctor(words: readonly string[], { commands, output }: Given): Promise<0 | 1> {
  const machine = thisMachine();
  const checks = [
    nodeCheck(machine, engines.node),
    zoneCheck(machine),
    ...secretsCheck('.env'),
    await pictureCheck(),
    ...(await checksOfSettings(commands)),
  ];
  const well = checks.every(({ state }) => state !== 'fix');
  output.write(words.includes('--json') ? `${JSON.stringify({ well, checks })}\n` : asText(checks, well));
  return well ? 0 : 1;
}

async function checksOfSettings(commands: readonly Command[]): Promise<readonly Check[]> {
  const settings = settingsOrTrouble();
  if (settings instanceof StartTrouble) return [fix('settings', settings.message)];
  const { FANWRIGHT_DB: database, FANWRIGHT_HEALTH, DISCORD_TOKEN, DISCORD_API_BASE, DISCORD_GUILD } = settings;
  // The platform's own library takes a while to load.
  const { platformChecks } = await import('#chat/discord/platform-checks.ts');
  return [
    diskCheck(database),
    ...secretsCheck(database, 'the records'),
    recordsCheck(database),
    backupsCheck(backupPlanOf(settings), database, new Date()),
    healthCheck(FANWRIGHT_HEALTH, new Date()),
    ...(await platformChecks({ token: DISCORD_TOKEN, api: DISCORD_API_BASE, guild: DISCORD_GUILD, commands })),
  ];
}

function settingsOrTrouble(): Settings | StartTrouble {
  try {
    return settingsFrom();
  } catch (error) {
    if (error instanceof StartTrouble) return error;
    throw error;
  }
}

const marks = { good: 'ok  ', note: 'note', fix: 'FIX ' } as const;

function asText(checks: readonly Check[], well: boolean): string {
  const lines = checks.map(({ state, about, says }) => `${marks[state]}  ${about.padEnd(11)} ${says}`);
  const toMend = checks.filter(({ state }) => state === 'fix').length;
  const sum = well ? 'Nothing needs mending.' : `Mend ${toMend === 1 ? '1 thing' : `${toMend} things`} marked FIX.`;
  return `${[...lines, '', sum].join('\n')}\n`;
}
