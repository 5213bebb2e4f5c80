import fc from 'fast-check';
import { expect, it } from 'vitest';
import { cheapestSet } from '#pictures/cheapest-set.ts';

const numbers = (...options: readonly (readonly [option: number, alone: number])[]) =>
  options.map(([option, alone]) => ({ option, alone }));

/** Two numbers closer than 10 get in each other's way. */
const clash = (a: number, b: number) => (Math.abs(a - b) < 10 ? 100 : 0);

it('takes the cheapest option where nothing is in the way', () => {
  expect(cheapestSet([numbers([0, 1], [50, 2]), numbers([100, 0])], clash)).toEqual({ chosen: [0, 100], total: 1 });
});

it('lets one give way where two want the same place', () => {
  const items = [numbers([0, 0], [50, 5]), numbers([0, 0], [80, 9])];
  expect(cheapestSet(items, clash)).toEqual({ chosen: [50, 0], total: 5 });
});

it('moves two at once where neither can move alone', () => {
  // Each blocks the other's second place, so a single move never helps.
  const items = [numbers([0, 20], [30, 0]), numbers([32, 20], [3, 0])];
  expect(cheapestSet(items, (a, b) => (a === 30 && b === 3 ? 0 : clash(a, b)))).toEqual({ chosen: [30, 3], total: 0 });
});

it('has nothing to choose for nothing, and refuses an item without options', () => {
  expect(cheapestSet([], clash)).toEqual({ chosen: [], total: 0 });
  expect(() => cheapestSet([[]], clash)).toThrow(RangeError);
});

it('reports the true total and is never worse than everyone taking their favourite', () => {
  const item = fc
    .array(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 40 })), { minLength: 1, maxLength: 6 })
    .map((options) => numbers(...options).sort((a, b) => a.alone - b.alone));
  fc.assert(
    fc.property(fc.array(item, { minLength: 1, maxLength: 5 }), (items) => {
      const pairs = (options: readonly number[]) =>
        options.reduce(
          (sum, option, index) => options.slice(index + 1).reduce((more, other) => more + clash(option, other), sum),
          0,
        );
      const { chosen, total } = cheapestSet(items, clash);
      const alone = (index: number, option: number | undefined) =>
        Math.min(...(items[index] ?? []).filter((entry) => entry.option === option).map((entry) => entry.alone));
      const favourites = items.map((options) => options[0]?.option ?? 0);
      expect(chosen).toHaveLength(items.length);
      expect(total).toBeGreaterThanOrEqual(
        chosen.reduce((sum, option, index) => sum + alone(index, option), pairs(chosen)),
      );
      expect(total).toBeLessThanOrEqual(
        favourites.reduce((sum, option, index) => sum + alone(index, option), pairs(favourites)) + 1e-6,
      );
    }),
    { seed: 1, numRuns: 200 },
  );
});
