/** The languages that people here are answered in. English is the one every text has. */
export type Language = 'english' | 'spanish';

/** The languages beside English. */
export type OtherLanguage = Exclude<Language, 'english'>;

export const otherLanguages: readonly OtherLanguage[] = ['spanish'];

/**
 * The language a locale or a name stands for: "es-419", "es", "Spanish", "español", "en-GB", "es_MX.UTF-8". Nothing where it is
 * one that nobody here speaks.
 */
export function languageMeant(text: string): Language | undefined {
  const said = text.trim().slice(0, 40).toLowerCase();
  if (/^(?:es(?:[-_.].*)?|spanish|espa[nñ]ol|castellano)$/.test(said)) return 'spanish';
  return /^(?:en(?:[-_.].*)?|english|ingl[eé]s)$/.test(said) ? 'english' : undefined;
}

/** `--language=es` anywhere says in which language. */
export function languageTold(words: readonly string[]): { readonly told?: Language; readonly rest: readonly string[] } {
  const isIt = (word: string): boolean => /^--language=/.test(word);
  const told = languageMeant(words.findLast(isIt)?.slice('--language='.length) ?? '');
  return { ...(told === undefined ? {} : { told }), rest: words.filter((word) => !isIt(word)) };
}
