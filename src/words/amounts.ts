import type { Language, OtherLanguage } from './language.ts';

/** How amounts are told and typed in another language. Numbers and the symbols of units are the same in all. */
interface AmountWords {
  /** An amount or a range as it is printed in English, told in this language. */
  told(english: string): string;
  /** What somebody typed in this language, in the words English is read by. Anything else is left as it was. */
  typed(text: string): string;
}

/** Units people write out, each with the symbol it is read by. */
const unitsInSpanish: readonly (readonly [RegExp, string])[] = [
  [/\bpies? cuadrados?\b/gi, 'sq ft'],
  [/\bpulgadas? cuadradas?\b/gi, 'sq in'],
  [/\bpulgadas? cúbicas?\b/gi, 'in3'],
  [/\bmetros? cuadrados?\b/gi, 'm2'],
  [/\bpies?\b/gi, 'ft'],
  [/\b(?:pulgadas?|pulg)\b/gi, 'in'],
  [/\bmetros?\b/gi, 'm'],
  [/\bcent[ií]metros?\b/gi, 'cm'],
  [/\bmil[ií]metros?\b/gi, 'mm'],
  [/\bhoras?\b/gi, 'h'],
  [/\bminutos?\b/gi, 'min'],
  [/\bsegundos?\b/gi, 's'],
  [/\bgalones\b|\bgal[oó]n\b/gi, 'gal'],
  [/\blitros?\b/gi, 'L'],
  [/\bvatios?\b/gi, 'W'],
  [/\bamper(?:io|e)s?\b/gi, 'A'],
];

/** How amounts are told and typed, by language. */
export const amountWords: Readonly<Record<OtherLanguage, AmountWords>> = {
  spanish: {
    told: (english) =>
      english.replace(/(,?) most likely (?=[-−$\d.])/g, '$1 lo más probable ').replace(/ to (?=[-−$]?[\d.])/g, ' a '),
    typed: (text) =>
      unitsInSpanish
        .reduce((read, [word, symbol]) => read.replace(word, symbol), text)
        .replace(/\b(?:lo )?m[aá]s probable\b/gi, 'most likely')
        .replace(/ (?:a|hasta) (?=[-−$]?[\d.])/g, ' to ')
        .replace(/^\s*ningun[oa]?\s*$/i, 'none'),
  },
};

/** An amount or a range as it is printed in English, told in a language. */
export const amountIn = (language: Language, english: string): string =>
  language === 'english' ? english : amountWords[language].told(english);
