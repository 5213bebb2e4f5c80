/**
 * Numbers that remember their unit at compile time. SI inside, always; the one exception is box fill, which is legal
 * arithmetic on printed cubic inches and must never turn "exactly full" into "overfull" by a conversion.
 *
 * The constructors below are the only casts in the program. Calling one is signing for the result.
 */
declare const unitOf: unique symbol;
export type Quantity<Unit extends string> = number & { readonly [unitOf]: Unit };

export type Metres = Quantity<'m'>;
export type SquareMetres = Quantity<'m2'>;
export type CubicMetres = Quantity<'m3'>;
export type CubicMetresPerSecond = Quantity<'m3/s'>;
export type MetresPerSecond = Quantity<'m/s'>;
export type Pascals = Quantity<'Pa'>;
export type KilogramsPerCubicMetre = Quantity<'kg/m3'>;
export type Kilograms = Quantity<'kg'>;
export type Seconds = Quantity<'s'>;
/** A temperature on the Celsius scale. Differences of temperature are plain numbers in kelvin inside a formula. */
export type Celsius = Quantity<'°C'>;
export type Watts = Quantity<'W'>;
/** Thermal resistance of an area, m²·K/W (RSI). */
export type SquareMetreKelvinsPerWatt = Quantity<'m2K/W'>;
/** A dimensionless share, 0 to 1 where it is a percentage. */
export type Ratio = Quantity<'1'>;
export type Sones = Quantity<'sone'>;
export type CubicInches = Quantity<'in3'>;
export type Amperes = Quantity<'A'>;
export type Volts = Quantity<'V'>;

export const metres = (value: number) => value as Metres;
export const squareMetres = (value: number) => value as SquareMetres;
export const cubicMetres = (value: number) => value as CubicMetres;
export const cubicMetresPerSecond = (value: number) => value as CubicMetresPerSecond;
export const metresPerSecond = (value: number) => value as MetresPerSecond;
export const pascals = (value: number) => value as Pascals;
export const kilogramsPerCubicMetre = (value: number) => value as KilogramsPerCubicMetre;
export const kilograms = (value: number) => value as Kilograms;
export const seconds = (value: number) => value as Seconds;
export const celsius = (value: number) => value as Celsius;
export const watts = (value: number) => value as Watts;
export const squareMetreKelvinsPerWatt = (value: number) => value as SquareMetreKelvinsPerWatt;
export const ratio = (value: number) => value as Ratio;
export const sones = (value: number) => value as Sones;
export const cubicInches = (value: number) => value as CubicInches;
export const amperes = (value: number) => value as Amperes;
export const volts = (value: number) => value as Volts;

/** One system of units. */
export type OneSystem = 'inch-pound' | 'metric';

/**
 * Which units a crew writes and reads. The other system is read all the same, and stands in brackets beside the numbers that
 * matter most; with `both` it stands beside every number, and inch-pound comes first.
 */
export type UnitSystem = OneSystem | 'both';

/** The system a bare number is read in, and the one that comes first. */
export const leading = (units: UnitSystem): OneSystem => (units === 'metric' ? 'metric' : 'inch-pound');

/** What is written in one system; where both are wanted, the metric after it in brackets. */
export const inEach = (units: UnitSystem, write: (system: OneSystem) => string): string =>
  units === 'both' ? `${write('inch-pound')} (${write('metric')})` : write(units);
