import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crew, happened, ladder, lee, photo } from './workbench.ts';

const begun = () => {
  const store = crew();
  const sheet = store.openSheet({ ...ladder, name: 'Elm' }).number;
  return { store, sheet };
};

describe('what happens on a walk-through', () => {
  it('is kept in order, list by list, as it was reported', () => {
    const { store, sheet } = begun();
    store.addWalkEvents(sheet, [
      happened('a', { what: 'start', step: null, value: null }),
      happened('b'),
      happened('c', { list: 'callback' }),
    ]);
    expect(store.walkEvents(sheet, 'swap')).toMatchObject([
      { id: 'a', sheet, step: null, what: 'start', value: null },
      { id: 'b', step: 'E04', what: 'reading', value: { volts: 0 }, who: '<@11>' },
    ]);
    expect(store.walkEvents(sheet).map(({ id }) => id)).toEqual(['a', 'b', 'c']);
    expect(store.walkEvents(sheet, 'nothing')).toEqual([]);
  });

  it('entered late keeps when it was so and when it was entered', () => {
    const { store, sheet } = begun();
    const { event } = store.addWalkEvent(sheet, happened('a', { at: new Date('2026-03-01T15:30:00Z') }));
    expect(event.at).toBe('2026-03-01T15:30:00.000Z');
    expect(event.enteredAt).toMatch(/^2026-03-02T08/);
  });

  it('rests on what the person was at that moment, whatever becomes of them', () => {
    const { store, sheet } = begun();
    store.addWalkEvent(sheet, happened('stranger'));
    store.saveMember(lee, { who: 'office' });
    store.addWalkEvent(sheet, happened('lead'));
    store.removeMember('<@11>', { who: 'office' });
    store.addWalkEvent(sheet, happened('left'));
    expect(store.walkEvents(sheet).map(({ standing }) => [standing.kinds, standing.qualifications])).toEqual([
      [[], []],
      [['lead'], [{ kind: 'licensed-electrician', number: 'EL-20419', expires: '2026-06-30', lapsed: false }]],
      [[], []],
    ]);
  });

  it('reported twice happens once, and the first report stands', () => {
    const { store, sheet } = begun();
    expect(store.addWalkEvent(sheet, happened('a')).fresh).toBe(true);
    const again = store.addWalkEvent(sheet, happened('a', { value: { volts: 120 }, who: '<@66>' }));
    expect(again).toMatchObject({ fresh: false, event: { value: { volts: 0 }, who: '<@11>' } });
    expect(store.walkEvents(sheet)).toHaveLength(1);
  });

  it('is acknowledged again after the job was closed, and nothing new is taken', () => {
    const { store, sheet } = begun();
    store.addWalkEvent(sheet, happened('a'));
    store.closeSheet(sheet, { who: 'lead' });
    expect(store.addWalkEvent(sheet, happened('a')).fresh).toBe(false);
    expect(() => store.addWalkEvents(sheet, [happened('a'), happened('b')])).toThrow('Job 1 is closed');
    expect(store.walkEvents(sheet)).toHaveLength(1);
    expect(() => store.addWalkEvent(99, happened('c'))).toThrow('There is no job 99 here.');
  });

  it('is kept together or not at all', () => {
    const { store, sheet } = begun();
    const work = () => store.addWalkEvents(sheet, [happened('a'), happened('b', { value: Number.NaN })]);
    expect(work).toThrow(TypeError);
    expect(store.walkEvents(sheet)).toEqual([]);
  });

  it('comes out the same however often and in whatever bundles it is reported', () => {
    const bundle = fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { maxLength: 4 });
    const law = fc.property(fc.array(bundle, { maxLength: 8 }), (bundles) => {
      const { store, sheet } = begun();
      const fresh = bundles.flatMap((ids) =>
        store.addWalkEvents(
          sheet,
          ids.map((id) => happened(id)),
        ),
      );
      const once = [...new Set(bundles.flat())];
      expect(store.walkEvents(sheet).map(({ id }) => id)).toEqual(once);
      expect(fresh.filter((each) => each.fresh).map(({ event }) => event.id)).toEqual(once);
    });
    fc.assert(law, { seed: 1, numRuns: 40 });
  });

  it('is part of the record of the job, and is erased with it', () => {
    const { store, sheet } = begun();
    store.addWalkEvent(sheet, happened('a'));
    store.addPhoto(sheet, photo);
    const record = store.sheetAsJson(sheet);
    expect(record.walkEvents).toEqual(store.walkEvents(sheet));
    expect(record.photos).toMatchObject([{ checksum: 'f00dfeed', message: 'thread-1/900', size: 81_234 }]);
    expect(JSON.parse(JSON.stringify(record))).toEqual(record);
    store.eraseSheet(sheet);
    expect([store.walkEvents(sheet), store.photos(sheet)]).toEqual([[], []]);
  });
});

describe('a photo', () => {
  it('is kept once for each step it hangs on', () => {
    const { store, sheet } = begun();
    const hung = [photo, { ...photo, step: 'S05' }, { ...photo, list: 'duct-only' }, { ...photo, step: null }];
    const first = hung.map((each) => store.addPhoto(sheet, each));
    expect(hung.map((each) => store.addPhoto(sheet, each))).toEqual(first);
    expect(store.photos(sheet)).toEqual(first);
  });

  it('is kept once, by where it lies and what it is', () => {
    const { store, sheet } = begun();
    const first = store.addPhoto(sheet, photo);
    expect(store.addPhoto(sheet, { ...photo, who: 'somebody else' })).toEqual(first);
    store.addPhoto(sheet, { ...photo, checksum: 'cafe' });
    expect(store.photos(sheet).map(({ checksum }) => checksum)).toEqual(['f00dfeed', 'cafe']);
  });

  it('is not taken for a job that is closed or not there', () => {
    const { store, sheet } = begun();
    store.closeSheet(sheet, { who: 'lead' });
    expect(() => store.addPhoto(sheet, photo)).toThrow('Job 1 is closed');
    expect(() => store.addPhoto(7, photo)).toThrow('There is no job 7 here.');
  });
});
