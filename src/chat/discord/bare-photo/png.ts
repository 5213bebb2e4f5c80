import { crc32 } from 'node:zlib';
import { mostParts } from './most-parts.ts';
import { orientationAlone } from './orientation.ts';

/** The chunks that make up a picture, its colors and its movement, from memory, after the PNG specification of the W3C. */
const ofPicture: ReadonlySet<string> = new Set([
  ...['IHDR', 'PLTE', 'IDAT', 'tRNS', 'acTL', 'fcTL', 'fdAT'],
  ...['cHRM', 'gAMA', 'iCCP', 'sBIT', 'sRGB', 'cICP', 'mDCV', 'cLLI', 'bKGD', 'hIST', 'pHYs', 'sPLT'],
]);

/**
 * A PNG of which only the picture is left: texts, times, the camera's tags and whatever else programs put in go, and all that
 * follows its end. Which way up it is stays.
 *
 * @returns the parts of the file; nothing where it is not built as a PNG is.
 */
export function barePng(bytes: Buffer): readonly Buffer[] | undefined {
  const parts: Buffer[] = [bytes.subarray(0, 8)];
  let at = 8;
  for (let count = 0; count < mostParts && at + 12 <= bytes.length; count += 1) {
    const next = at + 12 + bytes.readUInt32BE(at);
    if (next > bytes.length) return undefined;
    const kind = bytes.toString('latin1', at + 4, at + 8);
    if (kind === 'IEND') return [...parts, chunk(kind, Buffer.alloc(0))];
    if (ofPicture.has(kind)) parts.push(bytes.subarray(at, next));
    const tags = kind === 'eXIf' ? orientationAlone(bytes.subarray(at + 8, next - 4)) : undefined;
    if (tags) parts.push(chunk(kind, tags));
    at = next;
  }
  return undefined;
}

function chunk(kind: string, payload: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(kind, 'latin1'), payload]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(payload.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}
