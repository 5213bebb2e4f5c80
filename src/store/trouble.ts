import Database from 'better-sqlite3';

/** What is wrong with the file the records are kept in. */
export type StoreTroubleCode =
  | 'no-folder'
  | 'locked'
  | 'newer'
  | 'corrupt'
  | 'not-ours'
  | 'read-only'
  | 'full'
  | 'other';

/**
 * The records cannot be kept or read. The message is one plain sentence for the person who starts the program: what is
 * wrong and what to do about it.
 */
export class StoreTrouble extends Error {
  override readonly name = 'StoreTrouble';
  readonly code: StoreTroubleCode;

  constructor(code: StoreTroubleCode, message: string, options: { readonly cause?: unknown } = {}) {
    super(message, options);
    this.code = code;
  }
}

const meanings: readonly (readonly [RegExp, StoreTroubleCode, (file: string) => string])[] = [
  [
    /^SQLITE_(BUSY|LOCKED|PROTOCOL)|^EBUSY$/,
    'locked',
    (file) => `${file} is held by another program, so close that program and try again.`,
  ],
  [
    /^SQLITE_(CORRUPT|NOTADB|FORMAT)/,
    'corrupt',
    (file) =>
      `${file} is damaged or is not a database, so restore the latest backup or name another file in FANWRIGHT_DB.`,
  ],
  [
    /^SQLITE_(READONLY|PERM|AUTH|CANTOPEN)|^(EACCES|EPERM|EROFS)$/,
    'read-only',
    (file) =>
      `${file} cannot be written, so allow writing to the file and to its folder or name another file in FANWRIGHT_DB.`,
  ],
  [
    // The index of the log is the first thing a full disk has no room for when the file is opened.
    /^SQLITE_(FULL|IOERR_SHMSIZE)|^(ENOSPC|EDQUOT)$/,
    'full',
    (file) => `There is no room left for ${file}, so free some disk space and try again.`,
  ],
  [
    /^SQLITE_IOERR/,
    'other',
    (file) => `The disk failed while ${file} was in use, so check the disk and then restore the latest backup.`,
  ],
];

/** The code of an error of the database or of the disk; any other error is somebody's mistake and has none. */
function codeOf(error: unknown): string | undefined {
  if (error instanceof Database.SqliteError) return error.code;
  if (error instanceof Error && 'errno' in error && 'code' in error) return String(error.code);
  return undefined;
}

/** An error of the database or of the disk as a `StoreTrouble`; any other error as it is. */
export function asTrouble(error: unknown, file: string): unknown {
  const code = codeOf(error);
  if (code === undefined) return error;
  const meaning = meanings.find(([pattern]) => pattern.test(code));
  if (meaning) return new StoreTrouble(meaning[1], meaning[2](file), { cause: error });
  const says = `${file} could not be used (${code}), so note what was being done and report it.`;
  return new StoreTrouble('other', says, { cause: error });
}
