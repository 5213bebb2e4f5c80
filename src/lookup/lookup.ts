import Database from 'better-sqlite3';
import { distance } from 'fastest-levenshtein';
import type { Language } from '#words/language.ts';
import { allEntries } from './entries.ts';
import { type Entry, inWords } from './entry.ts';
import { type Asked, askedWords, isKnown, meantBy, plain, telling, type Vocabulary, vocabularyOf } from './query.ts';

/** A name without its spaces and without the s of many, so that “wallcap” and “dampers” are names too. */
const alike = (name: string): string =>
  plain(name)
    .replaceAll(' ', '')
    .replace(/(?<=[rnld])es$|s$/, '');

/** An entry as it is told in a language, found by its names in both. */
function toldIn(language: Language, entry: Entry): Entry {
  const { spanish } = entry;
  if (language === 'english' || spanish === undefined) return entry;
  const told = { ...entry, ...spanish, names: [...spanish.names, entry.title, ...entry.names] };
  // Beside a Spanish sentence no English one is told.
  return spanish.says === undefined || spanish.caution !== undefined ? told : without(told);
}

const without = ({ caution: _, ...rest }: Entry): Entry => rest;

/** An entry with its names as they are compared. */
interface Named extends Entry {
  readonly called: readonly string[];
}

/** Letters and words of a question that are looked at. */
const longestText = 200;
const mostWords = 12;

interface Match {
  readonly row: number;
  /** The smaller, the better it fits. */
  readonly rank: number;
}

/** An index over all entries, in memory. */
interface Index {
  readonly entries: readonly Named[];
  readonly byId: ReadonlyMap<string, Named>;
  readonly vocabulary: Vocabulary;
  matching(expression: string): readonly Match[];
}

/** How much a word counts in the title, in other names, in what is said, in the rest. */
const weights = [10, 8, 2, 1] as const;
const mostMatches = 60;

/** In Spanish the small words of a name are left out as they are of what is typed: “salida de pared”. */
const calledIn = (language: Language, { title, names }: Entry): readonly string[] =>
  [title, ...names].map((name) => alike(language === 'english' ? name : telling(name, language)));

function build(language: Language): Index {
  const entries = allEntries()
    .map((entry) => toldIn(language, entry))
    .map((entry): Named => ({ ...entry, called: calledIn(language, entry) }));
  const database = new Database(':memory:');
  database.exec(
    "CREATE VIRTUAL TABLE entries USING fts5(title, names, says, rest, tokenize = 'porter unicode61 remove_diacritics 2', prefix = '2 3')",
  );
  const insert = database.prepare('INSERT INTO entries (rowid, title, names, says, rest) VALUES (?, ?, ?, ?, ?)');
  const words = new Set<string>();
  const named = new Map<string, number>();
  const columnsOf = entries.map(textsOf);
  database.transaction(() => {
    columnsOf.forEach((columns, row) => {
      insert.run(row, ...columns);
    });
  })();
  for (const [title, names, says, rest] of columnsOf) {
    for (const word of `${title} ${names}`.split(' ')) named.set(word, (named.get(word) ?? 0) + 1);
    for (const word of `${title} ${names} ${says} ${rest}`.split(' ')) words.add(word);
  }
  const search = database.prepare<[string], Match>(
    `SELECT rowid AS row, bm25(entries, ${weights.join(', ')}) AS rank FROM entries WHERE entries MATCH ? ORDER BY rank LIMIT ${mostMatches}`,
  );
  return {
    entries,
    byId: new Map(entries.map((entry) => [entry.id, entry])),
    vocabulary: vocabularyOf(words, named),
    matching: (expression) => search.all(expression),
  };
}

/** What is looked through of an entry, in plain letters. A name of several words is also found written as one. */
function textsOf({
  title,
  names,
  says,
  more,
  caution = '',
  figures,
  citations,
}: Entry): readonly [string, string, string, string] {
  const joined = [title, ...names].map(plain).filter((name) => /^\S+ \S+$/.test(name));
  const rest = [
    ...more.map((line) => line.join(' ')),
    caution,
    ...figures.map(
      ({ what, amount }) => `${what} ${typeof amount === 'string' ? amount : 'unit' in amount ? amount.unit : ''}`,
    ),
    ...citations.map(({ source, where = '' }) => `${inWords(source)} ${where}`),
  ];
  return [
    plain(title),
    [...names.map(plain), ...joined.map((name) => name.replace(' ', ''))].join(' '),
    plain(says),
    plain(rest.join(' ')),
  ];
}

const built = new Map<Language, Index>();

/** The index in a language, built when something is first looked up in it. */
function index(language: Language): Index {
  const before = built.get(language);
  if (before !== undefined) return before;
  const made = build(language);
  built.set(language, made);
  return made;
}

/** Any of the words, or words that begin so. */
function anyOf({ words: asked }: Asked, vocabulary: Vocabulary): string {
  const meant = asked.flatMap((word) => (isKnown(word, vocabulary) ? [word] : [word, ...meantBy(word, vocabulary)]));
  const written = [...new Set(meant)].flatMap((word) => [`"${word}"`, ...(word.length > 1 ? [`"${word}"*`] : [])]);
  return `(${written.join(' OR ')})`;
}

