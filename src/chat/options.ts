import { closest, distance } from 'fastest-levenshtein';
import type { Language } from '#words/language.ts';
import { terminalWords } from '#words/terminal.ts';

/** `key=value` pairs as given, with what could not be placed said in sentences. */
export interface Options {
  readonly values: Readonly<Record<string, string>>;
  readonly problems: readonly string[];
  /** Known options that were meant and not taken: the name misspelt, or given twice. */
  readonly missed: readonly string[];
}

/** The name nearest to a misspelt one, when it is near enough to be meant: one of its words, or a slip of a few letters. */
export function nearest(name: string, known: readonly string[]): string | undefined {
  if (known.length === 0 || name.length > 40) return undefined;
  const shortened = known.filter((each) => name.length > 2 && `-${each}`.includes(`-${name}`));
  if (shortened.length === 1) return shortened[0];
  const candidate = closest(name, [...known]);
  return distance(name, candidate) <= Math.ceil(name.length / 3) ? candidate : undefined;
}

const optionWord = /^([A-Za-z][\w-]*)\s*=\s*([\s\S]*)$/;

/**
 * Reads `name=value` words against the options a command knows. A word on its own belongs to the value before it, so that
 * `room-length=8 ft 6 in` needs no quotes. Every name that is not known or stands twice is named.
 *
 * @param inWords The option that words before any name belong to, where a command has one.
 */
export function optionsFrom(
  words: readonly string[],
  known: readonly string[],
  inWords?: string,
  language: Language = 'english',
): Options {
  const texts = terminalWords[language];
  const values: Record<string, string> = {};
  const problems: string[] = [];
  const missed: string[] = [];
  const astray: string[] = [];
  let open: { readonly name: string | undefined } | undefined;
  for (const word of words) {
    const [, written, value = ''] = optionWord.exec(word) ?? [];
    if (written === undefined) {
      if (open?.name !== undefined) values[open.name] = `${values[open.name]} ${word}`.trimStart();
      if (!open) astray.push(word);
      continue;
    }
    const name = written.toLowerCase().replace(/_/g, '-');
    const fits = known.includes(name) && !Object.hasOwn(values, name);
    open = { name: fits ? name : undefined };
    if (fits) values[name] = value;
    else {
      problems.push(known.includes(name) ? texts.givenTwice(name) : strange(name, known, language));
      const meant = known.includes(name) ? name : nearest(name, known);
      if (meant !== undefined) missed.push(meant);
    }
  }
  if (astray.length === 0) return { values, problems, missed };
  if (inWords !== undefined && !Object.hasOwn(values, inWords)) {
    return { values: { ...values, [inWords]: astray.join(' ') }, problems, missed };
  }
  const form = texts.nameValue(clipped(astray.join(' ')), known[0] ?? 'name');
  return { values, problems: [form, ...problems], missed };
}

/** `--json`, `--units=both`: what is told to the program in the shell, and means nothing on a line inside it. */
const shellFlag = /^--[a-z][\w-]*(?:=.*)?$/i;
/** Those of them that may have their value in a word of its own. */
const withValue = /^--(?:units|language|store)$/i;

/** A typed line without what belongs into the shell, and what that was. `--as Ana` is taken inside as well. */
export function withoutShellFlags(words: readonly string[]): {
  readonly rest: readonly string[];
  readonly flags: readonly string[];
} {
  const rest: string[] = [];
  const flags: string[] = [];
  for (const word of words) {
    const isValue = withValue.test(flags.at(-1) ?? '') && !optionWord.test(word) && !shellFlag.test(word);
    if (shellFlag.test(word) && word !== '--as') flags.push(word);
    else if (isValue) flags.push(`${flags.pop()} ${word}`);
    else rest.push(word);
  }
  return { rest, flags };
}

function strange(name: string, known: readonly string[], language: Language): string {
  const { meantOption, noSuchOption, optionsThere } = terminalWords[language];
  const meant = nearest(name, known);
  return noSuchOption(clipped(name), meant ? meantOption(meant) : optionsThere(known.join(', ')));
}

/** The first 30 characters of what was typed, without control characters: enough to recognise, safe to print. */
export const clipped = (text: string): string => {
  const clean = [...text.slice(0, 200)].filter((character) => !/\p{Cc}/u.test(character));
  return clean.length > 30 ? `${clean.slice(0, 30).join('')}…` : clean.join('');
};

/** Opening quotes with the marks that may close them: a phone turns straight quotes into curly ones, either way round. */
const closing: Readonly<Record<string, string>> = {
  '"': '"”“',
  '“': '”"“',
  '”': '”"“',
  '„': '“”"',
  "'": "'’",
  '‘': "’'",
};

/** What may follow a closing quote: the end, or the next option. */
const afterValue = /^\s*(?:$|\s[A-Za-z][\w-]*\s*=)/;

/**
 * Where a quoted text ends. Quotes stand for inches and feet too (`"14' 4" flex"`), so the end is the first fitting mark
 * after which another option begins or nothing follows; failing that, the first with a space after it.
 */
function endOfQuoted(line: string, start: number): number | undefined {
  const marks = closing[line[start - 1] as string] as string;
  let spaced: number | undefined;
  for (let index = start; index < line.length; index += 1) {
    if (!marks.includes(line[index] as string)) continue;
    const rest = line.slice(index + 1);
    if (afterValue.test(rest)) return index;
    if (/^\s/.test(rest)) spaced ??= index;
  }
  return spaced;
}

/** Splits a typed line into words; quotes at the start of a word or value keep words together. */
export function wordsOf(line: string): readonly string[] {
  const words: string[] = [];
  let word = '';
  for (let index = 0; index < line.length; index += 1) {
    const character = line[index] as string;
    const opens = character in closing && /(?:^|=)$/.test(word);
    const end = opens ? endOfQuoted(line, index + 1) : undefined;
    if (end !== undefined) {
      words.push(word + line.slice(index + 1, end));
      word = '';
      index = end;
    } else if (/\s/.test(character)) {
      if (word !== '') words.push(word);
      word = '';
    } else word += character;
  }
  return word === '' ? words : [...words, word];
}
