import { notImported } from './imported.ts';
import type { Queries } from './queries.ts';
import { needRoom } from './room.ts';
import { writableSheet } from './sheets.ts';

/** A photo somebody sent: where it lies and how to know it again. The picture itself is not kept here. */
export interface NewPhoto {
  readonly list: string;
  readonly step: string | null;
  /** Where it lies, in the platform's own words; the name of its file in a terminal. */
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
   * The same photo of the same message is kept once for each step it hangs on.
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

/**
 * Whether the photo would stand on its step twice with these columns changed: `zoe.jpg` and `Zoe.jpg` are the same file, and
 * without the name nothing tells them apart.
 */
export const wouldBeTwice = (
  kept: Queries,
  id: number,
  changed: Readonly<{ step?: string; message?: string }>,
): boolean =>
  kept.first(
    `SELECT 1 FROM photos this JOIN photos other USING (scope, sheet, list, checksum)
     WHERE scope = @scope AND this.id = @id AND other.id <> @id AND other.message = coalesce(@message, this.message)
       AND coalesce(other.step, '') = coalesce(@step, this.step, '')`,
    { id, step: changed.step ?? null, message: changed.message ?? null },
  ) !== undefined;

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
           WHERE scope = @scope AND sheet = @sheet AND list = @list AND step IS @step
             AND message = @message AND checksum = @checksum`,
          { sheet, list: photo.list, step: photo.step, message: photo.message, checksum: photo.checksum },
        ) as Photo;
      }),

    photos: (sheet) =>
      kept.all<Photo>(
        `SELECT ${columns} FROM photos WHERE scope = @scope AND sheet = @sheet AND ${notImported('list')} ORDER BY id`,
        { sheet },
      ),
  };
}
