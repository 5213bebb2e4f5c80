import { describe, expect, it } from 'vitest';
import { recallFrom } from '#chat/answers.ts';
import crew from '#commands/crew.ts';
import { atticTemperature } from '#commands/questions/attic.ts';
import { buildingCodeEdition } from '#commands/questions/codes.ts';
import { altitude } from '#commands/questions/duct.ts';
import { readDay } from '#commands/workings/crew-people.ts';
import { crewSettings, readRetention, retentionText } from '#commands/workings/crew-settings.ts';
import { altitude as altitudeKind } from '#quantity/kinds.ts';
import { happened, storeAt } from '../store/workbench.ts';
import { actionOf, dialogue, done, suggested, wordsOfReply } from './at-a-desk.ts';

const hostile = [
  '**bold** _under_ `code` [link](https://example.org)',
  '\u001b[31mred\u001b[0m',
  '@everyone',
  '<@&123456789>',
  'x'.repeat(500),
  'Nul\u0000l',
  '__proto__',
  '\u202egnorw',
  '   ',
  "Robert'); DROP TABLE facts;--",
];

const at = (store = storeAt().scoped('crew')) => {
  const act = (name: string, options: Readonly<Record<string, string>> = {}) => done(crew, name, options, { store });
  const words = (name: string, options: Readonly<Record<string, string>> = {}) => wordsOfReply(act(name, options));
  return { store, act, words };
};

describe('what a crew settles', () => {
  it('is what every job goes by where its sheet is silent', () => {
    const { store, act } = at();
    act('set', { 'building-code-edition': 'IRC 2018', altitude: '5280 ft', 'attic-temperature': '-10 to 10 F' });
    const recall = recallFrom(store, store.currentSheet({ channel: 'thread-1', who: 'ann' }).number);
    expect(recall(buildingCodeEdition)).toEqual({ value: 'irc-2018', known: true });
    // NIST SP 811, appendix B.8: 1 ft is 0.3048 m exactly.
    expect(recall(altitude)?.value).toBeCloseTo(5280 * 0.3048, 6);
    expect(recall(atticTemperature)).toMatchObject({ known: true });
  });

  it('keeps its meaning when the crew changes its units', () => {
    const { store, act } = at();
    act('set', { altitude: '5000', 'attic-temperature': '10' });
    const inFeet = recallFrom(store, 1)(altitude)?.value;
    const cold = recallFrom(store, 1)(atticTemperature)?.value;
    act('set', { units: 'metric' });
    expect(recallFrom(store, 1)(altitude)?.value).toBeCloseTo(inFeet as number, 0);
    expect(recallFrom(store, 1)(atticTemperature)?.value).toEqual(cold);
    expect(altitudeKind.showShort(inFeet as never, 'inch-pound')).toBe('5000 ft');
  });

  it('reads a bare number in the units given beside it', () => {
    const { store, act } = at();
    act('set', { altitude: '1600', units: 'metric' });
    expect(recallFrom(store, 1)(altitude)?.value).toBe(1600);
  });

  it('tells every bad value in the words of its own question, and keeps the good ones', () => {
    const { store, words } = at();
    const said = words('set', {
      units: 'cubits',
      'building-code-edition': '2023',
      'electrical-code-edition': '2021',
      altitude: '5280 ft',
      'time-zone': 'Middle/Earth',
      'attic-temperature': 'warm',
    });
    for (const says of [
      'units: “cubits” is not one of these',
      'building-code-edition: “2023” is not one of these',
      'electrical-code-edition: “2021” is the building code’s',
      'time-zone: Name the time zone by its town',
      'attic-temperature: I cannot read “warm”',
      'Settled: altitude 5280 ft (1609 m).',
    ]) {
      expect(said).toContain(says);
    }
    expect(store.setting('usual:altitude')).toBe('5280 ft');
    expect(store.setting('usual:building-code-edition')).toBeUndefined();
  });

  it('is taken away with clear, and is not settled by not knowing', () => {
    const { store, act, words } = at();
    act('set', { altitude: '5280 ft' });
    expect(words('set', { altitude: 'dunno' })).toContain('Leave it out where it is not known');
    expect(store.setting('usual:altitude')).toBe('5280 ft');
    act('set', { altitude: ' Clear ' });
    expect(store.setting('usual:altitude')).toBeUndefined();
    expect(words('show')).toContain('not set. Reckoned at sea level.');
  });

  it('finds a time zone by its town, in any letters', () => {
    const zone = crewSettings.find(({ id }) => id === 'time-zone');
    const read = (text: string) => zone?.read(text, 'inch-pound');
    expect(read('denver')).toEqual({ value: 'America/Denver' });
    expect(read('america/new york')).toEqual({ value: 'America/New_York' });
    expect(read('utc')).toEqual({ value: 'UTC' });
    // The tz database links US/Central to America/Chicago.
    for (const said of ['central', 'Central Time', 'US/Central'])
      expect(read(said)).toEqual({ value: 'America/Chicago' });
    expect(read('')).toHaveProperty('rejected');
    expect(zone?.suggest('europe/lon').map(({ id }) => id)).toEqual(['Europe/London']);
  });

  it('takes no nonsense, whatever it is', () => {
    for (const setting of crewSettings) {
      for (const text of hostile) expect(setting.read(text, 'metric'), setting.id).toHaveProperty('rejected');
    }
  });
});

