import { describe, expect, it } from 'vitest';
import type { AnyQuestion } from '#interview/question.ts';
import { worded } from '#interview/worded.ts';
import { commands } from '../../commands/index.ts';

const questions = new Map<string, AnyQuestion>(
  commands.flatMap((command) =>
    command.kind === 'answer' ? command.takes.map((each) => [each.id, each] as const) : [],
  ),
);

const numbersIn = (text: string): string => (text.match(/\d+(?:[./]\d+)?/g) ?? []).toSorted().join(' ');

/** Names that are the same in both languages: codes, sizes, and words of the trade. */
const same = /^(?:No|IRC \d+|NEC \d+|ASHRAE 62\.2|California 2025|Approved Document F|\d+ AWG|2x\d+)$/;

/** What a question says, in pairs: English and Spanish. */
function said(question: AnyQuestion): readonly (readonly [what: string, english: string, spanish: string])[] {
  const other = worded(question, 'spanish');
  const [ours, theirs] = [question.widget, other.widget];
  const texts = (['prompt', 'why', 'brief'] as const).map((what) => [what, question[what], other[what]] as const);
  const choices =
    ours.kind === 'text' || theirs.kind === 'text'
      ? []
      : ours.choices.flatMap(({ id, label, hint }, index) => [
          [id, label, theirs.choices[index]?.label ?? ''] as const,
          ...(hint === undefined ? [] : [[`${id}, its hint`, hint, theirs.choices[index]?.hint ?? ''] as const]),
        ]);
  return [
    ...texts,
    ['accepts', question.accepts, other.accepts],
    ['because', question.whenUnknown.because, other.whenUnknown.because],
    ...choices,
  ];
}

describe('every question an apprentice can be asked', () => {
  it('is there', () => {
    expect(questions.size).toBeGreaterThan(130);
  });

  it.each([...questions.values()].map((question) => [question.id, question] as const))(
    '%s is asked in Spanish, whole, with the same numbers',
    (_, question) => {
      expect(question.words?.spanish, 'has Spanish').toBeDefined();
      for (const [what, english, spanish] of said(question)) {
        expect(spanish, what).toMatch(/\S/);
        if (!same.test(english)) expect(spanish, what).not.toBe(english);
        expect(numbersIn(spanish), what).toBe(numbersIn(english));
      }
      expect(worded(question, 'spanish').brief.length).toBeLessThanOrEqual(100);
    },
  );
});

describe('an answer in Spanish', () => {
  const reads = (id: string, text: string) => {
    const question = questions.get(id);
    if (!question) throw new Error(`nobody asks ${id}`);
    return { spanish: worded(question, 'spanish').read(text, 'inch-pound'), english: question };
  };

  it.each([
    ['room-length', '8 pies 6 pulgadas', '8 ft 6 in'],
    ['room-length', '7 a 10 ft, lo más probable 8 ft', '7 to 10 ft, most likely 8 ft'],
    ['shower-minutes', '20 minutos', '20 min'],
    ['fixtures', 'inodoro, regadera', 'toilet, shower'],
    ['duct-insulation', 'ninguno', 'none'],
    ['running', 'todo el tiempo', 'continuous'],
    ['fan-ground', 'sí', 'present-not-proven'],
    ['attached-garage', 'si', 'yes'],
  ])('to %s, “%s” means “%s”', (id, text, meant) => {
    const { spanish, english } = reads(id, text);
    expect(spanish).toEqual(english.read(meant, 'inch-pound'));
    expect(spanish).toHaveProperty('value');
  });

  it('never takes a bare yes for something proven, as English does not', () => {
    expect(reads('fan-ground', 'sí').spanish).not.toEqual({ value: 'proven' });
    expect(reads('gfci-protection', 'sí').spanish).not.toEqual({ value: 'proven' });
    expect(reads('switch-box-neutral', 'sí').spanish).toHaveProperty('rejected');
  });

  it('what stands in for an unknown answer is told without English, and reads back the same', () => {
    for (const question of questions.values()) {
      const { value } = question.whenUnknown;
      const asked = worded(question, 'spanish');
      // Where anything said is an answer, the words are kept as they are.
      const takesAnything = JSON.stringify(asked.read('la la la', 'inch-pound')) === '{"value":"la la la"}';
      if (value === null || question.growing || takesAnything) continue;
      const shown = asked.show(value, 'inch-pound');
      expect(shown, question.id).not.toMatch(/\b(?:to|most likely|not|none|known|yes|taken)\b/);
      const read = asked.read(question.show(value, 'inch-pound'), 'inch-pound');
      if ('value' in read) expect(asked.read(shown, 'inch-pound'), `${question.id}: ${shown}`).toEqual(read);
    }
  });
});
