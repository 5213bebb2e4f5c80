import { type AutocompleteInteraction, MessageFlags } from 'discord.js';
import type { Answerable } from './decision.ts';
import type { House } from './house.ts';

/**
 * Whether somebody goes faster than a person can, so that nothing is done. A sentence says so once; further presses of the
 * same hurry are acknowledged without a word. Words half typed are counted apart, since nobody sends those on purpose.
 */
export async function hurrying({ pace }: House, interaction: Answerable | AutocompleteInteraction): Promise<boolean> {
  const person = `${interaction.guildId}/${interaction.user.id}`;
  const turn = pace.take(interaction.isAutocomplete() ? `${person}/typing` : person);
  if (turn.taken) return false;
  if (interaction.isAutocomplete()) await interaction.respond([]);
  else if (turn.saidBefore && interaction.isMessageComponent()) await interaction.deferUpdate();
  else {
    const wait = turn.seconds === 1 ? 'a second' : `${turn.seconds} seconds`;
    const content = `That was more than ${pace.allowed}, so the last was not taken. Wait ${wait}, then do it once more.`;
    await interaction.reply({ content, flags: MessageFlags.Ephemeral });
  }
  return true;
}
