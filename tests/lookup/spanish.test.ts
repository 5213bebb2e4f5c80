import { describe, expect, it } from 'vitest';
import { glossary } from '#knowledge/glossary.ts';
import { glossaryInSpanish, lookedUpInSpanish } from '#knowledge/glossary-spanish.ts';
import { allEntries } from '#lookup/entries.ts';
import { entryOf, lookedUp } from '#lookup/lookup.ts';
import { spanishQueries } from './spanish-queries.ts';

const firstOf = (typed: string) => lookedUp(typed, 5, 'spanish').entries[0]?.id;

describe('whoever looks up in Spanish', () => {
  it.each(spanishQueries)('finds by “%s” %s first', (typed, first) => {
    expect(firstOf(typed)).toBe(first);
  });

  it('finds every term by its Spanish name, with its accents and without', () => {
    for (const [id, { name }] of Object.entries(glossaryInSpanish)) {
      const bare = name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
      expect([name, bare].map(firstOf), name).toEqual([`term.${id}`, `term.${id}`]);
    }
  });

  it('is told terms, causes, checks, dangers and steps in Spanish', () => {
    const without = allEntries().filter(
      ({ kind, spanish }) => ['term', 'cause', 'danger', 'step'].includes(kind) && spanish?.says === undefined,
    );
    expect(without.map(({ id }) => id)).toEqual([]);
    expect(entryOf('term.asbestos', 'spanish')).toMatchObject({
      title: 'Asbesto',
      says: glossaryInSpanish['asbestos']?.says,
    });
    // A caution of the English is never told without its Spanish.
    for (const { id, caution, spanish } of allEntries()) {
      if (caution !== undefined && spanish?.says !== undefined) expect(spanish.caution, id).toBeDefined();
    }
  });

  it('finds nothing under an id that is none', () => {
    const ids = new Set(allEntries().map(({ id }) => id));
    expect(Object.keys(lookedUpInSpanish).filter((id) => !ids.has(id))).toEqual([]);
  });
});

describe('whoever looks up in English', () => {
  it('finds an entry by its Spanish name too, told in English', () => {
    expect(lookedUp('disyuntor', 5).entries[0]).toMatchObject({ id: 'term.breaker', title: 'Breaker' });
    expect(lookedUp('codos', 5).entries[0]).toMatchObject({ id: 'term.elbow', says: glossary.terms.elbow.says });
  });

  it('is not led from a capacitor to the room in a box', () => {
    expect(lookedUp('capacitor', 5).entries[0]?.id).toBe('term.capacitor');
  });
});
