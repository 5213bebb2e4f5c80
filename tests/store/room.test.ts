import { describe, expect, it } from 'vitest';
import { openDatabase } from '#store/database.ts';
import { facts } from '#store/facts.ts';
import { members } from '#store/members.ts';
import { photos } from '#store/photos.ts';
import { queries, scopedQueries } from '#store/queries.ts';
import { mostRows } from '#store/room.ts';
import { sheets } from '#store/sheets.ts';
import { shelf } from '#store/shelf.ts';
import { talks } from '#store/talks.ts';
import { walkEvents } from '#store/walk-events.ts';
import { answer, clock, happened, ladder, lee, photo, shelfFan } from './workbench.ts';

const columnsOf: Readonly<Record<keyof typeof mostRows, string>> = {
  sheets: "number, state, opened_at, opened_by) SELECT 'crew', n + 1, 'open', '', ''",
  facts:
    "sheet, fact, typed, units, value, how, who, at, entered_at) SELECT 'crew', 1, '', '', '', '0', '', '', '', ''",
  talks:
    "id, channel, sheet, command, who, state, revision, turn, started_at, saved_at) SELECT 'crew', n, '', 1, '', '', '', 0, n, '', '9999'",
  walk_events:
    "id, sheet, list, what, value, who, standing, at, entered_at) SELECT 'crew', n, 1, '', '', '0', '', '{}', '', ''",
  photos: "sheet, list, message, checksum, size, who, at) SELECT 'crew', 1, '', n, '', 0, '', ''",
  shelf_fans: "name, name_folded, units, demo, who, at) SELECT 'crew', '', '', '', 0, '', ''",
  crew_members: "who, entered_by, at) SELECT 'crew', '', '', ''",
};

/** Records in which one table is as full as it may be, save for `room` rows. */
function nearlyFull(table: keyof typeof mostRows, room: number) {
  const db = openDatabase(':memory:');
  const kept = scopedQueries(queries(db, 'records.sqlite', clock()), 'crew');
  sheets(kept).openSheet({ ...ladder, name: 'Elm' });
  const already = table === 'sheets' ? 1 : 0;
  const rows = mostRows[table] - already - room;
  db.exec(
    `WITH RECURSIVE counting (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM counting WHERE n < ${rows})
     INSERT INTO ${table} (scope, ${columnsOf[table]} FROM counting`,
  );
  return { kept, other: scopedQueries(queries(db, 'records.sqlite', clock()), 'other crew') };
}

const fullWords = 'The records of this crew are full, so nothing was noted.';

describe('a crew that keeps more than it ever honestly would', () => {
  it('is told so in plain words, and nothing of the answers is kept', () => {
    const { kept, other } = nearlyFull('facts', 1);
    facts(kept).addFact(1, answer('collar', '4 in'));
    expect(() => facts(kept).addFacts(1, [answer('collar', '5 in')])).toThrow(fullWords);
    expect(facts(kept).newestFacts(1).get('collar')?.value).toBe('4 in');
    const elsewhere = sheets(other).currentSheet(ladder).number;
    expect(facts(other).addFact(elsewhere, answer('collar', '6 in')).value).toBe('6 in');
  });

  it('starts no more talks', () => {
    const { kept } = nearlyFull('talks', 0);
    const start = () => talks(kept).startTalk({ ...ladder, sheet: 1, command: 'duct', state: '{}' });
    expect(start).toThrow(fullWords);
  });

  it('opens no more jobs, and keeps what it has', () => {
    const { kept } = nearlyFull('sheets', 0);
    expect(() => sheets(kept).openSheet({ ...ladder, name: 'Oak' })).toThrow(fullWords);
    expect(sheets(kept).currentSheet(ladder).name).toBe('Elm');
  });

  it('takes no more walk-through events or photos, and acknowledges those it has', () => {
    const { kept } = nearlyFull('walk_events', 1);
    walkEvents(kept).addWalkEvent(1, happened('last'));
    expect(() => walkEvents(kept).addWalkEvent(1, happened('one more'))).toThrow(fullWords);
    expect(walkEvents(kept).addWalkEvent(1, happened('last')).fresh).toBe(false);
    expect(() => photos(nearlyFull('photos', 0).kept).addPhoto(1, photo)).toThrow(fullWords);
  });

  it('hears it when a fan or a member is not kept', () => {
    const shelves = shelf(nearlyFull('shelf_fans', 1).kept);
    expect(shelves.saveShelfFans([shelfFan('Elm'), shelfFan('Oak')], { who: 'lead' })).toBe(false);
    expect(shelves.shelfFans()).toEqual([]);
    expect(shelves.saveShelfFans([shelfFan('Elm')], { who: 'lead' })).toBe(true);
    expect(members(nearlyFull('crew_members', 0).kept).saveMember(lee, { who: 'office' })).toBe(false);
  });
});
