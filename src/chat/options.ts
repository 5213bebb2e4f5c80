import { closest, distance } from 'fastest-levenshtein';

/** `key=value` pairs as given, with what could not be placed said in sentences. */
export interface Options {
  readonly values: Readonly<Record<string, string>>;
  readonly problems: readonly string[];
}

/** The name nearest to a misspelt one, when it is near enough to be meant. */
export function nearest(name: string, known: readonly string[]): string | undefined {
  if (known.length === 0) return undefined;
  const candidate = closest(name, [...known]);
  return distance(name, candidate) <= Math.max(2, name.length / 3) ? candidate : undefined;
}

/** Reads `key=value` words against the options a command knows; every stray word is named. */
export function optionsFrom(words: readonly string[], known: readonly string[]): Options {
  const values: Record<string, string> = {};
  const problems: string[] = [];
  for (const word of words) {
    const match = /^([A-Za-z][\w-]*)\s*=\s*([\s\S]*)$/.exec(word);
    if (!match) {
      problems.push(`“${clipped(word)}” is not of the form name=value, such as ${known[0] ?? 'name'}="…".`);
      continue;
    }
    const name = (match[1] as string).toLowerCase().replace(/_/g, '-');
    if (known.includes(name)) values[name] = match[2] as string;
    else problems.push(strange(name, known));
  }
  return { values, problems };
}

function strange(name: string, known: readonly string[]): string {
  const meant = nearest(name, known);
  const hint = meant ? `Did you mean ${meant}?` : `It takes ${known.join(', ')}.`;
  return `There is no “${clipped(name)}” here. ${hint}`;
}

/** The first 30 characters of what was typed, without control characters: enough to recognise, safe to print. */
export const clipped = (text: string): string => {
  const clean = [...text].filter((character) => character >= ' ' && character !== '\u007f').join('');
  return clean.length > 30 ? `${clean.slice(0, 30)}…` : clean;
};

/** Splits a typed line into words; quotes keep words together, an inch or foot mark after a digit is not a quote. */
export function wordsOf(line: string): readonly string[] {
  const words: string[] = [];
  let word = '';
  let quote = '';
  for (let index = 0; index < line.length; index += 1) {
    const character = line[index] as string;
    if (quote !== '') {
      if (character === quote && !/[\w'"]/.test(line[index + 1] ?? ' ')) quote = '';
      else word += character;
    } else if (/["“']/.test(character) && /(^|=)$/.test(word)) quote = character === '“' ? '”' : character;
    else if (/\s/.test(character)) {
      if (word !== '') words.push(word);
      word = '';
    } else word += character;
  }
  return word === '' ? words : [...words, word];
}
