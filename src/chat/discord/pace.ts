/** Whether one more is taken of somebody now. If not: after how many seconds one is again, and whether that was said before. */
export type Turn =
  | { readonly taken: true }
  | { readonly taken: false; readonly seconds: number; readonly saidBefore: boolean };

/** How fast one person may go. */
export interface Pace {
  /** So many in so many seconds. */
  readonly allowed: { readonly most: number; readonly seconds: number };
  /** Takes one of a person, where there is one left. */
  take(person: string): Turn;
}

/** In so many seconds a person has so many. */
const span = 10;

/** More people than this at once are not told apart: those heard of longest ago start afresh. */
const mostPeople = 5000;

interface Bucket {
  readonly left: number;
  /** When so many were left, in seconds. */
  readonly at: number;
  readonly refused: boolean;
}

/**
 * Lets each person do so many things in ten seconds, all at once or spread out. What is kept of people is bounded, and is
 * forgotten when the program ends.
 *
 * @param most How many; 0 for no limit.
 * @param now Milliseconds of a clock that never goes back.
 */
export function pace(most: number, now: () => number = () => performance.now()): Pace {
  const people = new Map<string, Bucket>();
  return {
    allowed: { most, seconds: span },
    take(person) {
      if (most === 0) return { taken: true };
      const at = now() / 1000;
      const before = people.get(person) ?? { left: most, at, refused: false };
      const left = Math.min(most, before.left + ((at - before.at) * most) / span);
      const taken = left >= 1;
      // Whoever was heard of last stands last.
      people.delete(person);
      people.set(person, { left: taken ? left - 1 : left, at, refused: !taken });
      const [longestAgo] = people.keys();
      if (people.size > mostPeople && longestAgo !== undefined) people.delete(longestAgo);
      if (taken) return { taken };
      return { taken, seconds: Math.ceil(((1 - left) * span) / most), saidBefore: before.refused };
    },
  };
}