describe('the people of a crew', () => {
  const withAna = () => {
    const desk = at();
    desk.act('add', { person: 'Ana', as: 'lead' });
    return desk;
  };

  it('are lead, apprentice or office, and may be more than one of them', () => {
    const { store, act } = withAna();
    act('add', { person: 'Ana', as: 'office' });
    expect(store.member('Ana')?.kinds).toEqual(['lead', 'office']);
    act('remove', { person: 'ANA', as: 'lead' });
    expect(store.member('Ana')?.kinds).toEqual(['office']);
    act('remove', { person: 'Ana' });
    expect(store.member('Ana')).toBeUndefined();
  });

  it('are known by their mention where people speak by mention', () => {
    const { store } = at();
    const speaking = { store, who: '<@5>' };
    const add = (options: Readonly<Record<string, string>>) =>
      done(crew, 'add', options, { ...speaking, store }).headline;
    expect(add({ person: 'Ana', as: 'lead' })).toContain('Name one person with @');
    expect(add({ person: '<@!123456>', as: 'lead' })).toContain('Give name');
    expect(add({ person: '<@!123456>', as: 'lead', name: 'Ana' })).toContain('Ana is in the crew: lead.');
    expect(store.member('<@123456>')?.name).toBe('Ana');
    expect(done(crew, 'remove', { person: '<@!123456>' }, speaking).headline).toContain('Ana is no longer in the crew');
  });

  it('are qualified by number and last day, and a new one takes the place of the old', () => {
    const { store, act, words } = withAna();
    const licence = { person: 'ana', what: 'licensed-electrician', number: 'EL-77', expires: '2026-12-31' };
    act('qualify', licence);
    act('qualify', { ...licence, expires: '2028-12-31' });
    act('qualify', { person: 'ana', what: 'combustion tester', number: 'CT 1', expires: '2026-03-01' });
    expect(store.standing('Ana').qualifications).toEqual([
      { kind: 'licensed-electrician', number: 'EL-77', expires: '2028-12-31', lapsed: false },
      { kind: 'combustion-tester', number: 'CT 1', expires: '2026-03-01', lapsed: true },
    ]);
    expect(words('show')).toContain('LAPSED: combustion tester CT 1, to 2026-03-01');
    expect(words('show')).toContain('Ana may not sign on this any more');
    act('unqualify', { person: 'Ana', what: 'licensed-electrician' });
    expect(store.member('Ana')?.qualifications.map(({ kind }) => kind)).toEqual(['combustion-tester']);
  });

  it('are qualified to a day written the American way, where it can be no other', () => {
    expect(readDay('3/31/27')).toEqual({ value: '2027-03-31' });
    expect(readDay('3/31/2027')).toEqual({ value: '2027-03-31' });
    for (const said of ['3/4/27', '2/30/27', '31/12/2026']) expect(readDay(said)).toHaveProperty('rejected');
  });

  it('are not qualified by half an entry', () => {
    const { store, words } = withAna();
    const bad = words('qualify', { person: 'Zoe', what: 'plumber', number: ' ', expires: '31/12/2026' });
    for (const says of ['Nobody of that name', 'Say what: one of', 'Give number', 'such as 2027-03-31']) {
      expect(bad).toContain(says);
    }
    expect(words('unqualify', { person: 'Ana', what: 'licensed-electrician' })).toContain('no such qualification');
    expect(store.member('Ana')?.qualifications).toEqual([]);
  });

  it('have names of one line in which nothing is hidden', () => {
    for (const name of hostile) {
      const { store, act } = at();
      act('add', { person: name, as: 'lead' });
      for (const member of store.members()) {
        expect(member.name).not.toMatch(/\p{C}/u);
        expect(member.name.length).toBeLessThanOrEqual(60);
        expect(member.who).not.toMatch(/^[<@]/);
      }
    }
    expect(at().words('add', { person: '@everyone', as: 'lead' })).toContain('Name one person');
  });

  it('are at most a hundred', () => {
    const { store, words } = at();
    for (let count = 0; count < 100; count += 1) {
      store.saveMember({ who: `p${count}`, name: `P ${count}`, kinds: [], qualifications: [] }, { who: 'ann' });
    }
    expect(words('add', { person: 'One more', as: 'office' })).toContain('at most 100 members');
    expect(words('add', { person: 'p7', as: 'office' })).toContain('in the crew');
  });
});

