import { asInFile, isImported, notImported } from './imported.ts';
import { jsonText } from './json.ts';
import { members, type Standing } from './members.ts';
import type { Queries } from './queries.ts';
import { needRoom } from './room.ts';
import { writableSheet } from './sheets.ts';

/** Something that happened on a walk-through: a step done, a reading, a note, a signature, a pause. */
export interface NewWalkEvent {
  /** Given by whoever reports it, one for each thing that happened: reported twice, it happens once. */
  readonly id: string;
  readonly list: string;
  /** `null` for what happens to the list as a whole. */
  readonly step: string | null;
  readonly what: string;
  /** Anything JSON can hold. */
  readonly value: unknown;
  readonly who: string;
  /** When it was so, for an event entered late; now when left out. */
  readonly at?: Date | undefined;
}

export interface WalkEvent extends Omit<NewWalkEvent, 'at'> {
  readonly sheet: number;
  /** What the person was in the crew, and qualified for, when it was entered. */
  readonly standing: Standing;
  readonly at: string;
  readonly enteredAt: string;
}

/** An event as it is kept; `fresh` is false when it had been reported before, and then what is kept is the first report. */
interface KeptWalkEvent {
  readonly event: WalkEvent;
  readonly fresh: boolean;
}

export interface WalkEvents {
  /** @throws SheetTrouble when it is new and the sheet is not there, is closed, or the crew's records are full. */
  addWalkEvent(sheet: number, event: NewWalkEvent): KeptWalkEvent;
  /** All of them are kept, or none. @throws SheetTrouble as `addWalkEvent` does. */
  addWalkEvents(sheet: number, events: readonly NewWalkEvent[]): KeptWalkEvent[];
  /** Everything that happened here on one list of a job, or on all of them, in the order it was entered. */
  walkEvents(sheet: number, list?: string): WalkEvent[];
  /**
   * What a file that was brought in says happened, in its order and by its own names. For reading only: whoever signed there
   * has signed nothing here.
   */
  importedWalkEvents(sheet: number): WalkEvent[];
}

type Stored = Omit<WalkEvent, 'value' | 'standing'> & { readonly value: string; readonly standing: string };

const columns = 'id, sheet, list, step, what, value, who, standing, at, entered_at AS enteredAt';

const read = ({ value, standing, ...row }: Stored): WalkEvent => ({
  ...row,
  value: JSON.parse(value),
  standing: JSON.parse(standing),
});

/** What happened here and what a file says, in the order it was entered. */
export const everyWalkEvent = (kept: Queries, sheet: number): WalkEvent[] =>
  kept
    .all<Stored>(`SELECT ${columns} FROM walk_events WHERE scope = @scope AND sheet = @sheet ORDER BY row`, { sheet })
    .map(read);

export function walkEvents(kept: Queries): WalkEvents {
  const reported = (id: string): WalkEvent | undefined => {
    const row = kept.first<Stored>(`SELECT ${columns} FROM walk_events WHERE scope = @scope AND id = @id`, { id });
    return row && read(row);
  };

  const add = (sheet: number, { at, value, ...event }: NewWalkEvent): WalkEvent => {
    writableSheet(kept, sheet);
    needRoom(kept, 'walk_events', { sheet, adding: 1 });
    const enteredAt = kept.now();
    const row = kept.first<Stored>(
      `INSERT INTO walk_events (scope, id, sheet, list, step, what, value, who, standing, at, entered_at)
       VALUES (@scope, @id, @sheet, @list, @step, @what, @value, @who, @standing, @at, @enteredAt)
       RETURNING ${columns}`,
      {
        ...event,
        sheet,
        value: jsonText(value),
        standing: jsonText(members(kept).standing(event.who)),
        at: at?.toISOString() ?? enteredAt,
        enteredAt,
      },
    );
    return read(row as Stored);
  };

  const addWalkEvents: WalkEvents['addWalkEvents'] = (sheet, events) =>
    kept.together(() =>
      events.map((event) => {
        const before = reported(event.id);
        return before ? { event: before, fresh: false } : { event: add(sheet, event), fresh: true };
      }),
    );

  return {
    addWalkEvents,

    addWalkEvent: (sheet, event) => addWalkEvents(sheet, [event])[0] as KeptWalkEvent,

    walkEvents: (sheet, list) =>
      kept
        .all<Stored>(
          `SELECT ${columns} FROM walk_events
           WHERE scope = @scope AND sheet = @sheet AND (@list IS NULL OR list = @list) AND ${notImported('list')}
           ORDER BY row`,
          { sheet, list: list ?? null },
        )
        .map(read),

    importedWalkEvents: (sheet) =>
      everyWalkEvent(kept, sheet)
        .filter(({ list }) => isImported(list))
        .map(asInFile),
  };
}
