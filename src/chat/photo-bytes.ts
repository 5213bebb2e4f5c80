import { createHash } from 'node:crypto';
import type { Reading } from '#interview/question.ts';
import { fileWords } from '#words/files.ts';
import type { Language } from '#words/language.ts';

/** The most bytes a photo may have: what the platform lets a bot send on in one file without asking for more. */
export const mostPhotoBytes = 10 * 1024 * 1024;

/** What the bytes of a photo say. */
export interface PhotoFound {
  readonly kind: 'jpg' | 'png' | 'webp' | 'heic';
  /** SHA-256 of the bytes, in hexadecimal. */
  readonly checksum: string;
  /** In bytes. */
  readonly size: number;
  /** Whether the file says where it was taken. The place itself is not read. */
  readonly placed: boolean;
}

const begins = (bytes: Buffer, text: string, at = 0): boolean =>
  bytes.subarray(at, at + text.length).equals(Buffer.from(text, 'latin1'));

/** Brands of HEIF files that hold HEVC pictures, as phones make them. From memory, after ISO/IEC 23008-12. */
const heicBrands = ['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'hevm', 'hevs'];

/** Whether the brands at the head of the file, the major one or one it goes with, are those of HEIC. */
function isHeic(bytes: Buffer): boolean {
  if (bytes.length < 16 || !begins(bytes, 'ftyp', 4)) return false;
  const end = Math.min(bytes.readUInt32BE(0), bytes.length, 256);
  for (let at = 8; at + 4 <= end; at += 4) {
    if (at !== 12 && heicBrands.some((brand) => begins(bytes, brand, at))) return true;
  }
  return false;
}

/**
 * The kind of picture by its first bytes, whatever its name says. The marks are from memory, after ITU-T T.81 (JPEG),
 * RFC 2083 (PNG), RFC 9649 (WebP) and ISO/IEC 23008-12 (HEIC).
 */
function kindOf(bytes: Buffer): PhotoFound['kind'] | undefined {
  if (begins(bytes, '\xff\xd8\xff')) return 'jpg';
  if (begins(bytes, '\x89PNG\r\n\x1a\n')) return 'png';
  if (begins(bytes, 'RIFF') && begins(bytes, 'WEBP', 8)) return 'webp';
  return isHeic(bytes) ? 'heic' : undefined;
}

/** Tags of Exif, from memory, after CIPA DC-008: the block of the place, and in it latitude and longitude. */
const tags = { place: 0x8825, latitude: 2, longitude: 4 } as const;

/** More entries than any camera writes into one block, and more blocks that look like the first than any file holds. */
const mostEntries = 512;
const mostBlocks = 64;

/** The entries of a block of tags, each with its tag and value; none where the block does not lie within the file. */
export function* entriesAt(
  bytes: Buffer,
  at: number,
  isLittle: boolean,
): Generator<readonly [tag: number, value: number]> {
  const two = (place: number) => (isLittle ? bytes.readUInt16LE(place) : bytes.readUInt16BE(place));
  const four = (place: number) => (isLittle ? bytes.readUInt32LE(place) : bytes.readUInt32BE(place));
  if (at < 0 || at + 2 > bytes.length) return;
  const count = two(at);
  if (count > mostEntries || at + 2 + 12 * count > bytes.length) return;
  for (let entry = at + 2; entry < at + 2 + 12 * count; entry += 12) yield [two(entry), four(entry + 8)];
}

/** Whether the block of camera tags that begins here names a place. */
function placeIn(bytes: Buffer, start: number, isLittle: boolean): boolean {
  if (start + 8 > bytes.length) return false;
  const first = isLittle ? bytes.readUInt32LE(start + 4) : bytes.readUInt32BE(start + 4);
  for (const [tag, value] of entriesAt(bytes, start + first, isLittle)) {
    if (tag !== tags.place) continue;
    const inner = [...entriesAt(bytes, start + value, isLittle)];
    return inner.some(([each]) => each === tags.latitude || each === tags.longitude);
  }
  return false;
}

/**
 * Whether the file says where it was taken; a file made to be hard to read counts as one that does. Every kind of picture
 * holds the camera's tags in the same form, so that form is looked for wherever it lies; and the same in words, as programs
 * that retouch pictures write it.
 */
function isPlaced(bytes: Buffer): boolean {
  for (const [head, isLittle] of [
    ['II*\0', true],
    ['MM\0*', false],
  ] as const) {
    let blocks = 0;
    for (let at = bytes.indexOf(head, 0, 'latin1'); at >= 0; at = bytes.indexOf(head, at + 1, 'latin1')) {
      blocks += 1;
      if (blocks > mostBlocks || placeIn(bytes, at, isLittle)) return true;
    }
  }
  return bytes.includes('GPSLatitude', 0, 'latin1') || bytes.includes('GPSLongitude', 0, 'latin1');
}

/** What a file is, if it is a photo; a sentence why it is not taken if not. Nothing of the picture is kept. */
export function photoFound(given: Uint8Array, language: Language = 'english'): Reading<PhotoFound> {
  const { notAPhoto, tooLargePhoto } = fileWords[language];
  const bytes = Buffer.from(given.buffer, given.byteOffset, given.byteLength);
  if (bytes.length > mostPhotoBytes) return { rejected: tooLargePhoto };
  const kind = kindOf(bytes);
  if (kind === undefined) return { rejected: notAPhoto };
  const checksum = createHash('sha256').update(bytes).digest('hex');
  return { value: { kind, checksum, size: bytes.length, placed: isPlaced(bytes) } };
}
