import type { BarrierMaterial } from '#engine/electrical/box-volume.ts';
import type { Reading, UnitSystem } from '#interview/question.ts';
import { boxRules, type StandardBox, standardBoxes } from '#knowledge/box-rules.ts';
import { boxVolume } from '#quantity/kinds.ts';
import { numberAt } from '#quantity/reading-numbers.ts';
import { folded } from '#quantity/reading-text.ts';
import { type CubicInches, cubicInches } from '#quantity/units.ts';
import { normalised } from './run-grammar.ts';

/** A box or a ring, with the room it is marked or listed for. */
interface BoxPart {
  readonly volume: CubicInches;
  /** Absent for one known by its mark alone. */
  readonly standard?: StandardBox;
  /** How many of a box that is listed by the gang. */
  readonly gangs: number;
}

/** A box with the rings on it and the barriers in it. */
export interface BoxAnswer {
  readonly parts: readonly BoxPart[];
  readonly barriers: readonly BarrierMaterial[];
  /** How many devices side by side it is made for, where that was said. */
  readonly gangs: number | null;
}

const longest = 200;
const wouldDo =
  'Give the volume marked inside it, such as 18 cu in, or a standard metal box, such as 4 x 1-1/2 square.';

/** The volume as a person with the box in hand reads it: every digit that counts, none rounded away. */
export const cubicInchText = (volume: number): string => `${Number(volume.toFixed(4))} cu in`;

const number = String.raw`(?:\d[\d.,]*(?:[ -]\d+\/\d+)?|\.\d+)`;
const cubic = new RegExp(
  String.raw`(${number})\s*-?\s*(cubic\s+in(?:ch(?:es)?)?|cu\s*-?\s*in(?:ch(?:es)?)?|in(?:ch(?:es)?)?\s*\^?\s*3|ci|cubic\s+cent\w+|cu\s*cm|cm\s*\^?\s*3|cc|ml)(?![a-z\d])`,
);
const metricWord = /^(?:cubic\s+cent|cu\s*cm|cm|cc|ml)/;
const gangPattern = /\b(?:(\d)|(single)|(double)|(triple))\s*-?\s*gangs?\b/;
const barrierPattern =
  /^(?:an?\s+|unmarked\s+)*(?:(metal|steel)|(plastic|nonmetallic|pvc))\s+(?:barrier|divider|partition)$/;

const shapes: readonly (readonly [RegExp, readonly StandardBox['kind'][]])[] = [
  [/\b(?:oct|octagon|octagonal|octagons|round)\b/, ['octagon']],
  [/\b(?:sq|square)\b/, ['square']],
  [/\bmasonry\b/, ['masonry-gang']],
  [/\bfs\b/, ['fs-single', 'fs-multiple']],
  [/\bfd\b/, ['fd-single', 'fd-multiple']],
  [/\b(?:device|switch|handy|utility|wall)\b/, ['device', 'masonry-gang']],
];

/** The numbers in a text, in the order they stand, and the text without them. */
function numbersIn(text: string): { readonly numbers: readonly number[]; readonly rest: string } {
  const numbers: number[] = [];
  let rest = '';
  let place = 0;
  while (place < text.length) {
    const found = /[\d.]/.test(text[place] as string) ? numberAt(text, place) : undefined;
    if (found) numbers.push(found.value);
    else rest += text[place];
    place = found ? found.end : place + 1;
  }
  return { numbers, rest };
}

const sizesOf = new Map(standardBoxes.map((box) => [box, numbersIn(folded(box.size)).numbers]));

/** What is left of `sizes` when each of `taken` has been found in it once; nothing when one was not. */
function without(sizes: readonly number[], taken: readonly number[]): readonly number[] | undefined {
  const left = [...sizes];
  for (const size of taken) {
    const place = left.findIndex((other) => Math.abs(other - size) < 1e-9);
    if (place < 0) return undefined;
    left.splice(place, 1);
  }
  return left;
}

/** Boxes listed by the gang, and the sectional ones that are screwed together side by side. */
const ganged = ({ kind, size }: StandardBox): boolean =>
  /gang|^f[sd]/.test(kind) || (kind === 'device' && size.startsWith('3 x 2'));

function listed(boxes: readonly StandardBox[]): string {
  const named = boxes.map(({ name, volume }) => `${name} (${cubicInchText(volume)})`);
  return `${named.slice(0, -1).join(', ')}${named.length > 1 ? ' or ' : ''}${named.at(-1)}`;
}

