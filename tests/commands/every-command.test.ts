import { describe, expect, it } from 'vitest';
import type { AnswerCommand, Command } from '#chat/command.ts';
import { asJson, oneShot } from '#chat/one-shot.ts';
import { wordsOf } from '#chat/options.ts';
import { terminalSession } from '#chat/terminal/session.ts';
import { commands } from '#commands/index.ts';
import type { AnyQuestion, UnitSystem } from '#interview/question.ts';
import { meansNotKnown, turnMeant } from '#interview/words.ts';
import { storeAt } from '../store/workbench.ts';

const answering = commands.filter((command): command is AnswerCommand<unknown> => command.kind === 'answer');
const named = (list: readonly Command[]) => list.map((command) => [command.name, command] as const);
const questions = [...new Map(answering.flatMap(({ takes }) => takes).map((each) => [each.id, each])).values()];
const systems: readonly UnitSystem[] = ['inch-pound', 'metric'];

describe('the list of commands', () => {
  it('has each name once, a plain word', () => {
    const names = commands.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z]{2,20}$/);
  });

  it('asks one thing by one name: an id stands for the same question everywhere', () => {
    for (const { takes } of answering) for (const each of takes) expect(questions).toContain(each);
  });
});

describe.each(named(commands))('%s', (_, command) => {
  it('says what it is for in a sentence', () => {
    expect(command.summary).toMatch(/^[A-Z].*\.$/);
    expect(command.summary.length).toBeLessThanOrEqual(100);
  });
});

describe.each(named(answering).map(([name, command]) => [name, command as AnswerCommand<unknown>] as const))(
  '%s',
  (_, command) => {
    it('answers its own example', () => {
      const answer = oneShot(command, wordsOf(command.example), { units: 'inch-pound' });
      expect([...answer.problems, ...answer.missing]).toEqual([]);
      expect(answer.status).not.toBe('needs-answers');
      for (const { id } of answer.reply?.findings ?? []) expect(id).toMatch(/^[a-z]+(?:-[a-z0-9]+)*$/);
      expect(() => JSON.parse(asJson(answer))).not.toThrow();
    });

    it('says everything in sentences, and every number with its source', () => {
      const { reply } = oneShot(command, wordsOf(command.example), { units: 'inch-pound' });
      expect(reply?.headline).toMatch(/^[A-Z“\d].*[.?]$/s);
      for (const { id, says, sources, working, value } of reply?.findings ?? []) {
        expect(says, id).toMatch(/[.?]$/);
        expect(says, id).not.toMatch(/!|undefined|NaN|Infinity|\[object|\b1 (?:elbows|answers|boxes|wires)\b/);
        if (value !== undefined) expect(working.length + sources.length, id).toBeGreaterThan(0);
        if (value !== undefined && value.number !== null) expect(Number.isFinite(value.number), id).toBe(true);
      }
    });

    it('answers somebody who knows nothing at all', async () => {
      const session = terminalSession({
        store: storeAt().scoped('terminal'),
        commands: [command],
        who: 'ann',
        paper: { width: 87, colour: false },
        drawn: async () => undefined,
      });
      let said = await session.say(command.name);
      for (let count = 0; session.asking() && count < 250; count += 1) said = await session.say('don’t know');
      expect(session.asking()).toBe(false);
      expect(said).toMatch(/Taken for granted:|Caution:|STOP:/);
    });
  },
);

/** Things a question must read: its own example, its choices, and what stands in when nobody knows. */
function samples(question: AnyQuestion, units: UnitSystem): readonly string[] {
  const { widget, whenUnknown } = question;
  const own =
    widget.kind === 'text' ? [widget.placeholder] : [...widget.choices.flatMap(({ id, label }) => [id, label])];
  const standIn = whenUnknown.value === null ? 'not known' : question.show(whenUnknown.value, units);
  return standIn === 'not known' ? own : [...own, standIn];
}

/** Without the other system in brackets, which is rounded apart. */
const unbracketed = (shown: string): string => shown.replace(/ \([^)]*\)/g, '');

describe.each(questions.map((question) => [question.id, question] as const))('the question %s', (_, question) => {
  it('is worded to be asked: prompt, reason, and what would do', () => {
    expect(question.id).toMatch(/^[a-z]+(?:-[a-z0-9]+)*$/);
    expect(question.prompt).toMatch(/^[A-Z“].*[.?]$/s);
    expect(question.why).toMatch(/^[A-Z].*\.$/s);
    expect(question.whenUnknown.because).toMatch(/^[A-Z].*\.$/s);
    expect(question.brief.length).toBeLessThanOrEqual(100);
    expect(question.brief).not.toMatch(/[.:]$/);
  });

  it.each(systems)('reads back what it prints, %s', (units) => {
    for (const typed of samples(question, units)) {
      const reading = question.read(typed, units);
      expect(reading, `${question.id} cannot read “${typed}”`).toHaveProperty('value');
      if (!('value' in reading)) continue;
      for (const shownIn of systems) {
        const shown = question.show(reading.value, shownIn);
        const again = question.read(shown, shownIn);
        expect(again, `${question.id} cannot read its own “${shown}”`).toHaveProperty('value');
        if ('value' in again) expect(unbracketed(question.show(again.value, shownIn))).toBe(unbracketed(shown));
      }
    }
  });

  it('takes no word of the conversation for an answer', () => {
    const { widget } = question;
    const words =
      widget.kind === 'text' ? [widget.placeholder] : widget.choices.flatMap(({ id, label }) => [id, label]);
    for (const word of words) expect(turnMeant(word) !== undefined || meansNotKnown(word), word).toBe(false);
  });

  it('refuses nonsense in one sentence and never throws', () => {
    const nonsense = ['', ' ', '🙂', '\0', '=1+1', 'ones(3000,3000)', '__proto__', 'x'.repeat(10_000), '\x1b[31mred'];
    for (const typed of nonsense) {
      const reading = question.read(typed, 'inch-pound');
      if ('value' in reading) continue;
      expect(reading.rejected).toMatch(/^[^\p{Cc}]+[.?]$/u);
      expect(reading.rejected.length).toBeLessThan(700);
    }
    expect(question.read('', 'inch-pound')).toHaveProperty('rejected');
    expect(question.read('x'.repeat(10_000), 'inch-pound')).toHaveProperty('rejected');
  });
});
