import type { Dimension } from './dimensions.ts';
import type { Estimate } from './estimate.ts';
import { type Face, writtenAlone, writtenRange } from './printing.ts';
import { type Measure, type Reading, readEstimate, readQuantity } from './reading.ts';
import { toSi } from './unit-factors.ts';
import { leading, type OneSystem, type UnitSystem } from './units.ts';

/** The ends of a range. An estimate is one too. */
interface Span<Q> {
  readonly low: Q;
  readonly high: Q;
}

/**
 * A kind of quantity: what is asked for, how it is read and how it is printed. Questions and findings share the same object,
 * so that what is printed can be typed back.
 */
export interface Kind<Q extends number = number, Unit extends string = string> {
  /** With its article: "a length". */
  readonly noun: string;
  /** What would do: "4 in or 100 mm". */
  readonly example: string;
  /** What a question says it takes: "a length, such as 4 in or 100 mm". */
  readonly accepts: string;
  /** The SI unit of the values, as written beside a number: "m3/s". */
  readonly siUnit: string;
  readonly least: Q;
  readonly most: Q;
  /** Reads one amount. Never throws, whatever the text. */
  read(text: string, units: UnitSystem): Reading<Q>;
  /** Reads one amount or a range, "60 to 80 cfm, most likely 72". Never throws, whatever the text. */
  readEstimate(text: string, units: UnitSystem): Reading<Estimate<Q>>;
  /** "73 cfm (34.5 L/s)" */
  show(value: Q, units: UnitSystem): string;
  /** "73 cfm"; where both systems are wanted, as `show`. */
  showShort(value: Q, units: UnitSystem): string;
  /** "47 to 74 cfm (22 to 35 L/s)" */
  showRange(span: Span<Q>, units: UnitSystem): string;
  /** "47 to 74 cfm"; where both systems are wanted, as `showRange`. */
  showRangeShort(span: Span<Q>, units: UnitSystem): string;
  /** "47 to 74 cfm (22 to 35 L/s), most likely 59 cfm"; an exact estimate as a single value. Can be read back. */
  showEstimate(estimate: Estimate<Q>, units: UnitSystem): string;
  /** For an axis or the head of a column: the unit's name, and the plain number in it, not rounded. */
  scale(units: UnitSystem): { readonly unit: string; of(value: Q): number };
  /** The quantity from a number in a named unit: `ductDiameter.from(4, 'in')`. */
  from(number: number, unit: Unit): Q;
}

/** What each question states about its own kind. Limits are in SI and refuse what cannot be meant. */
export interface Limits<Q extends number> {
  readonly least: Q;
  readonly most: Q;
  /** Two readable answers with "or" between: "4 in or 100 mm". */
  readonly example: string;
  /** With its article, where it says more than the dimension does: "a relative humidity". */
  readonly noun?: string;
}

/** The unit of a bare number, for each system. */
export type Bare<Unit extends string> = Readonly<Record<OneSystem, Exclude<Unit, 'own'>>>;
export type Faces = Readonly<Record<OneSystem, Face>>;

interface Definition<Q extends number, Unit extends string> extends Limits<Q> {
  readonly dimension: Dimension<Unit>;
  readonly bare: Bare<Unit>;
  readonly faces: Faces;
  readonly brand: (value: number) => Q;
  readonly whole?: boolean;
  readonly after?: string;
}

const otherSystem = { 'inch-pound': 'metric', metric: 'inch-pound' } as const;

export function kindOf<Q extends number, Unit extends string>(definition: Definition<Q, Unit>): Kind<Q, Unit> {
  const { dimension, faces, brand: sign, least, most, example, noun = dimension.noun, whole = false } = definition;
  const after = [dimension.after, definition.after].filter(Boolean).join('|');
  const measure: Measure = { dimension, noun, bare: definition.bare, least, most, example, whole, after, faces };
  const alone = (value: Q, system: OneSystem) => writtenAlone(faces[system], value);
  const range = ({ low, high }: Span<Q>, system: OneSystem) => writtenRange(faces[system], low, high);
  const withOther = (write: (system: OneSystem) => string, units: UnitSystem) => {
    const first = leading(units);
    const other = otherSystem[first];
    return faces[first] === faces[other] ? write(first) : `${write(first)} (${write(other)})`;
  };
  const show = (value: Q, units: UnitSystem) => withOther((system) => alone(value, system), units);
  const alike = ({ low, high }: Span<Q>, units: UnitSystem) =>
    range({ low, high: low }, leading(units)) === range({ low: high, high }, leading(units));
  const showRange = (span: Span<Q>, units: UnitSystem) =>
    alike(span, units)
      ? show(sign((span.low + span.high) / 2), units)
      : withOther((system) => range(span, system), units);
  const showShort = (value: Q, units: UnitSystem) => (units === 'both' ? show(value, units) : alone(value, units));
  const rangeShort = (span: Span<Q>, units: UnitSystem) =>
    units === 'both' ? withOther((system) => range(span, system), units) : range(span, units);
  return {
    noun,
    example,
    accepts: `${noun}, such as ${example}`,
    siUnit: dimension.symbol,
    least,
    most,
    read(text, units) {
      const reading = readQuantity(text, measure, leading(units));
      return 'rejected' in reading ? reading : { value: sign(reading.value) };
    },
    readEstimate(text, units) {
      const reading = readEstimate(text, measure, leading(units));
      if ('rejected' in reading) return reading;
      const { low, typical, high } = reading.value;
      return { value: { low: sign(low), typical: sign(typical), high: sign(high) } };
    },
    show,
    showShort,
    showRange,
    showRangeShort: rangeShort,
    showEstimate(estimate, units) {
      if (alike(estimate, units)) return show(estimate.typical, units);
      const { typical } = estimate;
      return `${showRange(estimate, units)}, most likely ${rangeShort({ low: typical, high: typical }, units)}`;
    },
    scale: (units) => ({ unit: faces[leading(units)].unit, of: (value) => faces[leading(units)].number(value) }),
    from: (number, unit) => sign(toSi(number, unit, dimension.si)),
  };
}
