import { describe, expect, it } from 'vitest';
import { evened } from '#commands/plain-words/measures.ts';
import { plainReading } from '#commands/plain-words/reading.ts';
import { putRight } from '#commands/plain-words/taken-back.ts';
import { askWords } from '#commands/words/ask.ts';
import lines from './plain-words-put-right.json' with { type: 'json' };
import { scored } from './plain-words-scored.ts';

const right = (text: string) => putRight(evened(text), askWords.english.reading);

describe('what a speaker takes back', () => {
  it.each([
    ['30 W fan, 10 hours a day, no 4, 5100 hdd', '30 watt fan, 4 hr a day, 5100 hdd'],
    ["a 20.3 cu in box, no it's stamped 22.5", 'a 22.5 in3 box'],
    ['R-4 hold on the sleeve says R-6, attic 10 F', 'r-6, attic 10 degf'],
    ['gap 1/2, nope checked again 3/4', 'gap 3/4'],
    ["width 5' length 9'... scratch that length 9'6, ceiling 8 ft", 'width 5 ft length 9 ft 6 in, ceiling 8 ft'],
    ['shower eight minutes make that twelve', 'shower 12 min'],
    ["7 Pa hang on hose was kinked, it's 11 Pa", '11 pa'],
    ['fan does 70, I mean 60 delivered', 'fan does 60 delivered'],
    ['attic at 40, no, 14 (fourteen), R-8', 'attic at 14, r-8'],
    ['not 4 in, 5 in flex 16 ft', '5 in flex 16 ft'],
    ['5 in flex, not 4 in, 16 ft', '5 in flex, 16 ft'],
    ['2 - sorry 3 - elbows, roof cap', '3 elbow, roof cap'],
    ['18 ft of 5 in no 6 in flex', '18 ft of 6 in flex'],
    ['15 ft 4 in flex, no, rigid', '15 ft 4 in rigid'],
    ['a tub, no just a shower', 'a shower'],
    ['5x8 bath, oops 5x9', '5x9 bath'],
    ['door 32, correction: 28', 'door 28'],
    ['door is thirty inches, actually thirty two', 'door is 32 in'],
    ['8 ft ceiling, 20 min shower, sorry 9 ft ceiling', '9 ft ceiling, 20 min shower'],
    ['80 at 0.1 and 62 at 0.25 sorry 58 at 0.25', '80 at 0.1 and 58 at 0.25'],
    ['four 14/2 cables, no wait three', '3 14/2 cables'],
    ['minus 5 up there, no minus 15', '-15 up there'],
  ])('“%s” is “%s”', (text, meant) => {
    const { line, told } = right(text);
    expect(line.replaceAll(' ,', ',')).toBe(meant);
    expect(told.join(' ')).toMatch(/was taken back: read as/);
  });

  it.each([
    '18 in3 box, 4x14, no clamps',
    'no insulation, 20 degf attic',
    'is it ok, no need 80, 110 fan',
    '5x14 wires, no 12 wires, 20 in3',
    '20 ft 4 in flex no rigid',
    'toilet and shower, no tub',
    'room is 8 by 10 sorry forgot ceiling 9',
    'rated 110, actually 80',
    '15 min shower, how long should they wait after 30 min',
    '110 fan ok? no 80',
    '30 in door, sorry 110 fan',
  ])('“%s” takes nothing back', (line) => {
    expect(right(line)).toEqual({ line: evened(line), told: [] });
  });

  it('never puts a number in the place of another measure', () => {
    for (const said of ['110 cfm fan, no wait 3/4', '12 pa in the box, sorry 33 gal', '4 in duct, no 60 watt'])
      expect(right(said).told).toEqual([]);
  });

  it('says what it put right, so that a person can see it', () => {
    expect(
      plainReading('30 in door, gap 1/2 in, nope checked again 3/4, 90 cfm', 'inch-pound').readings[0]?.told,
    ).toEqual(['1/2 in was taken back: read as 3/4 in.']);
  });
});

describe('lines put right halfway, told as a form, or with airflows of more than one kind', () => {
  it.each(lines.map((line) => [line.text, line] as const))('“%s” is read whole, with nothing beside', (_, line) => {
    const { command, facts, wrong } = scored(line);
    expect(command).toBe(true);
    expect(facts).not.toContain(false);
    expect(wrong).toEqual([]);
  });

  it('names which apartment it is and how leaky the house, and takes neither for an airflow', () => {
    for (const place of ['unit 12', 'apt 44', 'floor 3', 'suite 110', 'in unit 80', 'house leaks 1400 m3/h at 50 Pa']) {
      const runtime = plainReading(
        `${place}, 6x9 bath 8 ft ceiling, 15 min shower, how long to run the fan`,
        'inch-pound',
      ).readings.find(({ command }) => command === 'runtime');
      expect(
        Object.keys(runtime?.facts ?? {}).filter((id) => /airflow|fan/.test(id)),
        place,
      ).toEqual([]);
      expect(runtime?.loose.join(' '), place).toContain(/\d+/.exec(place)?.[0]);
    }
  });

  it('takes neither of two numbers told under one name', () => {
    const [best] = plainReading('sweat: exhaust: 72 / 85, attic 20 F, 4 in duct 12 ft, R-6', 'inch-pound').readings;
    expect(Object.keys(best?.facts ?? {}).filter((id) => id.startsWith('exhaust'))).toEqual([]);
    expect(best?.loose).toEqual(['72', '85']);
  });
});
