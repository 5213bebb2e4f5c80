import { describe, expect, it } from 'vitest';
import { exactly } from '#quantity/estimate.ts';
import { ductDiameter, ductLength } from '#quantity/kinds.ts';
import { collar, length } from './questions.ts';

describe('an amount or a range of it', () => {
  it('reads both, in the crew’s units', () => {
    expect(length.read('14 ft', 'inch-pound')).toEqual({ value: exactly(ductLength.from(14, 'ft')) });
    expect(length.read('3 m', 'inch-pound')).toEqual({ value: exactly(ductLength.from(3, 'm')) });
    expect(length.read('3', 'metric')).toEqual({ value: exactly(ductLength.from(3, 'm')) });
    const range = {
      low: ductLength.from(12, 'ft'),
      typical: ductLength.from(14, 'ft'),
      high: ductLength.from(16, 'ft'),
    };
    expect(length.read('12 to 16 ft', 'inch-pound')).toEqual({ value: range });
  });

  it('says what would do, in the question and in the refusal', () => {
    expect(length.accepts).toBe(`a length, such as ${ductLength.example}`);
    expect(length.read('banana', 'inch-pound')).toEqual({
      rejected: expect.stringContaining(`such as ${ductLength.example}`),
    });
  });
});

describe('an amount that may be left out', () => {
  it('is nothing when nobody knows, and says so', () => {
    expect(collar.whenUnknown).toEqual({ value: null, because: 'Taken as wide as the duct.' });
    expect(collar.show(null, 'inch-pound')).toBe('not known');
  });

  it('takes one amount, not a range', () => {
    expect(collar.read('4', 'inch-pound')).toEqual({ value: ductDiameter.from(4, 'in') });
    expect(collar.read('4 to 5 in', 'inch-pound')).toEqual({ rejected: expect.stringContaining('That is a range') });
  });
});
