import { describe, expect, it } from 'vitest';
import boxfill from '#commands/boxfill.ts';
import { findingOf, once } from './talked.ts';

// Every box here is invented.

const told = (words: Readonly<Record<string, string>>) =>
  once(boxfill, ...Object.entries(words).map((pair) => pair.join('=')));

const american = {
  box: '40 in3',
  conductors: '4x14',
  grounds: '2x14',
  devices: '1x14',
  clamps: 'none',
  serves: 'switch',
  'code-edition': '2023',
};
const canadian = { ...american, 'code-edition': 'canada' };
const without = <Words extends Readonly<Record<string, string>>>(words: Words, ...names: readonly (keyof Words)[]) =>
  Object.fromEntries(Object.entries(words).filter(([name]) => !names.includes(name)));

describe('what nobody told is never counted the kind way', () => {
  it('takes a Canadian device of unknown depth for a deep one: 32 mL a centimetre (CEC 12-3034(3))', () => {
    const verdict = findingOf(told({ ...canadian, box: '18 in3' }), 'volume-left');
    expect(verdict.weight).toBe('caution');
    // 5 cm deep (common practice, no source) and three connectors, one pair (12-3034(2)(b)): 4 × 24.6 + 160 + 24.6 mL.
    expect(verdict.value?.low).toBeCloseTo(18 - (5 * 24.6 + 160) / 16.387064, 9);
    expect(verdict.says).toContain('5 cm (2 in) deep');
    expect(verdict.says).toContain('a wire connector on every two wires');
    const settled = told({ ...canadian, box: '18 in3', 'device-depth': '2 cm', 'wire-connectors': '2x14' });
    expect(findingOf(settled, 'volume-left').weight).toBe('good');
    expect(findingOf(settled, 'volume-left').value).not.toHaveProperty('low');
  });

  it('takes a box of unknown purpose for the fan’s, and its leads for there', () => {
    const verdict = findingOf(told(without(american, 'serves')), 'volume-left');
    expect(verdict).toMatchObject({ weight: 'caution', value: { number: 26, low: 23 } });
    expect(verdict.says).toContain('two 18 AWG leads of a fan (3 cu in)');
    const canopy = told({ ...without(american, 'serves'), 'fixture-wires': '2x18', canopy: 'yes' });
    // Only a light has such a canopy (NEC 314.16(B)(1) exception): 14 and twice 1.5.
    expect(findingOf(canopy, 'fill-needed').value?.number).toBe(17);
    expect(findingOf(canopy, 'canopy-refused').weight).toBe('caution');
  });

  it.each(['serves', 'grounds', 'devices', 'clamps'])('is at ease with no box while %s is open', (name) => {
    for (const open of [told(without(american, name as 'serves')), told({ ...american, [name]: "don't know" })]) {
      expect(findingOf(open, 'volume-left').weight).toBe('caution');
      expect(findingOf(open, 'fill-needed').weight).toBe('caution');
    }
    expect(findingOf(told(american), 'volume-left').weight).toBe('good');
  });

  it('counts one of a thing that is there in a number nobody knows', () => {
    const open = told({ ...american, 'box-extras': 'pass-through', 'pass-through': "don't know" });
    expect(findingOf(open, 'volume-left')).toMatchObject({ weight: 'caution', value: { number: 26, low: 24 } });
  });

  it('says of a box without room for a wire that it is full', () => {
    const full = findingOf(told({ ...american, box: '15 in3' }), 'volume-left');
    expect(full.says).toContain('the box is full');
    expect(full.says).not.toContain('0 more');
  });

  it('is at ease with nothing in an overfull box', () => {
    const { reply } = told({ ...american, box: '13 in3' });
    expect(reply?.findings.map(({ weight }) => weight)).not.toContain('good');
  });
});

describe('whatever is told changes the reply or is named in it', () => {
  const given: Readonly<Record<string, string>> = {
    box: '19 in3',
    conductors: '5x14',
    serves: 'fan',
    grounds: '3x12',
    devices: '1x12',
    clamps: 'internal',
    'fixture-wires': '3x18',
    canopy: 'yes',
    'box-extras': 'loops',
    'pass-through': '2x14',
    loops: '1x14',
    'support-fittings': 'stud',
    'terminal-blocks': '1x14',
    pigtails: '3x14',
    'electrical-code-edition': '2017',
    'code-edition': '2014',
    'wire-connectors': '4x14',
    'device-depth': '3 in',
  };
  const bases: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    American: american,
    Canadian: canadian,
    'of an unknown code': without(american, 'code-edition'),
    'for a fan': { ...american, serves: 'fan', devices: 'none', 'fixture-wires': '2x18' },
    'for a light': { ...american, serves: 'light', devices: 'none', 'fixture-wires': '2x16' },
    'for a Canadian light': { ...canadian, serves: 'light', devices: 'none', 'fixture-wires': '2x16' },
    'told in the least words': { box: '40 in3', conductors: '4x14' },
  };

  it('knows every option', () => {
    expect(Object.keys(given).toSorted()).toEqual(boxfill.takes.map(({ id }) => id).toSorted());
  });

  for (const [name, base] of Object.entries(bases)) {
    it.each(boxfill.takes.map(({ id }) => id))(`a box ${name}: %s`, (id) => {
      const value = id === 'serves' && base['serves'] === 'fan' ? 'light' : (given[id] as string);
      const words = { ...base, [id]: value };
      const extra = id === 'box-extras' ? { loops: '1x12' } : {};
      // The findings alone: that nobody answered is said apart from them, and would hide a fact that does nothing.
      const before = told({ ...base, ...(id === 'box-extras' ? { loops: '1x12', 'box-extras': 'none' } : {}) });
      const after = told({ ...words, ...extra });
      expect(after.problems).toEqual([]);
      expect(after.missing).toEqual([]);
      expect(after.reply?.findings).not.toEqual(before.reply?.findings);
    });
  }
});
