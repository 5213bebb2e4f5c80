import Database from 'better-sqlite3';

/**
 * Loaded before the program in a process of its own: from the moment the records are open, the disk has no more room. The
 * database itself then says so in the way it does of a real disk.
 */
const prepare = Database.prototype.prepare;
const full = new WeakSet<Database.Database>();

Database.prototype.prepare = function (this: Database.Database, sql: string) {
  if (!full.has(this) && this.name.endsWith('full.sqlite')) {
    full.add(this);
    this.pragma(`max_page_count = ${this.pragma('page_count', { simple: true })}`);
  }
  return prepare.call(this, sql);
} as typeof prepare;
