import { oneOf } from '#interview/choices.ts';
import { isNamedBy, type Named, namedIn } from '#interview/named-places.ts';
import type { Question } from '#interview/question.ts';
import type { ScopedStore } from '#store/store.ts';
import type { Language } from '#words/language.ts';
import { standing } from '#words/standing.ts';
import { whichJobWords } from '#words/which-job.ts';
import type { Speaker } from './command.ts';

/**
 * Keeps two callers apart. The office answers one customer after another in the same channel; a line that names a house the
 * open sheet does not know is asked about before a word of it is noted, and a sheet from before is named with a way out.
 */

/** Answers that wait until somebody has said which job they are about. */
export interface Apart {
  /** Each with the id of its question, as typed. */
  readonly answers: readonly (readonly [id: string, typed: string])[];
  /** The house or person that was named. */
  readonly named: string;
}

export const whichJobId = 'which-job';

const jobIn = (store: ScopedStore, sheet: number, language: Language): string => {
  const words = standing[language];
  return words.job(sheet, shortly(store.findSheet(sheet)?.name ?? null));
};

const shortly = (name: string | null): string | null =>
  name === null || name.length <= mostOfName ? name : `${name.slice(0, mostOfName - 1).trim()}…`;

/** A name that still fits a button, with the job's number before it. */
const mostOfName = 50;

/** How many of the newest jobs are looked through for the house that was named. */
const mostSearched = 500;

/** The first house or person a line names, where the sheet has something on it and knows none of those the line names. */
export function strangerIn(store: ScopedStore, sheet: number, line: string): string | undefined {
  const named = namedIn(line);
  if (named.length === 0) return undefined;
  const known = textsOf(store, sheet);
  if (known.length === 0 || known.some((text) => named.some((each) => isNamedBy(text, each)))) return undefined;
  return named[0]?.as;
}

/** Everything a sheet says in words: its name and what was typed on it. */
function textsOf(store: ScopedStore, sheet: number): readonly string[] {
  const name = store.findSheet(sheet)?.name ?? null;
  return [...(name === null ? [] : [name]), ...[...store.newestFacts(sheet).values()].map(({ typed }) => typed)];
}

/** What a sheet with nothing on it and no name is called from now on: the house the first line on it names. */
export function nameFor(store: ScopedStore, sheet: number, line: string): string | undefined {
  const [first] = namedIn(line);
  return first && textsOf(store, sheet).length === 0 ? first.as : undefined;
}

/** Another job of the crew that is called after the same house. */
function jobNamed(store: ScopedStore, named: string, besides: number): number | undefined {
  const wanted: Named | undefined = namedIn(named)[0];
  if (!wanted) return undefined;
  const found = store
    .listSheets({ limit: mostSearched })
    .filter(({ number, name }) => number !== besides && name !== null && isNamedBy(name, wanted));
  return (found.find(({ state }) => state === 'open') ?? found[0])?.number;
}

/** Asks which job a line is about: the one that is called so, or a new one; or the one open here. */
export function whichJob(store: ScopedStore, sheet: number, { named }: Apart): Question<string> {
  const other = jobNamed(store, named, sheet);
  const labels = (language: Language) => {
    const texts = whichJobWords[language];
    const known = other === undefined ? [] : [['known', jobIn(store, other, language)] as const];
    return Object.fromEntries([
      ...known,
      ['new', texts.fresh(shortly(named) ?? '')],
      ['here', jobIn(store, sheet, language)],
    ]);
  };
  const wording = (language: Language) => {
    const { prompt, why, brief, because } = whichJobWords[language];
    return { prompt: prompt(shortly(named) ?? '', jobIn(store, sheet, language)), why, brief, because };
  };
  const { because, ...english } = wording('english');
  return oneOf({
    id: whichJobId,
    ...english,
    choices: Object.entries(labels('english')).map(([id, label]) => ({ id, label })),
    whenUnknown: { value: 'new', because },
    words: { spanish: { ...wording('spanish'), choices: labels('spanish') } },
  });
}

/** Lays out the sheet that was picked in place of the one open here, and says its number. */
export function sheetPicked(
  store: ScopedStore,
  picked: string,
  { sheet, named, ...speaker }: Speaker & { readonly sheet: number; readonly named: string | null },
): number {
  const other = picked === 'known' && named !== null ? jobNamed(store, named, sheet) : undefined;
  if (other === undefined) return store.openSheet({ ...speaker, name: named }).number;
  if (store.findSheet(other)?.state === 'closed') store.reopenSheet(other, speaker);
  return store.useSheet({ ...speaker, sheet: other }).number;
}

/**
 * A sheet nobody has touched for this long is one of another day. The calendar's day will not do: by the clock of the
 * records it turns in the middle of an American afternoon.
 */
const restedFor = 8 * 60 * 60 * 1000;

/** Where an answer goes, said while it can still go elsewhere: on a sheet of another day, or beside an earlier complaint. */
export function goesOn(
  store: ScopedStore,
  sheet: number,
  {
    complaint,
    line,
    language = 'english',
  }: {
    /** The fact a complaint is kept as, where the command takes one. */
    readonly complaint: string | undefined;
    readonly line: string;
    readonly language?: Language | undefined;
  },
): string | undefined {
  const facts = store.newestFacts(sheet);
  // Whoever names the house of this sheet knows which one it is.
  if (facts.size === 0 || namedIn(line).length > 0) return undefined;
  const texts = whichJobWords[language];
  const last = store.lastUse(sheet);
  if (Date.parse(store.now()) - Date.parse(last) >= restedFor)
    return texts.lastUsed(jobIn(store, sheet, language), last.slice(0, 10));
  return complaint !== undefined && facts.has(complaint)
    ? texts.complaintStands(jobIn(store, sheet, language))
    : undefined;
}

/** What is said once an answer has come to another sheet than the one that was open here. */
export const openedFor = (
  store: ScopedStore,
  {
    to,
    from,
    moved,
    language = 'english',
  }: {
    readonly to: number;
    readonly from: number;
    /** Whether it stood on the other sheet before. */
    readonly moved: boolean;
    readonly language?: Language | undefined;
  },
): string =>
  whichJobWords[language][moved ? 'takenTo' : 'openedFor'](jobIn(store, to, language), jobIn(store, from, language));
