/**
 * Files made up for tests: the marks of a kind of picture, and the camera's tags in the order Exif lays them out (CIPA DC-008,
 * from memory). There is no picture in them, and the place is nobody's.
 */

const two = (value: number, isLittle: boolean): Buffer => {
  const bytes = Buffer.alloc(2);
  if (isLittle) bytes.writeUInt16LE(value);
  else bytes.writeUInt16BE(value);
  return bytes;
};

const four = (value: number, isLittle: boolean): Buffer => {
  const bytes = Buffer.alloc(4);
  if (isLittle) bytes.writeUInt32LE(value);
  else bytes.writeUInt32BE(value);
  return bytes;
};

/** The camera's tags: one block with its maker's orientation tag, and where wanted one with a latitude. */
export function cameraTags({ placed, isLittle = true }: { placed: boolean; isLittle?: boolean }): Buffer {
  const entry = (tag: number, type: number, value: number) =>
    Buffer.concat([two(tag, isLittle), two(type, isLittle), four(1, isLittle), four(value, isLittle)]);
  const first = 8;
  const second = first + 2 + 2 * 12 + 4;
  return Buffer.concat([
    Buffer.from(isLittle ? 'II*\0' : 'MM\0*', 'latin1'),
    four(first, isLittle),
    two(2, isLittle),
    entry(0x0112, 3, 1),
    placed ? entry(0x8825, 4, second) : entry(0x0132, 4, second),
    four(0, isLittle),
    two(1, isLittle),
    entry(2, 5, 0),
    four(0, isLittle),
  ]);
}

const latin = (text: string): Buffer => Buffer.from(text, 'latin1');

/** A JPEG as a phone makes it, with `more` as what would be the picture. */
export function jpeg({ tags, more = '' }: { tags?: Uint8Array; more?: string } = {}): Buffer {
  const exif = tags ? Buffer.concat([latin('Exif\0\0'), tags]) : latin('JFIF\0');
  const length = Buffer.alloc(2);
  length.writeUInt16BE(exif.length + 2);
  return Buffer.concat([latin('\xff\xd8\xff\xe1'), length, exif, latin(`\xff\xda${more}\xff\xd9`)]);
}

export const webp = (tags: Uint8Array = Buffer.alloc(0)): Buffer =>
  Buffer.concat([latin('RIFF\0\0\0\0WEBPVP8X'), latin('EXIF'), four(tags.length, true), tags]);

export const heic = (tags: Uint8Array = Buffer.alloc(0)): Buffer =>
  Buffer.concat([latin('\0\0\0\x18ftypmif1\0\0\0\0mif1heic'), latin('mdat'), tags]);

export const png = (tags: Uint8Array = Buffer.alloc(0)): Buffer =>
  Buffer.concat([latin('\x89PNG\r\n\x1a\n'), four(tags.length, false), latin('eXIf'), tags]);
