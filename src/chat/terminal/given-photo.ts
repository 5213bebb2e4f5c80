import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs';
import { basename } from 'node:path';
import type { Reading } from '#interview/question.ts';
import type { KeptPhoto } from '../command.ts';
import { clipped } from '../options.ts';
import { mostPhotoBytes, photoFound, tooLargePhoto } from '../photo-bytes.ts';
import { safe } from './paper.ts';

/** The longest file name that is kept whole. */
const longestName = 80;

/** A photo by the path of its file. Its name and checksum are kept; the file stays where it is. */
export function photoAt(path: string): Reading<KeptPhoto> {
  const named = `“${clipped(basename(path.trim()))}”`;
  try {
    const bytes = bytesAt(path.trim());
    if ('rejected' in bytes) return { rejected: bytes.rejected.replace('%', named) };
    const found = photoFound(bytes.value);
    if ('rejected' in found) return found;
    const name = safe(basename(path.trim())).replace(/\s+/g, ' ').slice(0, longestName);
    return { value: { ...found.value, reference: name } };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    return {
      rejected:
        code === 'ENOENT' || code === 'ENOTDIR'
          ? `There is no file ${named}. Give the path of the photo.`
          : `The file ${named} cannot be read.`,
    };
  }
}

/** What is in the file, never more than a photo may have. In a rejection, `%` stands for the name. */
function bytesAt(path: string): Reading<Uint8Array> {
  // Without waiting: what is no file, such as a pipe, would keep the program for ever.
  const file = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    const found = fstatSync(file);
    const { size } = found;
    if (!found.isFile()) return { rejected: '% is not a file. Give the path of the photo.' };
    if (size > mostPhotoBytes) return { rejected: tooLargePhoto };
    const bytes = Buffer.alloc(size);
    let read = 0;
    for (let more = -1; read < size && more !== 0; read += more) more = readSync(file, bytes, read, size - read, read);
    return { value: bytes.subarray(0, read) };
  } finally {
    closeSync(file);
  }
}
