import Database from 'better-sqlite3';

/** Everything a file of records holds: its shape, its marks and every row of every table, as one text to compare. */
export function contentsOf(file: string): string {
  const db = new Database(file, { readonly: true, fileMustExist: true });
  try {
    const shape = db.prepare("SELECT name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite%' ORDER BY name").all();
    const tables = db
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' ORDER BY name")
      .pluck()
      .all() as string[];
    const rows = tables.flatMap((table) =>
      (db.prepare(`SELECT * FROM "${table}"`).all() as object[]).map((row) => `${table} ${JSON.stringify(row)}`),
    );
    return [
      `version ${db.pragma('user_version', { simple: true })}`,
      `mark ${db.pragma('application_id', { simple: true })}`,
      ...shape.map((each) => JSON.stringify(each)),
      ...rows.toSorted(),
    ].join('\n');
  } finally {
    db.close();
  }
}
