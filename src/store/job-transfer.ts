import type { Reading } from '#interview/question.ts';
import { asImported, isImported } from './imported.ts';
import { type JobFile, jobFileHead, readJobFile } from './job-file.ts';
import { jsonText } from './json.ts';
import { folded, tidied } from './names.ts';
import type { Queries } from './queries.ts';
import { sheetRecord } from './record.ts';
import { needRoom } from './room.ts';
import { enrol, existingSheet, type Sheet } from './sheets.ts';

/** Takes a job away as a file, and brings one in. */
export interface JobTransfer {
  /**
   * Everything said and done on a job, the facts taken back among it; `importJob` reads it. Questions that are still being
   * asked stay where they are asked.
   *
   * @throws SheetTrouble when the sheet is not there.
   */
  exportJob(sheet: number): JobFile;
  /**
   * Makes a new sheet of a job file, all of it or nothing. It lies open in no channel. Everything in it is marked as imported,
   * so that no name in it is taken for somebody of this crew and no list in it for one that is walked here.
   *
   * @returns the sheet, or why the file will not do in one sentence.
   * @throws SheetTrouble when the crew's records are full.
   */
  importJob(text: string, importing: { who: string }): Reading<Sheet>;
}

/** Ids are one crew's own: a file that comes in twice must not be taken for something reported twice. */
const idHere = (sheet: number, id: string): string => `imported ${sheet}: ${id}`;
const idInFile = ({ list, id }: { list: string; id: string }): string =>
  isImported(list) ? id.replace(/^imported \d+: /, '') : id;

export function jobTransfer(kept: Queries): JobTransfer {
  return {
    exportJob(number) {
      const { sheet, events, facts, walkEvents, photos } = sheetRecord(kept, number);
      const { number: _, ...job } = sheet;
      return {
        ...jobFileHead,
        job,
        events: events.flatMap(({ what, ...event }) => (what === 'used' ? [] : [{ what, ...event }])),
        facts: facts.map(({ id: __, ...fact }) => fact),
        walkEvents: walkEvents.map(({ sheet: __, standing, ...event }) => ({
          ...event,
          id: idInFile(event),
          standing: {
            ...standing,
            kinds: [...standing.kinds],
            qualifications: [...standing.qualifications],
          },
        })),
        photos: photos.map(({ id: __, ...photo }) => photo),
      };
    },

    importJob(text, { who }) {
      const read = readJobFile(text, new Date(kept.now()));
      return 'rejected' in read ? read : { value: kept.together(() => newSheet(kept, read.value, who)) };
    },
  };
}

function newSheet(kept: Queries, file: JobFile, who: string): Sheet {
  enrol(kept);
  const tables = {
    sheets: 1,
    facts: file.facts.length,
    walk_events: file.walkEvents.length,
    photos: file.photos.length,
  };
  for (const [table, adding] of Object.entries(tables)) {
    needRoom(kept, table as keyof typeof tables, { sheet: 0, adding });
  }
  kept.change('UPDATE crews SET sheets_opened = sheets_opened + 1 WHERE scope = @scope');
  const row = kept.first<{ sheet: number }>('SELECT sheets_opened AS sheet FROM crews WHERE scope = @scope');
  const sheet = row?.sheet ?? 0;
  const { job } = file;
  const name = tidied(job.name ?? '') || null;
  kept.change(
    `INSERT INTO sheets (scope, number, name, name_folded, state, opened_at, opened_by, closed_at, closed_by)
     VALUES (@scope, @sheet, @name, @folded, @state, @openedAt, @openedBy, @closedAt, @closedBy)`,
    {
      ...job,
      sheet,
      name,
      folded: name && folded(name),
      openedBy: asImported(job.openedBy),
      closedBy: job.closedBy && asImported(job.closedBy),
    },
  );
  addEvents(kept, sheet, [...file.events, { what: 'imported', detail: null, who, at: kept.now() }]);
  for (const fact of file.facts) addFact(kept, sheet, fact);
  for (const event of file.walkEvents) addWalkEvent(kept, sheet, event);
  for (const photo of file.photos) {
    // A file may say of one photo that it was hung there and that it came in by a file before: here that is the same.
    kept.change(
      `INSERT INTO photos (scope, sheet, list, step, message, checksum, size, who, at)
       VALUES (@scope, @sheet, @list, @step, @message, @checksum, @size, @who, @at) ON CONFLICT DO NOTHING`,
      { ...photo, sheet, list: asImported(photo.list), who: asImported(photo.who) },
    );
  }
  return existingSheet(kept, sheet);
}

/** The last one is ours: it was brought in, and by whom. */
function addEvents(kept: Queries, sheet: number, events: JobFile['events']): void {
  events.forEach(({ who, ...event }, index) => {
    kept.change(
      `INSERT INTO sheet_events (scope, sheet, what, detail, who, at)
       VALUES (@scope, @sheet, @what, @detail, @who, @at)`,
      { ...event, sheet, who: index === events.length - 1 ? who : asImported(who) },
    );
  });
}

function addFact(kept: Queries, sheet: number, { retracted, who, value, ...fact }: JobFile['facts'][number]): void {
  const row = kept.first<{ id: number }>(
    `INSERT INTO facts (scope, sheet, fact, typed, units, value, how, who, at, entered_at)
     VALUES (@scope, @sheet, @fact, @typed, @units, @value, @how, @who, @at, @enteredAt) RETURNING id`,
    { ...fact, sheet, value: jsonText(value), who: asImported(who) },
  );
  if (retracted === null) return;
  kept.change('INSERT INTO retractions (scope, sheet, fact_row, who, at) VALUES (@scope, @sheet, @fact, @who, @at)', {
    sheet,
    fact: row?.id ?? 0,
    who: asImported(retracted.who),
    at: retracted.at,
  });
}

function addWalkEvent(kept: Queries, sheet: number, event: JobFile['walkEvents'][number]): void {
  kept.change(
    `INSERT INTO walk_events (scope, id, sheet, list, step, what, value, who, standing, at, entered_at)
     VALUES (@scope, @id, @sheet, @list, @step, @what, @value, @who, @standing, @at, @enteredAt)`,
    {
      ...event,
      id: idHere(sheet, event.id),
      sheet,
      list: asImported(event.list),
      who: asImported(event.who),
      value: jsonText(event.value),
      standing: jsonText(event.standing),
    },
  );
}
