import { type FactInHistory, facts } from './facts.ts';
import { everyPhoto, type Photo } from './photos.ts';
import type { Queries } from './queries.ts';
import { existingSheet, type Sheet, type SheetEvent, sheetEvents } from './sheets.ts';
import type { Talk } from './talks.ts';
import { everyWalkEvent, type WalkEvent } from './walk-events.ts';

/** Everything kept about one job, as plain JSON. */
export interface SheetRecord {
  readonly sheet: Sheet;
  readonly events: readonly SheetEvent[];
  /** Every fact ever entered, the ones taken back among them. */
  readonly facts: readonly FactInHistory[];
  readonly talks: readonly Pick<Talk, 'command' | 'channel' | 'who' | 'state' | 'startedAt' | 'savedAt' | 'endedAt'>[];
  /** Everything that happened on its walk-throughs, here or as a file says, with what each person was qualified for at the time. */
  readonly walkEvents: readonly WalkEvent[];
  readonly photos: readonly Photo[];
}

/** @throws SheetTrouble when the sheet is not there. */
export const sheetRecord = (kept: Queries, sheet: number): SheetRecord =>
  kept.together(() => ({
    sheet: existingSheet(kept, sheet),
    events: sheetEvents(kept, sheet),
    facts: facts(kept).factHistory(sheet),
    // The id of a talk opens its buttons, so it stays at home.
    talks: kept.all<SheetRecord['talks'][number]>(
      `SELECT command, channel, who, state, started_at AS startedAt, saved_at AS savedAt, ended_at AS endedAt
       FROM talks WHERE scope = @scope AND sheet = @sheet ORDER BY turn`,
      { sheet },
    ),
    walkEvents: everyWalkEvent(kept, sheet),
    photos: everyPhoto(kept, sheet),
  }));
