import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recallFrom } from '#chat/answers.ts';
import type { AnswerCommand } from '#chat/command.ts';
import { begin } from '#chat/conversation.ts';
import { oneShot } from '#chat/one-shot.ts';
import duct from '#commands/duct.ts';
import fan from '#commands/fan.ts';
import job from '#commands/job.ts';
import { fanCurve } from '#commands/questions/fan.ts';
import { labelQuestions } from '#commands/questions/shelf.ts';
import { type NewShelfFan, readFanName, readLabel } from '#commands/workings/shelf.ts';
import { csvRows, csvText } from '#commands/workings/shelf-csv.ts';
import { csvOfFans, fansFromCsv } from '#commands/workings/shelf-list.ts';
import { demoFans } from '#knowledge/demo-fans.ts';
import { storeAt } from '../store/workbench.ts';
import { dialogue, done, suggested, wordsOfReply } from './at-a-desk.ts';

const run = '14 ft 4 in flex compressed 4 %; 2 x elbow 90; wall cap';
const ductCommand = duct as AnswerCommand<unknown>;
const speaker = { channel: 'thread-1', who: 'ann' };

const at = (store = storeAt().scoped('crew')) => {
  const act = (name: string, options: Readonly<Record<string, string>> = {}) => done(fan, name, options, { store });
  const words = (name: string, options: Readonly<Record<string, string>> = {}) => wordsOfReply(act(name, options));
  /** Puts answers on the sheet, as /duct does. */
  const note = (given: Readonly<Record<string, string>>) => begin(store, ductCommand, given, speaker);
  const facts = () =>
    Object.fromEntries([...store.newestFacts(1)].map(([id, { typed, how, units }]) => [id, [typed, how, units]]));
  return { store, act, words, note, facts };
};

describe('the shelf', () => {
  it('takes a fan by its label and shows it in the crew’s units', () => {
    const { act, words, store } = at();
    act('add', { name: 'Hall bath', 'fan-curve': '84@0.1 66@0.25', collar: '4 in', 'fan-watts': '27' });
    expect(words('show', { name: 'hall BATH' })).toContain('4 in (102 mm)');
    store.saveSetting('units', { value: 'metric', who: 'ann' });
    // 84 and 66 cfm at 0.47194745 L/s to the cfm, 0.1 and 0.25 in. w.g. at 249.089 Pa (NIST SP 811, appendix B.8).
    expect(words('show', { name: 'hall' })).toContain('39.6@24.909 31.1@62.272');
    expect(words('list')).toContain('102 mm (4 in)');
  });

  it('says everything that is wrong with a label and keeps nothing of it', () => {
    const { words, store } = at();
    const bad = words('add', { name: ' ', 'fan-curve': '66@0.1 84@0.25', collar: 'wide', 'fan-watts': '1e9' });
    for (const says of [
      'Give the fan a name',
      'fan-curve: The airflow rises',
      'collar: I cannot read',
      'fan-watts: ',
    ]) {
      expect(bad).toContain(says);
    }
    expect(words('add', { name: 'Elm', 'fan-curve': 'dunno' })).toContain('fan-curve: give points off the label');
    expect(store.shelfFans()).toEqual([]);
  });

  it('has one fan of a name, and lets go of it only by its whole name', () => {
    const { act, words, store } = at();
    act('add', { name: 'Elm', 'fan-curve': '84' });
    expect(words('add', { name: 'ELM', 'fan-curve': '110' })).toContain('in place of the one of that name');
    expect(words('remove', { name: 'El' })).toContain('No fan on the shelf is called just that');
    expect(store.shelfFans().map(({ label }) => label['fan-curve'])).toEqual(['110']);
    expect(words('remove', { name: 'elm' })).toContain('is off the shelf');
    expect(words('list')).toContain('The shelf is empty');
  });

  it('asks which, where a part of a name fits several', () => {
    const { act, words } = at();
    for (const name of ['Hall 80', 'Hall 110']) act('add', { name, 'fan-curve': '84' });
    expect(words('show', { name: 'hall' })).toContain('Which: Hall 110, Hall 80?');
    expect(words('show', { name: 'attic' })).toContain('There is no fan “attic” on the shelf');
  });

  it('holds five hundred and says so', () => {
    const { store, words } = at();
    const fans = Array.from({ length: 500 }, (_, count): NewShelfFan => {
      return { name: `Fan ${count}`, label: { 'fan-curve': '84' }, units: 'inch-pound', demo: false };
    });
    store.saveShelfFans(fans, { who: 'ann' });
    expect(words('add', { name: 'One more', 'fan-curve': '84' })).toContain('holds 500 fans at most');
    expect(words('add', { name: 'Fan 7', 'fan-curve': '110' })).toContain('in place of the one');
    expect(words('list')).toContain('460 more are not shown');
  });
});

