import { z } from 'zod';
import wordsFile from '../../knowledge/causes/words-english.json' with { type: 'json' };
import spanishFile from '../../knowledge/causes/words-spanish.json' with { type: 'json' };
import { type CallbackFindingId, isCallbackFinding } from './callback-findings.ts';
import { type ContextId, isContext } from './callback-scale.ts';
import { checked } from './checked.ts';

const phrase = z.string().regex(/^[a-z0-9' -]+$/, 'small letters and spaces only');
const phrases = z.array(phrase).min(1);

/**
 * How customers say things, in one language. Another language is another file of this shape, with its own endings of words to be
 * taken off in `wordForm`; nothing else knows the language.
 */
const catalogueSchema = z.strictObject({
  language: z.enum(['en', 'es']),
  findings: z.partialRecord(
    z.string().refine(isCallbackFinding, 'no such id in findings.json'),
    z.strictObject({
      /** Said when it is so. */
      yes: phrases,
      /** Said when it is not so, without a word of denial: "the mirror clears". */
      no: phrases.default([]),
    }),
  ),
  contexts: z.partialRecord(z.string().refine(isContext, 'no such id in contexts.json'), phrases),
  /** Words that deny what follows: "no", "never". */
  negators: phrases,
  /** "Not only" and "not just" deny nothing. */
  unlessFollowedBy: phrases,
  /** Said before something the speaker is not sure of. */
  unsure: phrases,
  /** Words a denial does not reach across: "no smell but it hums". */
  pauses: phrases,
  /** Words that carry a denial on: "no smell, hum or rattle". */
  joins: phrases,
  /** Words that say nothing by themselves. */
  fillers: phrases,
  /** What everything is about, and so tells nothing when left over. */
  idle: phrases,
  /** Ordinary words that look like a slip in one of ours and are not. */
  neverSlips: phrases,
});

export interface WordCatalogue extends Omit<z.output<typeof catalogueSchema>, 'findings' | 'contexts'> {
  readonly findings: Readonly<
    Partial<Record<CallbackFindingId, { readonly yes: readonly string[]; readonly no: readonly string[] }>>
  >;
  readonly contexts: Readonly<Partial<Record<ContextId, readonly string[]>>>;
}

/** How customers say things in English. */
export const englishCallbackWords: WordCatalogue = checked(
  'knowledge/causes/words-english.json',
  catalogueSchema,
  wordsFile,
);

/** How customers say things in Spanish, written without accents. Composed for this project: no collection of complaints was found. */
export const spanishCallbackWords: WordCatalogue = checked(
  'knowledge/causes/words-spanish.json',
  catalogueSchema,
  spanishFile,
);
