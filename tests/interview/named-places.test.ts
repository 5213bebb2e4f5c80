import { describe, expect, it } from 'vitest';
import { isNamedBy, namedIn, withoutNamed } from '#interview/named-places.ts';

const named = (line: string) => namedIn(line).map(({ as }) => as);

describe('a line names a house or a person', () => {
  it.each([
    ['14 Maple St, mirror still fogged', ['14 Maple St']],
    ['fan hums at 9 oak avenue since tuesday', ['9 oak avenue']],
    ['220 N. Old Mill Road: cold air', ['220 N. Old Mill Road']],
    ['17 5th Ave unit 3', ['17 5th Ave']],
    ['Mrs. Lee says it drips', ['Mrs. Lee']],
    ['mr ortiz, 8 Elm Ct', ['8 Elm Ct', 'mr ortiz']],
    ['calle Roble 9, el espejo se empaña', ['calle Roble 9']],
    ['8x5 bath at 22 pine rd', ['22 pine rd']],
  ])('%s', (line, expected) => expect(named(line)).toEqual(expected));
});

describe('measures and parts are no house', () => {
  it.each([
    '110 fan 4in flex 20 ft 3 elbows roof cap what do I get',
    '50 cfm fan off Maple St',
    '14 ft of duct down the court',
    'it takes 20 minutes to drive there',
    '2 elbows and a wall cap',
    'the 1 st floor bath is 8 x 5',
    'smells at night, Dr',
  ])('%s', (line) => expect(named(line)).toEqual([]));
});

it('the same house is known however its street is written', () => {
  const [house] = namedIn('it is at 14 Maple Street');
  if (!house) throw new Error('no house was found');
  expect(['14 maple st.', '14 Maple', 'Job at 14 Maple St, upper bath'].map((text) => isNamedBy(text, house))).toEqual([
    true,
    true,
    true,
  ]);
  expect(['4 Maple St', '14 Oak St', 'Maple'].map((text) => isNamedBy(text, house))).toEqual([false, false, false]);
});

it('what is left of a line is everything but the names', () => {
  expect(withoutNamed('Mrs. Lee, 14  Maple St: bath 8x5')).toMatch(/^\s*,\s*: bath 8x5$/);
});
