import { describe, expect, it, onTestFinished } from 'vitest';
import type { AnswerCommand } from '#chat/command.ts';
import { terminalSession } from '#chat/terminal/session.ts';
import { commands } from '#commands/index.ts';
import { plainReading } from '#commands/plain-words/reading.ts';
import { putIntoEnglish } from '#commands/plain-words/spanish/reading.ts';
import { openStore } from '#store/store.ts';
import english from './plain-words-corpus.json' with { type: 'json' };
import phrasings from './plain-words-spanish.json' with { type: 'json' };

const answering = commands.filter((command): command is AnswerCommand<unknown> => command.kind === 'answer');
const questions = new Map(answering.flatMap(({ takes }) => takes).map((each) => [each.id, each]));

/** An answer as its own question reads it back, so that “8 ft” and “8 pies” are one. */
function readBack(id: string, answer: string): string {
  const question = questions.get(id);
  const reading = question?.read(answer, 'inch-pound');
  if (question === undefined || reading === undefined || 'rejected' in reading) return `${id} does not take ${answer}`;
  return question.show(reading.value, 'inch-pound');
}

const readBacks = (facts: Readonly<Record<string, string | undefined>>) =>
  Object.fromEntries(
    Object.entries(facts).flatMap(([id, answer]) =>
      answer === undefined || id === 'complaint' ? [] : [[id, readBack(id, answer)]],
    ),
  );

const digits = (text: string) => (text.match(/\d+/g) ?? []).toSorted();

describe('a question in Spanish', () => {
  it.each(phrasings)('is read whole, with nothing beside: $text', ({ text, command, facts }) => {
    const [best] = plainReading(text, 'inch-pound').readings;
    expect(best?.command).toBe(command);
    expect(readBacks(best?.facts ?? {})).toEqual(readBacks(facts));
    expect(best?.loose).toEqual([]);
  });

  it('is read the same without its accents, and in capitals', () => {
    for (const { text } of phrasings) {
      const bare = text.normalize('NFD').replace(/\p{M}/gu, '').replace(/[¿¡]/g, '');
      const [meant, unmarked, loud] = [text, bare, bare.toUpperCase()].map((line) => putIntoEnglish(line)?.line);
      expect([unmarked, loud], text).toEqual([meant, meant]);
    }
  });

  it('keeps every number that was written', () => {
    for (const { text } of phrasings) {
      // Words for numbers add digits; none that stood there may go.
      // How many windows, basins or speeds there are is asked by nobody.
      const counting = text.replace(/\d (?=ventanas|velocidades)/g, '');
      const [written, put] = [digits(counting), digits(putIntoEnglish(text)?.line ?? '')];
      const left = written.filter((number) => !put.includes(number));
      expect(left, text).toEqual([]);
    }
  });

  it.each([
    ['extractor de ciento diez', '110'],
    ['extractor de ciento y cinco', '105'],
    ['ducto de veinticinco pies', '25'],
    ['techo de ocho pies y medio', '8-1/2'],
    ['techo de dos metros cuarenta', '2.40'],
    ['luz de tres cuartos de pulgada', '3/4'],
    ['luz de una pulgada y media', '1-1/2'],
    ['baño de treinta y cinco pies cuadrados', '35'],
    ['ático a diez grados bajo cero', '-10'],
    ['casa de mil ochocientos cfm50', '1800'],
  ])('says a number in words: %s', (text, number) => {
    expect(putIntoEnglish(text)?.line).toContain(number);
  });

  it('is not made of a line in English', () => {
    expect(english.filter(({ text }) => putIntoEnglish(text) !== undefined).map(({ text }) => text)).toEqual([]);
  });
});

describe('whoever asks in Spanish', () => {
  function session() {
    const store = openStore(':memory:');
    onTestFinished(() => store.close());
    return terminalSession({
      store: store.scoped('prueba'),
      commands,
      who: 'van',
      paper: { width: 2000, colour: false },
      drawn: async () => undefined,
      language: 'spanish',
    });
  }

  it('is told what was understood, and what found no place', async () => {
    const said = await session().say(
      'ask extractor de 80, 12 pies de ducto liso de 4, salida de pared, qué me da, 777 lentejas',
    );
    expect(said).toContain('Se leyó como duct: extractor 80 cfm; ducto 12 ft 4 in smooth, wall cap.');
    expect(said).toContain('No supe dónde poner 777. No se usó.');
    expect(said).toContain('No se conoce aquí, y se dejó fuera: lentejas.');
  });

  it('is told of what was taken back', async () => {
    const said = await session().say('ask baño de 8 por 10, no perdón, 8 por 12, cuánto aire');
    expect(said).toContain('Se corrigió 8 x 10: se leyó como 8 x 12.');
  });

  it('keeps a complaint in its own words, and a danger before all else', async () => {
    const noisy = await session().say('ask el extractor zumba y el espejo se empaña');
    expect(noisy).toContain('Se leyó como callback');
    const danger = await session().say('ask baño de 8 por 10 cuánto aire, huele a quemado en el interruptor');
    expect(danger).toContain('por el peligro que dice');
  });
});
