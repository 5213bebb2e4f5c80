import { type Dimension, dimensions } from './dimensions.ts';

/** A unit word found in a text: every dimension it could belong to, and where it ends. */
export interface FoundUnit {
  readonly meanings: readonly Meaning[];
  readonly end: number;
}

interface Meaning {
  readonly dimension: Dimension;
  readonly unit: string;
}

/** Both sides of a look-up lose what may be left out, so that "cu. ft. per min" and "cu ft/min" are one word. */
const squeezed = (word: string): string => word.replace(/[\s^*·-]/g, '').replace(/per(?!cent)/g, '/');

const asPattern = (word: string): string =>
  [...word]
    .map((sign) => {
      if (sign === ' ' || sign === '·') return '[\\s·*-]*';
      if (sign === '/') return '\\s*(?:/|per\\b)\\s*';
      if (sign === '°') return '°\\s*';
      if (/\d/.test(sign)) return `\\^?${sign}`;
      return sign.replace(/[$()^*+.?|\\]/, '\\$&');
    })
    .join('');

interface Vocabulary {
  readonly pattern: RegExp;
  readonly meanings: ReadonlyMap<string, readonly Meaning[]>;
}

function vocabulary(
  wordsOf: (dimension: Dimension) => Readonly<Record<string, string | undefined>>,
  ending: string,
): Vocabulary {
  const meanings = new Map<string, Meaning[]>();
  const words = new Set<string>();
  for (const dimension of Object.values<Dimension>(dimensions)) {
    for (const [unit, list = ''] of Object.entries(wordsOf(dimension))) {
      for (const word of list.split('|').filter((each) => each !== '')) {
        words.add(word);
        const found = meanings.get(squeezed(word)) ?? [];
        if (!found.some((meaning) => meaning.dimension === dimension)) found.push({ dimension, unit });
        meanings.set(squeezed(word), found);
      }
    }
  }
  const longestFirst = [...words].sort((a, b) => b.length - a.length);
  return { pattern: new RegExp(`(?:${longestFirst.map(asPattern).join('|')})${ending}`, 'y'), meanings };
}

/** A word must not run on into more letters, nor `ft2` into `ft25`. */
const after = vocabulary((dimension) => dimension.units, '(?![a-zμ°])(?!(?<=\\d)\\d)');
/** "R-8", "RSI: 1.4", "$12": the word, a joint, and then a number. */
const before = vocabulary((dimension) => dimension.before ?? {}, '(?=[\\s:=-]*\\.?\\d)');

function found(text: string, at: number, { pattern, meanings }: Vocabulary): FoundUnit | undefined {
  pattern.lastIndex = at;
  const word = pattern.exec(text)?.[0];
  const meant = word === undefined ? undefined : meanings.get(squeezed(word));
  return meant && { meanings: meant, end: pattern.lastIndex };
}

/** The longest unit word that begins at this place. */
export const unitAt = (text: string, at: number): FoundUnit | undefined => found(text, at, after);

/** A unit word that stands before its number. */
export function unitBeforeAt(text: string, at: number): FoundUnit | undefined {
  const unit = found(text, at, before);
  if (!unit) return undefined;
  const joint = /[\s:=-]*/y;
  joint.lastIndex = unit.end;
  joint.test(text);
  return { meanings: unit.meanings, end: joint.lastIndex };
}
