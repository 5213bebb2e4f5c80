import { type Guild, type GuildTextBasedChannel, PermissionFlagsBits } from 'discord.js';
import type { Store } from '#store/store.ts';
import { type Log, loggable } from './log.ts';

/** What it is, what to type first, who sets it up, and what it cannot do. */
const greeting = [
  'Fanwright helps a crew swap bathroom exhaust fans: how much air a room needs, what a fan really delivers through its duct, each step of the swap, and what is behind a callback.',
  'Type **/demo** to walk through an invented house in five minutes, **/ask** with a question in plain words, or **/help** for every command.',
  'Whoever manages this server sets units, codes and who may sign with **/crew**.',
  '-# Mains electricity, ladders, attics, old paint, asbestos and combustion gas can kill. This reminds and computes; it gives no permission. If a carbon monoxide alarm sounds: everyone outside, call the fire service from outside, and nobody goes back in until they say so.',
].join('\n');

/**
 * Says in a server that took the bot in what to type first, once for good: neither a restart nor coming back says it again.
 * Where nothing may be written, nothing is said.
 */
export async function greet(guild: Guild, store: Pick<Store, 'note' | 'saveNote'>, log: Log): Promise<void> {
  const mark = `greeted ${guild.id}`;
  if (store.note(mark)) return;
  const channel = placeToGreet(guild);
  if (!channel) return log('info', 'a server was not greeted: it has no channel this bot may write in');
  store.saveNote(mark, 'yes');
  try {
    await channel.send(greeting);
  } catch (error) {
    store.saveNote(mark, '');
    log('warn', 'a server could not be greeted', loggable(error));
  }
}

/** Where the server welcomes people, else the first channel from the top in which the bot may write. */
function placeToGreet(guild: Guild): GuildTextBasedChannel | undefined {
  const { me } = guild.members;
  const needed = [PermissionFlagsBits.ViewChannel, PermissionFlagsBits.SendMessages];
  const written = [...guild.channels.cache.values()]
    .filter((channel) => !channel.isThread())
    .sort((one, other) => one.rawPosition - other.rawPosition);
  return [guild.systemChannel, ...written]
    .filter((channel) => channel?.isTextBased() === true && !channel.isVoiceBased())
    .find((channel) => me && channel?.permissionsFor(me).has(needed)) as GuildTextBasedChannel | undefined;
}
