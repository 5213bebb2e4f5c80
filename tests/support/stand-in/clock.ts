/** The time as the stand-in sees it, in milliseconds since 1970. It moves by itself and can be moved on. */
export interface Clock {
  now(): number;
  advance(milliseconds: number): void;
}

/** A clock that follows the given one and can run ahead of it. */
export function clock(following: () => number = Date.now): Clock {
  let ahead = 0;
  return {
    now: () => following() + ahead,
    advance(milliseconds) {
      ahead += milliseconds;
    },
  };
}

const platformEpoch = 1_420_070_400_000;

/** Ids as the platform makes them: the time in the upper bits, so that age can be read from them, and never the same twice. */
export function snowflakes({ now }: Clock): () => string {
  let last = 0n;
  return () => {
    const fresh = BigInt(Math.trunc(now()) - platformEpoch) << 22n;
    last = fresh > last ? fresh : last + 1n;
    return String(last);
  };
}
