import { checklistWords } from '#knowledge/checklist-facts.ts';
import { checklistSteps } from '#knowledge/checklists.ts';
import { library, type Shelf } from '#knowledge/library.ts';
import { cite, sources } from '#knowledge/sources.ts';
import { type Entry, inWords, upperFirst } from './entry.ts';
import { amountOf, figuresIn } from './figures-in.ts';
import { toldInSpanish } from './in-spanish.ts';
import { citationsIn, isRecord, isSource, type Raw, textAt, textsAt } from './raw.ts';
import { wordsOf } from './wording.ts';

/** Keys that gather entries and say nothing about one of them. */
const gathering = new Set(
  'figures rules defaults sentences losses kinds codes editions statements formulas exhausts materials'.split(' '),
);

/** Other names for what is gathered under a key. */
const groupNames: Readonly<Record<string, readonly string[]>> = {
  irc: ['duct length table', 'IRC duct length', 'Table M1504.2', 'M1504.2', 'M1506.2'],
  terminations: [
    'hood clearance',
    'hood distance from window',
    'distance to the property line',
    'where to put the hood',
  ],
};

/** What is to be said of what is gathered under a key, where it is figures alone. */
const groupSays: Readonly<Record<string, string>> = {
  terminations: 'Keep the outside hood at least this far from each of these.',
};

/** Groups told in better words than their keys. */
const groupWords: Readonly<Record<string, string>> = {
  terminations: 'where it may end, code of',
  distances: 'distance',
  diameters: 'in duct widths',
  slopes: 'slope',
  insulation: 'insulation',
  metal: 'sheet metal',
  tiers: 'how often a sign goes with a cause',
};

/** An entry is the outermost part with a source or a name of its own, or with figures of its own above cited ones. */
const isEntry = (node: Raw, path: readonly string[]): boolean =>
  isSource(node) ||
  'question' in node ||
  'prompt' in node ||
  (path.length > 0 &&
    ('name' in node || Object.values(node).some((part) => amountOf(part) !== undefined && !isSource(part))) &&
    citationsIn(node).length > 0);

function onShelf(shelf: Shelf, node: unknown, path: readonly string[] = []): readonly Entry[] {
  if (!isRecord(node)) return [];
  if (isEntry(node, path)) return [entryOf(shelf, node, path)];
  return Object.entries(node).flatMap(([key, part]) => onShelf(shelf, part, [...path, key]));
}

const mostInId = 40;
const idOf = (...parts: readonly string[]): string =>
  parts
    .join('.')
    .replace(/([a-z])([A-Z])/g, '$1-$2')
    .toLowerCase()
    .replace(/[^a-z0-9.-]+/g, '-')
    .slice(0, mostInId);

function entryOf({ id, about, kind, commands }: Shelf, node: Raw, path: readonly string[]): Entry {
  const telling = path.filter((key) => !gathering.has(key));
  const name = textAt(node, 'name') ?? textAt(node, 'short') ?? textAt(node, 'brief') ?? placeInWords(telling, about);
  const thickness = textAt(node, 'name') === undefined && typeof node['awg'] === 'number' ? node['awg'] : undefined;
  const gauge = thickness === undefined ? [] : [`${thickness} AWG`, `${thickness} gauge`, `#${thickness}`];
  const words = wordsOf(kind, node);
  const title = about === '' || name === '' ? upperFirst(name) : `${about}: ${gauge[0] ?? name}`;
  const named = { id: idOf(id, ...telling), kind };
  const spanish = toldInSpanish(named, path.at(-1) ?? '');
  return {
    id: named.id,
    kind,
    title,
    names: [
      ...textsAt(node, 'names'),
      ...textsAt(node, 'also'),
      ...textsAt(node, 'avoid'),
      ...textsAt(node, 'marks'),
      ...gauge,
      ...telling.flatMap((key) => groupNames[key] ?? []),
      ...(about === '' ? [] : [name]),
      ...(kind === 'check' || kind === 'cause' || kind === 'danger' ? [inWords(telling.at(-1) ?? '')] : []),
    ],
    figures: figuresOfKind(kind, node),
    citations: citationsIn(node),
    commands: kind === 'term' ? textsAt(node, 'see') : commands,
    ...words,
    says: words.says === '' ? (telling.map((key) => groupSays[key]).find(Boolean) ?? '') : words.says,
    ...(spanish === undefined ? {} : { spanish }),
  };
}

/** The keys that lead to an entry without a name, as words. */
function placeInWords(keys: readonly string[], about: string): string {
  const words = keys.map((key) => groupWords[key] ?? inWords(key)).join(' ');
  return about === '' || words !== inWords(words) ? words : words.charAt(0).toLowerCase() + words.slice(1);
}

/** Only what is measured or counted; the words of a cause or a rule stand elsewhere. */
const figuresOfKind = (kind: Entry['kind'], node: Raw): Entry['figures'] =>
  ['term', 'cause', 'check', 'question', 'wiring rule', 'pattern', 'danger', 'remedy'].includes(kind)
    ? []
    : figuresIn(node);

const firstSentence = (text: string): string => /^.*?[.?](?=\s|$)/.exec(text)?.[0] ?? text;

const steps = (): readonly Entry[] =>
  Object.entries(checklistSteps).map(([id, step]) => ({
    id: idOf('step', id),
    kind: 'step',
    ...spanishStep(id),
    title: `${step.code}: ${firstSentence(step.do)}`,
    names: [inWords(id), step.code],
    says: step.do,
    more: [
      ['Look for', step.lookFor],
      ['Why', step.why],
      ['Signed by', step.signers.map((who) => checklistWords.signers[who]).join(' or ')],
      ...(step.hold ? [['Hold', 'The job stops here until it is signed.'] as const] : []),
      ...(step.onFail === undefined ? [] : [['When it fails', step.onFail] as const]),
      ...(step.note === undefined ? [] : [['Note', step.note] as const]),
    ],
    ...(step.caution === undefined ? {} : { caution: step.caution }),
    figures: [],
    citations: [cite(step)],
    commands: ['swap'],
  }));

function spanishStep(id: string): Pick<Entry, 'spanish'> {
  const spanish = toldInSpanish({ id: idOf('step', id), kind: 'step' }, id);
  return spanish === undefined ? {} : { spanish };
}

const publications = (): readonly Entry[] =>
  Object.entries(sources).map(([id, { citation, kind, note }]) => ({
    id: idOf('source', id),
    kind: 'source',
    title: citation.replace(/\.$/, ''),
    names: [inWords(id)],
    says: upperFirst(kind),
    more: note === undefined ? [] : [['Note', note]],
    figures: [],
    citations: [],
    commands: [],
  }));

/** Everything that can be looked up: the glossary, every table, rule and cause, every step and every publication. */
export const allEntries = (): readonly Entry[] => [
  ...library.flatMap((shelf) => onShelf(shelf, shelf.contents)),
  ...steps(),
  ...publications(),
];
