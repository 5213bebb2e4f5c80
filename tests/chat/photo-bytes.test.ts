import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostPhotoBytes, photoFound } from '#chat/photo-bytes.ts';
import { cameraTags, heic, jpeg, png, webp } from '../support/photographs.ts';
import { photo } from '../support/stand-in/uploads.ts';

const found = (bytes: Uint8Array) => {
  const reading = photoFound(bytes);
  return 'value' in reading ? reading.value : reading.rejected;
};

const notAPhoto = 'That file is not a photo, whatever its name says. Send a JPEG, PNG, WebP or HEIC picture.';

describe('a photo is known by its bytes', () => {
  it('takes the four kinds a phone makes, and gives their checksum', () => {
    const kinds = { jpg: jpeg(), png: photo().bytes, webp: webp(), heic: heic() };
    for (const [kind, bytes] of Object.entries(kinds)) {
      const checksum = createHash('sha256').update(bytes).digest('hex');
      expect(found(bytes), kind).toEqual({ kind, checksum, size: bytes.length, placed: false });
    }
  });

  it('takes nothing else, whatever it begins like', () => {
    for (const text of ['', 'PK\x03\x04', 'GIF89a', '%PDF-1.7', '<svg/>', 'RIFF\0\0\0\0WAVEfmt ', '\xff\xd8', 'MZ']) {
      expect(found(Buffer.from(text, 'latin1')), JSON.stringify(text)).toBe(notAPhoto);
    }
    const film = Buffer.from('\0\0\0\x18ftypisom\0\0\0\0isommp42', 'latin1');
    const avif = Buffer.from('\0\0\0\x18ftypavif\0\0\0\0avifmif1', 'latin1');
    const pastItsHead = Buffer.from('\0\0\0\x10ftypisom\0\0\0\0heicheic', 'latin1');
    expect([film, avif, pastItsHead].map(found)).toEqual([notAPhoto, notAPhoto, notAPhoto]);
  });

  it('takes 10 MB and not a byte more', () => {
    const full = Buffer.concat([jpeg(), Buffer.alloc(mostPhotoBytes)]);
    expect(found(full.subarray(0, mostPhotoBytes))).toMatchObject({ kind: 'jpg', size: mostPhotoBytes });
    expect(found(full.subarray(0, mostPhotoBytes + 1))).toContain('larger than 10 MB');
  });

  it('sees that a file says where it was taken, in each kind and either order of bytes', () => {
    for (const isLittle of [true, false]) {
      const here = cameraTags({ placed: true, isLittle });
      const nowhere = cameraTags({ placed: false, isLittle });
      for (const make of [(bytes: typeof here) => jpeg({ tags: bytes }), webp, heic, png]) {
        expect(found(make(here))).toMatchObject({ placed: true });
        expect(found(make(nowhere))).toMatchObject({ placed: false });
      }
    }
    expect(found(jpeg({ more: '<x exif:GPSLatitude="48,12N"/>' }))).toMatchObject({ placed: true });
  });

  it('comes to an end with any bytes, cut or scrambled', () => {
    const tags = cameraTags({ placed: true });
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), fc.nat(tags.length), fc.nat(tags.length), (noise, cut, at) => {
        const broken = Buffer.from(tags);
        broken.set(noise.subarray(0, broken.length - at), at);
        const files = [jpeg({ tags: tags.subarray(0, cut) }), jpeg({ tags: broken }), heic(Buffer.from(noise)), noise];
        for (const bytes of files) expect(['string', 'object']).toContain(typeof found(bytes));
      }),
      { seed: 5, numRuns: 400 },
    );
  });

  it('is done in no time with a file made to be hard to read, and counts it as saying where', () => {
    const worst = Buffer.concat([jpeg(), Buffer.alloc(mostPhotoBytes - 1000, 'II*\0', 'latin1')]);
    const began = process.cpuUsage();
    expect(found(worst)).toMatchObject({ placed: true });
    // Nobody else is answered meanwhile, so it may take no more than a small part of the three seconds the platform waits.
    expect(process.cpuUsage(began).user / 1000).toBeLessThan(500);
  });
});
