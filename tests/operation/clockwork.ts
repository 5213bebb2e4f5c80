import type { Every } from '#operation/upkeep.ts';

/** A clock that stands still until it is moved on, and calls what waits for it then. */
export function clockwork(start = '2026-03-01T03:00:00.000Z') {
  let now = Date.parse(start);
  const waiting = new Set<{ readonly every: number; readonly work: () => void; next: number }>();
  const every: Every = (milliseconds, work) => {
    const entry = { every: milliseconds, work, next: now + milliseconds };
    waiting.add(entry);
    return () => waiting.delete(entry);
  };
  return {
    now: () => new Date(now),
    every,
    /** How many things wait for the clock. */
    waiting: () => waiting.size,
    /** Sets the clock ahead or back; what waits, waits as long as it would have. */
    jump(milliseconds: number): void {
      now += milliseconds;
      for (const entry of waiting) entry.next += milliseconds;
    },
    /** Moves on; what is begun on the way gets the time to finish, as hours leave it. */
    async moveOn(milliseconds: number, finished: () => Promise<unknown> = async () => undefined): Promise<void> {
      const until = now + milliseconds;
      for (;;) {
        const [first] = [...waiting].toSorted((one, other) => one.next - other.next);
        if (first === undefined || first.next > until) break;
        now = first.next;
        first.next += first.every;
        first.work();
        await finished();
      }
      now = until;
    },
  };
}
