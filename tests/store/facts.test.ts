import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openStore } from '#store/store.ts';
import { answer, clock, crew, ladder } from './workbench.ts';

const withSheet = () => {
  const store = crew();
  return { store, sheet: store.currentSheet(ladder).number };
};

const counting = (store: ReturnType<typeof crew>, sheet: number) =>
  Object.fromEntries([...store.newestFacts(sheet)].map(([fact, { value }]) => [fact, value]));

describe('facts on a job sheet', () => {
  it('come back as they were said', () => {
    const { store, sheet } = withSheet();
    const said = answer('duct-run', [{ kind: 'flex', length: 4.27, slack: true, cap: null }], {
      typed: `14 ft 4" flex – “déjà vu” 😀`,
      units: 'metric',
      how: 'estimated',
      who: 'lead',
    });
    const kept = store.addFact(sheet, said);
    expect(kept).toEqual({ ...said, id: kept.id, at: kept.enteredAt, enteredAt: '2026-03-02T08:00:04.000Z' });
    expect(store.newestFacts(sheet)).toEqual(new Map([['duct-run', kept]]));
  });

  it('said late keep both when it was so and when it was entered', () => {
    const { store, sheet } = withSheet();
    const seen = new Date('2026-03-01T15:30:00.000Z');
    const { at, enteredAt } = store.addFact(sheet, answer('bag-seconds', 9, { at: seen }));
    expect({ at, enteredAt }).toEqual({ at: '2026-03-01T15:30:00.000Z', enteredAt: '2026-03-02T08:00:04.000Z' });
  });

  it('count by what was entered last, and the earlier ones stay in the history', () => {
    const { store, sheet } = withSheet();
    store.addFacts(sheet, [answer('collar', '4 in'), answer('elbows', 2), answer('collar', '6 in')]);
    expect(counting(store, sheet)).toEqual({ collar: '6 in', elbows: 2 });
    expect(store.factHistory(sheet).map(({ value }) => value)).toEqual(['4 in', 2, '6 in']);
  });

  it('entered together are kept together or not at all', () => {
    const { store, sheet } = withSheet();
    expect(() => store.addFacts(sheet, [answer('elbows', 2), answer('collar', Number.NaN)])).toThrow(TypeError);
    expect(store.factHistory(sheet)).toEqual([]);
    expect(store.addFacts(sheet, [])).toEqual([]);
  });

  it.each([
    ['not a number', Number.NaN],
    ['an infinity', { length: Number.POSITIVE_INFINITY }],
    ['a date', new Date(0)],
    ['a map', [new Map()]],
    ['nothing', undefined],
    ['a big integer', 1n],
    ['a function', () => 0],
  ])('that would come back changed are refused: %s', (_, value) => {
    const { store, sheet } = withSheet();
    expect(() => store.addFact(sheet, answer('collar', value))).toThrow(TypeError);
  });

  it('leave out what is undefined inside a value, as JSON does', () => {
    const { store, sheet } = withSheet();
    expect(store.addFact(sheet, answer('collar', { size: 4, note: undefined })).value).toEqual({ size: 4 });
  });

  it('have values of any JSON and texts of any kind', () => {
    const store = crew();
    const awkward = ['a', '0', ' ', '"', "'", '\\', '%', ';', '½', 'é', '″', '😀', '\n', '\u0000'];
    const text = fc.string({ unit: fc.constantFrom(...awkward) });
    const law = fc.property(fc.jsonValue({ maxDepth: 2 }), text, (value, typed) => {
      const sent = JSON.parse(JSON.stringify(value));
      const sheet = store.freshSheet(ladder).number;
      const said = store.addFact(sheet, answer('anything', sent, { typed }));
      expect([said.value, said.typed]).toEqual([sent, typed]);
      expect(store.newestFacts(sheet).get('anything')).toEqual(said);
    });
    fc.assert(law, { seed: 1, numRuns: 50 });
  });
});

