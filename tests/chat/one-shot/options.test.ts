import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { clipped, nearest, optionsFrom, withoutShellFlags, wordsOf } from '#chat/options.ts';

const known = ['collar', 'duct-run', 'room-length', 'fan-curve'];
const optionsIn = (line: string) => optionsFrom(wordsOf(line), known);

describe('a typed line in words', () => {
  const lines: readonly (readonly [string, readonly string[]])[] = [
    ['size room-length=8', ['size', 'room-length=8']],
    ['  duct \t collar=4  ', ['duct', 'collar=4']],
    ['job open 14 Maple St', ['job', 'open', '14', 'Maple', 'St']],
    ['job open "14 Maple St"', ['job', 'open', '14 Maple St']],
    ['job open O’Brien’s', ['job', 'open', 'O’Brien’s']],
    ["job open O'Brien's", ['job', 'open', "O'Brien's"]],
    ['collar=4" room-length=8\'6"', ['collar=4"', 'room-length=8\'6"']],
    ['collar="4"" room-length=\'8\'6"\'', ['collar=4"', 'room-length=8\'6"']],
    ['duct-run="14\' 4" flex; 2 x elbow 90" collar=4"', ['duct-run=14\' 4" flex; 2 x elbow 90', 'collar=4"']],
    ['duct-run="4" flex 14 ft" collar="4 in"', ['duct-run=4" flex 14 ft', 'collar=4 in']],
    ['collar=“4 in” duct-run=”14 ft 4 in flex“', ['collar=4 in', 'duct-run=14 ft 4 in flex']],
    ['collar=‘4 in’ room-length=8’6”', ['collar=4 in', 'room-length=8’6”']],
    ['duct-run="14 ft 4 in flex”', ['duct-run=14 ft 4 in flex']],
    ['room-length=„8 ft“', ['room-length=8 ft']],
    ['collar="" room-length=8', ['collar=', 'room-length=8']],
    ['collar="4 in', ['collar="4', 'in']],
    ['', []],
    ['   ', []],
  ];
  test.each(lines)('%s', (line, words) => expect(wordsOf(line)).toEqual(words));

  it('loses nothing but spaces and the quotes around a value, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (line) => {
        const bare = (text: string) => text.replace(/[\s"'“”„‘’]/g, '');
        expect(bare(wordsOf(line).join(''))).toBe(bare(line));
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it('does not dwell on a line made of quotes', () => {
    const started = performance.now();
    wordsOf('"a '.repeat(700));
    expect(performance.now() - started).toBeLessThan(1000);
  });
});

describe('name=value words', () => {
  it('a value without quotes goes on to the next name', () => {
    expect(optionsIn('room-length=8 ft 6 in collar=4 in')).toEqual({
      values: { 'room-length': '8 ft 6 in', collar: '4 in' },
      problems: [],
      missed: [],
    });
    expect(optionsIn('collar= 4 in')).toEqual({ values: { collar: '4 in' }, problems: [], missed: [] });
  });

  it('names may be written in capitals and with underscores', () => {
    expect(optionsIn('Room_Length=8 COLLAR=4')).toEqual({
      values: { 'room-length': '8', collar: '4' },
      problems: [],
      missed: [],
    });
  });

  it('every stray word, unknown name and repeated name is named at once', () => {
    const { values, problems, missed } = optionsIn('110 collar=4 cellar=5 in ropm-length=8 collar=6 zzz=1');
    expect(values).toEqual({ collar: '4' });
    expect(problems).toEqual([
      '“110” is not of the form name=value, such as collar="…".',
      'There is no “cellar” here. Did you mean collar?',
      'There is no “ropm-length” here. Did you mean room-length?',
      'collar is given twice. Give it once.',
      'There is no “zzz” here. It takes collar, duct-run, room-length, fan-curve.',
    ]);
    expect(missed).toEqual(['collar', 'room-length', 'collar']);
  });

  it.each(['__proto__=1', 'constructor=1', 'toString=1', 'hasOwnProperty=1'])('%s is no name', (word) => {
    const { values, problems } = optionsIn(word);
    expect(Object.keys(values)).toEqual([]);
    expect(problems).toHaveLength(1);
    expect(({} as Record<string, unknown>)['1']).toBeUndefined();
  });

  it('a value may hold an equals sign and line breaks', () => {
    expect(optionsFrom(['duct-run=elbow k=0.35\nwall cap'], known).values).toEqual({
      'duct-run': 'elbow k=0.35\nwall cap',
    });
  });
});

describe('what is for the shell', () => {
  const lined = (line: string) => withoutShellFlags(wordsOf(line));

  it('is taken out of a line, with its value', () => {
    expect(lined('duct --json collar=4 in --units=both')).toEqual({
      rest: ['duct', 'collar=4', 'in'],
      flags: ['--json', '--units=both'],
    });
    expect(lined('duct --units both collar=4')).toEqual({ rest: ['duct', 'collar=4'], flags: ['--units both'] });
    expect(lined('duct --language collar=4')).toEqual({ rest: ['duct', 'collar=4'], flags: ['--language'] });
  });

  it('is left where somebody says it, and --as is taken inside', () => {
    for (const line of [
      'callback complaint="it went --json and died"',
      'swap done --as Ana',
      'size a -- b',
      'job note -4',
    ]) {
      expect(lined(line).flags).toEqual([]);
    }
  });
});

describe('the nearest name', () => {
  test.each([
    ['dcut', 'duct'],
    ['sise', 'size'],
    ['hlep', 'help'],
    ['ducts', 'duct'],
    ['so', undefined],
    ['k', undefined],
    ['', undefined],
    ['something else', undefined],
    ['x'.repeat(10_000), undefined],
  ])('of %j is %s', (typed, meant) => expect(nearest(typed, ['size', 'duct', 'job', 'help'])).toBe(meant));

  it('is the one name a single word is part of', () => {
    const names = ['room-length', 'room-width', 'ceiling-height'];
    expect(nearest('ceiling', names)).toBe('ceiling-height');
    expect(nearest('width', names)).toBe('room-width');
    expect(nearest('room', names)).toBeUndefined();
  });

  it('is nothing where there are no names', () => expect(nearest('duct', [])).toBeUndefined());
});

describe('what is said back of a long text', () => {
  it('is its beginning, without control characters and never half of a sign', () => {
    expect(clipped('\x1b[31mred\x07\u009b')).toBe('[31mred');
    expect(clipped('🙂'.repeat(40))).toBe(`${'🙂'.repeat(30)}…`);
    expect(clipped('x'.repeat(10_000))).toHaveLength(31);
  });
});

describe('free words before any option', () => {
  const spoken = (line: string) => optionsFrom(wordsOf(line), ['complaint', 'context'], 'complaint');

  it('answer the option a command has for them', () => {
    expect(spoken('loud hum since Tuesday context=attic')).toEqual({
      values: { complaint: 'loud hum since Tuesday', context: 'attic' },
      problems: [],
      missed: [],
    });
  });

  it('are told to be too many where that option stands there too', () => {
    expect(spoken('hum complaint=rattle')).toMatchObject({
      values: { complaint: 'rattle' },
      problems: [expect.stringContaining('“hum”')],
    });
  });
});