describe('names', () => {
  const hostile: readonly (readonly [typed: string, kept: string | undefined])[] = [
    ['**bold** [x](https://example.org)', '**bold** [x](https://example.org)'],
    ['\u001b[31mred\u001b[0m', '[31mred [0m'],
    ['@everyone', '@everyone'],
    ['x'.repeat(500), undefined],
    ['Nul\u0000l', 'Nul l'],
    ['__proto__', '__proto__'],
    ['constructor', 'constructor'],
    ['\u202egnorw\u200b', 'gnorw'],
    [' \n\t ', undefined],
    ['👍', undefined],
    ["'); DROP TABLE shelf_fans;--", "'); DROP TABLE shelf_fans;--"],
  ];

  it.each(hostile)('%j are kept on one line with nothing hidden, or refused', (typed, kept) => {
    const reading = readFanName(typed);
    expect('value' in reading ? reading.value : undefined).toBe(kept);
    if (kept === undefined) return;
    const { act, words, store } = at();
    act('add', { name: typed, 'fan-curve': '84@0.1', collar: '4 in' });
    expect(store.shelfFans().map(({ name }) => name)).toEqual([kept]);
    for (const name of ['show', 'use', 'remove']) expect(words(name, { name: kept }), name).toContain(kept);
    expect(store.shelfFans()).toEqual([]);
  });

  it('can be no label: what is not asked for is not kept', () => {
    const given = JSON.parse('{"fan-curve":"84","__proto__":{"collar":"4 in"},"note":"x"}') as Record<string, string>;
    expect(readLabel(given, 'inch-pound')).toEqual({ label: { 'fan-curve': '84' }, problems: [] });
  });
});

