import type { Client } from 'discord.js';
import type { Store } from '#store/store.ts';
import type { Command } from '../command.ts';
import { type Log, loggable } from './log.ts';
import { fingerprint, registeredCommands } from './registration.ts';
import { startTrouble } from './start-troubles.ts';

const everywhere = 'everywhere';
const mark = 'registered-commands';
const place = 'registered-where';

/**
 * Registers the commands in one place only, a server or everywhere, and only when they changed. When the place changes they
 * are taken away from the one before, or people would see each command twice.
 *
 * @throws StartTrouble when the bot is not in the server.
 */
export async function register(
  client: Client<true>,
  { store, commands, guild, log }: { store: Store; commands: readonly Command[]; guild: string | undefined; log: Log },
): Promise<void> {
  if (guild !== undefined && !client.guilds.cache.has(guild)) throw startTrouble('server');
  const body = registeredCommands(commands);
  const where = guild ?? everywhere;
  const print = fingerprint(body, `${client.application.id} ${where}`);
  if (store.note(mark) === print) {
    log('info', 'commands unchanged', { count: body.length, where });
    return;
  }
  const before = store.note(place);
  await sent(client, body, where);
  if (before !== undefined && before !== where) {
    await sent(client, [], before).catch((error: unknown) =>
      log('warn', 'the commands could not be taken away from where they were before', {
        where: before,
        ...loggable(error),
      }),
    );
  }
  store.saveNote(place, where);
  store.saveNote(mark, print);
  log('info', 'commands registered', { count: body.length, where });
}

const sent = (client: Client<true>, body: ReturnType<typeof registeredCommands>, where: string) =>
  where === everywhere ? client.application.commands.set(body) : client.application.commands.set(body, where);
