import { createHash } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barePhoto } from '#chat/discord/bare-photo/bare-photo.ts';
import { mostPhotoBytes, photoFound } from '#chat/photo-bytes.ts';
import { cameraTags, heic, jpeg, jpegSegment, png, pngChunk, webp, webpChunk } from '../../support/photographs.ts';

const latin = (text: string): Buffer => Buffer.from(text, 'latin1');

const bare = (bytes: Uint8Array) => {
  const read = barePhoto(bytes);
  if ('rejected' in read) throw new Error(read.rejected);
  return read.value;
};
const refusal = (bytes: Uint8Array): string => {
  const read = barePhoto(bytes);
  return 'rejected' in read ? read.rejected : 'taken';
};

/** What a picture shows, dot by dot. */
function dots(kind: 'jpeg' | 'png', bytes: Buffer): Buffer {
  const href = `data:image/${kind};base64,${bytes.toString('base64')}`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="12" height="8"><image width="12" height="8" href="${href}"/></svg>`;
  return new Resvg(svg).render().pixels;
}

const here = cameraTags({ placed: true });
const turned = cameraTags({ placed: true, orientation: 6 });
const xmp = latin('http://ns.adobe.com/xap/1.0/\0<x exif:GPSLatitude="48,12N"/>');
const notes = 'Elm Street 12';
const profile = Buffer.concat([latin('ICC_PROFILE\0\x01\x01'), Buffer.alloc(40, 7)]);

/** Every place in a file of its kind where something about the picture can stand. */
const talkative = {
  jpg: jpeg({
    tags: turned,
    beside: [
      jpegSegment(0xe1, xmp),
      jpegSegment(0xe0, latin(`JFXX\0\x10${notes}`)),
      jpegSegment(0xe2, profile),
      jpegSegment(0xe2, latin(`MPF\0${notes}`)),
      jpegSegment(0xe5, latin(notes)),
      jpegSegment(0xed, latin(`Photoshop 3.0\0${notes}`)),
      jpegSegment(0xee, latin(`Adobe\0d\0\0\0\0\x01${notes}`)),
      jpegSegment(0xfe, latin(notes)),
    ],
    after: Buffer.concat([latin(notes), jpeg({ tags: here })]),
  }),
  png: png(turned, {
    beside: [
      pngChunk('tEXt', latin(`Comment\0${notes}`)),
      pngChunk('zTXt', Buffer.concat([latin('Comment\0\0'), deflateSync(latin(notes))])),
      pngChunk('iTXt', latin(`Comment\0\0\0\0\0${notes}`)),
      pngChunk('tIME', Buffer.from([7, 234, 3, 2, 8, 0, 0])),
      pngChunk('prVt', latin(notes)),
      pngChunk('gAMA', Buffer.from([0, 0, 0xb1, 0x8f])),
    ],
    after: Buffer.concat([latin(notes), here]),
  }),
  webp: Buffer.concat([webp(turned, [webpChunk('XMP ', xmp), webpChunk('NOTE', latin(notes))]), latin(notes), here]),
};

describe('a photo as it is put into a channel', () => {
  for (const [kind, sent] of Object.entries(talkative)) {
    it(`says nothing of where, when and with what it was taken: ${kind}`, () => {
      expect(photoFound(sent)).toMatchObject({ value: { kind, placed: true } });
      const { bytes, found } = bare(sent);
      const checksum = createHash('sha256').update(bytes).digest('hex');
      expect(found).toEqual({ kind, checksum, size: bytes.length, placed: false, unplaced: true });
      for (const text of [notes, 'GPSLatitude', 'Photoshop', 'MPF', 'JFXX', 'XMP ', 'tEXt', 'zTXt', 'iTXt', 'tIME']) {
        expect(bytes.includes(text, 0, 'latin1'), text).toBe(false);
      }
    });
  }

  it('shows the same picture', () => {
    const sent = talkative;
    for (const [kind, bytes] of [
      ['jpeg', sent.jpg],
      ['png', sent.png],
    ] as const) {
      expect(new Set(dots(kind, bytes)).size).toBeGreaterThan(10);
      expect(dots(kind, bare(bytes).bytes)).toEqual(dots(kind, bytes));
    }
    // What draws here does not know WebP, so its chunk of the picture is looked at.
    const picture = (bytes: Buffer) => {
      const at = bytes.indexOf('VP8 ', 0, 'latin1');
      return bytes.subarray(at, at + 8 + bytes.readUInt32LE(at + 4));
    };
    expect(picture(bare(sent.webp).bytes)).toEqual(picture(sent.webp));
  });

  it('keeps its colors, and which way up it is', () => {
    const kept = (bytes: Buffer) => bare(bytes).bytes;
    const alone = latin('MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0');
    for (const bytes of Object.values(talkative)) expect(kept(bytes).includes(alone)).toBe(true);
    const big = cameraTags({ placed: true, isLittle: false, orientation: 6 });
    for (const bytes of [jpeg({ tags: big }), png(big), webp(big)]) expect(kept(bytes).includes(alone)).toBe(true);
    expect(kept(talkative.jpg).includes(jpegSegment(0xe2, profile))).toBe(true);
    expect(kept(talkative.jpg).includes(jpegSegment(0xee, latin('Adobe\0d\0\0\0\0\x01')))).toBe(true);
    expect(kept(talkative.png).includes('gAMA', 0, 'latin1')).toBe(true);
    for (const orientation of [0, 1, 9]) {
      const tags = cameraTags({ placed: true, orientation });
      for (const bytes of [jpeg({ tags }), png(tags), webp(tags)]) {
        expect(/Exif|eXIf|EXIF/.test(kept(bytes).toString('latin1'))).toBe(false);
      }
    }
  });

  it('is a file of its kind, its flags and sizes mended', () => {
    const { bytes } = bare(webp(here, [webpChunk('XMP ', xmp)]));
    expect(bytes.readUInt32LE(4)).toBe(bytes.length - 8);
    expect(bytes.toString('latin1', 12, 16)).toBe('VP8X');
    expect(bytes.readUInt8(20)).toBe(0);
    expect(bare(webp(turned)).bytes.readUInt8(20)).toBe(0x08);
    const { bytes: turnedPng } = bare(png(turned));
    const at = turnedPng.indexOf('eXIf', 0, 'latin1') - 4;
    const chunk = turnedPng.subarray(at, at + 12 + turnedPng.readUInt32BE(at));
    expect(chunk).toEqual(pngChunk('eXIf', chunk.subarray(8, -4)));
  });

  it('stays as it is to the last byte where nothing stands beside the picture, and a second time', () => {
    expect(bare(jpeg()).bytes).toEqual(jpeg());
    expect(bare(jpeg()).found.unplaced).toBe(false);
    for (const sent of Object.values(talkative)) {
      const once = bare(sent).bytes;
      expect(bare(once).bytes).toEqual(once);
    }
    const nowhere = heic(cameraTags({ placed: false }));
    expect(bare(nowhere).bytes).toEqual(nowhere);
  });

  it('ends where a cut line left it, as far as there is a picture', () => {
    const cut = jpeg({ tags: here }).subarray(0, -10);
    expect(bare(cut).bytes).toEqual(Buffer.concat([jpeg().subarray(0, -10), latin('\xff\xd9')]));
  });
});

describe('a photo that is not put there', () => {
  it('is a HEIC that says where it was taken', () => {
    expect(refusal(heic(here))).toBe(
      'That HEIC photo says where it was taken, and that cannot be taken out of a HEIC file here. Send it as a JPEG, or send a screenshot of it.',
    );
  });

  it('is one that hides the place in the picture itself', () => {
    expect(refusal(jpeg({ more: 'GPSLatitude' }))).toContain('Send a screenshot of it.');
  });

  it('is one whose parts do not fit together', () => {
    const sizeOf = (bytes: Buffer, at: number) =>
      Buffer.concat([bytes.subarray(0, at), latin('\xff'), bytes.subarray(at + 1)]);
    for (const bytes of [
      latin('\xff\xd8\xff'),
      latin('\xff\xd8\xff\xe1\0\x01'),
      latin('\xff\xd8\xff\xe1\xff\xff'),
      latin('\xff\xd8\xff\xff\xff'),
      Buffer.concat([jpeg().subarray(0, 20), latin('no mark'), jpeg().subarray(20)]),
      jpeg().subarray(0, 60),
      png().subarray(0, -12),
      sizeOf(png(), 33),
      sizeOf(webp(), 4),
      sizeOf(webp(), 16),
      latin('RIFF\0\0\0\0WEBP'),
    ]) {
      expect(refusal(bytes), bytes.toString('hex', 0, 40)).toContain('damaged or built in an unusual way');
    }
  });
});

describe('a photo made to do harm', () => {
  it('is bared or refused, and never says where, whatever is changed in it', () => {
    const files = [...Object.values(talkative), heic(here)];
    const change = fc.tuple(fc.nat(600), fc.nat(4), fc.uint8Array({ maxLength: 6 }));
    let taken = 0;
    fc.assert(
      fc.property(fc.constantFrom(...files), fc.array(change, { maxLength: 4 }), (file, changes) => {
        let bytes: Buffer = file;
        for (const [at, gone, put] of changes) {
          bytes = Buffer.concat([bytes.subarray(0, at), put, bytes.subarray(at + gone)]);
        }
        const read = barePhoto(bytes);
        if ('rejected' in read) return;
        taken += 1;
        expect(read.value.bytes.length).toBeLessThanOrEqual(bytes.length + 2);
        expect(photoFound(read.value.bytes)).toMatchObject({ value: { placed: false } });
        expect(bare(read.value.bytes).bytes).toEqual(read.value.bytes);
      }),
      { seed: 7, numRuns: 3000 },
    );
    expect(taken).toBeGreaterThan(300);
  });

  it('takes no more than a small part of a second', () => {
    const filled = (head: string, fill: string) =>
      Buffer.concat([latin(head), Buffer.alloc(mostPhotoBytes - 64, fill, 'latin1')]);
    const riff = filled('RIFF\0\0\0\0WEBP', 'NOTE\0\0\0\0');
    riff.writeUInt32LE(riff.length - 8, 4);
    const scan = jpegSegment(0xda, latin('\x01\x01\0\0\x3f\0')).toString('latin1');
    const worst = {
      'many empty segments': filled('\xff\xd8', '\xff\xe5\0\x02'),
      'many scans': filled('\xff\xd8', `${scan}x`),
      'one mark begun again and again': filled('\xff\xd8', '\xff'),
      'a picture of nothing but stuffing': filled(`\xff\xd8${scan}`, '\xff\0'),
      'many empty chunks': filled('\x89PNG\r\n\x1a\n', '\0\0\0\0tEXt\0\0\0\0'),
      'many empty parts': riff,
    };
    for (const [what, bytes] of Object.entries(worst)) {
      const began = process.cpuUsage();
      barePhoto(bytes);
      // Nobody else is answered meanwhile; the platform waits three seconds.
      expect(process.cpuUsage(began).user / 1000, what).toBeLessThan(500);
    }
  });
});
