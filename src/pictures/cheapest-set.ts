/** What one item may be, each with its cost by itself, cheapest first. */
export type Options<T> = readonly { readonly option: T; readonly alone: number }[];

const mostRounds = 8;
const mostStarts = 5;
const mostPolished = 2;

/**
 * Picks one option for every item so that the costs alone and in pairs come out low together. Items settle one after
 * another, each then moves to its best option until none wants to, and last two move at once where that helps. Several
 * orders are tried and the cheapest outcome kept. Not proven cheapest, but the same input always gives the same answer,
 * in bounded time.
 */
export function cheapestSet<T>(
  items: readonly Options<T>[],
  together: (a: T, b: T) => number,
): { readonly chosen: readonly T[]; readonly total: number } {
  if (items.some((options) => options.length === 0)) throw new RangeError('Every item needs at least one option.');
  const settled = startingOrders(items.length)
    .map((order) => settledFrom(order, items, together))
    .sort((a, b) => a.total() - b.total())
    .slice(0, mostPolished);
  for (const board of settled) polish(board);
  const [best] = settled.sort((a, b) => a.total() - b.total());
  return { chosen: best?.chosen() ?? [], total: best?.total() ?? 0 };
}

/** From each item on, and backwards: enough to leave most dead ends. */
function startingOrders(count: number): readonly (readonly number[])[] {
  const given = Array.from({ length: count }, (_, index) => index);
  const rotations = given.slice(0, mostStarts).map((start) => [...given.slice(start), ...given.slice(0, start)]);
  return count === 0 ? [] : [...rotations, given.toReversed()];
}

/** A choice under way. Prices are kept up to date as items move, so that looking for a better option is one pass. */
interface Board<T> {
  readonly items: readonly Options<T>[];
  readonly together: (a: T, b: T) => number;
  /** The index of the option each item has, or undefined before it has settled. */
  readonly taken: (number | undefined)[];
  /** What each option of each item would cost beside what the others have taken. */
  readonly prices: readonly number[][];
  readonly move: (item: number, to: number) => void;
  readonly total: () => number;
  readonly chosen: () => readonly T[];
}

function newBoard<T>(items: readonly Options<T>[], together: (a: T, b: T) => number): Board<T> {
  const taken: (number | undefined)[] = items.map(() => undefined);
  const prices = items.map((options) => options.map(({ alone }) => alone));
  const add = (item: number, option: T, sign: 1 | -1) => {
    for (const [other, options] of items.entries()) {
      const priced = prices[other];
      if (other === item || priced === undefined) continue;
      for (const [index, entry] of options.entries()) {
        priced[index] = (priced[index] ?? 0) + sign * together(entry.option, option);
      }
    }
  };
  const optionOf = (item: number, index = taken[item]) => (index === undefined ? undefined : items[item]?.[index]);
  return {
    items,
    together,
    taken,
    prices,
    move: (item, to) => {
      const [before, after] = [optionOf(item), optionOf(item, to)];
      if (before !== undefined) add(item, before.option, -1);
      if (after !== undefined) add(item, after.option, 1);
      taken[item] = to;
    },
    // Each price counts the item's own cost once and every pair from both sides.
    total: () =>
      items.reduce(
        (sum, _, item) => sum + ((prices[item]?.[taken[item] ?? 0] ?? 0) + (optionOf(item)?.alone ?? 0)) / 2,
        0,
      ),
    chosen: () => items.flatMap((_, item) => optionOf(item)?.option ?? []),
  };
}

function settledFrom<T>(
  order: readonly number[],
  items: readonly Options<T>[],
  together: (a: T, b: T) => number,
): Board<T> {
  const board = newBoard(items, together);
  for (let round = 0; round < mostRounds; round += 1) {
    let moved = false;
    for (const item of order) {
      const best = cheapestIndex(board.prices[item] ?? []);
      if (best === board.taken[item]) continue;
      board.move(item, best);
      moved = true;
    }
    if (!moved) break;
  }
  return board;
}

const cheapestIndex = (prices: readonly number[]): number =>
  prices.reduce((best, price, index) => (price < (prices[best] ?? 0) ? index : best), 0);

/** Moves two items at once wherever that helps, which parts items that block each other. */
function polish<T>(board: Board<T>): void {
  for (let round = 0; round < mostRounds; round += 1) {
    let moved = false;
    for (let i = 0; i < board.items.length; i += 1) {
      for (let j = i + 1; j < board.items.length; j += 1) {
        const better = cheaperPair(board, i, j);
        if (better === undefined) continue;
        board.move(i, better[0]);
        board.move(j, better[1]);
        moved = true;
      }
    }
    if (!moved) return;
  }
}

/** The cheapest options for two items together, if any pair is cheaper than what they have now. */
function cheaperPair<T>(board: Board<T>, i: number, j: number): readonly [number, number] | undefined {
  const [first, second] = [pricedWithout(board, i, j), pricedWithout(board, j, i)];
  const [hasFirst, hasSecond] = [
    first.find(({ index }) => index === board.taken[i]),
    second.find(({ index }) => index === board.taken[j]),
  ];
  if (hasFirst === undefined || hasSecond === undefined) return undefined;
  let best: readonly [number, number] | undefined;
  let lowest = hasFirst.price + hasSecond.price + board.together(hasFirst.option, hasSecond.option) - 1e-6;
  for (const a of first) {
    if (a.price + (second[0]?.price ?? 0) >= lowest) break;
    for (const b of second) {
      if (a.price + b.price >= lowest) break;
      const total = a.price + b.price + board.together(a.option, b.option);
      if (total < lowest) [best, lowest] = [[a.index, b.index], total];
    }
  }
  return best;
}

/** The options of one item priced as if another item were not there, cheapest first. */
function pricedWithout<T>(
  board: Board<T>,
  item: number,
  absent: number,
): readonly { readonly index: number; readonly option: T; readonly price: number }[] {
  const other = board.items[absent]?.[board.taken[absent] ?? 0];
  return (board.items[item] ?? [])
    .map(({ option }, index) => ({
      index,
      option,
      price: (board.prices[item]?.[index] ?? 0) - (other === undefined ? 0 : board.together(option, other.option)),
    }))
    .sort((a, b) => a.price - b.price);
}
