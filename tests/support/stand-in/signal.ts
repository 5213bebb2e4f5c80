/** Tells waiting tests that something changed. */
export interface Signal {
  notify(): void;
  /** Resolves with what `look` finds, as soon as it finds anything; fails with the words of `describe` when it never does. */
  until<T>(look: () => T | undefined, patience: number, describe: () => string): Promise<T>;
}

const checkEvery = 20;

export function signal(): Signal {
  const waiting = new Set<() => void>();
  return {
    notify() {
      for (const check of [...waiting]) check();
    },
    until<T>(look: () => T | undefined, patience: number, describe: () => string) {
      return new Promise<T>((resolve, reject) => {
        const check = () => {
          try {
            const found = look();
            if (found === undefined) return;
            stop();
            resolve(found);
          } catch (error) {
            stop();
            reject(error);
          }
        };
        const timer = setTimeout(() => {
          stop();
          reject(new Error(`Nothing came within ${patience} ms.\n${describe()}`));
        }, patience);
        // What is looked at may also be the bot's own, which nobody tells us of.
        const again = setInterval(check, checkEvery);
        const stop = () => {
          clearTimeout(timer);
          clearInterval(again);
          waiting.delete(check);
        };
        waiting.add(check);
        check();
      });
    },
  };
}

/** Something that happens once, with the time it happened (`performance.now()`). */
export interface Moment {
  readonly at: number | undefined;
  happen(at: number): void;
  /** Calls when it happens, or at once when it has. */
  tell(listener: (at: number) => void): void;
}

export function moment(): Moment {
  let when: number | undefined;
  const listeners: ((at: number) => void)[] = [];
  return {
    get at() {
      return when;
    },
    happen(at) {
      if (when !== undefined) return;
      when = at;
      for (const listener of listeners) listener(at);
    },
    tell(listener) {
      if (when === undefined) listeners.push(listener);
      else listener(when);
    },
  };
}
