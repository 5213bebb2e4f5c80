/** What stands in the records in place of a person who was forgotten. */
export const nobodyNamed = 'someone';

/** Finds people by their names in what was kept, and puts `someone` in their place. */
export interface Mentions {
  /** The text when it is a name and nothing else: for who did a thing. */
  asWho(text: string): string;
  /** The text with every name in it replaced, where it stands as a word of its own. */
  inText(text: string): string;
  /**
   * The same for where a photo lies, which may be the name of a file: there a stroke, a dot or nothing stands for a space,
   * and a digit or a stroke for the end of a word, as in `IMG_zoe-quill2.jpg`.
   */
  inFileName(text: string): string;
  /** The same for JSON: every text and every key in it, a `reference` as where a photo lies. What is no JSON is taken as text. */
  inJson(text: string): string;
}

const withoutAccents = (name: string): string => name.normalize('NFD').replace(/\p{M}/gu, '').normalize('NFC');

/** A name as different keyboards write it. Letter case is left to the pattern. */
const spellings = (name: string): readonly string[] => [
  name,
  name.normalize('NFC'),
  name.normalize('NFD'),
  withoutAccents(name),
];

const literally = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** Scripts that put no space between words: a name in them is found wherever it stands. */
const unspaced = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Thai}]/u;

/** A name of one or two letters is a word of its own too often ("al", "jo") to be looked for in what people wrote. */
const shortestInText = 3;

/** A pattern for any of the names, the longest first; it matches nothing where there are none. */
const anyOf = (names: readonly string[], pattern = literally): string =>
  names.length === 0
    ? '(?!)'
    : names
        .toSorted((one, other) => other.length - one.length)
        .map(pattern)
        .join('|');

/** A name as a file may be called by it. */
const inFile = (name: string): string => literally(name).replace(/\s+/g, '[\\s_.+-]*');

/** `names` are whole names, none of them empty: "Maria", "Maria Lopez", a mention of the platform. */
export function mentionsOf(names: readonly string[]): Mentions {
  const all = [...new Set(names.flatMap(spellings))];
  const alone = new RegExp(`^(?:${anyOf(all)})$`, 'iu');
  const words = all.filter((name) => !unspaced.test(name) && name.length >= shortestInText);
  const anywhere = anyOf(all.filter((name) => unspaced.test(name)));
  const letter = '[\\p{L}\\p{M}\\p{N}_]';
  const word = new RegExp(`${anywhere}|(?<!${letter})(?:${anyOf(words)})(?!${letter})`, 'giu');
  const [before, after] = ['(?<!\\p{L}|\\p{M}|\\p{N}(?=\\p{N}))', '(?!\\p{L}|\\p{M}|(?<=\\p{N})\\p{N})'];
  const fileWord = new RegExp(`${anywhere}|${before}(?:${anyOf(words, inFile)})${after}`, 'giu');
  // Most JSON names nobody, and taking it apart is slow; only a quote or a backslash would be written differently in it.
  const anywhereAtAll = new RegExp(anyOf(all, inFile), 'iu');
  const writtenAlike = !all.some((name) => /["\\]/.test(name));
  const inText = (text: string): string => text.replace(word, nobodyNamed);
  const inFileName = (text: string): string => text.replace(fileWord, nobodyNamed);
  const inValue = (value: unknown): unknown => {
    if (typeof value === 'string') return inText(value);
    if (Array.isArray(value)) return value.map(inValue);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, inner]) => [
        inText(key),
        key === 'reference' && typeof inner === 'string' ? inFileName(inner) : inValue(inner),
      ]),
    );
  };
  return {
    asWho: (text) => (alone.test(text) ? nobodyNamed : text),
    inText,
    inFileName,
    inJson(text) {
      if (writtenAlike && !anywhereAtAll.test(text)) return text;
      let value: unknown;
      try {
        value = JSON.parse(text);
      } catch {
        return inText(text);
      }
      const changed = JSON.stringify(inValue(value));
      // Rewriting what names nobody would only change how a number is written.
      return changed === JSON.stringify(value) ? text : changed;
    },
  };
}
