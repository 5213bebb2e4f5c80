import { mostParts } from './most-parts.ts';
import { orientationAlone } from './orientation.ts';

/** The chunks that make up a picture, its colors and its movement, from memory, after RFC 9649. */
const ofPicture: ReadonlySet<string> = new Set(['VP8 ', 'VP8L', 'ALPH', 'ANIM', 'ANMF', 'ICCP']);

/** In the first byte of the head chunk: that the camera's tags follow, and that words of retouching programs do. */
const flags = { exif: 0x08, xmp: 0x04 } as const;

/**
 * A WebP of which only the picture is left: the camera's tags, the words of retouching programs and whatever else stands in
 * it go, and all that follows its end. Which way up it is stays.
 *
 * @returns the parts of the file; nothing where it is not built as a WebP is.
 */
export function bareWebp(bytes: Buffer): readonly Buffer[] | undefined {
  const end = 8 + (bytes.length < 12 ? 0 : bytes.readUInt32LE(4));
  if (end > bytes.length) return undefined;
  const parts: Buffer[] = [];
  let head: Buffer | undefined;
  let at = 12;
  for (let count = 0; at + 8 <= end; count += 1) {
    const [kind, size] = [bytes.toString('latin1', at, at + 4), bytes.readUInt32LE(at + 4)];
    if (at + 8 + size > end || count >= mostParts) return undefined;
    const payload = bytes.subarray(at + 8, at + 8 + size);
    at += 8 + size + (size % 2);
    if (ofPicture.has(kind)) parts.push(...chunk(kind, payload));
    else if (kind === 'VP8X' && payload.length === 10 && !head) {
      head = Buffer.from(payload);
      head.writeUInt8(head.readUInt8(0) & ~(flags.exif | flags.xmp), 0);
      parts.push(...chunk(kind, head));
    } else if (kind === 'EXIF' && head && !(head.readUInt8(0) & flags.exif)) {
      const tags = orientationAlone(payload);
      if (!tags) continue;
      head.writeUInt8(head.readUInt8(0) | flags.exif, 0);
      parts.push(...chunk(kind, tags));
    }
  }
  if (parts.length === 0) return undefined;
  const size = Buffer.alloc(4);
  size.writeUInt32LE(4 + parts.reduce((sum, { length }) => sum + length, 0));
  return [Buffer.from('RIFF', 'latin1'), size, Buffer.from('WEBP', 'latin1'), ...parts];
}

/** A chunk, filled up to an even number of bytes. */
function chunk(kind: string, payload: Buffer): readonly Buffer[] {
  const head = Buffer.alloc(8);
  head.write(kind, 'latin1');
  head.writeUInt32LE(payload.length, 4);
  return [head, payload, Buffer.alloc(payload.length % 2)];
}
