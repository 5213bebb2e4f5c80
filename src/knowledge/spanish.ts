import { z } from 'zod';
import { BadKnowledge, checked } from './checked.ts';

/** Texts by id, as deep as they are kept: the shape of the English, which the Spanish must have too. */
type Texts = string | readonly Texts[] | { readonly [key: string]: Texts | undefined };

const texts: z.ZodType<Texts> = z.lazy(() =>
  z.union([z.string().trim().min(1), z.array(texts), z.record(z.string(), texts)]),
);

/** The numbers a text holds, in order of size: a translation that lost or changed one would mislead. */
const numbersIn = (text: string): string => (text.match(/\d+(?:[./]\d+)?/g) ?? []).toSorted().join(' ');

/**
 * The Spanish of texts the knowledge has in English, entry by entry: none missing, none extra, the same numbers, and none that
 * still is the English, but for the words that are the same in both.
 *
 * @throws BadKnowledge naming the file, the entry and what is wrong.
 */
export function inSpanish<English extends object>(
  file: string,
  { english, same = [] }: { readonly english: English; readonly same?: readonly string[] },
  contents: unknown,
): English {
  const spanish = checked(file, texts, contents);
  const problems = differences(english as Texts, spanish, same);
  if (problems.length > 0) throw new BadKnowledge(file, problems);
  return spanish as unknown as English;
}

function differences(english: Texts, spanish: Texts, same: readonly string[], at = ''): readonly string[] {
  if (typeof english === 'string') {
    if (typeof spanish !== 'string') return [`${at}: give one text`];
    if (numbersIn(english) !== numbersIn(spanish)) return [`${at}: the numbers of “${english}” must stand in it`];
    return english === spanish && !same.includes(english) ? [`${at}: “${english}” is still English`] : [];
  }
  if (typeof spanish === 'string') return [`${at}: give what the English has`];
  const [ours, theirs] = [Object.entries(english), spanish as Readonly<Record<string, Texts | undefined>>];
  const known = new Set(ours.filter(([, text]) => text !== undefined).map(([key]) => key));
  return [
    ...ours.flatMap(([key, text]) => {
      if (text === undefined) return [];
      const other = theirs[key];
      const place = at === '' ? key : `${at} › ${key}`;
      return other === undefined ? [`${place}: is missing`] : differences(text, other, same, place);
    }),
    ...Object.keys(theirs)
      .filter((key) => !known.has(key))
      .map((key) => `${at === '' ? key : `${at} › ${key}`}: nothing in English is called so`),
  ];
}
