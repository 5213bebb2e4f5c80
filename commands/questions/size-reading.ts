import type { Reading, UnitSystem } from '#interview/question.ts';
import { lengthOf } from '#quantity/kind-makers.ts';
import { numberAt } from '#quantity/reading-numbers.ts';
import { echoed, folded } from '#quantity/reading-text.ts';
import { type Metres, metres } from '#quantity/units.ts';
import { normalised } from './run-grammar.ts';

/** Housings, openings, grilles, joists: one side of them, 1 to 60 in. */
export const side = lengthOf({
  bare: { 'inch-pound': 'in', metric: 'mm' },
  least: metres(0.0254),
  most: metres(1.524),
  example: '16 in or 400 mm',
});

const longest = 120;
const unitAfter = /\s*-?\s*(inches|inch|in\b|"|mm\b|millimet\w+|cm\b|centimet\w+|ft\b|feet|foot|')?/y;
const between = /\s*(?:x|×|by|\*|,)?\s*(?:wide|long|deep|high|tall)?\s*(?:x|×|by|\*|,)?\s*/y;
const square = /^\s*(?:square|sq)\b\.?$/;

const after = (pattern: RegExp, text: string, place: number) => {
  pattern.lastIndex = place;
  const match = pattern.exec(text);
  return { unit: match?.[1], end: place + (match?.[0].length ?? 0) };
};

/** Reads "10-1/4 x 10-1/2 x 7-5/8 in" into its sides; a unit said once counts for all of them. */
export function readSides(
  text: string,
  units: UnitSystem,
  { counts, example }: { readonly counts: readonly number[]; readonly example: string },
): Reading<readonly Metres[]> {
  const wouldDo = `Give ${counts.join(' or ')} numbers with x between, such as ${example}.`;
  if (text.length > longest) return { rejected: `That is too long. ${wouldDo}` };
  const said = folded(normalised(text));
  if (said === '') return { rejected: `Nothing was given. ${wouldDo}` };
  const found: { readonly value: number; readonly unit: string | undefined }[] = [];
  let place = 0;
  while (place < said.length) {
    const number = /[\d.]/.test(said[place] as string) ? numberAt(said, place) : undefined;
    if (!number) break;
    const { unit, end } = after(unitAfter, said, number.end);
    found.push({ value: number.value, unit });
    place = after(between, said, end).end;
  }
  const rest = said.slice(place);
  const [only] = found;
  const all = only && found.length === 1 && square.test(rest) ? [only, only] : found;
  if (rest !== '' && all === found) return { rejected: `“${echoed(rest)}” is not understood. ${wouldDo}` };
  if (!counts.includes(all.length)) return { rejected: wouldDo };
  const shared = all.findLast(({ unit }) => unit !== undefined)?.unit ?? (units === 'metric' ? 'mm' : 'in');
  const sides: Metres[] = [];
  for (const { value, unit } of all) {
    const reading = side.read(`${value} ${unit ?? shared}`, units);
    if ('rejected' in reading) return reading;
    sides.push(reading.value);
  }
  return { value: sides };
}

/** Sides as they can be typed back: "10-1/4 in x 10-1/2 in". */
export const sidesText = (sides: readonly Metres[], units: UnitSystem): string =>
  sides.map((each) => side.showShort(each, units)).join(' x ');
