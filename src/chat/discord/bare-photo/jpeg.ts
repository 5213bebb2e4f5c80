import { mostParts } from './most-parts.ts';
import { orientationAlone } from './orientation.ts';

/** Second bytes of the marks between which a JPEG lies, from memory, after ITU-T T.81. */
const marks = { end: 0xd9, scan: 0xda, jfif: 0xe0, exif: 0xe1, profile: 0xe2, adobe: 0xee, comment: 0xfe } as const;

const end = Buffer.from([0xff, marks.end]);

interface Segment {
  readonly mark: number;
  readonly payload: Buffer;
  /** Where the next one begins; after a scan, where its data do. */
  readonly next: number;
}

/** Tables and frames of the picture itself. */
const isOfPicture = (mark: number): boolean =>
  (mark >= 0xc0 && mark <= 0xcf && mark !== 0xc8) || (mark >= 0xda && mark <= 0xdf);

const isOfProgram = (mark: number): boolean => (mark >= 0xe0 && mark <= 0xef) || mark === marks.comment;

/**
 * A JPEG of which only the picture is left: its tables, frames and scans, its colors, and which way up it is. What cameras and
 * programs wrote beside it goes, and so does all that follows its end, where phones put further pictures and films.
 *
 * @returns the parts of the file; nothing where it is not built as a JPEG is.
 */
export function bareJpeg(bytes: Buffer): readonly Buffer[] | undefined {
  const parts: Buffer[] = [bytes.subarray(0, 2)];
  let at = 2;
  let isTurned = false;
  for (let count = 0; count < mostParts; count += 1) {
    const segment = segmentAt(bytes, at);
    if (segment === undefined) return undefined;
    const { mark, payload, next } = segment;
    if (mark === marks.end) return [...parts, end];
    at = mark === marks.scan ? afterScan(bytes, next) : next;
    if (isOfPicture(mark)) {
      parts.push(...written(mark, payload), bytes.subarray(next, at));
      // A file that was cut off in its picture still shows what came.
      if (mark === marks.scan && at === bytes.length) return [...parts, end];
      continue;
    }
    if (!isOfProgram(mark)) return undefined;
    const left = leftOf(mark, payload);
    if (left === undefined || (mark === marks.exif && isTurned)) continue;
    isTurned ||= mark === marks.exif;
    parts.push(...written(mark, left));
  }
  return undefined;
}

function segmentAt(bytes: Buffer, from: number): Segment | undefined {
  let at = from;
  if (bytes[at] !== 0xff) return undefined;
  while (bytes[at + 1] === 0xff) at += 1;
  const mark = bytes[at + 1];
  if (mark === undefined) return undefined;
  if (mark === marks.end) return { mark, payload: bytes.subarray(0, 0), next: at + 2 };
  if (at + 4 > bytes.length) return undefined;
  const next = at + 2 + bytes.readUInt16BE(at + 2);
  return next < at + 4 || next > bytes.length ? undefined : { mark, payload: bytes.subarray(at + 4, next), next };
}

/** Where the data of a scan end: at the first mark that is neither a byte of them nor a place to start anew. */
function afterScan(bytes: Buffer, from: number): number {
  for (let at = from; at + 1 < bytes.length; at += 1) {
    if (bytes[at] !== 0xff) continue;
    const mark = bytes[at + 1] as number;
    if (mark !== 0 && mark !== 0xff && !(mark >= 0xd0 && mark <= 0xd7)) return at;
  }
  return bytes.length;
}

function written(mark: number, payload: Buffer): readonly Buffer[] {
  const head = Buffer.from([0xff, mark, 0, 0]);
  head.writeUInt16BE(payload.length + 2, 2);
  return [head, payload];
}

const begins = (payload: Buffer, text: string): boolean => payload.toString('latin1', 0, text.length) === text;

/** What is kept of what a program wrote: nothing but what a reader needs to show the picture right. */
function leftOf(mark: number, payload: Buffer): Buffer | undefined {
  if (mark === marks.jfif && begins(payload, 'JFIF\0') && payload.length >= 14) {
    // Without the small picture that may follow: it can show more than the large one, as before it was cut.
    return Buffer.concat([payload.subarray(0, 12), Buffer.alloc(2)]);
  }
  if (mark === marks.profile && begins(payload, 'ICC_PROFILE\0')) return payload;
  if (mark === marks.adobe && begins(payload, 'Adobe')) return payload.subarray(0, 12);
  if (mark !== marks.exif || !begins(payload, 'Exif\0\0')) return undefined;
  const tags = orientationAlone(payload);
  return tags && Buffer.concat([payload.subarray(0, 6), tags]);
}