describe('taking back', () => {
  it('lets the one before count again, says what was taken back, and goes further back each time', () => {
    const { store, sheet } = withSheet();
    store.addFacts(sheet, [answer('collar', '4 in'), answer('elbows', 2), answer('collar', '6 in')]);
    expect(store.retractNewest(sheet, { who: 'lead' })?.value).toBe('6 in');
    expect(counting(store, sheet)).toEqual({ collar: '4 in', elbows: 2 });
    expect(store.retractNewest(sheet, { who: 'lead' })?.fact).toBe('elbows');
    expect(store.retractNewest(sheet, { who: 'lead' })?.value).toBe('4 in');
    expect(store.retractNewest(sheet, { who: 'lead' })).toBeNull();
    expect(counting(store, sheet)).toEqual({});
  });

  it('can be of one fact only', () => {
    const { store, sheet } = withSheet();
    store.addFacts(sheet, [answer('collar', '4 in'), answer('collar', '6 in'), answer('elbows', 2)]);
    expect(store.retractNewest(sheet, { who: 'lead', fact: 'collar' })?.value).toBe('6 in');
    expect(counting(store, sheet)).toEqual({ collar: '4 in', elbows: 2 });
    expect(store.retractNewest(sheet, { who: 'lead', fact: 'ceiling-height' })).toBeNull();
  });

  it('is itself kept, with who and when, and takes nothing off the history', () => {
    const { store, sheet } = withSheet();
    store.addFact(sheet, answer('collar', '4 in'));
    store.retractNewest(sheet, { who: 'lead' });
    store.addFact(sheet, answer('collar', '5 in'));
    expect(store.factHistory(sheet).map(({ value, retracted }) => [value, retracted?.who])).toEqual([
      ['4 in', 'lead'],
      ['5 in', undefined],
    ]);
    expect(store.factHistory(sheet)[0]?.retracted?.at).toMatch(/^2026-03-02T08:00:\d\d/);
  });

  it('touches no other sheet', () => {
    const { store, sheet } = withSheet();
    store.addFact(sheet, answer('collar', '4 in'));
    const other = store.freshSheet(ladder).number;
    expect(store.retractNewest(other, { who: 'lead' })).toBeNull();
    expect(store.newestFacts(sheet).size).toBe(1);
  });
});

describe('laws of taking back', () => {
  // One store for all runs; every run has a sheet of its own.
  const kept = openStore(':memory:', { now: clock() }).scoped('crew');
  const cleanSheet = () => kept.freshSheet(ladder).number;
  const fact = fc.record({ fact: fc.constantFrom('collar', 'elbows', 'fan'), value: fc.integer() });
  const several = fc.array(fact, { maxLength: 8 });

  it('as many taken back as were entered leave an empty sheet, last in first out', () => {
    const law = fc.property(several, (entered) => {
      const sheet = cleanSheet();
      for (const { fact: id, value } of entered) kept.addFact(sheet, answer(id, value));
      const back = entered.map(() => kept.retractNewest(sheet, { who: 'lead' })?.value);
      expect(back).toEqual(entered.map(({ value }) => value).toReversed());
      expect(kept.newestFacts(sheet).size).toBe(0);
      expect(kept.retractNewest(sheet, { who: 'lead' })).toBeNull();
      expect(kept.factHistory(sheet)).toHaveLength(entered.length);
    });
    fc.assert(law, { seed: 1, numRuns: 50 });
  });

  it('any mixture of entering and taking back leaves what a pile of cards would show', () => {
    const move = fc.oneof(
      fact.map((entered) => ({ entered })),
      fc.constantFrom('any', 'collar', 'elbows', 'fan').map((taken) => ({ taken })),
    );
    const law = fc.property(fc.array(move, { maxLength: 25 }), (moves) => {
      const sheet = cleanSheet();
      const pile: { fact: string; value: number }[] = [];
      for (const made of moves) {
        if ('entered' in made) {
          kept.addFact(sheet, answer(made.entered.fact, made.entered.value));
          pile.push(made.entered);
        } else {
          const from = pile.findLastIndex((card) => made.taken === 'any' || card.fact === made.taken);
          const [card] = from < 0 ? [] : pile.splice(from, 1);
          const wanted = made.taken === 'any' ? {} : { fact: made.taken };
          expect(kept.retractNewest(sheet, { who: 'lead', ...wanted })?.value).toBe(card?.value);
        }
        expect(counting(kept, sheet)).toEqual(Object.fromEntries(pile.map((card) => [card.fact, card.value])));
      }
    });
    fc.assert(law, { seed: 1, numRuns: 50 });
  });
});

describe('the record of a job', () => {
  it('is plain JSON with everything on the sheet', () => {
    const store = crew();
    const sheet = store.openSheet({ ...ladder, name: 'Elm' }).number;
    store.addFacts(sheet, [answer('collar', '4 in'), answer('elbows', 2)]);
    store.retractNewest(sheet, { who: 'lead' });
    const { id } = store.startTalk({ ...ladder, sheet, command: 'duct', state: '{"draft":"flex"}' });
    const record = store.sheetAsJson(sheet);
    expect(JSON.parse(JSON.stringify(record))).toEqual(record);
    expect(record.sheet.name).toBe('Elm');
    expect(record.facts.map(({ fact, retracted }) => [fact, retracted?.who])).toEqual([
      ['collar', undefined],
      ['elbows', 'lead'],
    ]);
    expect(record.talks).toMatchObject([{ command: 'duct', state: '{"draft":"flex"}' }]);
    expect(JSON.stringify(record)).not.toContain(id);
  });
});
