/** A word as typed, where it stood, and its plain form for comparing. */
export interface Token {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly form: string;
  /** What stands before it: a full stop, a comma, a word such as "but", or nothing. */
  readonly after: 'stop' | 'comma' | 'pause' | 'nothing';
}

/** A map, since people also type words such as "constructor", which every object knows. */
const spelledOut: ReadonlyMap<string, readonly string[]> = new Map([
  ['cant', ['can', 'not']],
  ['cannot', ['can', 'not']],
  ['wont', ['will', 'not']],
  ['dont', ['do', 'not']],
  ['doesnt', ['does', 'not']],
  ['didnt', ['did', 'not']],
  ['isnt', ['is', 'not']],
  ['wasnt', ['was', 'not']],
  ['arent', ['are', 'not']],
  ['hasnt', ['has', 'not']],
  ['havent', ['have', 'not']],
  ['aint', ['is', 'not']],
]);

/** The languages customers' words are known in. */
export type WordLanguage = 'en' | 'es';

/** Letters without the marks Spanish puts on them, one for one, since nobody types those on a phone. */
const unmarked: Readonly<Record<string, string>> = { á: 'a', é: 'e', í: 'i', ó: 'o', ú: 'u', ü: 'u', ñ: 'n' };
const withoutMarks = (text: string): string =>
  text.replace(/[áéíóúüñ]/gi, (letter) => unmarked[letter.toLowerCase()] as string);

/** The form in which words are compared: small letters, without the endings that the language hangs on them. */
export const wordForm = (word: string, language: WordLanguage = 'en'): string =>
  language === 'es' ? spanishForm(word) : englishForm(word);

/** Gota, gotas, gotea and gotean: number, gender and the commonest endings of verbs are taken off. */
function spanishForm(word: string): string {
  const form = withoutMarks(word.toLowerCase());
  if (form.length < 5) return form;
  const bare = form
    .replace(/(?:ando|iendo)$/, '')
    .replace(/s$/, '')
    .replace(/([ae])n$/, '$1');
  return bare.length < 4 ? form : bare.replace(/[aeo]$/, '');
}

/** So that fogs, fogged, fogging and foggy are one word. */
function englishForm(word: string): string {
  let form = word.toLowerCase().replace(/['’]s$/, '');
  const whole = form;
  if (form.length >= 6) form = form.replace(/ing$/, '');
  if (form.length >= 5) form = form.replace(/ed$/, '');
  if (form === whole && form.length >= 5) form = form.replace(/ies$/, 'y');
  if (form === whole && form.length >= 4) form = form.replace(/([^s])s$/, '$1');
  if (form.length >= 4) form = form.replace(/[ey]$/, '');
  return form.length >= 4 ? form.replace(/([a-z])\1$/, '$1') : form;
}

/** "can't" is two words, "can" and "not". */
const partsOf = (plain: string): readonly string[] =>
  spelledOut.get(plain.replace("'", '')) ?? (plain.endsWith("n't") ? [plain.slice(0, -3), 'not'] : [plain]);

const wordPattern = /[a-z0-9]+(?:['’][a-z]+)?/gi;

/** The words of a text, with what stands between them. A pause word, such as "but", is a word like any other as well. */
export function tokensOf(
  typed: string,
  { pauses, language }: { readonly pauses: ReadonlySet<string>; readonly language: WordLanguage },
): readonly Token[] {
  const text = withoutMarks(typed);
  const tokens: Token[] = [];
  let [last, isPause] = [0, false];
  for (const match of text.matchAll(wordPattern)) {
    const between = text.slice(last, match.index);
    const [start, end] = [match.index, match.index + match[0].length];
    const plain = match[0].toLowerCase().replace('’', "'");
    const after = /[.;!?\n]/.test(between)
      ? 'stop'
      : isPause
        ? 'pause'
        : /[,:()–—]/.test(between)
          ? 'comma'
          : 'nothing';
    const written = typed.slice(start, end);
    const parts = language === 'en' ? partsOf(plain) : [plain];
    for (const [at, part] of parts.entries()) {
      tokens.push({ text: written, start, end, form: wordForm(part, language), after: at === 0 ? after : 'nothing' });
    }
    [last, isPause] = [end, pauses.has(plain)];
  }
  return tokens;
}

/**
 * Whether two words differ by at most so many slips of a finger: a letter too many, too few, wrong, or two swapped.
 */
export function differByAtMost(one: string, other: string, slips: number): boolean {
  if (Math.abs(one.length - other.length) > slips) return false;
  let [beforeLast, last] = [[] as number[], Array.from({ length: other.length + 1 }, (_, at) => at)];
  for (let row = 1; row <= one.length; row += 1) {
    const here = [row];
    for (let column = 1; column <= other.length; column += 1) {
      const same = one[row - 1] === other[column - 1];
      let best = Math.min(
        (last[column] as number) + 1,
        (here[column - 1] as number) + 1,
        (last[column - 1] as number) + Number(!same),
      );
      const swapped = row > 1 && column > 1 && one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1];
      if (swapped) best = Math.min(best, (beforeLast[column - 2] as number) + 1);
      here.push(best);
    }
    [beforeLast, last] = [last, here];
  }
  return (last[other.length] as number) <= slips;
}
