import { describe, expect, it } from 'vitest';
import { boxOpening } from '#commands/questions/measuring.ts';

const shown = (text: string) => {
  const read = boxOpening.read(text, 'inch-pound');
  return 'rejected' in read ? 'refused' : boxOpening.show(read.value, 'inch-pound');
};

describe('the opening of a flow box', () => {
  it.each([
    ['6 x 6 in', '36 sq in'],
    ['6"x6"', '36 sq in'],
    ['4 by 6 inches', '24 sq in'],
    ['4 1/2 x 6 in', '27 sq in'],
    ['100 x 100 mm', '100 cm2'],
    ['10 x 15 cm', '150 cm2'],
  ])('%s is as large as %s', (sides, area) => {
    expect(shown(area)).not.toBe('refused');
    expect(shown(sides)).toBe(shown(area));
  });

  it('is asked for again where its sides have no unit, or two', () => {
    expect(shown('6 x 6')).toBe('refused');
    expect(shown('4 in x 100 mm')).toBe('refused');
  });
});
