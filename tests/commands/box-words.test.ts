import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import boxfill from '#commands/boxfill.ts';
import { boxText, readBox } from '#commands/questions/box-reading.ts';
import { readStraps, readWireList, strapsText, wireListText } from '#commands/questions/wire-list-reading.ts';
import { standardBoxes } from '#knowledge/box-rules.ts';
import { once } from './talked.ts';

describe('every kind of slip is answered with a sentence', () => {
  const good = ['box=18 in3', 'conductors=4x14'];
  const slips: readonly (readonly [word: string, says: RegExp])[] = [
    ['box=', /Nothing was given/],
    ['box=4 x 1-1/2', /octagon.*or.*square/],
    ['box=4 in square', /depth/],
    ['box=plastic', /Never guess/],
    ['box=4', /4 cu in/],
    ['box=-5 in3', /less than no room/],
    ['box=0 in3', /from 1 cu in/],
    ['box=9999 in3', /500 cu in/],
    ['box=two 18 cu in boxes', /\+/],
    ['box=metal barrier', /no box/],
    ['box=teapot', /not in the table/],
    ['conductors=', /Nothing was given/],
    ['conductors=4', /count x size/],
    ['conductors=4x13', /No wire is of 13 AWG/],
    ['conductors=14x4', /4x14/],
    ['conductors=2x2', /another way/],
    ['conductors=-3x14', /not understood/],
    ['conductors=2.5x14', /not understood/],
    ['conductors=4x14.5', /not understood/],
    ['conductors=101x14', /1 to 100/],
    ['conductors=4x14 teapot', /“teapot” is not understood/],
    ['conductors=2 x 14/2 x3', /once/],
    ['grounds=14/2', /not cables/],
    ['fixture-wires=18', /count x size/],
    ['devices=1', /not understood/],
    ['devices=1x14 9-gang', /one to four/],
    ['clamps=sideways', /Yes, inside or None inside/],
    ['support-fittings=rope', /Stud or Hickey/],
    ['canopy=perhaps', /Yes or No/],
    ['code-edition=2021', /building code/],
    ['electrical-code-edition=IRC 2018', /building code/],
    ['code-edition=1987', /NEC 2014/],
    ['code-edition=CA', /California/],
    ['teapot=1', /no “teapot”/],
  ];
  for (const [word, says] of slips) {
    it(word, () => {
      const name = word.split('=')[0];
      const answer = once(boxfill, ...good.filter((each) => !each.startsWith(`${name}=`)), word);
      expect(answer.status).toBe('needs-answers');
      expect(answer.problems).toHaveLength(1);
      expect(answer.problems[0]?.says).toMatch(says);
      expect(answer.problems[0]?.says).toMatch(/[.?]$/);
    });
  }

  it('names every slip at once', () => {
    const answer = once(boxfill, 'box=teapot', 'conductors=4x13', 'clamps=sideways');
    expect(answer.problems.map(({ id }) => id)).toEqual(['box', 'conductors', 'clamps']);
  });

  it('survives any text at all', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[0-9x#/ ,-]{0,30}$/)), (text) => {
        for (const reading of [readBox(text, 'inch-pound'), readWireList(text, { cables: true }), readStraps(text)]) {
          expect('value' in reading || reading.rejected.length > 10).toBe(true);
        }
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});

describe('what is read can be typed back', () => {
  const readAs = <Value>(reading: { value: Value } | { rejected: string }): Value => {
    if ('rejected' in reading) throw new Error(reading.rejected);
    return reading.value;
  };

  it('for every standard box', () => {
    for (const { name } of standardBoxes) {
      const box = readAs(readBox(name.replace(', each gang', ''), 'inch-pound'));
      expect(readAs(readBox(boxText(box), 'inch-pound'))).toEqual(box);
      expect(box.parts[0]?.standard?.name).toBe(name);
    }
  });

  it.each(['21 in3 + 8.2 in3', '34 cu in, 2-gang + nonmetallic barrier', '3 x 2 x 2-1/2 device 2-gang', '18.5'])(
    '%s',
    (text) => {
      const box = readAs(readBox(text, 'inch-pound'));
      expect(readAs(readBox(boxText(box), 'inch-pound'))).toEqual(box);
    },
  );

  it.each(['4x14, 2x12', '3 x 14/2 with ground, 12/3 without ground', 'four fourteen and two twelve', '14 awg x 4'])(
    '%s',
    (text) => {
      const wiresRead = readAs(readWireList(text, { cables: true }));
      expect(readAs(readWireList(wireListText(wiresRead), { cables: true }))).toEqual(wiresRead);
    },
  );

  it.each(['1x14 wide, 2x12', 'one timer on 14', '1 two-gang switch on 12'])('%s', (text) => {
    const straps = readAs(readStraps(text));
    expect(readAs(readStraps(strapsText(straps)))).toEqual(straps);
  });
});
