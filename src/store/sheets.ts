import { containing, folded, tidied } from './names.ts';
import type { Queries } from './queries.ts';
import { needRoom } from './room.ts';
import { SheetTrouble } from './sheet-trouble.ts';

/** A job sheet: what one crew knows about one job. */
export interface Sheet {
  /** 1, 2, 3 … within a crew; never given twice, even after erasing. */
  readonly number: number;
  readonly name: string | null;
  readonly state: 'open' | 'closed';
  readonly openedAt: string;
  readonly openedBy: string;
  readonly closedAt: string | null;
  readonly closedBy: string | null;
}

/** What happened to a sheet as a whole. `detail` is the new name, or the channel the sheet came to. */
export interface SheetEvent {
  readonly what: 'opened' | 'used' | 'renamed' | 'closed' | 'reopened' | 'imported';
  readonly detail: string | null;
  readonly who: string;
  readonly at: string;
}

interface SheetSearch {
  readonly limit: number;
  readonly state?: 'open' | 'closed' | undefined;
  /** Part of a name, in any letters, or a number. */
  readonly search?: string | undefined;
}

export interface Sheets {
  /** Opens a sheet and lays it open in the channel. @throws SheetTrouble when the records are full. */
  openSheet(opening: { channel: string; name?: string | null | undefined; who: string }): Sheet;
  /** The sheet that lies open in the channel. One without a name is opened when there is none, so a quick question needs no job. */
  currentSheet(asking: { channel: string; who: string }): Sheet;
  /** @throws SheetTrouble when the sheet is not there or is closed. */
  useSheet(using: { channel: string; sheet: number; who: string }): Sheet;
  /** Puts the channel's sheet aside, still open, and lays out a clean one without a name. */
  freshSheet(opening: { channel: string; who: string }): Sheet;
  /** Newest first. */
  listSheets(wanted: SheetSearch): Sheet[];
  /** When somebody last opened it, said something on it or took a step of its swap. @throws SheetTrouble when the sheet is not there. */
  lastUse(sheet: number): string;
  /** By number (`7`, `#7`), else by whole name in any letters: of several alike an open one, then the newest. */
  findSheet(nameOrNumber: string | number): Sheet | undefined;
  /** A channel where it lay open starts on a clean sheet next. @throws SheetTrouble when the sheet is not there. */
  closeSheet(sheet: number, closing: { who: string }): Sheet;
  /** @throws SheetTrouble when the sheet is not there. */
  reopenSheet(sheet: number, reopening: { who: string }): Sheet;
  /** `null` takes the name away. @throws SheetTrouble when the sheet is not there. */
  renameSheet(sheet: number, renaming: { name: string | null; who: string }): Sheet;
}

const columns = `number, name, state, opened_at AS openedAt, opened_by AS openedBy, closed_at AS closedAt,
  closed_by AS closedBy`;

const tidiedOrNone = (name: string | null | undefined): string | null => tidied(name ?? '') || null;

const numberIn = (text: string): number | undefined => {
  const digits = /^#?\s*(\d{1,9})$/.exec(text)?.[1];
  return digits === undefined ? undefined : Number(digits);
};

const sheetNumbered = (kept: Queries, sheet: number): Sheet | undefined =>
  kept.first<Sheet>(`SELECT ${columns} FROM sheets WHERE scope = @scope AND number = @sheet`, { sheet });

/** @throws SheetTrouble when the sheet is not there. */
export function existingSheet(kept: Queries, number: number): Sheet {
  const sheet = sheetNumbered(kept, number);
  if (!sheet) throw new SheetTrouble('no-such-sheet', number);
  return sheet;
}

/** @throws SheetTrouble when the sheet is not there or is closed. */
export function writableSheet(kept: Queries, number: number): Sheet {
  const sheet = existingSheet(kept, number);
  if (sheet.state === 'closed') throw new SheetTrouble('closed', number);
  return sheet;
}

/** Everything that happened to a sheet as a whole, in order. */
export const sheetEvents = (kept: Queries, sheet: number): SheetEvent[] =>
  kept.all<SheetEvent>(
    'SELECT what, detail, who, at FROM sheet_events WHERE scope = @scope AND sheet = @sheet ORDER BY id',
    { sheet },
  );

/** Gives a crew its row, which every other row hangs on. */
export function enrol(kept: Queries): void {
  kept.change('INSERT INTO crews (scope, since) VALUES (@scope, @at) ON CONFLICT DO NOTHING', { at: kept.now() });
}

