import { optional } from '#interview/quantities.ts';
import type { Question, Reading, UnitSystem } from '#interview/question.ts';
import { lengthOf } from '#quantity/kind-makers.ts';
import { fanPower } from '#quantity/kinds.ts';
import { type Metres, metres } from '#quantity/units.ts';
import { collar, fanCurve, fanSettings, ratedSones } from './fan.ts';

export const fanWatts = optional({
  id: 'fan-watts',
  prompt: 'How many watts does the label say the fan draws?',
  why: 'What the fan costs to run and whether a control can carry it go by its watts.',
  brief: 'Watts on the label',
  kind: fanPower,
  because: 'Without the watts no running cost can be told.',
});

/** A fan housing as its carton gives it; the depth is what stands above the ceiling. */
export interface HousingSize {
  readonly length: Metres;
  readonly width: Metres;
  readonly depth: Metres;
}

const side = lengthOf({
  bare: { 'inch-pound': 'in', metric: 'mm' },
  least: metres(0.0254),
  most: metres(0.9144),
  example: '9 1/4 in or 235 mm',
  noun: 'a side of the housing',
});

const accepts = 'length x width x depth, such as 9 1/4 x 9 x 5 3/4 in or 235 x 230 x 146 mm';

/** A number that has no unit of its own takes the unit at the end: "9 1/4 x 9 x 5 3/4 in". */
const withUnit = (part: string, unit: string): string =>
  /^[\d\s.,/\u2044\u00bc-\u00be\u2150-\u215e-]+$/.test(part) ? `${part} ${unit}` : part;

function readHousing(text: string, units: UnitSystem): Reading<HousingSize | null> {
  const said = text.slice(0, 200).trim();
  if (said === '') return { rejected: `Nothing was given. Give ${accepts}.` };
  const parts = said.split(/\s*[x×*]\s*|\s+by\s+/i).map((part) => part.trim());
  const [first = '', second = '', last = ''] = parts;
  if (parts.length !== 3 || parts.includes('')) {
    return { rejected: `A housing has three sides. Give ${accepts}.` };
  }
  const unit = /(?:[a-z]+\.?|["″”])$/i.exec(last)?.[0] ?? '';
  const sides = [withUnit(first, unit), withUnit(second, unit), last].map((part) => side.read(part, units));
  const [length, width, depth] = sides.map((each) => ('value' in each ? each.value : undefined));
  if (length === undefined || width === undefined || depth === undefined) {
    return { rejected: sides.flatMap((each) => ('rejected' in each ? [each.rejected] : []))[0] ?? accepts };
  }
  return { value: { length, width, depth } };
}

export const housingSize: Question<HousingSize | null> = {
  id: 'housing-size',
  prompt: 'What are the housing’s length, width and depth?',
  why: 'The housing must go between the joists and, under a floor, into their depth. Find out before the ceiling is cut.',
  accepts,
  brief: 'Housing: length x width x depth',
  widget: { kind: 'text', placeholder: '9 1/4 x 9 x 5 3/4 in' },
  whenUnknown: { value: null, because: 'Whether the housing fits between the joists cannot be told.' },
  read: readHousing,
  show: (value, units) =>
    value === null
      ? 'not known'
      : [value.length, value.width, value.depth].map((each) => side.showShort(each, units)).join(' x '),
};

/** What the label of a fan answers, in the order it is read off. */
export const labelQuestions = [fanCurve, fanSettings, collar, ratedSones, fanWatts, housingSize] as const;
