/** One step in the life of the file. */
export interface Migration {
  /** What it brings, in a few words; named when the step fails. */
  readonly brings: string;
  readonly sql: string;
}

/** Keeps the count of a table's rows as they come and go. */
const counting = (table: string): string => `
      CREATE TRIGGER ${table}_counted AFTER INSERT ON ${table} BEGIN
        INSERT INTO row_counts (scope, kind, rows) VALUES (NEW.scope, '${table}', 1)
          ON CONFLICT (scope, kind) DO UPDATE SET rows = rows + 1;
      END;
      CREATE TRIGGER ${table}_uncounted AFTER DELETE ON ${table} BEGIN
        UPDATE row_counts SET rows = rows - 1 WHERE scope = OLD.scope AND kind = '${table}';
      END;
`;

/** The same, beginning with the rows that are there. */
const countedTable = (table: string): string => `${counting(table).trimEnd()}
      INSERT INTO row_counts SELECT scope, '${table}', count(*) FROM ${table} GROUP BY scope;
`;

/**
 * Every step from an empty file to the present one, in order. To add one, put it at the end; the version of a file is how
 * many of these it has been through. A step that has been released is never changed again.
 *
 * House rules for a new table: STRICT; a `scope` column and a foreign key that leads to `crews` (by way of `sheets` where
 * the row belongs to a job), both with ON DELETE CASCADE, so that erasing a job or a crew reaches it by itself; a trigger
 * against UPDATE where the rows are what a person said; and its columns in which somebody can be named listed in
 * `forget.ts`. Foreign keys are off while a step works, so a table can be rebuilt without losing the rows that point at it,
 * and they are checked before the step counts.
 */
