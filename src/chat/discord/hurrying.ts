import { type AutocompleteInteraction, MessageFlags } from 'discord.js';
import { discordWords } from '#words/discord.ts';
import { languageMeant } from '#words/language.ts';
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
    const { most, seconds } = pace.allowed;
    // The records are not looked at for somebody in a hurry: the person's own language, else English.
    const content = discordWords[languageMeant(interaction.locale) ?? 'english'].tooFast(most, seconds, turn.seconds);
    await interaction.reply({ content, flags: MessageFlags.Ephemeral });
  }
  return true;
}
