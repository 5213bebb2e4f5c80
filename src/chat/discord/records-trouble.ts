import type { StoreTrouble, StoreTroubleCode } from '#store/trouble.ts';
import { discordWords } from '#words/discord.ts';
import type { Language } from '#words/language.ts';

/**
 * Why the records did not take what a person said, without a path of the machine. The log tells whoever runs the program more.
 */
export function recordsTroubleText({ code }: StoreTrouble, language: Language = 'english'): string {
  const { before, ...sentences } = discordWords[language].records;
  const known: Partial<Record<StoreTroubleCode, string>> = sentences;
  return `${known[code] ?? sentences.other} ${before}`;
}