export function sheets(kept: Queries): Sheets {
  const record = (sheet: number, event: Omit<SheetEvent, 'at'>): void => {
    kept.change(
      `INSERT INTO sheet_events (scope, sheet, what, detail, who, at)
       VALUES (@scope, @sheet, @what, @detail, @who, @at)`,
      { ...event, sheet, at: kept.now() },
    );
  };

  const layOpen = (sheet: number, where: { channel: string; who: string }): void => {
    kept.change(
      `INSERT INTO channels (scope, channel, sheet) VALUES (@scope, @channel, @sheet)
       ON CONFLICT (scope, channel) DO UPDATE SET sheet = excluded.sheet`,
      { channel: where.channel, sheet },
    );
    record(sheet, { what: 'used', detail: where.channel, who: where.who });
  };

  const openSheet: Sheets['openSheet'] = ({ channel, name, who }) =>
    kept.together(() => {
      enrol(kept);
      needRoom(kept, 'sheets', { sheet: 0, adding: 1 });
      kept.change('UPDATE crews SET sheets_opened = sheets_opened + 1 WHERE scope = @scope');
      const clean = tidiedOrNone(name);
      kept.change(
        `INSERT INTO sheets (scope, number, name, name_folded, state, opened_at, opened_by)
         SELECT scope, sheets_opened, @name, @folded, 'open', @at, @who FROM crews WHERE scope = @scope`,
        { name: clean, folded: clean && folded(clean), at: kept.now(), who },
      );
      const row = kept.first<{ number: number }>('SELECT sheets_opened AS number FROM crews WHERE scope = @scope');
      const number = row?.number ?? 0;
      record(number, { what: 'opened', detail: clean, who });
      layOpen(number, { channel, who });
      return existingSheet(kept, number);
    });

  return {
    openSheet,

    freshSheet: ({ channel, who }) => openSheet({ channel, who }),

    currentSheet: ({ channel, who }) =>
      kept.together(() => {
        const current = kept.first<Sheet>(
          `SELECT ${columns} FROM channels JOIN sheets USING (scope)
           WHERE scope = @scope AND channel = @channel AND number = sheet AND state = 'open'`,
          { channel },
        );
        return current ?? openSheet({ channel, who });
      }),

    useSheet: ({ channel, sheet, who }) =>
      kept.together(() => {
        const wanted = writableSheet(kept, sheet);
        layOpen(sheet, { channel, who });
        return wanted;
      }),

    listSheets({ limit, state = undefined, search = '' }) {
      const wanted = folded(tidied(search));
      return kept.all<Sheet>(
        `SELECT ${columns} FROM sheets
         WHERE scope = @scope AND (@state IS NULL OR state = @state)
           AND (@part IS NULL OR number = @number OR name_folded LIKE @part ESCAPE '\\')
         ORDER BY number DESC LIMIT @limit`,
        {
          state: state ?? null,
          part: wanted === '' ? null : containing(wanted),
          number: numberIn(wanted) ?? null,
          limit: Math.max(0, Math.floor(limit)),
        },
      );
    },

    lastUse(number) {
      const { openedAt } = existingSheet(kept, number);
      const last = kept.first<{ at: string | null }>(
        `SELECT max(at) AS at FROM (
           SELECT max(at) AS at FROM sheet_events WHERE scope = @scope AND sheet = @number
           UNION ALL SELECT max(entered_at) FROM facts WHERE scope = @scope AND sheet = @number
           UNION ALL SELECT max(entered_at) FROM walk_events WHERE scope = @scope AND sheet = @number)`,
        { number },
      );
      return last?.at ?? openedAt;
    },

    findSheet(nameOrNumber) {
      const wanted = folded(tidied(String(nameOrNumber)));
      const number = numberIn(wanted);
      const numbered = number === undefined ? undefined : sheetNumbered(kept, number);
      return (
        numbered ??
        kept.first<Sheet>(
          `SELECT ${columns} FROM sheets WHERE scope = @scope AND name_folded = @wanted
           ORDER BY state = 'open' DESC, number DESC LIMIT 1`,
          { wanted },
        )
      );
    },

    closeSheet: (number, { who }) =>
      kept.together(() => {
        if (existingSheet(kept, number).state === 'open') {
          kept.change(
            `UPDATE sheets SET state = 'closed', closed_at = @at, closed_by = @who
             WHERE scope = @scope AND number = @number`,
            { number, who, at: kept.now() },
          );
          record(number, { what: 'closed', detail: null, who });
        }
        return existingSheet(kept, number);
      }),

    reopenSheet: (number, { who }) =>
      kept.together(() => {
        if (existingSheet(kept, number).state === 'closed') {
          kept.change(
            `UPDATE sheets SET state = 'open', closed_at = NULL, closed_by = NULL
             WHERE scope = @scope AND number = @number`,
            { number },
          );
          record(number, { what: 'reopened', detail: null, who });
        }
        return existingSheet(kept, number);
      }),

    renameSheet: (number, { name, who }) =>
      kept.together(() => {
        existingSheet(kept, number);
        const clean = tidiedOrNone(name);
        kept.change('UPDATE sheets SET name = @name, name_folded = @folded WHERE scope = @scope AND number = @number', {
          number,
          name: clean,
          folded: clean && folded(clean),
        });
        record(number, { what: 'renamed', detail: clean, who });
        return existingSheet(kept, number);
      }),
  };
}