/** What kind of entry is likelier to be meant by the same words. */
const kindCounts: Readonly<Partial<Record<Entry['kind'], number>>> = {
  term: 4,
  table: 1,
  fitting: 4,
  rule: 2,
  danger: 2,
  cause: 1,
  source: -8,
  method: -3,
  pattern: -4,
  question: -1,
};

/** Named exactly so, or beginning so, before what merely has the words somewhere; a term before the rest. */
function nameCounts({ called, kind }: Named, asked: string): number {
  if (called[0] === asked) return 40;
  if (called.includes(asked)) return kind === 'term' ? 35 : 30;
  const begins = asked.length > 2 && called.some((name) => name.startsWith(asked));
  return begins ? (kind === 'term' ? 11 : 6) : 0;
}

/** Rules of another country come behind, where nobody named it. */
const elsewhere = ({ title }: Entry, asked: string): number => {
  const country = /\b(?:Canada|England)\b/.exec(title)?.[0].toLowerCase();
  return country === undefined || asked.includes(country) ? 0 : -4;
};

/** Of two editions alike the newer one comes first. */
const newness = ({ title }: Entry): number => (Number(/\b20[0-3]\d\b/.exec(title)?.[0] ?? 2000) - 2000) / 20;

/** What was found, best first, and the words as they were read where some were misspelt. */
interface LookedUp {
  readonly entries: readonly Entry[];
  readonly readAs?: string;
}

/** Entries a text may mean, best first. Never throws, whatever the text. */
export function lookedUp(text: string, most: number, language: Language = 'english'): LookedUp {
  const { vocabulary, matching, entries: known } = index(language);
  const asked = askedWords(text.slice(0, longestText), language).slice(0, mostWords);
  if (asked.length === 0) return { entries: [] };
  const foreign = language === 'english' ? namedInSpanish(known, text, most) : [];
  if (foreign.length > 0) return { entries: foreign };
  const groups = asked.map((each) => anyOf(each, vocabulary));
  const needed = groups[asked.findIndex(({ optional }) => !optional)] ?? groups[0];
  const all = matching(
    groups.map((group, at) => (asked[at]?.optional ? `(${group} OR ${needed})` : group)).join(' AND '),
  );
  const some = all.length < most && groups.length > 1 ? matching(groups.join(' OR ')) : [];
  const seen = new Set(all.map(({ row }) => row));
  const typed = asked.map(({ words: [word] }) => word).join(' ');
  const right = asked.map((each) => rightly(each, vocabulary)).join(' ');
  const entries = [all, some.filter(({ row }) => !seen.has(row))].flatMap((matches) =>
    ranked(known, matches, { typed, right }),
  );
  return { entries: entries.slice(0, most), ...(right === typed ? {} : { readAs: right }) };
}

/** The word that was typed where it is known, else the likeliest it may be. */
const rightly = ({ words }: Asked, vocabulary: Vocabulary): string =>
  words.find((word) => isKnown(word, vocabulary)) ?? meantBy(words[0] ?? '', vocabulary)[0] ?? words[0] ?? '';

/** Entries a text names in Spanish, and none in English: a crew of two languages asks in both. */
function namedInSpanish(entries: readonly Named[], text: string, most: number): readonly Entry[] {
  const said = alike(text.slice(0, longestText));
  if (said.length < 3 || entries.some(({ called }) => called.some((name) => name.startsWith(said)))) return [];
  return entries
    .filter(
      ({ spanish }) => spanish !== undefined && [spanish.title, ...spanish.names].some((name) => alike(name) === said),
    )
    .slice(0, most);
}

function ranked(
  entries: readonly Named[],
  matches: readonly Match[],
  { typed, right }: { readonly typed: string; readonly right: string },
): readonly Entry[] {
  const [asTyped, asMeant] = [alike(typed), alike(right)];
  return matches
    .flatMap(({ row, rank }) => {
      const entry = entries[row];
      if (!entry) return [];
      const byName = Math.max(nameCounts(entry, asTyped), nameCounts(entry, asMeant) - 1);
      return [
        { entry, score: byName + (kindCounts[entry.kind] ?? 0) + newness(entry) + elsewhere(entry, typed) - rank },
      ];
    })
    .toSorted((one, other) => other.score - one.score)
    .map(({ entry }) => entry);
}

/** The entry with an id. */
export const entryOf = (id: string, language: Language = 'english'): Entry | undefined => index(language).byId.get(id);

/** Whether a text is the very name of an entry. */
export function isNameOf(text: string, { title, names, spanish }: Entry): boolean {
  const said = alike(text);
  return [title, ...names, ...(spanish === undefined ? [] : [spanish.title, ...spanish.names])].some(
    (name) => alike(name) === said,
  );
}

/** The terms spelt most like a text, for when nothing was found. */
export function nearestTerms(text: string, most: number, language: Language = 'english'): readonly Entry[] {
  const asked = plain(text.slice(0, 60));
  return index(language)
    .entries.filter(({ kind }) => kind === 'term')
    .map((entry) => ({
      entry,
      apart: Math.min(
        ...[entry.title, ...entry.names].map(
          (name) => distance(asked, plain(name)) / Math.max(asked.length, name.length),
        ),
      ),
    }))
    .toSorted((one, other) => one.apart - other.apart)
    .slice(0, most)
    .map(({ entry }) => entry);
}
