import { crc32, deflateSync } from 'node:zlib';

/**
 * Small photos made up for tests: real pictures of nothing, a wash of color of 12 by 8 dots, and beside them the camera's tags in
 * the order Exif lays them out (CIPA DC-008, from memory). The place in them is nobody's. The HEIC has the marks of its kind and
 * no picture.
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

/** The camera's tags: one block that says which way up the picture is, and where wanted one with a latitude. */
export function cameraTags({
  placed,
  isLittle = true,
  orientation = 1,
}: {
  placed: boolean;
  isLittle?: boolean;
  orientation?: number;
}): Buffer {
  const entry = (tag: number, type: number, value: number) =>
    Buffer.concat([two(tag, isLittle), two(type, isLittle), four(1, isLittle), four(value, isLittle)]);
  const first = 8;
  const second = first + 2 + 2 * 12 + 4;
  return Buffer.concat([
    Buffer.from(isLittle ? 'II*\0' : 'MM\0*', 'latin1'),
    four(first, isLittle),
    two(2, isLittle),
    // A number of two bytes stands first in the four of its entry.
    entry(0x0112, 3, isLittle ? orientation : orientation * 0x1_00_00),
    placed ? entry(0x8825, 4, second) : entry(0x0132, 4, second),
    four(0, isLittle),
    two(1, isLittle),
    entry(2, 5, 0),
    four(0, isLittle),
  ]);
}

const latin = (text: string): Buffer => Buffer.from(text, 'latin1');

/** A segment of a JPEG by the second byte of its mark. */
export const jpegSegment = (mark: number, payload: Uint8Array): Buffer =>
  Buffer.concat([Buffer.from([0xff, mark]), two(payload.length + 2, false), payload]);

const jpegPicture = Buffer.from(
  `/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDABQODxIPDRQSEBIXFRQYHjIhHhwcHj0sLiQySUBMS0dARkVQWnNiUFVtVkVGZIhlbXd7gYKBTmCNl4x9lnN+gXz/
  2wBDARUXFx4aHjshITt8U0ZTfHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHx8fHz/wAARCAAIAAwDASIAAhEBAxEB/8QA
  FQABAQAAAAAAAAAAAAAAAAAAAAX/xAAWEAEBAQAAAAAAAAAAAAAAAAAAFGH/xAAVAQEBAAAAAAAAAAAAAAAAAAAEBf/EABcRAAMBAAAAAAAAAAAAAAAAAAAD
  FFH/2gAMAwEAAhEDEQA/AINGlGgvQIwRa7T/2Q==`,
  'base64',
);
const [jpegHead, jpegEnd] = [20, 2];

/** A JPEG as a phone makes it: `beside` are segments at its head, `more` are bytes in the picture, `after` follow its end. */
export function jpeg({
  tags,
  beside = [],
  more = '',
  after = Buffer.alloc(0),
}: {
  tags?: Uint8Array;
  beside?: readonly Uint8Array[];
  more?: string;
  after?: Uint8Array;
} = {}): Buffer {
  return Buffer.concat([
    jpegPicture.subarray(0, jpegHead),
    ...(tags ? [jpegSegment(0xe1, Buffer.concat([latin('Exif\0\0'), tags]))] : []),
    ...beside,
    jpegPicture.subarray(jpegHead, -jpegEnd),
    latin(more),
    jpegPicture.subarray(-jpegEnd),
    after,
  ]);
}

/** A chunk of a WebP. */
export const webpChunk = (kind: string, payload: Uint8Array): Buffer =>
  Buffer.concat([latin(kind), four(payload.length, true), payload, Buffer.alloc(payload.length % 2)]);

const webpPicture = Buffer.from(
  'sAIAnQEqDAAIAAIANCWoAnS3AJYB/ALj/A9D/YAAAP72sOuFTl6x/44vhVJev3hVJf/Anf+FNf+ZzOvy6yjpJEuAAAA=',
  'base64',
);

/** A WebP with the camera's tags, and with `beside` as chunks after them. */
export function webp(tags: Uint8Array = Buffer.alloc(0), beside: readonly Uint8Array[] = []): Buffer {
  // The flag of the tags, and width and height less one.
  const head = Buffer.from([0x08, 0, 0, 0, 11, 0, 0, 7, 0, 0]);
  const chunks = [webpChunk('VP8X', head), webpChunk('VP8 ', webpPicture), webpChunk('EXIF', tags), ...beside];
  const body = Buffer.concat([latin('WEBP'), ...chunks]);
  return Buffer.concat([latin('RIFF'), four(body.length, true), body]);
}

export const heic = (tags: Uint8Array = Buffer.alloc(0)): Buffer =>
  Buffer.concat([latin('\0\0\0\x18ftypmif1\0\0\0\0mif1heic'), latin('mdat'), tags]);

/** A chunk of a PNG. */
export const pngChunk = (kind: string, payload: Uint8Array): Buffer => {
  const named = Buffer.concat([latin(kind), payload]);
  return Buffer.concat([four(payload.length, false), named, four(crc32(named), false)]);
};

/** A PNG with the camera's tags, with `beside` as chunks before the picture, and `after` behind its end. */
export function png(
  tags: Uint8Array = Buffer.alloc(0),
  { beside = [], after = Buffer.alloc(0) }: { beside?: readonly Uint8Array[]; after?: Uint8Array } = {},
): Buffer {
  // 12 by 8 dots of eight bits of grey, each line after the mark that it is not filtered.
  const lines = Array.from({ length: 8 }, (_, y) =>
    Buffer.from([0, ...Array.from({ length: 12 }, (__, x) => x * 9 + y)]),
  );
  return Buffer.concat([
    latin('\x89PNG\r\n\x1a\n'),
    pngChunk('IHDR', Buffer.concat([four(12, false), four(8, false), Buffer.from([8, 0, 0, 0, 0])])),
    pngChunk('eXIf', tags),
    ...beside,
    pngChunk('IDAT', deflateSync(Buffer.concat(lines))),
    pngChunk('IEND', Buffer.alloc(0)),
    after,
  ]);
}
