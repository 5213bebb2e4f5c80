import { entriesAt } from '../../photo-bytes.ts';

/** Which way up a picture is, as the camera's tags say it: tag, upright, and the highest of the eight ways. From memory, after CIPA DC-008. */
const tag = 0x0112;
const upright = 1;
const most = 8;

/** What some files put before the camera's tags. */
const head = Buffer.from('Exif\0\0', 'latin1');

/** The camera's tags where they say which way up the picture is, and nothing else; none where it is upright. */
export function orientationAlone(given: Buffer): Buffer | undefined {
  const tags = given.subarray(0, head.length).equals(head) ? given.subarray(head.length) : given;
  if (tags.length < 8) return undefined;
  const isLittle = tags.toString('latin1', 0, 2) === 'II';
  const first = isLittle ? tags.readUInt32LE(4) : tags.readUInt32BE(4);
  for (const [each, value] of entriesAt(tags, first, isLittle)) {
    if (each !== tag) continue;
    // A number of two bytes stands first in the four of its entry.
    const orientation = isLittle ? value & 0xffff : value >>> 16;
    return orientation > upright && orientation <= most ? tagsWith(orientation) : undefined;
  }
  return undefined;
}

/** One block with one entry of one number of two bytes, and no block after it. */
function tagsWith(orientation: number): Buffer {
  const tags = Buffer.alloc(26);
  tags.write('MM\0*', 'latin1');
  tags.writeUInt32BE(8, 4);
  tags.writeUInt16BE(1, 8);
  tags.writeUInt16BE(tag, 10);
  tags.writeUInt16BE(3, 12);
  tags.writeUInt32BE(1, 14);
  tags.writeUInt16BE(orientation, 18);
  return tags;
}
