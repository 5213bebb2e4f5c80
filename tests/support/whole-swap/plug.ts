import { copyFileSync, existsSync } from 'node:fs';
import Database from 'better-sqlite3';

/**
 * Ends the life of a program at an instant between two of its words to the database, by taking the files as they lie there
 * then. That is what the death of a process leaves behind: whatever was handed to the system stays, and nothing else is
 * written. Nothing of what the abandoned program still does reaches the copy.
 */
export interface Plug {
  /** Words to the database so far. */
  readonly words: number;
  /** Pulls before the nth word from now; 0 is the very next. */
  arm(words: number): void;
  /** One more instant at which it may be pulled. */
  pass(): void;
  /** Pulls now if it was armed for later. */
  pullIfArmed(): void;
  readonly isPulled: boolean;
  /** Where the copy lies, once it was pulled. Asking makes the plug whole again. */
  pulled(): string | undefined;
  /** The database is left alone again. */
  remove(): void;
}

type Word = (this: unknown, ...values: unknown[]) => unknown;

const kinds = ['run', 'get', 'all'] as const;

/** Puts a plug before every statement of this thread until it is removed. `records` names the file that is in use. */
export function plugFor(records: () => string): Plug {
  const memory = new Database(':memory:');
  const statement = Object.getPrototypeOf(memory.prepare('SELECT 1')) as Record<(typeof kinds)[number], Word>;
  memory.close();
  const whole = { run: statement.run, get: statement.get, all: statement.all };
  let [words, copies] = [0, 0];
  let left: number | undefined;
  let copy: string | undefined;

  const pull = (): never => {
    left = undefined;
    copies += 1;
    const from = records();
    copy = from.replace(/(?:-death-\d+)?$/, `-death-${copies}`);
    for (const part of ['', '-wal', '-shm']) if (existsSync(from + part)) copyFileSync(from + part, copy + part);
    throw new Error('The plug was pulled.');
  };

  const pass = (): void => {
    words += 1;
    if (left === 0) pull();
    if (left !== undefined) left -= 1;
  };

  for (const kind of kinds) {
    statement[kind] = function plugged(...values) {
      pass();
      return whole[kind].apply(this, values);
    };
  }

  return {
    get words() {
      return words;
    },
    arm(count) {
      left = count;
    },
    pass,
    pullIfArmed() {
      if (left !== undefined) pull();
    },
    get isPulled() {
      return copy !== undefined;
    },
    pulled() {
      const at = copy;
      copy = undefined;
      return at;
    },
    remove() {
      Object.assign(statement, whole);
    },
  };
}
