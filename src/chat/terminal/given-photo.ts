import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs';
import { basename } from 'node:path';
import type { Reading } from '#interview/question.ts';
import { fileWords } from '#words/files.ts';
import type { Language } from '#words/language.ts';
import type { KeptPhoto } from '../command.ts';
import { clipped } from '../options.ts';
import { mostPhotoBytes, photoFound } from '../photo-bytes.ts';
import { safe } from './paper.ts';

/** The longest file name that is kept whole. */
const longestName = 80;

/** A photo by the path of its file. Its name and checksum are kept; the file stays where it is. */
export function photoAt(path: string, language: Language = 'english'): Reading<KeptPhoto> {
  const { noSuchPhoto, unreadable } = fileWords[language];
  const named = `“${clipped(basename(path.trim()))}”`;
  try {
    const bytes = bytesAt(path.trim());
    if ('trouble' in bytes) return { rejected: troubleSays(bytes.trouble, named, language) };
    const found = photoFound(bytes.value, language);
    if ('rejected' in found) return found;
    const name = safe(basename(path.trim())).replace(/\s+/g, ' ').slice(0, longestName);
    return { value: { ...found.value, reference: name } };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    return {
      rejected: code === 'ENOENT' || code === 'ENOTDIR' ? noSuchPhoto(named) : unreadable(named),
    };
  }
}

type Trouble = 'not-a-file' | 'too-large';

const troubleSays = (trouble: Trouble, named: string, language: Language): string =>
  trouble === 'too-large' ? fileWords[language].tooLargePhoto : fileWords[language].notAFile(named);

/** What is in the file, never more than a photo may have. */
function bytesAt(path: string): { readonly value: Uint8Array } | { readonly trouble: Trouble } {
  // Without waiting: what is no file, such as a pipe, would keep the program for ever.
  const file = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    const found = fstatSync(file);
    const { size } = found;
    if (!found.isFile()) return { trouble: 'not-a-file' };
    if (size > mostPhotoBytes) return { trouble: 'too-large' };
    const bytes = Buffer.alloc(size);
    let read = 0;
    for (let more = -1; read < size && more !== 0; read += more) more = readSync(file, bytes, read, size - read, read);
    return { value: bytes.subarray(0, read) };
  } finally {
    closeSync(file);
  }
}
