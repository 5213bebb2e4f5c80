import type { Language } from './language.ts';

/** The texts of one topic in every language. */
export type InEach<Texts> = Readonly<Record<Language, Texts>>;

/**
 * The texts of one topic, both languages beside each other. English says which texts there are and what goes into them; the
 * compiler refuses a Spanish that lacks one, has one too many, or takes other values.
 */
export const inEach = <Texts>(english: Texts, spanish: NoInfer<Texts>): InEach<Texts> => ({ english, spanish });
