import type Database from 'better-sqlite3';
import { asTrouble } from './trouble.ts';

type Values = Readonly<Record<string, string | number | null>>;

/** The only way to the rows. Every statement is prepared once and takes its values by name. */
export interface Queries {
  first<Row>(sql: string, values?: Values): Row | undefined;
  all<Row>(sql: string, values?: Values): Row[];
  /** How many rows were changed. */
  change(sql: string, values?: Values): number;
  /** All of the work is kept, or none of it. */
  together<Result>(work: () => Result): Result;
  /** The present moment, as it is written in a row. */
  now(): string;
}

/** @throws StoreTrouble from every query that the database refuses. */
export function queries(db: Database.Database, file: string, now: () => Date): Queries {
  const prepared = new Map<string, Database.Statement<[Values]>>();
  const statement = (sql: string) => {
    const known = prepared.get(sql);
    if (known) return known;
    const fresh = db.prepare<[Values]>(sql);
    prepared.set(sql, fresh);
    return fresh;
  };
  const guarded = <Result>(work: () => Result): Result => {
    try {
      return work();
    } catch (error) {
      throw asTrouble(error, file);
    }
  };
  const transaction = db.transaction((work: () => unknown) => work());
  return {
    first: <Row>(sql: string, values: Values = {}) => guarded(() => statement(sql).get(values) as Row | undefined),
    all: <Row>(sql: string, values: Values = {}) => guarded(() => statement(sql).all(values) as Row[]),
    change: (sql, values = {}) => guarded(() => statement(sql).run(values).changes),
    together: (work) => guarded(() => transaction.immediate(work) as ReturnType<typeof work>),
    now: () => now().toISOString(),
  };
}

/**
 * The same queries for one crew only. The scope is put in here and nowhere else, and a statement that does not use it is
 * refused, so no query can forget whose records it may touch.
 */
export function scopedQueries(whole: Queries, scope: string): Queries {
  const scoped = new Set<string>();
  const within = (sql: string, values: Values | undefined): Values => {
    if (!scoped.has(sql) && !/@scope\b/.test(sql))
      throw new Error(`this query forgets whose records it may touch: ${sql}`);
    scoped.add(sql);
    return { ...values, scope };
  };
  return {
    first: (sql, values) => whole.first(sql, within(sql, values)),
    all: (sql, values) => whole.all(sql, within(sql, values)),
    change: (sql, values) => whole.change(sql, within(sql, values)),
    together: whole.together,
    now: whole.now,
  };
}
