import { distance } from 'fastest-levenshtein';
import type { Language } from '#words/language.ts';

/** Words that say nothing about what is looked for. */
const fillers = new Set(
  'a an and are by can do does for from how i is it its mean means much many my of on or say says tell the there this to what whats when where which with you your about define definition'.split(
    ' ',
  ),
);

/** The same of Spanish, without accents. */
const fillersInSpanish = new Set(
  'a al cual cuales cuanto cuantos como con cual de del dice el ella en entre es esa ese eso esta este esto hay la las le lo los me mi para por que quiere decir se si sin su sobre tengo tiene un una unas unos y o significa'.split(
    ' ',
  ),
);

/** Another spelling or another unit for the same thing. A map, since "constructor" is a word that every object knows. */
const sameWord: ReadonlyMap<string, string> = new Map(
  Object.entries({
    vapour: 'vapor',
    mould: 'mold',
    draught: 'draft',
    fibre: 'fiber',
    litre: 'liter',
    litres: 'liters',
    metre: 'meter',
    metres: 'meters',
    aluminium: 'aluminum',
    fibreglass: 'fiberglass',
    lps: 'cfm',
    ls: 'cfm',
    pascal: 'pa',
    pascals: 'pa',
    inches: 'in',
    inch: 'in',
    feet: 'ft',
    foot: 'ft',
    ductwork: 'duct',
    ducting: 'duct',
    millimetre: 'mm',
    millimeter: 'mm',
    tub: 'bath',
    co: 'monoxide',
  }),
);

/** Letters and digits only, small, without accents. */
export const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/(\d)\s*(?:"|″|”)/g, '$1 in ')
    .replace(/l\/s\b/g, 'lps')
    .replace(/(\d)([a-z])/g, '$1 $2')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** Duct sizes told in millimetres have a size in inches that is not the exact one: 100 mm is 4 in. */
const inInches = (millimetres: number): string | undefined => {
  const inches = Math.round(millimetres / 25);
  return millimetres >= 75 && millimetres <= 315 && Math.abs(millimetres - inches * 25) <= 5 ? `${inches}` : undefined;
};

/** A word that was typed, and what it may stand for. */
export interface Asked {
  /** The word itself first. */
  readonly words: readonly string[];
  /** A size or a count says less than the thing it is said of: an entry without it may still be meant. */
  readonly optional: boolean;
}

const isUnit = (word: string): boolean => /^(?:mm|cm|in|inch|inches|ft|feet|cfm|lps|millimet(?:er|re)s?)$/.test(word);

/** The words of a question that can be looked for, each with other words for the same. Fillers count where nothing else is said. */
export function askedWords(text: string, language: Language = 'english'): readonly Asked[] {
  const all = plain(text).split(' ').filter(Boolean);
  const telling = all.filter((word) => !(language === 'spanish' ? fillersInSpanish : fillers).has(word));
  const words = telling.length > 0 ? telling : all;
  const isSize = (index: number): boolean => {
    const [word = '', before = ''] = [words[index], words[index - 1]];
    return /^\d+$/.test(word) || (isUnit(word) && /^\d+$/.test(before));
  };
  const onlySizes = words.every((_, index) => isSize(index));
  return words.map((word, index) => {
    const isMillimetres = /^(?:mm|millim)/.test(words[index + 1] ?? '');
    const size = /^\d+$/.test(word) && isMillimetres ? inInches(Number(word)) : undefined;
    const other = size ?? (word === 'mm' && /^\d+$/.test(words[index - 1] ?? '') ? 'in' : sameWord.get(word));
    return { words: other === undefined ? [word] : [word, other], optional: isSize(index) && !onlySizes };
  });
}

/** The words of a text that tell something, as they were typed. */
export const telling = (text: string, language: Language): string =>
  askedWords(text, language)
    .map(({ words: [word] }) => word)
    .join(' ');

/** The words that are known, for putting a misspelt one right. */
export interface Vocabulary {
  /** In order, so that what begins with some letters is found at once. */
  readonly sorted: readonly string[];
  /** Words without figures, by their length. */
  readonly byLength: ReadonlyMap<number, readonly string[]>;
  /** In how many names and titles a word stands: it is likelier to be meant the more there are. */
  readonly named: ReadonlyMap<string, number>;
}

export function vocabularyOf(words: ReadonlySet<string>, named: ReadonlyMap<string, number>): Vocabulary {
  const sorted = [...words].toSorted();
  const byLength = new Map<number, string[]>();
  for (const word of sorted) {
    if (/\d/.test(word)) continue;
    const alike = byLength.get(word.length);
    if (alike) alike.push(word);
    else byLength.set(word.length, [word]);
  }
  return { sorted, byLength, named };
}

/** Whether a word is known, or begins one that is. */
export function isKnown(word: string, { sorted }: Vocabulary): boolean {
  let [from, to] = [0, sorted.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((sorted[middle] as string) < word) from = middle + 1;
    else to = middle;
  }
  return sorted[from]?.startsWith(word) ?? false;
}

/** How many letters may be wrong in a word of this length. */
const slipsAllowed = (length: number): number => (length < 3 ? 0 : length < 6 ? 1 : 2);

const mostMeant = 3;

/** Known words a misspelt one may be, nearest first: those in many names before others. */
export function meantBy(word: string, { byLength, named }: Vocabulary): readonly string[] {
  const allowed = slipsAllowed(word.length);
  if (allowed === 0 || /\d/.test(word)) return [];
  const near = Array.from({ length: 2 * allowed + 1 }, (_, step) => byLength.get(word.length - allowed + step) ?? [])
    .flat()
    .flatMap((known) => {
      const slips = distance(word, known);
      if (slips > allowed) return [];
      const sameStart = known[0] === word[0] ? 0 : 0.7;
      return [{ known, apart: slips + sameStart - Math.min(0.6, (named.get(known) ?? 0) / 20) }];
    })
    .toSorted((one, other) => one.apart - other.apart);
  const best = near[0]?.apart ?? 0;
  return near
    .filter(({ apart }) => apart < best + 0.8)
    .slice(0, mostMeant)
    .map(({ known }) => known);
}
