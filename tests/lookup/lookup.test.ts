import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commands } from '#commands/index.ts';
import { glossary } from '#knowledge/glossary.ts';
import { library } from '#knowledge/library.ts';
import { allEntries } from '#lookup/entries.ts';
import { entryOf, lookedUp, nearestTerms } from '#lookup/lookup.ts';
import { shownFigure } from '#lookup/shown-figure.ts';
import { queries } from './queries.ts';

const entries = allEntries();
const knowledge = join(import.meta.dirname, '../../knowledge');

/** Files that hold nothing to look up, or whose entries are read where they are checked. */
const leftOut: Readonly<Record<string, string>> = {
  'causes/words-english.json': 'words a complaint is read by',
  'causes/words-spanish.json': 'the same in Spanish',
  'checklists/lists.json': 'the order of steps',
  'checklists/rules.json': 'how long proofs last',
  'checklists/words.json': 'labels',
  'demo/fans.json': 'invented fans',
  'demo/house.json': 'an invented house',
  'demo/pictures/made-from.json': 'what the pictures of the invented house were made from',
  'electrical/who-decides.json': 'labels',
  'glosses.json': 'half a line for terms that stand in the glossary',
};

describe('what can be looked up', () => {
  it('is every file of knowledge, but for those that hold nothing to look up', () => {
    const files = readdirSync(knowledge, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.json') && !/^(?:sources|spanish|checklists.steps)\W/.test(file))
      .filter((file) => leftOut[file.replaceAll('\\', '/')] === undefined);
    expect(library).toHaveLength(files.length);
    for (const { id, contents } of library) {
      if (typeof contents !== 'object' || contents === null) throw new Error(`${id} holds nothing`);
      expect(
        entries.filter((entry) => entry.id.startsWith(`${id}.`) || entry.id === id),
        id,
      ).not.toEqual([]);
    }
  });

  it('has ids that fit on a button, each once', () => {
    const ids = entries.map(({ id }) => id);
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
    for (const id of ids) expect(id).toMatch(/^[a-z0-9.-]{1,40}$/);
  });

  it('names commands that are there', () => {
    const names = commands.map(({ name }) => name);
    for (const { id, commands: used } of entries) for (const name of used) expect(names, id).toContain(name);
  });

  it('says where everything comes from, but for questions, which are our own, and the publications themselves', () => {
    const sourceless = entries.filter(({ citations }) => citations.length === 0).map(({ kind }) => kind);
    expect([...new Set(sourceless)].toSorted()).toEqual(['check', 'question', 'source']);
  });

  it('shows every figure of every entry in both systems, without a slip', () => {
    for (const { id, figures } of entries) {
      for (const row of figures) {
        for (const units of ['inch-pound', 'metric'] as const) {
          expect(shownFigure(row, units), `${id} ${row.what}`).toMatch(/\S/);
          expect(shownFigure(row, units), `${id} ${row.what}`).not.toMatch(/undefined|NaN|Infinity|\[object|no figure/);
        }
      }
    }
  });

  it('shows figures as printed, in the units of the crew first', () => {
    const shown = (id: string, units: 'inch-pound' | 'metric') =>
      entryOf(id)?.figures.map((row) => `${row.what}: ${shownFigure(row, units)}`);
    // IRC 2015, Table M1507.4: bathrooms 50 cfm intermittent or 20 cfm continuous.
    expect(shown('need.irc-2015', 'inch-pound')?.slice(0, 2)).toEqual([
      'Bathroom, intermittent, airflow: 50 cfm (23.6 L/s)',
      'Bathroom, continuous, airflow: 20 cfm (9.4 L/s)',
    ]);
    expect(shown('need.irc-2015', 'metric')?.[0]).toBe('Bathroom, intermittent, airflow: 23.6 L/s (50 cfm)');
    // NEC Table 314.16(B): 2.00 cubic inches for each 14 AWG conductor.
    expect(shown('wire.awg-14', 'inch-pound')?.[0]).toBe('Free space: 2 cu in (32.8 cm³)');
    // IRC 2018 to 2024, Table M1504.2: 4 in flex, 56 ft at 50 cfm, 4 ft at 80 cfm, not allowed above.
    expect(shown('length.irc', 'inch-pound')?.find((row) => row.startsWith('Flex duct, 4 in'))).toMatch(
      /50 cfm: 56 ft; 80 cfm: 4 ft; 100 cfm: not allowed/,
    );
    // IRC Table M1505.4.3(1): up to 1500 sq ft with up to 3 bedrooms 45 cfm.
    expect(shown('dwelling.table', 'inch-pound')?.[0]).toMatch(/^Up to 1500 sq ft: .*up to 3 bedrooms: 45 cfm/);
  });
});

describe('looking up', () => {
  it.each(queries)('“%s” finds %s first', (typed, first) => {
    expect(lookedUp(typed, 5).entries[0]?.id).toBe(first);
  });

  it('finds every term by its name and by each of its other names, among the first five', () => {
    const missed = Object.entries(glossary.terms).flatMap(([id, { name, also }]) =>
      [name, ...also].filter((each) => !lookedUp(each, 5).entries.some((entry) => entry.id === `term.${id}`)),
    );
    expect(missed).toEqual([]);
  });

  it('finds a word from its first letters on', () => {
    for (const typed of ['equiv', 'equivalent le', 'back', 'megoh', 'damp']) {
      expect(lookedUp(typed, 20).entries.length, typed).toBeGreaterThan(0);
    }
    expect(lookedUp('equiv', 20).entries[0]?.id).toBe('term.equivalent-length');
  });

  it('says how it read a misspelt word', () => {
    expect(lookedUp('fex duct', 5).readAs).toBe('flex duct');
    expect(lookedUp('flex duct', 5).readAs).toBeUndefined();
  });

  it('finds nothing in nonsense, and never throws', () => {
    const strange = [
      '',
      ' ',
      '"',
      '*',
      'a" OR "b',
      'NEAR(',
      '-',
      '🙂',
      '\0',
      'x'.repeat(10_000),
      'title:',
      '^damper',
      '((',
    ];
    for (const typed of strange) expect(() => lookedUp(typed, 5), typed).not.toThrow();
    expect(lookedUp('xqzzwv', 5).entries).toEqual([]);
    expect(nearestTerms('xqzzwv', 5)).toHaveLength(5);
    expect(nearestTerms('dampnerr', 3)[0]?.id).toBe('term.damper');
  });
});
