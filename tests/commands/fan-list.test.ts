import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import fan from '#commands/fan.ts';
import { readFanName, readLabel } from '#commands/workings/shelf.ts';
import { csvRows, csvText } from '#commands/workings/shelf-csv.ts';
import { csvOfFans, fansFromCsv } from '#commands/workings/shelf-list.ts';
import { storeAt } from '../store/workbench.ts';
import { done, wordsOfReply } from './at-a-desk.ts';

const at = (store = storeAt().scoped('crew')) => {
  const act = (name: string, options: Readonly<Record<string, string>> = {}) => done(fan, name, options, { store });
  const words = (name: string, options: Readonly<Record<string, string>> = {}) => wordsOfReply(act(name, options));
  return { store, act, words };
};

describe('a list of fans', () => {
  const text = (max: number) =>
    fc.string({ unit: fc.constantFrom(...'aZ9é½"\',;=+-@|\t\n\r ', '\uff1d', '👍'), maxLength: max });

  it('as CSV gives back every cell, and none that a spreadsheet would run', () => {
    const law = fc.property(
      fc.array(fc.array(text(12), { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 }),
      (rows) => {
        const trimmed = rows.map((row) => row.map((cell) => cell.trim()));
        const written = csvText(trimmed);
        expect(csvRows(written)).toEqual({ value: trimmed });
        for (const text of trimmed.flat().filter(Boolean))
          expect(csvText([[text]])).not.toMatch(/^\ufeff"?[=+\-@\t\r\uff1d]/);
      },
    );
    fc.assert(law, { seed: 1, numRuns: 200 });
  });

  it('goes out and comes back as the same shelf', () => {
    const { act, store, words } = at();
    act('demo');
    act('add', { name: '=2+2, "quoted"', 'fan-curve': 'low: 50@0.1; high: 84@0.1 66@0.25', collar: "4''" });
    store.saveSetting('units', { value: 'metric', who: 'ann' });
    act('add', { name: 'Metrisch ½', 'fan-curve': '52@25 40@62', collar: '100', 'housing-size': '235 x 230 x 146' });
    const before = store.shelfFans().map(({ at: _, ...each }) => each);
    const [file] = act('export').files ?? [];
    expect(file?.name).toBe('fans.csv');
    expect(file?.text).toContain(`"'=2+2, ""quoted"""`);
    const other = at(storeAt().scoped('another'));
    expect(other.words('import', { file: file?.text ?? '' })).toContain('6 fans are new on the shelf.');
    expect(other.store.shelfFans().map(({ at: _, ...each }) => each)).toEqual(before);
    expect(words('import', { file: file?.text ?? '' })).toContain('0 fans are new on the shelf, 6 were replaced.');
  });

  it('is a round trip for any shelf', () => {
    const name = text(20).filter((each) => 'value' in readFanName(each));
    const label = fc.record(
      {
        'fan-curve': fc.constantFrom('84@0.1 66@0.25', '110', 'constant 80 to 0.3', 'low: 50@0.1; high: 84@0.1'),
        collar: fc.constantFrom('4 in', '100 mm', '4"'),
        'fan-settings': fc.constantFrom('50, 80, 110', 'none'),
        'rated-sones': fc.constantFrom('1.5', 'about 2 sones'),
      },
      { requiredKeys: ['fan-curve'] },
    );
    const shelf = fc.array(fc.record({ name, label, demo: fc.boolean(), metric: fc.boolean() }), { maxLength: 6 });
    const law = fc.property(shelf, (entries) => {
      const store = storeAt().scoped('crew');
      for (const { name: typed, label: said, demo, metric } of entries) {
        const read = readFanName(typed);
        if (!('value' in read)) continue;
        const units = metric ? 'metric' : 'inch-pound';
        store.saveShelfFans([{ name: read.value, label: readLabel(said, units).label, units, demo }], { who: 'ann' });
      }
      const kept = store
        .shelfFans()
        .map(({ name: known, label: says, units, demo }) => ({ name: known, label: says, units, demo }));
      const list = fansFromCsv(csvOfFans(store.shelfFans()), 'inch-pound');
      expect('value' in list ? list.value.troubles : list).toEqual([]);
      expect('value' in list ? list.value.fans : []).toEqual(
        kept.filter(({ label: says }) => says['fan-curve'] !== undefined),
      );
    });
    fc.assert(law, { seed: 1, numRuns: 40 });
  });

  it('is read row by row: good rows are kept, and of each bad one it is said why', () => {
    const { words, store } = at();
    const said = words('import', {
      file: [
        'Name;Fan Curve;collar;colour;rated_sones;units',
        'Elm;84@0.1 66@0.25;4 in;white;1,5;',
        'Oak;66@0.1 84@0.25;4 in;;;',
        ';84;;;;',
        '',
        'Ash;;;;;',
        'elm;110;;;;',
        'Fir;52;100;;;metric',
        'Yew;52;;;;furlongs',
      ].join('\r\n'),
    });
    expect(store.shelfFans().map(({ name, units, label }) => [name, units, label['rated-sones']])).toEqual([
      ['Elm', 'inch-pound', '1,5'],
      ['Fir', 'metric', undefined],
    ]);
    for (const says of [
      '2 fans are new on the shelf, 5 rows were left out.',
      'The column colour is left out',
      'fan-curve: The airflow rises with pressure',
      'Give the fan a name',
      'fan-curve: give points off the label',
      'elm stands in row 2 already',
      'units: say inch-pound or metric.',
    ]) {
      expect(said).toContain(says);
    }
  });

  it('may be given as one line of chat', () => {
    const { act, store } = at();
    act('import', { csv: 'name,fan-curve\\nElm,84@0.1 66@0.25\\nOak,110' });
    expect(store.shelfFans().map(({ name }) => name)).toEqual(['Elm', 'Oak']);
  });

  it.each([
    ['nothing', ' ', 'Give the list as CSV'],
    ['no columns', 'Elm,84', 'name and fan-curve must be there'],
    ['a column twice', 'name,name,fan-curve\nElm,Oak,84', 'names name twice'],
    ['an open quote', 'name,fan-curve\n"Elm,84', 'In row 2 a quote is opened and never closed'],
    ['a huge file', `name,fan-curve\n${'x'.repeat(300_000)}`, 'too long'],
    ['a huge cell', `name,fan-curve\n${'x'.repeat(2000)},84`, 'a cell is too long'],
    ['many rows', `name,fan-curve\n${'Elm,84\n'.repeat(600)}`, 'too many rows'],
    ['many cells', `name,fan-curve\n${','.repeat(60)}`, 'too many cells'],
  ])('that is no list is refused in a sentence: %s', (_, file, says) => {
    const { words, store } = at();
    expect(words('import', { file })).toContain(says);
    expect(store.shelfFans()).toEqual([]);
  });

  it('of anything at all never throws', () => {
    const anything = fc.oneof(fc.string({ maxLength: 80 }), text(80), fc.string({ unit: 'binary', maxLength: 40 }));
    const { words } = at();
    const law = fc.property(anything, (body) => {
      expect(words('import', { file: `name,fan-curve,collar\n${body}` })).toMatch(/\.$/m);
    });
    fc.assert(law, { seed: 1, numRuns: 50 });
  });
});
