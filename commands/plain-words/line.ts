export interface Fact {
  readonly id: string;
  readonly answer: string;
}

type Groups = Readonly<Record<string, string | undefined>>;

/** What a match stands for: facts, or nothing when it is something else after all. */
type Meaning = (groups: Groups, said: string) => readonly Fact[] | undefined;

/** One pattern and what it stands for. */
export interface Rule {
  readonly pattern: RegExp;
  readonly means: Meaning;
}

export const fact = (id: string, answer: string): readonly Fact[] => [{ id, answer }];

export const rule = (source: string | RegExp, means: Meaning): Rule => ({
  pattern: typeof source === 'string' ? new RegExp(source, 'g') : new RegExp(source.source, 'g'),
  means,
});

/** What is taken is blotted out in place, so that no number counts twice. */
const blot = '~';

/** The line without a stretch of it. */
export const without = (text: string, from: number, to: number): string =>
  text.slice(0, from) + blot.repeat(to - from) + text.slice(to);

/** Whether a stretch of the line begins or ends inside a number: what was read there is then not what was written. */
export const cutsNumber = (text: string, from: number, to: number): boolean =>
  (/[\d.]/.test(text[from] ?? '') && /[\d./]/.test(text[from - 1] ?? '')) ||
  (/\d/.test(text[to - 1] ?? '') && /^(?:\d|[./]\d)/.test(text.slice(to, to + 2)));

export interface Taken {
  readonly facts: readonly Fact[];
  readonly text: string;
}

/** Tries rules in order, each until it has given its fact once; a fact already known is not taken again. */
export function taken(text: string, rules: readonly Rule[], known: readonly Fact[] = []): Taken {
  let left = text;
  const facts: Fact[] = [...known];
  for (const { pattern, means } of rules) {
    for (const match of left.matchAll(pattern)) {
      if (cutsNumber(left, match.index, match.index + match[0].length)) continue;
      const found = means(match.groups ?? {}, match[0]);
      if (!found?.length || found.some(({ id }) => facts.some((each) => each.id === id))) continue;
      facts.push(...found);
      left = without(left, match.index, match.index + match[0].length);
      break;
    }
  }
  return { facts, text: left };
}

/** Numbers that stand in no fact, as they can be named to a person. */
export const looseNumbers = (text: string): readonly string[] =>
  [...text.matchAll(/\d+(?:\.\d+)?(?:[ -]?\d*\/\d+)?/g)].map(([said]) => said);