/** A standard box from its size and shape, in whatever order they are said. */
function standardBox(text: string, gangs: number): Reading<BoxPart> {
  const { numbers, rest } = numbersIn(text);
  const kinds = shapes.find(([pattern]) => pattern.test(rest))?.[1];
  const cover = /\bmultiple\b/.test(rest) ? 'multiple' : /\bsingle cover\b/.test(rest) ? 'single' : '';
  const candidates = standardBoxes.filter(
    (box) =>
      (kinds === undefined || kinds.includes(box.kind)) &&
      (!/^f[sd]/.test(box.kind) || (kinds !== undefined && box.kind.includes(cover))),
  );
  const leftOver = candidates.map((box) => ({ box, left: without(sizesOf.get(box) ?? [], numbers) }));
  const exact = leftOver.filter(({ left }) => left?.length === 0).map(({ box }) => box);
  const [only] = exact;
  if (only && exact.length === 1) {
    const byGang = ganged(only) ? gangs : 1;
    return { value: { standard: only, gangs: byGang, volume: cubicInches(only.volume * byGang) } };
  }
  if (exact.length > 1) return { rejected: `There is more than one of that size: say which, ${listed(exact)}.` };
  const larger =
    numbers.length === 0 && kinds === undefined
      ? []
      : leftOver.filter(({ left }) => left !== undefined).map(({ box }) => box);
  if (larger.length > 0 && larger.length <= 9) {
    return { rejected: `Say its whole size, depth too: ${listed(larger)}. Or give its marked volume.` };
  }
  return {
    rejected: /\b(?:plastic|nonmetallic|pvc|fiberglass|fibreglass)\b/.test(rest)
      ? `A plastic box is marked inside with its cubic inches. ${boxRules['not-marked'].says}`
      : `That box is not in the table of standard boxes. ${wouldDo}`,
  };
}

function partFrom(piece: string, gangs: number, units: UnitSystem): Reading<BoxPart> {
  const marked = cubic.exec(piece);
  if (!marked) {
    const bare = /^(?:\d[\d.,]*)$/.test(piece) ? boxVolume.read(piece, units) : undefined;
    if (!bare) return standardBox(piece, gangs);
    if ('rejected' in bare) return bare;
    return bare.value > 5
      ? { value: { volume: bare.value, gangs: 1 } }
      : { rejected: `${piece} what? Write ${piece} cu in if that is marked on it, or its whole size and shape.` };
  }
  const [whole, amount = '', unit = ''] = marked;
  const volume = boxVolume.read(`${amount} ${metricWord.test(unit) ? 'cm3' : 'in3'}`, units);
  if ('rejected' in volume) return volume;
  const around = `${piece.slice(0, marked.index)} ${piece.slice(marked.index + whole.length)}`;
  if (/\b(?:less|minus|without|not|each|half)\b/.test(around)) {
    return { rejected: `Say the volume of the whole box in one number, rings after a +. ${wouldDo}` };
  }
  if (!/\d/.test(around)) return { value: { volume: volume.value, gangs: 1 } };
  const named = standardBox(around, gangs);
  return 'rejected' in named
    ? { rejected: `One number too many stands beside the volume. Join boxes and rings with +. ${wouldDo}` }
    : { value: { ...named.value, volume: volume.value } };
}

/** Reads a box: a marked volume, a standard size and shape, rings joined with +, a barrier with "+ metal barrier". */
export function readBox(text: string, units: UnitSystem): Reading<BoxAnswer> {
  if (text.length > longest) return { rejected: `That is too long for a box. ${wouldDo}` };
  const said = folded(normalised(text))
    .replace(/\b1900\b(?:\s*box)?/, '4 square')
    .replace(
      /\bwith (?=(?:a |an |unmarked )*(?:metal|steel|plastic|nonmetallic|pvc) (?:barrier|divider|partition))/,
      '+ ',
    );
  if (said === '') return { rejected: `Nothing was given. ${wouldDo}` };
  if (/(?:^|\+)\s*-/.test(said)) return { rejected: `No box has less than no room. ${wouldDo}` };
  const gang = gangPattern.exec(said);
  const gangs = gang ? (gang[1] ? Number(gang[1]) : gang[3] ? 2 : gang[4] ? 3 : 1) : null;
  const parts: BoxPart[] = [];
  const barriers: BarrierMaterial[] = [];
  for (const piece of said.replace(gangPattern, ' ').split(/\+|\bplus\b/)) {
    const plain = piece.replace(/\s+/g, ' ').replace(/^[\s,;]+|[\s,;]+$/g, '');
    const barrier = barrierPattern.exec(plain);
    if (barrier) {
      barriers.push(barrier[1] ? 'metal' : 'nonmetallic');
      continue;
    }
    const part = partFrom(plain, gangs ?? 1, units);
    if ('rejected' in part) return part;
    parts.push(part.value);
  }
  return parts.length === 0 ? { rejected: `A barrier is no box. ${wouldDo}` } : { value: { parts, barriers, gangs } };
}

const partText = ({ standard, volume, gangs }: BoxPart): string => {
  if (!standard) return cubicInchText(volume);
  const marked = Math.abs(volume - standard.volume * gangs) > 1e-9 ? `, ${cubicInchText(volume)}` : '';
  return `${standard.name.replace(', each gang', '')}${marked}`;
};

/** A box as it can be typed back. */
export const boxText = ({ parts, barriers, gangs }: BoxAnswer): string =>
  [
    ...parts.map((part, index) => `${partText(part)}${index === 0 && gangs !== null ? `, ${gangs}-gang` : ''}`),
    ...barriers.map((material) => `${material} barrier`),
  ].join(' + ');
