import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crew, shelfFan } from './workbench.ts';

const by = { who: 'lead' };

describe('the shelf of fans', () => {
  it('gives back what the label said, as it was typed', () => {
    const store = crew();
    const fan = shelfFan('Elm bath', { label: { 'fan-curve': '52@25', collar: '100 mm' }, units: 'metric' });
    expect(store.saveShelfFans([fan], by)).toBe(true);
    expect(store.shelfFan('elm BATH')).toEqual({ ...fan, who: 'lead', at: '2026-03-02T08:00:01.000Z' });
    expect(store.shelfFan('elm')).toBeUndefined();
  });

  it('lists by name, finds by part of it, and takes a % as a %', () => {
    const store = crew();
    store.saveShelfFans([shelfFan('Ünder 80'), shelfFan('Attic 110'), shelfFan('50 % humid')], by);
    expect(store.shelfFans().map(({ name }) => name)).toEqual(['50 % humid', 'Attic 110', 'Ünder 80']);
    expect(store.shelfFans({ search: 'UNDER' }).map(({ name }) => name)).toEqual(['Ünder 80']);
    expect(store.shelfFans({ search: '%' }).map(({ name }) => name)).toEqual(['50 % humid']);
    expect(store.shelfFans({ limit: 1 })).toHaveLength(1);
  });

  it('has one fan of a name: the one entered last', () => {
    const store = crew();
    store.saveShelfFans([shelfFan('Elm'), shelfFan('  ELM\u0000 ', { label: { 'fan-curve': '110' } })], by);
    expect(store.shelfFans()).toMatchObject([{ name: 'ELM', label: { 'fan-curve': '110' } }]);
  });

  it('lets go of a fan, and takes it back when it is entered again', () => {
    const store = crew();
    store.saveShelfFans([shelfFan('Elm')], by);
    expect(store.removeShelfFan('elm', by)).toBe(true);
    expect(store.removeShelfFan('elm', by)).toBe(false);
    expect([store.shelfFan('Elm'), store.shelfFans()]).toEqual([undefined, []]);
    store.saveShelfFans([shelfFan('Elm')], by);
    expect(store.shelfFans()).toHaveLength(1);
  });

  it('is what a heap of cards would be, after any entering and removing', () => {
    const move = fc.record({
      name: fc.constantFrom('Elm', 'elm', 'Oak', '__proto__', '%', 'constructor'),
      enter: fc.boolean(),
      curve: fc.constantFrom('84@0.1', '110'),
    });
    const law = fc.property(fc.array(move, { maxLength: 20 }), (moves) => {
      const store = crew();
      const heap = new Map<string, string>();
      for (const { name, enter, curve } of moves) {
        if (enter) {
          store.saveShelfFans([shelfFan(name, { label: { 'fan-curve': curve } })], by);
          heap.set(name.toLowerCase(), curve);
        } else {
          expect(store.removeShelfFan(name, by)).toBe(heap.delete(name.toLowerCase()));
        }
      }
      const kept = store.shelfFans().map((fan) => [fan.name.toLowerCase(), fan.label['fan-curve']] as const);
      expect(new Map(kept)).toEqual(heap);
      expect(kept).toHaveLength(heap.size);
    });
    fc.assert(law, { seed: 1, numRuns: 30 });
  });
});
