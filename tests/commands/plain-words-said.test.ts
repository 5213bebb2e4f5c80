import { describe, expect, it } from 'vitest';
import { plainReading } from '#commands/plain-words/reading.ts';

const facts = (text: string, command: string) =>
  plainReading(text, 'inch-pound').readings.find((each) => each.command === command)?.facts;

describe('a box as an electrician tells it', () => {
  it('takes the count before a noun for no cable', () => {
    expect(
      facts(
        'four inch square two and an eighth deep, six number twelve wires three grounds number twelve two switches on twelve',
        'boxfill',
      ),
    ).toEqual({ box: '4 x 2-1/8 square', conductors: '6x12', grounds: '3x12', devices: '2x12' });
    expect(facts('three fourteen two cables in a 32 cube box', 'boxfill')?.['conductors']).toBe('3 x 14/2');
  });

  it('hears what grounds and devices land on', () => {
    expect(facts('22 cu in, 6x14, 3 egc biggest is 12, 2 yokes on 14', 'boxfill')).toMatchObject({
      grounds: '3x12',
      devices: '2x14',
    });
    expect(facts('21 cu in, one 12/2 in, one 14/2 out, one timer landed on the 14s', 'boxfill')?.['devices']).toBe(
      '1x14',
    );
    expect(facts('16 cu in, 4x14, 2 grounds, one switch, 14 ft of romex', 'boxfill')?.['devices']).toBe('1x14');
  });

  it('hears the code by its year, in figures or words', () => {
    for (const said of ['twenty seventeen code', 'NEC 2017', "we're on the 2017", 'nec twenty seventeen'])
      expect(facts(`18 cu in, 4x14, ${said}`, 'boxfill')?.['electrical-code-edition'], said).toBe('2017');
    expect(facts('18 cu in, 4x14, house of 2017 sq ft', 'boxfill')?.['electrical-code-edition']).toBeUndefined();
  });

  it('counts the stud of a fixture and none of a wall', () => {
    expect(facts('4 in octagon 1-1/2 deep, 4x14, fixture stud and hickey', 'boxfill')?.['support-fittings']).toBe(
      'stud, hickey',
    );
    expect(facts('box in a stud bay, 18 cu in, 4x14', 'boxfill')?.['support-fittings']).toBeUndefined();
    expect(facts('octagon 4 x 2-1/8, 4x14, zero devices', 'boxfill')?.['devices']).toBe('none');
  });
});

describe('how a house and its people are told of', () => {
  it.each([
    ['left on round the clock', 'continuous'],
    ['running 24/7', 'continuous'],
    ["only when somebody's in there, off the wall switch", 'on demand'],
    ['left on round the clock or off the wall switch', undefined],
  ])('“%s” runs %s', (said, running) => {
    expect(facts(`5x8 bath, toilet, ${said}, what cfm`, 'size')?.['running']).toBe(running);
  });

  it('hears that a toilet has no room of its own', () => {
    const apart = (said: string) => facts(`9x8 bath, tub, ${said}, what cfm`, 'size')?.['toilet-compartment'];
    expect(apart('toilet is NOT in a separate compartment')).toBe('no');
    expect(apart("toilet isn't in its own room")).toBe('no');
    expect(apart('toilet in its own little room')).toBe('yes');
    expect(apart('toilet')).toBeUndefined();
  });

  it.each([
    ['no fuel burning aplliances', 'none'],
    ['all electric house', 'none'],
    ['no gas', undefined],
    ['oil furnace in the basement', 'kind-unknown'],
    ['propane boiler', 'kind-unknown'],
    ['gas water heater with a draft hood', 'natural-draft'],
    ['gas furnace and a natural draft water heater', 'natural-draft, kind-unknown'],
    ['oil furnace downstairs, wood stove upstairs', 'solid-fuel, kind-unknown'],
    ['all electric house but for a wood stove', 'solid-fuel'],
    ['electric water heater', undefined],
  ])('of “%s” burns %s', (said, flames) => {
    expect(facts(`90 cfm delivered, 30 in door, 1/2 in gap, ${said}`, 'makeup')?.['fuel-appliances']).toBe(flames);
  });

  it.each([
    ["they only flip it on once they're done", 'no'],
    ['nobody turns it on till they get out', 'no'],
    ['never turns the fan on while he showers', 'no'],
    ['they run it the entire shower', 'yes'],
    ["never turns the fan off until he's out", undefined],
  ])('with “%s” the fan runs during the shower: %s', (said, during) => {
    expect(facts(`5x8 bath, 10 min shower, 60 cfm, ${said}, how long after`, 'runtime')?.['fan-during-shower']).toBe(
      during,
    );
  });

  it('puts the air that leaves, the attic and the house each to its own temperature', () => {
    expect(
      facts(
        "12 ft of 4 in flex, R-6, air's leaving at 80 degrees and 90 percent, attic was 32, will it sweat",
        'sweat',
      ),
    ).toMatchObject({ 'exhaust-temperature': '80 F', 'exhaust-humidity': '90 %', 'attic-temperature': '32 F' });
    expect(facts('5x8 bath, 10 min shower, 60 cfm, temp 69, rh 40, how long', 'runtime')?.['house-temperature']).toBe(
      '69 F',
    );
  });

  it('takes what a house leaks in cubic metres for no fan', () => {
    expect(facts('30 in door, 12 mm gap, house leaks 1500 m3/h at 50 Pa', 'makeup')).toMatchObject({
      'house-leakage': '1500 m3/h at 50 Pa',
    });
    expect(facts('30 in door, 12 mm gap, house leaks 1500 m3/h at 50 Pa', 'makeup')?.['fan-curve']).toBeUndefined();
  });
});
