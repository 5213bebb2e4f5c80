import type { Queries } from './queries.ts';
import { SheetTrouble } from './sheet-trouble.ts';

/**
 * The most rows a crew may keep of each kind: many years of honest work, and few enough that one crew cannot fill the disk
 * for the others. A job of a hundred answers every working day for four years is 100,000 facts.
 */
export const mostRows = {
  sheets: 20_000,
  facts: 100_000,
  talks: 20_000,
  walk_events: 100_000,
  photos: 20_000,
  shelf_fans: 20_000,
  crew_members: 20_000,
} as const;

export const hasRoom = (kept: Queries, table: keyof typeof mostRows, adding: number): boolean => {
  const counted = kept.first<{ rows: number }>('SELECT rows FROM row_counts WHERE scope = @scope AND kind = @table', {
    table,
  });
  return (counted?.rows ?? 0) + adding <= mostRows[table];
};

/** @throws SheetTrouble `full` when the crew keeps too much already. */
export function needRoom(kept: Queries, table: keyof typeof mostRows, wanted: { sheet: number; adding: number }): void {
  if (!hasRoom(kept, table, wanted.adding)) throw new SheetTrouble('full', wanted.sheet);
}
