import { notImported } from './imported.ts';
import type { Queries } from './queries.ts';
import { needRoom } from './room.ts';
import { writableSheet } from './sheets.ts';

/** A photo somebody sent: where it lies and how to know it again. The picture itself is not kept here. */
export interface NewPhoto {
  readonly list: string;
  readonly step: string | null;
  /** Where it lies, in the platform's own words. */
  readonly message: string;
  /** Of its bytes, so that a photo changed later is known. */
  readonly checksum: string;
  /** In bytes. */
  readonly size: number;
  readonly who: string;
}

export interface Photo extends NewPhoto {
  readonly id: number;
  readonly at: string;
}

export interface Photos {
  /**
   * The same photo of the same message is kept once.
   *
   * @throws SheetTrouble when the sheet is not there, is closed, or the crew's records are full.
   */
  addPhoto(sheet: number, photo: NewPhoto): Photo;
  /** Those sent here, in the order they were sent. */
  photos(sheet: number): Photo[];
}

const columns = 'id, list, step, message, checksum, size, who, at';

/** Those sent here and those a file speaks of. */
export const everyPhoto = (kept: Queries, sheet: number): Photo[] =>
  kept.all<Photo>(`SELECT ${columns} FROM photos WHERE scope = @scope AND sheet = @sheet ORDER BY id`, { sheet });

export function photos(kept: Queries): Photos {
  return {
    addPhoto: (sheet, photo) =>
      kept.together(() => {
        writableSheet(kept, sheet);
        needRoom(kept, 'photos', { sheet, adding: 1 });
        kept.change(
          `INSERT INTO photos (scope, sheet, list, step, message, checksum, size, who, at)
           VALUES (@scope, @sheet, @list, @step, @message, @checksum, @size, @who, @at) ON CONFLICT DO NOTHING`,
          { ...photo, sheet, at: kept.now() },
        );
        return kept.first<Photo>(
          `SELECT ${columns} FROM photos
           WHERE scope = @scope AND sheet = @sheet AND message = @message AND checksum = @checksum`,
          { sheet, message: photo.message, checksum: photo.checksum },
        ) as Photo;
      }),

    photos: (sheet) =>
      kept.all<Photo>(
        `SELECT ${columns} FROM photos WHERE scope = @scope AND sheet = @sheet AND ${notImported('list')} ORDER BY id`,
        { sheet },
      ),
  };
}
