import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** The two faces the pictures are set in. They travel with the program, so every machine draws the same letters. */
export type Face = 'regular' | 'bold';

const require = createRequire(import.meta.url);

export const faceFiles = (): Record<Face, string> => ({
  regular: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
  bold: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf'),
});

export const faceFamily = 'DejaVu Sans';

interface Metrics {
  /** Advance width of a character in ems; the width of the missing-glyph box for one the face does not hold. */
  readonly width: (character: string) => number;
  readonly holds: (character: string) => boolean;
}

const read = new Map<Face, Metrics>();

/** The metrics of a face, read from its file once, when the first picture is laid out. */
export function metrics(face: Face): Metrics {
  const known = read.get(face);
  if (known !== undefined) return known;
  const fresh = metricsOf(readFileSync(faceFiles()[face]));
  read.set(face, fresh);
  return fresh;
}

/**
 * Reads character widths out of a TrueType file.
 *
 * @source OpenType specification 1.9, chapters "cmap" (format 12), "head", "hhea" and "hmtx"
 */
function metricsOf(file: Buffer): Metrics {
  const at = tables(file);
  const unitsPerEm = file.readUInt16BE(at('head') + 18);
  const longMetrics = file.readUInt16BE(at('hhea') + 34);
  const hmtx = at('hmtx');
  const glyphs = characterMap(file, at('cmap'));
  const advance = (glyph: number) => file.readUInt16BE(hmtx + 4 * Math.min(glyph, longMetrics - 1)) / unitsPerEm;
  const widths = new Map<number, number>();
  const glyphOf = (character: string) => glyphs(character.codePointAt(0) ?? 0);
  return {
    width: (character) => {
      const glyph = glyphOf(character);
      const known = widths.get(glyph) ?? advance(glyph);
      widths.set(glyph, known);
      return known;
    },
    holds: (character) => glyphOf(character) !== 0,
  };
}

/** Where each named table of the file begins. */
function tables(file: Buffer): (tag: string) => number {
  const offsets = new Map<string, number>();
  for (let index = 0; index < file.readUInt16BE(4); index += 1) {
    const entry = 12 + 16 * index;
    offsets.set(file.toString('latin1', entry, entry + 4), file.readUInt32BE(entry + 8));
  }
  return (tag) => {
    const offset = offsets.get(tag);
    if (offset === undefined)
      throw new Error(`The chart face has no "${tag}" table: is dejavu-fonts-ttf installed whole?`);
    return offset;
  };
}

/** From code point to glyph number, 0 for a missing one. Format 12 covers the whole of Unicode, so it is the only one read. */
function characterMap(file: Buffer, cmap: number): (codePoint: number) => number {
  const groups: { readonly first: number; readonly last: number; readonly glyph: number }[] = [];
  for (let index = 0; index < file.readUInt16BE(cmap + 2); index += 1) {
    const subtable = cmap + file.readUInt32BE(cmap + 4 + 8 * index + 4);
    if (file.readUInt16BE(subtable) !== 12 || groups.length > 0) continue;
    for (let group = 0; group < file.readUInt32BE(subtable + 12); group += 1) {
      const entry = subtable + 16 + 12 * group;
      groups.push({
        first: file.readUInt32BE(entry),
        last: file.readUInt32BE(entry + 4),
        glyph: file.readUInt32BE(entry + 8),
      });
    }
  }
  return (codePoint) => {
    const group = groups.find(({ first, last }) => codePoint >= first && codePoint <= last);
    return group === undefined ? 0 : group.glyph + codePoint - group.first;
  };
}