describe('a fan put on a job', () => {
  it('answers what its label says, as read off a label, and /duct needs to ask no more of it', () => {
    const { act, note, facts, store } = at();
    note({ 'duct-run': run, 'airflow-needed': '50 cfm' });
    act('add', { name: 'Elm', 'fan-curve': '84@0.1 66@0.25', collar: '4 in', 'rated-sones': 'about 1.5' });
    act('use', { name: 'Elm' });
    expect(facts()).toMatchObject({
      'fan-curve': ['84@0.1 66@0.25', 'label', 'inch-pound'],
      collar: ['4 in', 'label', 'inch-pound'],
      'rated-sones': ['about 1.5', 'estimated', 'inch-pound'],
    });
    const recall = recallFrom(store, 1);
    const typed = [
      'fan-curve=84@0.1 66@0.25',
      'collar=4 in',
      'rated-sones=1.5',
      `duct-run=${run}`,
      'airflow-needed=50',
    ];
    const answered = oneShot(ductCommand, [], { units: 'inch-pound', recall });
    expect(answered.reply?.findings).toEqual(oneShot(ductCommand, typed, { units: 'inch-pound' }).reply?.findings);
  });

  it('leaves nothing of an earlier fan beside it', () => {
    const { act, note, facts, words } = at();
    note({
      'fan-curve': '112@0.1',
      collar: '6 in',
      'fan-settings': '50, 80, 110',
      'fan-setting': '80',
      'rated-sones': '0.7',
      'duct-run': run,
    });
    act('add', { name: 'Elm', 'fan-curve': '84@0.1 66@0.25', collar: '4 in' });
    const said = words('use', { name: 'Elm' });
    expect(said).toContain('Not on this label, so not known now: airflow settings on the selector');
    expect(facts()).toMatchObject({
      'fan-curve': ['84@0.1 66@0.25', 'label', 'inch-pound'],
      'fan-settings': ["don't know", 'unknown', 'inch-pound'],
      'fan-setting': ["don't know", 'unknown', 'inch-pound'],
      'rated-sones': ["don't know", 'unknown', 'inch-pound'],
      'duct-run': [run, 'told', 'inch-pound'],
    });
    expect(facts()['fan-watts']).toBeUndefined();
  });

  it('means the same in a crew that has changed its units', () => {
    const { act, store } = at();
    act('add', { name: 'Elm', 'fan-curve': '84@0.1 66@0.25', collar: '4' });
    const before = fanCurve.read('84@0.1 66@0.25', 'inch-pound');
    store.saveSetting('units', { value: 'metric', who: 'ann' });
    act('use', { name: 'Elm' });
    expect(recallFrom(store, 1)(fanCurve)).toMatchObject(before);
  });

  it('points at an airflow that another fan may have moved', () => {
    const { act, words, store } = at();
    act('add', { name: 'Elm', 'fan-curve': '84' });
    const sheet = store.currentSheet(speaker).number;
    store.addFact(sheet, {
      fact: 'measured-airflow',
      typed: '40 cfm',
      units: 'inch-pound',
      value: 0,
      how: 'measured',
      who: 'ann',
    });
    expect(words('use', { name: 'Elm' })).toContain('Check measured-airflow');
    expect(store.newestFacts(sheet).get('measured-airflow')?.how).toBe('measured');
  });

  it('is refused on a closed job only by opening a clean one', () => {
    const { act, store } = at();
    act('add', { name: 'Elm', 'fan-curve': '84' });
    store.closeSheet(store.currentSheet(speaker).number, { who: 'ann' });
    expect(act('use', { name: 'Elm' }).headline).toContain('is on job 2');
  });
});

describe('comparing', () => {
  const withDemo = () => {
    const desk = at();
    desk.act('demo');
    return desk;
  };
  const deliveredByDuct = (label: Readonly<Record<string, string>>): number => {
    const words = [...Object.entries(label).map(([id, text]) => `${id}=${text}`), `duct-run=${run}`];
    const known = words.filter((word) => duct.takes.some(({ id }) => word.startsWith(`${id}=`)));
    const answer = oneShot(ductCommand, known, { units: 'inch-pound' });
    return answer.reply?.findings.find(({ id }) => id === 'delivered-airflow')?.value?.number ?? Number.NaN;
  };

  it('gives each fan what /duct would say it delivers', () => {
    const { act, note } = withDemo();
    note({ 'duct-run': run });
    const { chart, tables } = act('compare');
    expect(tables?.[0]?.rows).toHaveLength(demoFans.length);
    const moved = chart?.marks.map(({ at: [flow] }) => flow);
    // The chart is in cfm: 1 cfm is 0.000471947443 m3/s (NIST SP 811, appendix B.8).
    const expected = demoFans.map(({ label }) => deliveredByDuct(label) / 0.000471947443).sort((a, b) => b - a);
    expect(moved).toHaveLength(expected.length);
    for (const [index, flow] of expected.entries()) expect(moved?.[index]).toBeCloseTo(flow, 3);
  });

  it('chooses the quietest that is surely enough', () => {
    const { words, note, act } = withDemo();
    note({ 'duct-run': run, 'airflow-needed': '50 cfm' });
    const [best] = act('compare').findings;
    expect(best).toMatchObject({ id: 'best-fan', weight: 'good' });
    expect(best?.says).toContain('Take Demo 110 selector (invented): the quietest that is surely enough');
    expect(words('compare', { first: 'Demo 50' })).toContain('None of these is surely enough');
    expect(words('compare', { first: 'Demo 80', second: 'Demo 50' })).toContain(
      'Only Demo 80 (invented) is surely enough',
    );
  });

  it('says what was taken for granted where no duct is on the sheet', () => {
    const { act } = withDemo();
    expect(act('compare').assumed?.join(' ')).toContain('A common run stands in');
    expect(act('compare').findings[0]?.says).toContain('Say what airflow is needed');
  });

  it('takes up to four, each once, by whole names, parts or a list with commas', () => {
    const { act, words } = withDemo();
    act('add', { name: 'Long, with a comma', 'fan-curve': '84' });
    const compared = (given: Readonly<Record<string, string>>) =>
      act('compare', given).tables?.[0]?.rows.map(([name]) => name);
    expect(compared({ first: 'demo 50, selector; Demo 50' })).toHaveLength(2);
    expect(compared({ first: 'Long, with a comma', third: 'demo 80' })).toHaveLength(2);
    expect(words('compare')).toContain('Name up to 4 fans');
    expect(words('compare', { first: 'a,b,c,d,e' })).toContain('At most 4 fans');
    expect(words('compare', { first: 'demo' })).toContain('Which:');
    expect(words('compare', { first: ',' })).toContain('Name a fan of the shelf');
    expect(at().words('compare')).toContain('The shelf is empty');
  });

  it('draws one line of the duct for each width of collar, and says it all in words', () => {
    const { act, note } = withDemo();
    note({ 'duct-run': run });
    const chart = act('compare').chart;
    expect(chart?.lines.filter(({ role }) => role === 'system').map(({ label }) => label)).toEqual([
      'duct from a 4 in collar',
      'duct from a 6 in collar',
    ]);
    expect(act('compare', { first: 'demo 50', second: 'demo 80' }).chart?.lines.at(-1)?.label).toBe('this duct');
    for (const { name } of demoFans) expect(chart?.alt).toContain(name);
  });

  it('never says that more need can be met by a fan that was not enough for less', () => {
    const { act, note } = withDemo();
    note({ 'duct-run': run });
    const sureOf = (need: number): number => {
      note({ 'airflow-needed': `${need} cfm` });
      return act('compare').tables?.[0]?.rows.filter((row) => row.includes('enough')).length ?? 0;
    };
    const counts = [20, 35, 50, 60, 70, 90].map(sureOf);
    expect(counts).toEqual(counts.toSorted((a, b) => b - a));
    expect([counts[0], counts.at(-1)]).toEqual([demoFans.length, 0]);
  });
});

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

