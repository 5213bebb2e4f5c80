import type { Finding, Table } from '#findings/finding.ts';
import type { PressOffer, Reply } from '#findings/reply.ts';
import { type Citation, sources } from '#knowledge/sources.ts';
import type { Entry } from '#lookup/entry.ts';
import { shownFigure } from '#lookup/shown-figure.ts';
import type { UnitSystem } from '#quantity/units.ts';
import type { Language } from '#words/language.ts';
import { sourceWords } from '#words/sources.ts';
import { lookupWords } from '../words/lookup.ts';

/** Figures of an entry that are shown at once; the rest is a press away. */
const mostFigures = 8;
/** Letters of what an entry says in a list to choose from. */
const mostInList = 100;

interface Shown {
  /** Asked for only where there is a figure, since it opens the records. */
  units(): UnitSystem;
  /** Every figure, however many. */
  readonly whole: boolean;
  readonly language: Language;
  /** What else was found. */
  readonly others?: readonly Entry[];
  /** The words it was taken for, where they were misspelt. */
  readonly readAs?: string;
}

/** Letters on a button that a phone shows whole. */
const mostOnButton = 38;

/** A title that is too long for a button, cut between words. */
const shortTitle = (title: string): string =>
  title.length <= mostOnButton ? title : `${title.slice(0, mostOnButton - 1).replace(/[\s,:;(–-]+\S*$/, '')}…`;

const open = (entry: Entry, label: string, more: Readonly<Record<string, string>> = {}): PressOffer => ({
  label,
  ...(label.length > mostOnButton ? { short: shortTitle(label) } : {}),
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
export function entryReply(entry: Entry, { units, whole, language, others = [], readAs }: Shown): Reply {
  const texts = lookupWords[language];
  const { caution, citations, figures } = entry;
  const left = whole ? 0 : Math.max(0, figures.length - mostFigures);
  const presses = [
    ...(left > 0 ? [open(entry, texts.showAll(figures.length), { all: 'yes' })] : []),
    ...others.map((other) => open(other, texts.titled(other))),
  ];
  const findings: readonly Finding[] =
    caution === undefined ? [] : [{ id: 'caution', weight: 'caution', says: caution, working: [], sources: citations }];
  return {
    language,
    headline: readAs === undefined ? headline(entry) : `${texts.readAs(readAs)} ${headline(entry)}`,
    findings,
    tables: [
      aboutIt(entry, language),
      ...(figures.length === 0 ? [] : [figureTable(entry, { units: units(), whole, language })]),
      ...(citations.length === 0 ? [] : [sourceTable(citations, language)]),
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

function aboutIt(entry: Entry, language: Language): Table {
  const texts = lookupWords[language];
  const { kind, more, commands, spanish, figures } = entry;
  const staysEnglish = spanish?.says === undefined || figures.length > 0;
  const edition = kind === 'source' ? '' : editionOf(entry);
  return {
    ...texts.about,
    rows: [
      ...(texts.printed !== undefined && staysEnglish ? [[...texts.printed]] : []),
      [texts.kindIs, texts.kind(kind)],
      ...more.map((line) => [...line]),
      ...(edition === '' ? [] : [[texts.edition, edition]]),
      ...(commands.length === 0 ? [] : [[kind === 'term' ? texts.goOn : texts.usedBy, commands.join(', ')]]),
    ],
  };
}

const keyOf = ({ source, where = '' }: Citation): string => `${source} ${where}`;

function figureTable(
  { figures, citations }: Entry,
  { units, whole, language }: { readonly units: UnitSystem; readonly whole: boolean; readonly language: Language },
): Table {
  const texts = lookupWords[language];
  const rows = whole ? figures : figures.slice(0, mostFigures);
  const numbered = citations.length > 1;
  const place = new Map(citations.map((citation, index) => [keyOf(citation), `${index + 1}`]));
  return {
    title: rows.length < figures.length ? texts.firstFigures(rows.length, figures.length) : texts.figures,
    columns: [...texts.figureColumns, ...(numbered ? [texts.source] : [])],
    rows: rows.map((row) => [
      row.what,
      shownFigure(row, units),
      ...(numbered ? [(row.citation && place.get(keyOf(row.citation))) ?? '1'] : []),
    ]),
  };
}

/** How far a figure can be leaned on, in words. */
function sureness({ source, verified }: Citation, language: Language): string {
  const { sure } = lookupWords[language];
  const { kind } = sources[source];
  if (kind === 'common practice') return sure.practice;
  if (kind === 'memory') return sure.memory;
  if (kind === 'own working') return sure.own;
  const told = sourceWords[language].kinds[kind];
  return verified ? sure.seen(told) : sure.unseen(told);
}

const sourceTable = (citations: readonly Citation[], language: Language): Table => ({
  ...lookupWords[language].sources,
  rows: citations.map((citation, index) => [
    `${index + 1}`,
    sourceWords[language].ours[citation.source] ?? sources[citation.source].citation,
    citation.where ?? '',
    sureness(citation, language),
  ]),
});

/** What an entry says, cut where a list has no room for more. */
function inShort({ says, more, caution, kind }: Entry): string {
  const text = says === '' || kind === 'cause' ? (more[0]?.[1] ?? caution ?? '') : says;
  return text.length <= mostInList ? text : `${text.slice(0, mostInList).replace(/\s+\S*$/, '')} …`;
}

/** Several entries to choose one from. */
export const choiceOf = (asked: string, entries: readonly Entry[], language: Language): Reply => ({
  language,
  headline: lookupWords[language].chooseOne(asked),
  findings: [],
  tables: [
    {
      ...lookupWords[language].found,
      rows: entries.map((entry) => [
        lookupWords[language].titled(entry),
        lookupWords[language].kind(entry.kind),
        inShort(entry),
      ]),
    },
  ],
  presses: entries.map((entry, index) => {
    const offer = open(entry, lookupWords[language].titled(entry));
    // Cut titles may look alike: the place in the list tells them apart.
    return offer.short === undefined ? offer : { ...offer, short: `${index + 1}. ${offer.short}` };
  }),
});

/** Nothing has the words; the terms spelt most like them are offered. */
export const nothingFound = (asked: string, nearest: readonly Entry[], language: Language): Reply => ({
  ...choiceOf(asked, nearest, language),
  headline: lookupWords[language].nothing(asked),
});
