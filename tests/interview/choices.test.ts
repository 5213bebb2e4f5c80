import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { ends, insulated, kind } from './questions.ts';

const rejected = (reading: object): string => ('rejected' in reading ? String(reading.rejected) : '');

describe('a pick out of a few', () => {
  const accepted: readonly (readonly [string, string])[] = [
    ['smooth', 'smooth'],
    ['Smooth pipe', 'smooth'],
    ['  SMOOTH   PIPE. ', 'smooth'],
    ['smooth-pipe', 'smooth'],
    ['rigid', 'smooth'],
    ['flexible', 'flex'],
    ['foil flex', 'foil-flex'],
    ['foil_flex', 'foil-flex'],
    ['foil', 'foil-flex'],
    ['Flex!', 'flex'],
  ];
  test.each(accepted)('%j is %s', (typed, id) => {
    expect(kind.read(typed, 'inch-pound')).toEqual({ value: id });
  });

  test.each(['', '   ', 'f', 'copper', '🙂', '\0', '__proto__', 'constructor', 'x'.repeat(10_000), '1', '=1+1'])(
    '%j is refused with what would do',
    (typed) => {
      expect(rejected(kind.read(typed, 'inch-pound'))).toMatch(/Pick Smooth pipe, Flex or Foil flex\.$/);
    },
  );

  it('says back only a little of a long answer, and no control characters', () => {
    const said = rejected(kind.read(`\x1b[31m${'copper '.repeat(50)}\x07`, 'inch-pound'));
    expect(said.length).toBeLessThan(120);
    expect(said).not.toMatch(/\p{Cc}/u);
  });

  it('does not guess between two that begin alike', () => {
    expect(rejected(ends.read('ca', 'inch-pound'))).toContain('did not fit');
  });

  it('shows the label, which is read back as the same pick', () => {
    for (const { id } of kind.widget.kind === 'one' ? kind.widget.choices : []) {
      expect(kind.read(kind.show(id as 'flex', 'metric'), 'metric')).toEqual({ value: id });
    }
  });
});

describe('any number of picks', () => {
  const accepted: readonly (readonly [string, readonly string[]])[] = [
    ['wall cap, damper', ['wall-cap', 'damper']],
    ['damper; wall cap', ['wall-cap', 'damper']],
    ['roof cap and damper', ['roof-cap', 'damper']],
    ['hood + damper', ['wall-cap', 'damper']],
    ['damper, damper', ['damper']],
    ['none', []],
    ['None.', []],
    ['wall', ['wall-cap']],
  ];
  test.each(accepted)('%j', (typed, ids) => {
    expect(ends.read(typed, 'inch-pound')).toEqual({ value: ids });
  });

  it('names each that did not fit', () => {
    expect(rejected(ends.read('wall cap, chimney, soffit', 'inch-pound'))).toMatch(/^“chimney”, “soffit” did not fit/);
  });

  test.each(['', ' ', ',', ';;', ', ,', '\0'])('%j is no answer', (typed) => {
    expect(rejected(ends.read(typed, 'inch-pound'))).toMatch(/or none\.$/);
  });

  it('shows picks that are read back as the same picks', () => {
    const all = ['wall-cap', 'roof-cap', 'damper'] as const;
    fc.assert(
      fc.property(fc.subarray([...all]), (picks) => {
        expect(ends.read(ends.show(picks, 'metric'), 'metric')).toEqual({ value: picks });
      }),
      { seed: 1, numRuns: 50 },
    );
  });
});

describe('yes or no', () => {
  test.each([
    ['y', 'yes'],
    ['Yeah', 'yes'],
    ['sí', 'yes'],
    ['NO', 'no'],
    ['nope', 'no'],
    ['n', 'no'],
  ])('%j is %s', (typed, id) => {
    expect(insulated.read(typed, 'inch-pound')).toEqual({ value: id });
  });

  test.each(['maybe', 'yes and no', '', 'not sure at all'])('%j is neither', (typed) => {
    expect(rejected(insulated.read(typed, 'inch-pound'))).toMatch(/Pick Yes or No\.$/);
  });
});

describe('whatever is typed', () => {
  it('a question of picks never throws, and refuses in one sentence that can be printed', () => {
    const anything = fc.oneof(fc.string({ unit: 'binary', maxLength: 300 }), fc.string({ unit: 'grapheme' }));
    fc.assert(
      fc.property(anything, fc.constantFrom(kind, ends, insulated), (typed, question) => {
        const reading = question.read(typed, 'inch-pound');
        if (!('rejected' in reading)) return;
        expect(reading.rejected).toMatch(/\.$/);
        expect(reading.rejected).not.toMatch(/\p{Cc}/u);
        expect(reading.rejected.length).toBeLessThan(2000);
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});