describe('the invented fans', () => {
  it('have labels that read, and are marked wherever they stand', () => {
    const { act, words } = at();
    for (const { label } of demoFans) {
      expect(Object.keys(label).filter((id) => !labelQuestions.some((question) => question.id === id))).toEqual([]);
      expect(readLabel(label, 'inch-pound')).toEqual({ label, problems: [] });
    }
    expect(words('demo')).toContain('Buy nothing by these');
    for (const [name, options] of [
      ['list', {}],
      ['show', { name: 'Demo 80' }],
      ['use', { name: 'Demo 80' }],
      ['compare', { first: 'Demo 80' }],
    ] as const) {
      expect(words(name, options), name).toMatch(/Demo 80 \(invented\)/);
    }
    expect(act('export').files?.[0]?.text).toMatch(/^Demo 80,.*,yes\r$/m);
  });

  it('come and go without touching the crew’s own', () => {
    const { act, words, store } = at();
    act('add', { name: 'demo 80', 'fan-curve': '110' });
    expect(words('demo')).toContain('3 invented fans are new');
    expect(words('demo')).toContain('0 invented fans are new');
    expect(words('demo', { what: 'take' })).toContain('3 invented fans taken off');
    expect(store.shelfFans()).toMatchObject([{ name: 'demo 80', demo: false }]);
  });
});

describe('two crews', () => {
  it('see nothing of each other’s shelves, not even while typing', () => {
    const records = storeAt();
    const [north, south] = [at(records.scoped('north')), at(records.scoped('south'))];
    north.act('add', { name: 'Elm', 'fan-curve': '84' });
    expect(south.words('list')).toContain('The shelf is empty');
    for (const name of ['show', 'use', 'remove']) {
      expect(suggested(fan, name, 'name', '', { store: north.store })).toEqual(['Elm']);
      expect(suggested(fan, name, 'name', '', { store: south.store })).toEqual([]);
      expect(south.words(name, { name: 'Elm' })).not.toContain('Elm is');
    }
    expect(suggested(fan, 'compare', 'first', 'e', { store: south.store })).toEqual([]);
    expect(south.words('compare', { first: 'Elm' })).toContain('There is no fan “Elm”');
    expect(south.words('export')).toContain('The shelf is empty');
    expect(south.store.listSheets({ limit: 5 })).toEqual([]);
    expect(north.store.shelfFan('elm')?.name).toBe('Elm');
  });
});

