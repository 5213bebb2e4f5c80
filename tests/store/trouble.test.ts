import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { asTrouble, StoreTrouble } from '#store/trouble.ts';

const ofTheDisk = (code: string) => Object.assign(new Error(code), { errno: -1, code });

describe('what went wrong with the file', () => {
  // The codes are those of the SQLite documentation, "Result and error codes", and of errno(3).
  it.each([
    ['SQLITE_BUSY_SNAPSHOT', 'locked'],
    ['SQLITE_LOCKED', 'locked'],
    ['SQLITE_CORRUPT_INDEX', 'corrupt'],
    ['SQLITE_NOTADB', 'corrupt'],
    ['SQLITE_READONLY_DIRECTORY', 'read-only'],
    ['SQLITE_CANTOPEN', 'read-only'],
    ['SQLITE_FULL', 'full'],
    ['SQLITE_IOERR_SHMSIZE', 'full'],
    ['SQLITE_IOERR_WRITE', 'other'],
    ['SQLITE_CONSTRAINT_FOREIGNKEY', 'other'],
  ])('is understood from %s as %s', (code, meaning) => {
    const error = new Database.SqliteError('anything', code);
    expect(asTrouble(error, 'records.sqlite')).toMatchObject({ name: 'StoreTrouble', code: meaning, cause: error });
  });

  it.each([
    ['EACCES', 'read-only'],
    ['EROFS', 'read-only'],
    ['ENOSPC', 'full'],
    ['EIO', 'other'],
  ])('is understood from %s of the disk as %s', (code, meaning) => {
    expect(asTrouble(ofTheDisk(code), 'records.sqlite')).toMatchObject({ name: 'StoreTrouble', code: meaning });
  });

  it.each(['SQLITE_BUSY', 'SQLITE_CORRUPT', 'SQLITE_READONLY', 'SQLITE_FULL', 'SQLITE_IOERR', 'SQLITE_ERROR'])(
    'is told in one sentence with the file and what to do: %s',
    (code) => {
      const trouble = asTrouble(new Database.SqliteError('', code), 'data/records.sqlite') as StoreTrouble;
      expect(trouble).toBeInstanceOf(StoreTrouble);
      expect(trouble.message).toMatch(/data\/records\.sqlite.*, so [a-z]+ [^.]*\.$/);
    },
  );

  it('is left alone when it is a mistake in the program and not in the file', () => {
    const mistake = new TypeError('not a function');
    expect(asTrouble(mistake, 'records.sqlite')).toBe(mistake);
    expect(asTrouble('thrown text', 'records.sqlite')).toBe('thrown text');
  });
});
