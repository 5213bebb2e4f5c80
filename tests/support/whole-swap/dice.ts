/** A small generator of chance that gives the same run every time. */
export interface Dice {
  chance(share: number): boolean;
  below(count: number): number;
  oneOf<Item>(items: readonly Item[]): Item;
}

export function dice(seed: number): Dice {
  let state = seed;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    chance: (share) => next() < share,
    below: (count) => Math.floor(next() * count),
    oneOf: <Item>(items: readonly Item[]): Item => items[Math.floor(next() * items.length)] as Item,
  };
}