describe('the last day of a licence', () => {
  it.each(['2027-03-31', '2028-02-29'])('is read: %s', (day) => expect(readDay(day)).toEqual({ value: day }));
  it.each(['2027-02-29', '2027-13-01', '31/03/2027', 'March 2027', '27-3-31', '', '0000-00-00'])(
    'is not guessed from %s',
    (day) => expect(readDay(day)).toHaveProperty('rejected'),
  );
});

describe('how long closed jobs are kept', () => {
  it.each([
    ['18 months', 18],
    ['1 month', 1],
    ['2 years', 24],
    ['10y', 120],
    ['forever', null],
    ['For good.', null],
  ])('%s', (text, months) => expect(readRetention(text)).toEqual({ value: months }));
  it.each(['0 months', '-2 years', 'soon', '1.5 years', '51 years', '12', ''])('is not guessed from “%s”', (text) =>
    expect(readRetention(text)).toHaveProperty('rejected'),
  );

  it('is read back as it is shown', () => {
    for (const months of [1, 2, 11, 12, 13, 24, 600, null]) {
      expect(readRetention(retentionText(months).replace(' after closing', ''))).toEqual({ value: months });
    }
  });

  it('says which jobs are about to go before they go', () => {
    let now = new Date('2024-01-01T12:00:00Z');
    const store = storeAt(':memory:', () => now).scoped('crew');
    const { number } = store.openSheet({ channel: 'thread-1', who: 'ann', name: 'Elm' });
    store.closeSheet(number, { who: 'ann' });
    now = new Date('2026-01-01T12:00:00Z');
    expect(at(store).words('retention', { keep: '3 years' })).not.toContain('closed job');
    expect(at(store).words('retention', { keep: '1 year' })).toContain('1 closed job is older than that');
    expect(store.findSheet(number)?.name).toBe('Elm');
  });
});

describe('forgetting a person', () => {
  it('first says what it will do, then does it, and forgets everything the person goes by', () => {
    const { store, act, words } = at();
    act('add', { person: 'ann-user', as: 'lead', name: 'Ana Quill' });
    const { number } = store.openSheet({ channel: 'thread-1', who: 'ann-user', name: 'Elm' });
    store.addWalkEvent(number, happened('w-1', { who: 'ann-user', value: { note: 'for Ana Quill' } }));
    const before = store.sheetAsJson(number);
    expect(words('forget', { person: 'Ana Quill' })).toContain('Nothing is changed yet.');
    expect(store.sheetAsJson(number)).toEqual(before);
    expect(words('forget', { person: 'ana quill', confirm: 'yes' })).toContain('Done: “someone” stands');
    const after = JSON.stringify([store.sheetAsJson(number), store.members()]);
    expect(after).not.toMatch(/ann-user|Ana Quill/i);
    expect(store.walkEvents(number)[0]).toMatchObject({ who: 'someone', standing: { kinds: ['lead'] } });
    expect(words('forget', { person: 'Ana Quill', confirm: 'yes' })).toContain('Nobody of that name');
  });
});

describe('whoever does not manage the server', () => {
  it('may look and change nothing', () => {
    const guarded = crew.actions.filter(({ managersOnly }) => managersOnly).map(({ name }) => name);
    expect(guarded).toEqual(['set', 'add', 'remove', 'qualify', 'unqualify', 'retention', 'forget']);
    expect(actionOf(crew, 'show').managersOnly).toBeUndefined();
  });
});

