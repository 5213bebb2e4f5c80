import type { Writable } from 'node:stream';
import type { Command } from '#chat/command.ts';
import { isOperation, operate } from '#operation/operate.ts';
import { backupPlanOf, settingsFrom } from './settings.ts';

interface Given {
  readonly commands: readonly Command[];
  readonly output: Pick<Writable, 'write'>;
}

/**
 * Does what whoever runs the program asks of it.
 *
 * @returns the exit code; nothing where the words are a crew's.
 */
export async function operated([word, ...about]: readonly string[], given: Given): Promise<number | undefined> {
  if (word === 'doctor') {
    const { doctor } = await import('./doctor.ts');
    return doctor(about, given);
  }
  if (!isOperation(word)) return undefined;
  const settings = settingsFrom();
  return operate(word, about, {
    database: settings.FANWRIGHT_DB,
    health: settings.FANWRIGHT_HEALTH,
    plan: backupPlanOf(settings),
    output: given.output,
  });
}