it('a fan is added, used and asked about in a few lines', async () => {
  const store = storeAt().scoped('terminal');
  const said = await dialogue(
    { store, commands: [duct, fan, job] },
    'fan add Hall bath 80 fan-curve="66@0.1 84@0.25"',
    'fan add Hall bath 80 fan-curve="84@0.1 66@0.25" collar="4 in" rated-sones=1.5',
    'fan use hall',
    'duct',
    'why',
    'back',
    'don’t know',
    'stop',
    'job show',
  );
  expect(said).toMatchInlineSnapshot(`
    "
    you: fan add Hall bath 80 fan-curve="66@0.1 84@0.25"
    bot: Nothing was put on the shelf.

         Caution: fan-curve: The airflow rises with pressure, which no fan does. Check which number is
                  the airflow: airflow@pressure, such as 84@0.1.
    you: fan add Hall bath 80 fan-curve="84@0.1 66@0.25" collar="4 in" rated-sones=1.5
    bot: Hall bath 80 is on the shelf. /fan use puts it on a job.

         What the label of Hall bath 80 says
           what                                             on the label
           Rated points of the fan, or the carton’s number  84@0.1 66@0.25
           Airflow settings on the selector                 nothing
           Diameter of the fan’s outlet collar              4 in (102 mm)
           Sones on the label                               1.5 sones
           Watts the fan draws, without its light           nothing
           Housing of the new fan, length x width x height  nothing
    you: fan use hall
    bot: Hall bath 80 is on job 1, with 3 answers off its label.

         What the label of Hall bath 80 says
           what                                             on the label
           Rated points of the fan, or the carton’s number  84@0.1 66@0.25
           Airflow settings on the selector                 nothing
           Diameter of the fan’s outlet collar              4 in (102 mm)
           Sones on the label                               1.5 sones
           Watts the fan draws, without its light           nothing
           Housing of the new fan, length x width x height  nothing
    you: duct
    bot: What is the duct, from the fan to outdoors? One part at a time, or all of it: 14 ft 4 in flex;
         2 x elbow 90; wall cap.
           1  5 ft 4 in flex
           2  10 ft 4 in flex
           3  5 ft 4 in smooth
           4  10 ft 4 in smooth
    you: why
    bot: Every foot, bend and cap takes pressure. Length as it lies, not as the crow flies: a sagging run
         is longer.
         What is the duct, from the fan to outdoors? One part at a time, or all of it: 14 ft 4 in flex;
         2 x elbow 90; wall cap.
           1  5 ft 4 in flex
           2  10 ft 4 in flex
           3  5 ft 4 in smooth
           4  10 ft 4 in smooth
    you: back
    bot: There is nothing of this talk to take back.
         What is the duct, from the fan to outdoors? One part at a time, or all of it: 14 ft 4 in flex;
         2 x elbow 90; wall cap.
           1  5 ft 4 in flex
           2  10 ft 4 in flex
           3  5 ft 4 in smooth
           4  10 ft 4 in smooth
    you: don’t know
    bot: Duct from fan to outdoors, part by part: taken as 6 to 25 ft 4 in flex; 2 x elbow 90; wall cap.
         A common run stands in: 6 to 25 ft of 4 in flex, two elbows and a wall cap; from common
         practice.
         How much air must it move? Use /size to work it out from the room.
    you: stop
    bot: Stopped. What was answered stays on the job sheet.
    you: job show
    bot: Job 1 (no name yet): 4 answers.

         On the sheet
           what                                             answer          how known           by
           Rated points of the fan, or the carton’s number  84@0.1 66@0.25  read off the label  ann
           Diameter of the fan’s outlet collar              4 in            read off the label  ann
           Sones on the label                               1.5             read off the label  ann
           Duct from fan to outdoors, part by part          don’t know      not known           ann
    "
  `);
});