describe('two crews', () => {
  it('see nothing of each other, not even while typing', () => {
    const records = storeAt();
    const [north, south] = [at(records.scoped('north')), at(records.scoped('south'))];
    north.act('add', { person: 'Ana', as: 'lead' });
    north.act('set', { units: 'metric', altitude: '1600 m' });
    north.act('retention', { keep: '1 year' });
    expect(south.words('show')).not.toMatch(/Ana|1600|metric|1 year/);
    for (const name of ['remove', 'qualify', 'unqualify', 'forget']) {
      expect(suggested(crew, name, 'person', '', { store: north.store })).toEqual(['Ana']);
      expect(suggested(crew, name, 'person', '', { store: south.store })).toEqual([]);
    }
    expect(south.words('remove', { person: 'Ana' })).toContain('Nobody of that name');
    expect(south.words('forget', { person: 'Ana', confirm: 'yes' })).toContain('Nobody of that name');
    expect(north.store.member('Ana')?.kinds).toEqual(['lead']);
  });
});

describe('set up in the terminal', () => {
  it('takes a few lines', async () => {
    const store = storeAt().scoped('terminal');
    const said = await dialogue(
      { store, commands: [crew] },
      'crew ad Ana',
      'crew add Ana',
      'crew add Ana as=lead',
      'crew set building-code-edition=2023 time-zone=denver',
      'crew qualify Ana what=licensed-electrician number=EL-77 expires=2026-12-31',
    );
    const withoutTables = said.replace(/\n\n +The crew\n[\s\S]*?(?=\nyou:|\n$)/g, '');
    expect(withoutTables).toMatchInlineSnapshot(`
      "
      you: crew ad Ana
      bot: There is no “crew ad”. Did you mean crew add?
      you: crew add Ana
      bot: Give as: lead, apprentice or office.
      you: crew add Ana as=lead
      bot: Ana is in the crew: lead. What the law asks a license for needs /crew qualify as well.
      you: crew set building-code-edition=2023 time-zone=denver
      bot: Settled: time-zone America/Denver.

           Caution: building-code-edition: “2023” is not one of these. Pick IRC 2015, IRC 2018, IRC 2021,
                    IRC 2024, ASHRAE 62.2, California 2025, Canada or England.
      you: crew qualify Ana what=licensed-electrician number=EL-77 expires=2026-12-31
      bot: Ana: licensed electrician EL-77, to 2026-12-31.
      "
    `);
  });

  it('is shown in one table, with who settled what', () => {
    const { act } = at();
    act('set', { units: 'metric', altitude: '1600', 'time-zone': 'denver', 'building-code-edition': 'canada' });
    act('add', { person: 'Ana', as: 'lead' });
    act('qualify', { person: 'Ana', what: 'certified-renovator', number: 'R-1', expires: '2030-01-31' });
    const { headline, tables = [] } = act('show');
    expect(headline).toBe('1 member, 1 lead.');
    expect(tables).toHaveLength(1);
    expect(tables[0]?.rows.filter(([, is]) => !is?.startsWith('not set.'))).toEqual([
      ['units', 'metric', 'ann'],
      ['building-code-edition', 'Canada', 'ann'],
      // 1 ft is 0.3048 m exactly (NIST SP 811, appendix B.8).
      ['altitude', '1600 m (5249 ft)', 'ann'],
      ['time-zone', 'America/Denver', 'ann'],
      ['closed jobs are kept', 'for good', ''],
      ['Ana', 'lead; certified renovator (lead paint) R-1, to 2030-01-31', 'ann'],
    ]);
  });
});

describe('/help crew', () => {
  it('shows lines that record a qualification, and they work as they stand', () => {
    const { words } = at();
    const lines = crew.moreExamples ?? [];
    expect(lines.filter((line) => line.startsWith('qualify')).length).toBeGreaterThan(0);
    for (const line of lines) {
      const [action = ''] = line.split(' ');
      const pairs = [...line.matchAll(/([a-z-]+)=(?:"([^"]*)"|(\S+))/g)];
      const options = Object.fromEntries(pairs.map(([, key = '', quoted, bare]) => [key, quoted ?? bare ?? '']));
      expect(words(action, options), line).not.toMatch(/^(?:Say|There is no|“)/);
    }
    expect(words('show')).toMatch(/Ana Ruiz.*licensed electrician/is);
    expect(words('show')).toContain('555-0100');
  });
});
