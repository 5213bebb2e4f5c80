import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { glossary } from '#knowledge/glossary.ts';

const root = join(import.meta.dirname, '../..');

const files = (folder: string, ending: string): readonly string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((file) => join(folder, file).replaceAll('\\', '/'))
    .filter((file) => file.endsWith(ending));

/**
 * Pages that hold the words other people use, to read them by; the names of publications, which are not ours; and Spanish, which
 * has terms of its own.
 */
const othersWords =
  /plain-words\/|-reading\.ts$|run-grammar\.ts$|words-(?:english|spanish)\.json$|knowledge\/(?:sources|spanish)\/|glossary\.json$|lookup\/query\.ts$/;

/** Where the program says something of its own. */
const pages = ['commands', 'src/words', 'src/chat', 'src/diagnosis', 'src/walkthrough', 'src/interview', 'src/lookup'];

/** Keys of the same kind inside a file. */
const othersKeys = new Set(['names', 'also', 'where', 'citation', 'id']);

/** Said to a person: more than a word, and not a list of words to be recognised. */
const isProse = (text: string): boolean => /\p{L}{2,} \p{L}{2,}/u.test(text);

const literal = /'((?:[^'\\\n]|\\.)*)'|`((?:[^`\\]|\\.)*)`/g;

/** The sentences a page of the program says; what it takes as other words for an answer is left out. */
function saidInCode(file: string): readonly string[] {
  const text = readFileSync(join(root, file), 'utf8')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/^\s*\/\/.*$/gm, '')
    .replace(/\balso: \[[^\]]*\]/g, '');
  return [...text.matchAll(literal)]
    .map(([, quoted, template]) => quoted ?? template?.replace(/\$\{[^}]*\}/g, '…') ?? '')
    .filter(isProse);
}

function saidInData(node: unknown): readonly string[] {
  if (typeof node === 'string') return isProse(node) ? [node] : [];
  if (Array.isArray(node)) return node.flatMap(saidInData);
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) => (othersKeys.has(key) ? [] : saidInData(value)));
}

const texts = [
  ...pages.flatMap((folder) => files(folder, '.ts')).map((file) => ({ file, said: saidInCode(file) })),
  ...files('knowledge', '.json').map((file) => ({
    file,
    said: saidInData(JSON.parse(readFileSync(join(root, file), 'utf8'))),
  })),
].filter(({ file }) => !othersWords.test(file));

const forbidden = Object.values(glossary.terms).flatMap(({ name, avoid }) =>
  avoid.map((word) => ({ word, name, pattern: new RegExp(`\\b${word.replaceAll(' ', '[ -]')}[sy]?\\b`, 'i') })),
);

/** Words said for something that has another name here, as `file: “text”; say …`. */
const slips = (file: string, said: readonly string[]): readonly string[] =>
  said.flatMap((text) =>
    forbidden
      .filter(({ pattern }) => pattern.test(text))
      .map(({ word, name }) => `${file}: “${text}” has “${word}”; say ${name.toLowerCase()}`),
  );

/** Spellings of another English than the one the trade here writes. */
const otherSpellings =
  /\b(?:aluminium|colour\w*|grey|(?:centi|milli|kilo)?metres?|litres?|centres?|fibres?|neighbours?|licence[sd]?|programmes?|(?:un)?labelled|modelled|energis\w+|recognis\w+|organis\w+|pressuris\w+|depressuris\w+|minimis\w+|judgement|ageing|vapour|mould\w*|draughty?|odours?|torch|storeys?|plough|tyres?|sulphur)\b/i;

/** Words spelled another way, as `file: “text” has “word”`. */
const misspelled = (file: string, said: readonly string[]): readonly string[] =>
  said.flatMap((text) => {
    const word = otherSpellings.exec(text)?.[0];
    return word === undefined ? [] : [`${file}: “${text}” has “${word}”`];
  });

describe('one voice', () => {
  it('spells as the trade here does, and takes other spellings only as answers', () => {
    expect(texts.flatMap(({ file, said }) => misspelled(file, said))).toEqual([]);
    expect(misspelled('page.ts', ['The colour of aluminium', 'three metres of it'])).toHaveLength(2);
    expect(misspelled('page.ts', ['A raised color, the rising meter, labeled'])).toEqual([]);
  });

  it('calls out to nobody', () => {
    const loud = texts.flatMap(({ file, said }) =>
      said.filter((text) => /\p{L}!(?:\s|$)/u.test(text)).map((text) => `${file}: ${text}`),
    );
    expect(loud).toEqual([]);
  });
});

describe('one thing has one name', () => {
  it('in everything commands and knowledge say', () => {
    expect(texts.flatMap(({ file, said }) => slips(file, said))).toEqual([]);
  });

  it('and the glossary itself keeps to it', () => {
    const said = Object.values(glossary.terms).map(({ says }) => says);
    expect(slips('knowledge/glossary.json', said)).toEqual([]);
  });

  it('catches what it is there for, and looks at enough to mean it', () => {
    expect(slips('page.ts', ['There is mould on the ceiling.', 'Screw the exhaust hood on.'])).toHaveLength(2);
    expect(slips('page.ts', ['There is mold on the ceiling.', 'Screw the wall cap on.'])).toEqual([]);
    expect(texts.flatMap(({ said }) => said).length).toBeGreaterThan(1500);
    expect(forbidden.length).toBeGreaterThan(20);
  });

  it('explains at least sixty terms, each once, and forbids no word it uses as a name', () => {
    const terms = Object.values(glossary.terms);
    const names = terms.map(({ name }) => name.toLowerCase());
    expect(names.length).toBeGreaterThanOrEqual(60);
    expect(new Set(names).size).toBe(names.length);
    for (const { avoid } of terms) for (const word of avoid) expect(names).not.toContain(word.toLowerCase());
    expect(glossary.term('damper').name).toBe('Damper');
  });
});
