import { type Dimension, dimensions } from './dimensions.ts';
import type { Estimate } from './estimate.ts';
import { within } from './meets.ts';
import { type Face, writtenAlone } from './printing.ts';
import { isTrouble, type Trouble } from './reading-phrases.ts';
import { type Said, said } from './reading-ranges.ts';
import { echoed, folded, longestText } from './reading-text.ts';
import { withoutNoise } from './unit-factors.ts';
import type { OneSystem } from './units.ts';

/** What a typed answer became: a value, or one sentence saying what was wrong and what would do. */
export type Reading<Value> = { readonly value: Value } | { readonly rejected: string };

/** What one question takes: its unit for a bare number, its limits in SI, and how they are printed. */
export interface Measure {
  readonly dimension: Dimension;
  /** With its article: "a duct diameter". */
  readonly noun: string;
  readonly bare: Readonly<Record<OneSystem, string>>;
  readonly least: number;
  readonly most: number;
  /** What would do: "4 in or 100 mm". */
  readonly example: string;
  readonly whole: boolean;
  /** Words that may follow and change nothing, with `|` between. */
  readonly after: string;
  readonly faces: Readonly<Record<OneSystem, Face>>;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const need = ({ noun, example }: Measure): string => `I need ${noun}, such as ${example}.`;

function limits({ noun, example, faces, least, most }: Measure, units: OneSystem): string {
  const [from, to] = [writtenAlone(faces[units], least), writtenAlone(faces[units], most)];
  return `I need ${noun} from ${from} to ${to}, such as ${example}.`;
}

/** A limit is as wide as it prints, for either crew: what it says it takes, it takes. */
function outside(value: number, measure: Measure, units: OneSystem, echo: string): string | undefined {
  const { faces, least, most, noun, whole } = measure;
  const printed = (limit: number) => [limit, faces['inch-pound'].shown(limit), faces.metric.shown(limit)];
  if (!Number.isFinite(value)) return `${echo} is too much; ${limits(measure, units)}`;
  if (value < 0 && least >= 0) return `${capital(noun)} cannot be negative; ${need(measure)}`;
  if (value === 0 && least > 0) return `Zero will not do; ${limits(measure, units)}`;
  if (!within(value, Math.max(...printed(most)))) return `${echo} is too much; ${limits(measure, units)}`;
  if (!within(Math.min(...printed(least)), value)) return `${echo} is too little; ${limits(measure, units)}`;
  if (whole && !Number.isInteger(value)) return `${echo} is not a whole number; ${need(measure)}`;
  return undefined;
}

function sentence({ trouble, whole }: Trouble, measure: Measure, echo: string): string {
  if (whole) return trouble;
  return `${trouble === '' ? `I cannot read ${echo}` : trouble}; ${need(measure)}`;
}

/** What stands in brackets must be the same value: to the digits shown, or as people round it, "8 ft (2.4 m)". */
function agrees(shown: number, again: number, { faces }: Measure): boolean {
  const digits = 1.5 * Math.max(faces['inch-pound'].step(shown), faces.metric.step(shown));
  return within(Math.abs(shown - again), Math.max(digits, 0.03 * Math.abs(shown)));
}

function trouble(found: Said, measure: Measure, units: OneSystem, echo: string): string | undefined {
  const { low, high, typical, isRange, bare, again } = found;
  if (again && !(agrees(low, again.low, measure) && agrees(high, again.high, measure))) {
    return `The two numbers in ${echo} do not agree; ${need(measure)}`;
  }
  if (bare && measure.dimension === dimensions.share && low > 0 && low < 0.01) {
    return `${echo} could be a share or a percentage; write it with a percent sign, such as ${measure.example}.`;
  }
  if (isRange && low > high) return `That range runs backwards; put the smaller number first.`;
  if (typical !== undefined && !(within(low, typical) && within(typical, high))) {
    return 'The likeliest value must lie inside the range; write it as 60 to 80, most likely 72, with the unit.';
  }
  for (const value of [low, high]) {
    const why = outside(value, measure, units, echo);
    if (why) return why;
  }
  return undefined;
}

function understood(text: string, measure: Measure, units: OneSystem, ranges: boolean): Reading<Said> {
  if (text.length > longestText) return { rejected: `That is too long to read; ${need(measure)}` };
  const plain = folded(text);
  if (plain === '') return { rejected: `Nothing was given; ${need(measure)}` };
  const echo = echoed(text) === '' ? 'that' : `“${echoed(text)}”`;
  const { dimension, after } = measure;
  const found = said(plain, { dimension, after, bare: measure.bare[units] });
  if (isTrouble(found)) return { rejected: sentence(found, measure, echo) };
  if (found.isRange && !ranges) {
    return {
      rejected: `That is a range; I need ${measure.noun.replace(/^an? /, 'one ')}, such as ${measure.example}.`,
    };
  }
  const why = trouble(found, measure, units, echo);
  return why === undefined ? { value: found } : { rejected: why };
}

/** Reads one amount and gives its number in SI. Never throws, whatever the text. */
export function readQuantity(text: string, measure: Measure, units: OneSystem): Reading<number> {
  const reading = understood(text, measure, units, false);
  return 'rejected' in reading ? reading : { value: reading.value.low };
}

/** Reads one amount or a range ("12 to 16 ft, most likely 14"), in SI. Never throws, whatever the text. */
export function readEstimate(text: string, measure: Measure, units: OneSystem): Reading<Estimate> {
  const reading = understood(text, measure, units, true);
  if ('rejected' in reading) return reading;
  const { low, high, typical = withoutNoise((low + high) / 2) } = reading.value;
  return { value: { low, typical: Math.min(Math.max(typical, low), high), high } };
}
