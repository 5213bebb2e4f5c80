import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Beginning, beginning } from '../../support/whole-swap/pulled-desk.ts';

/**
 * The program dies between two of its words to the database, or when all is written and nothing is said yet; then the same
 * records are opened again. Kept beside is what was acknowledged: it has to be there once, and nothing may be there twice.
 */
describe('a day on which the program dies again and again', { timeout: 120_000 }, () => {
  let begun: Beginning;
  beforeAll(async () => {
    begun = await beginning();
  }, 60_000);
  afterAll(() => begun.remove());

  it.each([1, 2, 3, 4, 5, 6])('loses nothing and does nothing twice on the truck, seed %i', async (seed) => {
    const day = await begun.day({ seed, list: 'before-leaving-the-shop', deaths: { share: 0.2 }, asides: 0.1 });
    expect(day.deaths).toBeGreaterThan(0);
    expect(day.complaints).toEqual([]);
  });

  it('loses nothing and does nothing twice on a whole swap', async () => {
    const day = await begun.day({ seed: 1, list: 'swap', deaths: { share: 0.1 }, asides: 0.02 });
    expect(day.deaths).toBeGreaterThan(10);
    expect(day.again.some(({ text }) => text.includes('It counts once.'))).toBe(true);
    expect(day.complaints).toEqual([]);
  });

  it('goes on from wherever it died in starting a list', async () => {
    for (let word = 0; word < 90; word += 6) {
      const day = await begun.day({ seed: 7, list: 'before-leaving-the-shop', deaths: { atWord: word } });
      expect(day.deaths, `before word ${word}`).toBe(1);
      expect(day.complaints, `before word ${word}`).toEqual([]);
    }
  });
});
