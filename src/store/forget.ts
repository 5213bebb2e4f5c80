import { asImported, isImported, withoutMark } from './imported.ts';
import type { Standing } from './members.ts';
import { type Mentions, mentionsOf, nobodyNamed } from './mentions.ts';
import { folded } from './names.ts';
import { wouldBeTwice } from './photos.ts';
import type { Queries } from './queries.ts';

/** Makes one person unknown in everything a crew keeps. */
export interface Forgetting {
  /** In how many records the names stand. */
  recordsNaming(names: readonly string[]): number;
  /**
   * Puts `someone` in place of the names wherever they stand, in who did a thing, in texts and in signatures, and takes the
   * person off the crew; the numbers of the person's licences go with the names. Really deletes, as erasing does. Cannot be
   * undone. Backups made earlier still hold the names; they must be let expire.
   *
   * @returns how many records named the person.
   */
  forgetPerson(names: readonly string[]): number;
}

type Reading = 'who' | 'text' | 'file' | 'json' | 'standing' | 'step';

/** Where people are named, column by column. */
const places: Readonly<Record<string, Readonly<Record<string, Reading>>>> = {
  sheets: { name: 'text', opened_by: 'who', closed_by: 'who' },
  sheet_events: { detail: 'text', who: 'who' },
  facts: { typed: 'text', value: 'json', who: 'who' },
  retractions: { who: 'who' },
  talks: { who: 'who', state: 'json' },
  settings: { value: 'text', who: 'who' },
  crew_members: { entry: 'json', entered_by: 'who' },
  shelf_fans: { name: 'text', label: 'json', who: 'who' },
  walk_events: { step: 'step', value: 'json', who: 'who', standing: 'standing' },
  photos: { step: 'step', message: 'file', who: 'who' },
};

type Row = Readonly<Record<string, string | null>> & { readonly at_row: never };

/** Rows are read in pieces, so that years of records need not fit in memory at once. */
const rowsAtOnce = 1000;

function* rowsOf(kept: Queries, table: string, columns: readonly string[]): Generator<[row: number, values: Row]> {
  let after = -1;
  for (;;) {
    const rows = kept.all<Row & { readonly at_row: number }>(
      `SELECT rowid AS at_row, ${columns.join(', ')} FROM ${table}
       WHERE scope = @scope AND rowid > @after ORDER BY rowid LIMIT ${rowsAtOnce}`,
      { after },
    );
    for (const row of rows) yield [row.at_row, row];
    after = rows.at(-1)?.at_row ?? after;
    if (rows.length < rowsAtOnce) return;
  }
}

/** What a person was is part of the record of what they signed; who they were and the numbers of their licences are not. */
function unsigned(standing: string): string {
  const { qualifications, ...rest } = JSON.parse(standing) as Standing;
  return JSON.stringify({
    ...rest,
    name: nobodyNamed,
    qualifications: qualifications.map((each) => ({ ...each, number: nobodyNamed })),
  });
}

/** Who did a thing, here or as a file says. */
const whoWithout = (mentions: Mentions, who: string): string =>
  isImported(who) ? asImported(mentions.asWho(withoutMark(who))) : mentions.asWho(who);

/** A step that everybody does for themselves has the person behind its name: `own-lock@Ana`. */
function stepWithout(mentions: Mentions, step: string): string {
  const at = step.indexOf('@') + 1;
  return at === 0 ? step : step.slice(0, at) + mentions.inText(step.slice(at));
}

function replaced(mentions: Mentions, reading: Reading, { text, who }: { text: string; who: string }): string {
  switch (reading) {
    case 'who':
      return whoWithout(mentions, text);
    case 'text':
      return mentions.inText(text);
    case 'file':
      return mentions.inFileName(text);
    case 'step':
      return stepWithout(mentions, text);
    case 'standing':
      return whoWithout(mentions, who) === who ? mentions.inJson(text) : unsigned(text);
    case 'json':
      return mentions.inJson(text);
  }
}

/** The columns of a row that name somebody, as they would read without the name. */
function renamed(mentions: Mentions, columns: Readonly<Record<string, Reading>>, row: Row): Record<string, string> {
  const changes: Record<string, string> = {};
  for (const [column, reading] of Object.entries(columns)) {
    const text = row[column];
    if (typeof text !== 'string') continue;
    const now = replaced(mentions, reading, { text, who: row['who'] ?? '' });
    if (now !== text) changes[column] = now;
  }
  const name = changes['name'];
  return name === undefined ? changes : { ...changes, name_folded: folded(name) };
}

/** @param onErased Clears what deleting leaves in the file. */
export function forgetting(
  kept: Queries,
  { unguarded, onErased }: { unguarded: <Result>(work: () => Result) => Result; onErased: () => void },
): Forgetting {
  /** The rows that say what the person is in the crew, with every name the person goes by in them. */
  const ownRows = (names: readonly string[]): { rows: ReadonlySet<number>; names: readonly string[] } => {
    const mentions = mentionsOf(names);
    const meant = (text: string) => mentions.asWho(text) !== text;
    const own = kept
      .all<{ row: number; who: string; name: string | null }>(
        "SELECT id AS row, who, entry ->> '$.name' AS name FROM crew_members WHERE scope = @scope",
      )
      .filter(({ who, name }) => meant(who) || (name !== null && meant(name)));
    return {
      rows: new Set(own.map(({ row }) => row)),
      names: [...names, ...own.flatMap(({ who, name }) => (name === null ? [who] : [who, name]))],
    };
  };

  /** Every record that names the person, with how it reads without the name. */
  function* naming(own: ReturnType<typeof ownRows>) {
    const mentions = mentionsOf(own.names);
    for (const [table, columns] of Object.entries(places)) {
      for (const [row, values] of rowsOf(kept, table, Object.keys(columns))) {
        if (table === 'crew_members' && own.rows.has(row)) continue;
        const changes = renamed(mentions, columns, values);
        if (Object.keys(changes).length > 0) yield { table, row, changes };
      }
    }
  }

  return {
    recordsNaming(names) {
      const own = ownRows(names);
      return own.rows.size + [...naming(own)].length;
    },

    forgetPerson(names) {
      const records = unguarded(() => {
        const own = ownRows(names);
        let changed = own.rows.size;
        for (const { table, row, changes } of naming(own)) {
          changed += 1;
          if (table === 'photos' && wouldBeTwice(kept, row, changes)) {
            kept.change('DELETE FROM photos WHERE scope = @scope AND id = @row', { row });
            continue;
          }
          const set = Object.keys(changes).map((column) => `${column} = @${column}`);
          kept.change(`UPDATE ${table} SET ${set.join(', ')} WHERE scope = @scope AND rowid = @row`, {
            ...changes,
            row,
          });
        }
        for (const row of own.rows) kept.change('DELETE FROM crew_members WHERE scope = @scope AND id = @row', { row });
        return changed;
      });
      onErased();
      return records;
    },
  };
}