export const migrations: readonly Migration[] = [
  {
    brings: 'job sheets and facts',
    sql: `
      -- Who keeps records here: one row for each Discord server, one for the terminal. Everything hangs on it.
      CREATE TABLE crews (
        scope TEXT NOT NULL PRIMARY KEY CHECK (scope <> ''),
        -- Counts on past an erased sheet, so a job number never comes to mean another job.
        sheets_opened INTEGER NOT NULL DEFAULT 0,
        since TEXT NOT NULL
      ) STRICT;

      CREATE TABLE sheets (
        scope TEXT NOT NULL REFERENCES crews (scope) ON DELETE CASCADE,
        number INTEGER NOT NULL,
        name TEXT,
        -- The name in small letters without accents, to be found by.
        name_folded TEXT,
        state TEXT NOT NULL CHECK (state IN ('open', 'closed')),
        opened_at TEXT NOT NULL,
        opened_by TEXT NOT NULL,
        closed_at TEXT,
        closed_by TEXT,
        PRIMARY KEY (scope, number)
      ) STRICT;

      -- What happened to a sheet as a whole, and who did it.
      CREATE TABLE sheet_events (
        id INTEGER PRIMARY KEY,
        scope TEXT NOT NULL,
        sheet INTEGER NOT NULL,
        what TEXT NOT NULL,
        -- The new name, or the channel the sheet came to.
        detail TEXT,
        who TEXT NOT NULL,
        at TEXT NOT NULL,
        FOREIGN KEY (scope, sheet) REFERENCES sheets (scope, number) ON DELETE CASCADE
      ) STRICT;
      CREATE INDEX sheet_events_of_sheet ON sheet_events (scope, sheet, id);
      CREATE TRIGGER sheet_events_stay BEFORE UPDATE ON sheet_events
        BEGIN SELECT RAISE(ABORT, 'what happened to a sheet is never changed'); END;

      -- Which sheet lies open in a channel.
      CREATE TABLE channels (
        scope TEXT NOT NULL,
        channel TEXT NOT NULL,
        sheet INTEGER NOT NULL,
        PRIMARY KEY (scope, channel),
        FOREIGN KEY (scope, sheet) REFERENCES sheets (scope, number) ON DELETE CASCADE
      ) STRICT;
      CREATE INDEX channels_of_sheet ON channels (scope, sheet);

      CREATE TABLE facts (
        id INTEGER PRIMARY KEY,
        scope TEXT NOT NULL,
        sheet INTEGER NOT NULL,
        fact TEXT NOT NULL,
        typed TEXT NOT NULL,
        units TEXT NOT NULL,
        value TEXT NOT NULL CHECK (json_valid(value)),
        how TEXT NOT NULL,
        who TEXT NOT NULL,
        -- When it was so, and when it was entered: an attic has no signal.
        at TEXT NOT NULL,
        entered_at TEXT NOT NULL,
        UNIQUE (scope, sheet, id),
        FOREIGN KEY (scope, sheet) REFERENCES sheets (scope, number) ON DELETE CASCADE
      ) STRICT;
      CREATE TRIGGER facts_stay BEFORE UPDATE ON facts
        BEGIN SELECT RAISE(ABORT, 'a fact is never changed'); END;

      -- A fact taken back. The fact stays where it is and stops counting.
      CREATE TABLE retractions (
        id INTEGER PRIMARY KEY,
        scope TEXT NOT NULL,
        sheet INTEGER NOT NULL,
        fact_row INTEGER NOT NULL,
        who TEXT NOT NULL,
        at TEXT NOT NULL,
        UNIQUE (scope, sheet, fact_row),
        FOREIGN KEY (scope, sheet, fact_row) REFERENCES facts (scope, sheet, id) ON DELETE CASCADE
      ) STRICT;
      CREATE TRIGGER retractions_stay BEFORE UPDATE ON retractions
        BEGIN SELECT RAISE(ABORT, 'a retraction is never changed'); END;
    `,
  },
  {
    brings: 'conversations in progress',
    sql: `
      CREATE TABLE talks (
        id TEXT NOT NULL PRIMARY KEY,
        scope TEXT NOT NULL,
        channel TEXT NOT NULL,
        sheet INTEGER NOT NULL,
        command TEXT NOT NULL,
        who TEXT NOT NULL,
        state TEXT NOT NULL,
        revision INTEGER NOT NULL,
        -- Rises with every start and save in a scope: says which talk was touched last, whatever the clock does.
        turn INTEGER NOT NULL,
        started_at TEXT NOT NULL,
        saved_at TEXT NOT NULL,
        ended_at TEXT,
        FOREIGN KEY (scope, sheet) REFERENCES sheets (scope, number) ON DELETE CASCADE
      ) STRICT;
      CREATE INDEX talks_of_sheet ON talks (scope, sheet);
      CREATE INDEX talks_of_person ON talks (scope, channel, who, turn);
      CREATE INDEX talks_by_turn ON talks (scope, turn);
    `,
  },
  {
    brings: 'crew settings and small notes',
    sql: `
      CREATE TABLE settings (
        id INTEGER PRIMARY KEY,
        scope TEXT NOT NULL REFERENCES crews (scope) ON DELETE CASCADE,
        key TEXT NOT NULL,
        -- Empty where the setting was taken away.
        value TEXT,
        who TEXT NOT NULL,
        at TEXT NOT NULL
      ) STRICT;
      CREATE INDEX settings_by_key ON settings (scope, key, id);
      CREATE TRIGGER settings_stay BEFORE UPDATE ON settings
        BEGIN SELECT RAISE(ABORT, 'a setting is appended, never changed'); END;

      -- Events already acted on, so that one delivered twice is acted on once. Kept for a day.
      CREATE TABLE seen (
        interaction TEXT NOT NULL PRIMARY KEY,
        at TEXT NOT NULL
      ) STRICT;
      CREATE INDEX seen_by_age ON seen (at);

      -- What the program notes for itself; nothing about people or jobs.
      CREATE TABLE notes (
        key TEXT NOT NULL PRIMARY KEY,
        value TEXT NOT NULL,
        at TEXT NOT NULL
      ) STRICT;
    `,
  },
  {
    brings: 'the crew and its shelf of fans',
    sql: `
      -- Who belongs to the crew, what they are there and what they are qualified for. The newest row of a person counts.
      CREATE TABLE crew_members (
        id INTEGER PRIMARY KEY,
        scope TEXT NOT NULL REFERENCES crews (scope) ON DELETE CASCADE,
        who TEXT NOT NULL,
        -- Empty where the person has left the crew.
        entry TEXT CHECK (entry IS NULL OR json_valid(entry)),
        entered_by TEXT NOT NULL,
        at TEXT NOT NULL
      ) STRICT;
      CREATE INDEX crew_members_by_person ON crew_members (scope, who, id);
      CREATE TRIGGER crew_members_stay BEFORE UPDATE ON crew_members
        BEGIN SELECT RAISE(ABORT, 'what a member of the crew was is never changed'); END;

      -- The crew's own fans, by what their labels say. The newest row of a name counts.
      CREATE TABLE shelf_fans (
        id INTEGER PRIMARY KEY,
        scope TEXT NOT NULL REFERENCES crews (scope) ON DELETE CASCADE,
        name TEXT NOT NULL,
        name_folded TEXT NOT NULL,
        -- Empty where the fan was taken off the shelf.
        label TEXT CHECK (label IS NULL OR json_valid(label)),
        units TEXT NOT NULL,
        -- Invented, to try things with.
        demo INTEGER NOT NULL CHECK (demo IN (0, 1)),
        who TEXT NOT NULL,
        at TEXT NOT NULL
      ) STRICT;
      CREATE INDEX shelf_fans_by_name ON shelf_fans (scope, name_folded, id);
      CREATE TRIGGER shelf_fans_stay BEFORE UPDATE ON shelf_fans
        BEGIN SELECT RAISE(ABORT, 'a fan on the shelf is appended, never changed'); END;

      -- For letting go of conversations that are long over.
      CREATE INDEX talks_by_end ON talks (scope, ended_at);
      CREATE INDEX talks_by_age ON talks (scope, saved_at);
    `,
  },
  {
    brings: 'walk-throughs and their photos',
    sql: `
      CREATE TABLE walk_events (
        row INTEGER PRIMARY KEY,
        scope TEXT NOT NULL,
        -- Given by whoever reports it, so that one reported twice happens once.
        id TEXT NOT NULL,
        sheet INTEGER NOT NULL,
        list TEXT NOT NULL,
        -- Empty for what happens to the list as a whole.
        step TEXT,
        what TEXT NOT NULL,
        value TEXT NOT NULL CHECK (json_valid(value)),
        who TEXT NOT NULL,
        -- What the person was in the crew, and qualified for, at that moment.
        standing TEXT NOT NULL CHECK (json_valid(standing)),
        at TEXT NOT NULL,
        entered_at TEXT NOT NULL,
        UNIQUE (scope, id),
        FOREIGN KEY (scope, sheet) REFERENCES sheets (scope, number) ON DELETE CASCADE
      ) STRICT;
      CREATE INDEX walk_events_of_list ON walk_events (scope, sheet, list, row);
      CREATE TRIGGER walk_events_stay BEFORE UPDATE ON walk_events
        BEGIN SELECT RAISE(ABORT, 'what happened on a walk-through is never changed'); END;

      -- Where a photo lies and how to know it again; the picture itself stays where it was sent.
      CREATE TABLE photos (
        id INTEGER PRIMARY KEY,
        scope TEXT NOT NULL,
        sheet INTEGER NOT NULL,
        list TEXT NOT NULL,
        step TEXT,
        message TEXT NOT NULL,
        checksum TEXT NOT NULL,
        size INTEGER NOT NULL CHECK (size >= 0),
        who TEXT NOT NULL,
        at TEXT NOT NULL,
        UNIQUE (scope, sheet, message, checksum),
        FOREIGN KEY (scope, sheet) REFERENCES sheets (scope, number) ON DELETE CASCADE
      ) STRICT;
      CREATE TRIGGER photos_stay BEFORE UPDATE ON photos
        BEGIN SELECT RAISE(ABORT, 'the record of a photo is never changed'); END;
    `,
  },
  {
    brings: 'counts of what each crew keeps',
    sql: `
      CREATE INDEX sheets_by_name ON sheets (scope, name_folded, number);

      -- How many rows of each kind a crew keeps, so that nothing has to be counted to know whether there is room for more.
      CREATE TABLE row_counts (
        scope TEXT NOT NULL REFERENCES crews (scope) ON DELETE CASCADE,
        kind TEXT NOT NULL,
        rows INTEGER NOT NULL,
        PRIMARY KEY (scope, kind)
      ) STRICT, WITHOUT ROWID;

${['sheets', 'facts', 'talks', 'walk_events', 'photos', 'shelf_fans', 'crew_members'].map(countedTable).join('')}    `,
  },
  {
    brings: 'one photo on several steps',
    sql: `
      CREATE TABLE photos_of_steps (
        id INTEGER PRIMARY KEY,
        scope TEXT NOT NULL,
        sheet INTEGER NOT NULL,
        list TEXT NOT NULL,
        step TEXT,
        -- Where it lies: in the words of the platform, or the name of its file in a terminal.
        message TEXT NOT NULL,
        checksum TEXT NOT NULL,
        size INTEGER NOT NULL CHECK (size >= 0),
        who TEXT NOT NULL,
        at TEXT NOT NULL,
        FOREIGN KEY (scope, sheet) REFERENCES sheets (scope, number) ON DELETE CASCADE
      ) STRICT;
      INSERT INTO photos_of_steps (id, scope, sheet, list, step, message, checksum, size, who, at)
        SELECT id, scope, sheet, list, step, message, checksum, size, who, at FROM photos;
      -- The counts stay as they are: dropping a table sets off no trigger, and the new one has none yet.
      DROP TABLE photos;
      ALTER TABLE photos_of_steps RENAME TO photos;
      -- One file may show what two steps ask for; on one step it counts once.
      CREATE UNIQUE INDEX photos_once ON photos (scope, sheet, list, coalesce(step, ''), message, checksum);
      CREATE TRIGGER photos_stay BEFORE UPDATE ON photos
        BEGIN SELECT RAISE(ABORT, 'the record of a photo is never changed'); END;
${counting('photos')}    `,
  },
];
