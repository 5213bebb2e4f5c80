import type { CallbackFindingId } from '#knowledge/callback-findings.ts';
import type { ContextId } from '#knowledge/callback-scale.ts';
import type { WordCatalogue } from '#knowledge/callback-words.ts';
import { differByAtMost, type WordLanguage, wordForm } from './word-forms.ts';

/** A way of saying something, as the plain forms of its telling words, or of all its words where only one tells. */
export interface Phrase {
  readonly means:
    | { readonly finding: CallbackFindingId; readonly isSo: boolean }
    | { readonly context: ContextId }
    | { readonly unsure: true };
  readonly forms: readonly string[];
}

/** A catalogue made ready: longest phrases first, so that "burning smell" is heard before "smell". */
export interface PreparedWords {
  readonly language: WordLanguage;
  readonly byFirstWord: ReadonlyMap<string, readonly Phrase[]>;
  readonly longest: number;
  readonly vocabulary: ReadonlySet<string>;
  readonly bySlipKey: ReadonlyMap<string, readonly string[]>;
  readonly negators: ReadonlySet<string>;
  readonly unlessFollowedBy: ReadonlySet<string>;
  readonly pauses: ReadonlySet<string>;
  readonly joins: ReadonlySet<string>;
  readonly fillers: ReadonlySet<string>;
  readonly idle: ReadonlySet<string>;
  readonly neverSlips: ReadonlySet<string>;
}

/** Prepares a catalogue of customers' words, once. */
export function preparedWords(catalogue: WordCatalogue): PreparedWords {
  const forms = (words: readonly string[]) => new Set(words.map((word) => wordForm(word, catalogue.language)));
  const fillers = forms(catalogue.fillers);
  const inForms = (phrase: string): readonly string[] => {
    const all = phrase.split(/[ '-]+/).map((word) => wordForm(word, catalogue.language));
    const telling = all.filter((form) => !fillers.has(form));
    return telling.length < 2 ? all : telling;
  };
  const phrases: Phrase[] = [
    ...(
      Object.entries(catalogue.findings) as [CallbackFindingId, { yes: readonly string[]; no: readonly string[] }][]
    ).flatMap(([finding, { yes, no }]) => [
      ...yes.map((phrase): Phrase => ({ means: { finding, isSo: true }, forms: inForms(phrase) })),
      ...no.map((phrase): Phrase => ({ means: { finding, isSo: false }, forms: inForms(phrase) })),
    ]),
    ...(Object.entries(catalogue.contexts) as [ContextId, readonly string[]][]).flatMap(([context, said]) =>
      said.map((phrase): Phrase => ({ means: { context }, forms: inForms(phrase) })),
    ),
    ...catalogue.unsure.map(
      (phrase): Phrase => ({
        means: { unsure: true },
        forms: phrase.split(' ').map((word) => wordForm(word, catalogue.language)),
      }),
    ),
  ];
  const grouped = new Map<string, Phrase[]>();
  for (const phrase of phrases) {
    const first = phrase.forms[0] as string;
    grouped.set(first, [...(grouped.get(first) ?? []), phrase]);
  }
  const vocabulary = new Set(phrases.flatMap(({ forms: own }) => own));
  const bySlipKey = new Map<string, string[]>();
  for (const word of vocabulary) {
    if (word.length < 5) continue;
    const key = word[0] as string;
    bySlipKey.set(key, [...(bySlipKey.get(key) ?? []), word]);
  }
  return {
    language: catalogue.language,
    byFirstWord: grouped,
    longest: Math.max(...phrases.map(({ forms: own }) => own.length)),
    vocabulary,
    bySlipKey,
    negators: forms(catalogue.negators),
    unlessFollowedBy: forms(catalogue.unlessFollowedBy),
    pauses: new Set(catalogue.pauses),
    joins: forms(catalogue.joins),
    fillers,
    idle: forms(catalogue.idle),
    neverSlips: forms(catalogue.neverSlips),
  };
}

/** The words of the catalogue a typed word may stand for: itself, or those it is a slip or two away from. */
export function meantBy(form: string, words: PreparedWords): readonly string[] {
  if (words.vocabulary.has(form)) return [form];
  if (form.length < 4 || words.fillers.has(form) || words.negators.has(form) || words.neverSlips.has(form)) return [];
  const slips = form.length >= 8 ? 2 : 1;
  return (words.bySlipKey.get(form[0] as string) ?? []).filter((word) => differByAtMost(form, word, slips));
}
