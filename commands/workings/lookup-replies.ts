import type { Finding, Table } from '#findings/finding.ts';
import type { PressOffer, Reply } from '#findings/reply.ts';
import { type Citation, sources } from '#knowledge/sources.ts';
import type { Entry } from '#lookup/entry.ts';
import { shownFigure } from '#lookup/shown-figure.ts';
import type { UnitSystem } from '#quantity/units.ts';

/** Figures of an entry that are shown at once; the rest is a press away. */
const mostFigures = 8;
/** Letters of what an entry says in a list to choose from. */
const mostInList = 100;

interface Shown {
  /** Asked for only where there is a figure, since it opens the records. */
  units(): UnitSystem;
  /** Every figure, however many. */
  readonly whole: boolean;
  /** What else was found. */
  readonly others?: readonly Entry[];
  /** The words it was taken for, where they were misspelt. */
  readonly readAs?: string;
}

const open = (entry: Entry, label = entry.title, more: Readonly<Record<string, string>> = {}): PressOffer => ({
  label,
  command: 'lookup',
  action: '',
  given: { words: entry.id, ...more },
});

const ended = (text: string): string => (/[.?]$/.test(text) ? text : `${text}.`);

/** The name and what it says, in one go; where the name is the beginning of what it says, that once. */
function headline({ title, says, kind }: Entry): string {
  if (says === '') return ended(title);
  const [code = '', sentence = ''] = title.split(/: (.*)/s);
  if (kind === 'step' && says.startsWith(sentence)) return `${code}: ${says}`;
  return kind === 'source' || title.endsWith('.') ? `${ended(title)} ${ended(says)}` : `${title}: ${ended(says)}`;
}

/** One entry: what it says, its figures, where they come from and how sure they are, and which command uses them. */
export function entryReply(entry: Entry, { units, whole, others = [], readAs }: Shown): Reply {
  const { caution, citations, figures } = entry;
  const left = whole ? 0 : Math.max(0, figures.length - mostFigures);
  const presses = [
    ...(left > 0 ? [open(entry, `Show all ${figures.length} figures`, { all: 'yes' })] : []),
    ...others.map((other) => open(other)),
  ];
  const findings: readonly Finding[] =
    caution === undefined ? [] : [{ id: 'caution', weight: 'caution', says: caution, working: [], sources: citations }];
  return {
    headline: readAs === undefined ? headline(entry) : `Read as “${readAs}”. ${headline(entry)}`,
    findings,
    tables: [
      aboutIt(entry),
      ...(figures.length === 0 ? [] : [figureTable(entry, units(), whole)]),
      ...(citations.length === 0 ? [] : [sourceTable(citations)]),
    ],
    ...(presses.length > 0 ? { presses } : {}),
  };
}

/** The years an entry is about: those in its name, else in the places it is printed at. */
function editionOf({ title, citations }: Entry): string {
  const years = (text: string) => text.match(/\b(?:19|20)\d\d\b/g) ?? [];
  const named = years(title);
  const found = named.length > 0 ? named : citations.flatMap(({ where = '' }) => years(where));
  return [...new Set(found)].toSorted().join(', ');
}

function aboutIt(entry: Entry): Table {
  const { kind, more, commands } = entry;
  const edition = kind === 'source' ? '' : editionOf(entry);
  return {
    title: 'About it',
    columns: ['what', 'it says'],
    rows: [
      ['Kind', kind],
      ...more.map((line) => [...line]),
      ...(edition === '' ? [] : [['Edition', edition]]),
      ...(commands.length === 0 ? [] : [[kind === 'term' ? 'Go on with' : 'Used by', commands.join(', ')]]),
    ],
  };
}

const keyOf = ({ source, where = '' }: Citation): string => `${source} ${where}`;

function figureTable({ figures, citations }: Entry, units: UnitSystem, whole: boolean): Table {
  const rows = whole ? figures : figures.slice(0, mostFigures);
  const numbered = citations.length > 1;
  const place = new Map(citations.map((citation, index) => [keyOf(citation), `${index + 1}`]));
  return {
    title: rows.length < figures.length ? `Figures, the first ${rows.length} of ${figures.length}` : 'Figures',
    columns: ['what', 'figure', ...(numbered ? ['source'] : [])],
    rows: rows.map((row) => [
      row.what,
      shownFigure(row, units),
      ...(numbered ? [(row.citation && place.get(keyOf(row.citation))) ?? '1'] : []),
    ]),
  };
}

/** How far a figure can be leaned on, in words. */
function sureness({ source, verified }: Citation): string {
  const { kind } = sources[source];
  if (kind === 'common practice') return 'common practice, no source';
  if (kind === 'memory') return 'from memory, not checked';
  if (kind === 'own working') return 'worked out here';
  return verified ? `seen in print, ${kind}` : `from memory or not seen in print, ${kind}`;
}

const sourceTable = (citations: readonly Citation[]): Table => ({
  title: 'Where it comes from',
  columns: ['no.', 'source', 'place', 'how sure'],
  rows: citations.map((citation, index) => [
    `${index + 1}`,
    sources[citation.source].citation,
    citation.where ?? '',
    sureness(citation),
  ]),
});

/** What an entry says, cut where a list has no room for more. */
function inShort({ says, more, caution }: Entry): string {
  const text = says === '' || says === 'A cause of callbacks.' ? (more[0]?.[1] ?? caution ?? '') : says;
  return text.length <= mostInList ? text : `${text.slice(0, mostInList).replace(/\s+\S*$/, '')} …`;
}

/** Several entries to choose one from. */
export const choiceOf = (asked: string, entries: readonly Entry[]): Reply => ({
  headline: `“${asked}” is found in these. Choose one.`,
  findings: [],
  tables: [
    {
      title: 'Found',
      columns: ['name', 'kind', 'it says'],
      rows: entries.map((entry) => [entry.title, entry.kind, inShort(entry)]),
    },
  ],
  presses: entries.map((entry) => open(entry)),
});

/** Nothing has the words; the terms spelt most like them are offered. */
export const nothingFound = (asked: string, nearest: readonly Entry[]): Reply => ({
  ...choiceOf(asked, nearest),
  headline: `Nothing is found for “${asked}”. Try another word, or one of these terms.`,
});
