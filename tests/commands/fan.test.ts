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
