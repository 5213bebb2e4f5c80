import { describe, expect, it, test } from 'vitest';
import { howKnown, meansNotKnown, plain, turnMeant } from '#interview/words.ts';

describe('not knowing', () => {
  test.each([
    'don’t know',
    "Don't know.",
    "DON'T  KNOW",
    'dunno',
    'dk',
    'idk',
    '?',
    '??',
    'not sure',
    'no idea',
    'unknown!',
  ])('%j is an answer that nobody knows', (typed) => expect(meansNotKnown(typed)).toBe(true));

  test.each(['', 'no', 'know', '0', 'unknown maker', 'I know'])('%j is not', (typed) => {
    expect(meansNotKnown(typed)).toBe(false);
  });
});

describe('a turn that asks something of the conversation', () => {
  test.each([
    ['back', 'back'],
    ['Back.', 'back'],
    ['undo', 'back'],
    ['why?', 'why'],
    ['WHY', 'why'],
    ['stop', 'stop'],
  ] as const)('%j means %s', (typed, turn) => expect(turnMeant(typed)).toBe(turn));

  test.each(['', 'backdraft damper', 'why not', 'constructor', '__proto__', 'toString'])('%j is an answer', (typed) => {
    expect(turnMeant(typed)).toBeUndefined();
  });
});

describe('how an answer is known', () => {
  test.each([
    ['14 ft', '14 ft', 'told'],
    ['14 ft measured', '14 ft', 'measured'],
    ['measured: 14 ft', '14 ft', 'measured'],
    ['14 ft (measured)', '14 ft', 'measured'],
    ['110 off the label', '110', 'label'],
    ['110, read from the carton', '110', 'label'],
    ['about 14 ft', '14 ft', 'estimated'],
    ['~14 ft', '14 ft', 'estimated'],
    ['14 ft or so', '14 ft', 'estimated'],
    ['14 ft, I think', '14 ft', 'estimated'],
    ['maybe 14', '14', 'estimated'],
  ] as const)('%j is %j, %s', (typed, text, how) => {
    expect(howKnown(typed)).toEqual({ text, how });
  });

  it('cuts nothing off words that only begin alike', () => {
    for (const typed of ['something else', 'maybel', 'guesswork', 'aboutface', 'measured', 'some', 'about']) {
      expect(howKnown(typed), typed).toEqual({ text: typed, how: 'told' });
    }
  });
});

describe('plain words', () => {
  it('fold what a phone makes of them', () => {
    expect(plain(' Don\u2019t\u00a0KNOW… ')).toBe("don't know");
    expect(plain('Ｔｏｉｌｅｔ')).toBe('toilet');
  });
});
