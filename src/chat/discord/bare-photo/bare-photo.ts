import type { Reading } from '#interview/question.ts';
import { fileWords } from '#words/files.ts';
import type { Language } from '#words/language.ts';
import { type PhotoFound, photoFound } from '../../photo-bytes.ts';
import { bareJpeg } from './jpeg.ts';
import { barePng } from './png.ts';
import { bareWebp } from './webp.ts';

/** A photo as it is put into a channel. */
export interface BarePhoto {
  readonly bytes: Buffer;
  /** Of these bytes, not of those that were sent: what lies in the channel is what the checksum must fit. */
  readonly found: PhotoFound & { readonly unplaced: boolean };
}

/**
 * A photo without what cameras and programs wrote beside the picture, as where it was taken, when and with what. HEIC is passed
 * on as it is where it does not say where it was taken, and not at all where it does: its parts point at each other by their
 * places in the file, so none can be taken out without writing it anew.
 */
export function barePhoto(given: Uint8Array, language: Language = 'english'): Reading<BarePhoto> {
  const { saysWhere, unusual } = fileWords[language];
  const sent = photoFound(given, language);
  if ('rejected' in sent) return sent;
  const { kind, placed } = sent.value;
  const parts = partsLeft(kind, Buffer.from(given.buffer, given.byteOffset, given.byteLength));
  if (!parts) return { rejected: unusual };
  const bytes = Buffer.concat(parts);
  const bare = photoFound(bytes, language);
  if ('rejected' in bare) return bare;
  // Whatever way it still says where: nothing that does goes on.
  if (bare.value.placed) return { rejected: kind === 'heic' ? saysWhere : unusual };
  return { value: { bytes, found: { ...bare.value, unplaced: placed } } };
}

function partsLeft(kind: PhotoFound['kind'], bytes: Buffer): readonly Buffer[] | undefined {
  switch (kind) {
    case 'jpg':
      return bareJpeg(bytes);
    case 'png':
      return barePng(bytes);
    case 'webp':
      return bareWebp(bytes);
    case 'heic':
      return [bytes];
  }
}
