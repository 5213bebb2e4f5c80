import { describe, expect, it } from 'vitest';
import type { AnswerCommand } from '#chat/command.ts';
import { oneShot } from '#chat/one-shot.ts';
import { wordsOf } from '#chat/options.ts';
import { commands } from '#commands/index.ts';
import { inShortWords } from '#commands/words/in-short.ts';

const words = inShortWords.spanish;
/** Pages that have no Spanish of their own, so that they are told in short. */
const english = commands.filter(
  (command): command is AnswerCommand<unknown> => command.kind === 'answer' && command.name !== 'callback',
);
const asked = (name: string, line: string, language: 'english' | 'spanish' = 'spanish') => {
  const command = english.find((each) => each.name === name);
  if (!command) throw new Error(`no page ${name}`);
  return oneShot(command, wordsOf(line), { units: 'inch-pound', language });
};
const told = (name: string, line: string): string => asked(name, line).notes?.join(' ') ?? '';
/** The numbers of a text; what stands in brackets is the same in other units. */
const numbers = (text: string): readonly string[] => text.replace(/\([^)]*\)/g, '').match(/\d+(?:\.\d+)?/g) ?? [];

describe('an English answer, told in short to whoever reads Spanish', () => {
  it.each(english.filter(({ name }) => name !== 'plan').map(({ name, example }) => [name, example]))(
    '%s: in Spanish, with no number but those of the answer',
    (name, example) => {
      const said = told(name, example);
      expect(said).toContain(words.rest);
      expect(said.replace(/\/[a-z]+/g, '')).not.toMatch(/\b(?:the|and|is|of|with|not|this|you|usually|at|least)\b/i);
      const { reply } = asked(name, example);
      const known = new Set(numbers(JSON.stringify([reply?.findings, reply?.tables])));
      const counts = new Set(Array.from({ length: 60 }, (_, count) => String(count)));
      expect(numbers(said).filter((number) => !known.has(number) && !counts.has(number))).toEqual([]);
    },
  );

  it('says the numbers of each page', () => {
    expect(
      told('size', 'room-length="8 ft" room-width="10 ft" ceiling-height="9 ft" fixtures="toilet, shower"'),
    ).toContain('Este baño necesita 96 cfm');
    expect(told('duct', 'fan-curve=110 collar="4 in" duct-run="20 ft 4 in flex; 3 x elbow 90; roof cap"')).toMatch(
      /^Saldrán unos \d+ cfm/,
    );
    expect(told('reach', 'fan-curve=110 duct-kind=flex duct-diameter="4 in" airflow-needed=50')).toContain(
      'Tienda como mucho',
    );
    expect(told('reach', 'fan-curve=50 duct-kind=flex duct-diameter="3 in" airflow-needed=200')).toContain(
      words.reachNone,
    );
    expect(told('runtime', 'room-length=8ft room-width=5ft delivered-airflow=60')).toContain('después de la ducha');
    expect(told('boxfill', 'box="18 in3" conductors="8x14" grounds="3x14" devices="1x14" clamps=internal')).toContain(
      'No cierre esta caja',
    );
    expect(
      told(
        'sweat',
        'delivered-airflow=60 duct-diameter=4in attic-duct-length=30ft duct-insulation=R-4.2 attic-temperature=0F',
      ),
    ).toContain('El ducto suda desde');
  });

  it('says a stop first, and where people must leave nothing else', () => {
    const door = 'delivered-airflow=80 door-width=30in door-gap=0.5in';
    expect(told('makeup', `${door} fuel-appliances=natural-draft`).startsWith(words.flames)).toBe(true);
    for (const danger of ['carbon-monoxide-alarm=sounding', 'spillage-seen=yes', 'carbon-monoxide="40 ppm"'])
      expect(told('makeup', `${door} ${danger}`)).toBe(`${words.everyoneOut} ${words.rest}`);
    expect(told('power', 'unit-kind=fan-only fan-place=elsewhere fan-ground=none')).toMatch(
      /^ALTO: no conecte nada todavía/,
    );
    expect(
      told('duct', 'fan-curve="50@0 10@0.1" collar="4 in" duct-run="150 ft 2 in flex; 9 x elbow 90; roof cap"'),
    ).toMatch(/^(?:ALTO: no ponga|Saldrán)/);
  });

  it('says nothing beside an answer in English to whoever reads that', () => {
    expect(asked('size', 'room-area="40 sq ft" fixtures=toilet', 'english').notes).toBeUndefined();
  });
});
