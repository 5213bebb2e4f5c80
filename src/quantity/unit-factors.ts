import { createRequire } from 'node:module';
import type { Unit } from 'mathjs';

/** How a number in some unit becomes one in another: multiply, then add. Only temperatures add anything. */
interface Conversion {
  readonly factor: number;
  readonly offset: number;
}

/** What this file uses of the unit class of mathjs. */
interface UnitMaker {
  parse(text: string): Unit;
  createUnit(definitions: Readonly<Record<string, string>>): unknown;
}

/**
 * The trade's units that mathjs does not know.
 *
 * The inch of water is the conventional one, water at 1000 kg/m³ under standard gravity: 249.08891 Pa exactly. mathjs has
 * the conventional millimetre, 9.80665 Pa.
 *
 * @source NIST SP 811, Guide for the Use of the SI, appendix B.8: "inch of water, conventional"
 */
const tradeUnits = {
  cfm: '1 ft^3/min',
  fpm: '1 ft/min',
  inH2O: '25.4 mmH2O',
  Rvalue: '1 ft^2 degR hour/BTU',
  RSI: '1 m^2 K/W',
  therm: '1e5 BTU',
};

/**
 * What the unit class asks for, in plain numbers. mathjs hands its parts each other in this way on purpose, so that a program
 * may bring its own arithmetic: the whole library takes 0.6 s to load and this part of it 0.05 s.
 */
const plainArithmetic = {
  addScalar: (a: number, b: number) => Number(a) + Number(b),
  subtractScalar: (a: number, b: number) => a - b,
  multiplyScalar: (a: number, b: number) => a * b,
  divideScalar: (a: number, b: number) => a / b,
  pow: (a: number, b: number) => a ** b,
  abs: Math.abs,
  fix: Math.trunc,
  round: Math.round,
  equal: (a: number, b: number) => a === b,
  isNumeric: (value: unknown) => typeof value === 'number',
  format: String,
  number: Number,
  Complex: class {},
  BigNumber: class {},
};

let maker: UnitMaker | undefined;

function units(): UnitMaker {
  if (maker) return maker;
  const inside = createRequire(createRequire(import.meta.url).resolve('mathjs'));
  const { DEFAULT_CONFIG: config } = inside('./core/config.js') as { DEFAULT_CONFIG: unknown };
  const { createUnitClass } = inside('./type/unit/Unit.js') as { createUnitClass(parts: object): UnitMaker };
  const made = createUnitClass({ ...plainArithmetic, config, Fraction: inside('fraction.js') });
  made.createUnit(tradeUnits);
  maker = made;
  return made;
}

/** Loads mathjs now rather than at the first answer. */
export const warmUnits = (): void => {
  units();
};

/**
 * Fourteen digits are more than anyone measures; the rest is the noise of binary fractions, which would turn 5400 degree
 * days into 3000.0000000000027.
 */
export const withoutNoise = (value: number): number => Number(value.toPrecision(14));

const unchanged: Conversion = { factor: 1, offset: 0 };
/** By the unit converted from, then by the SI unit. */
const known = new Map<string, Map<string, Conversion>>();

function conversionByMathjs(from: string, to: string): Conversion {
  const converted = (value: number): number =>
    units()
      .parse(/^\d/.test(from) ? from : `${value} ${from}`)
      .toNumber(to);
  if (to !== 'degC') return { factor: converted(1), offset: 0 };
  const offset = converted(0);
  return { factor: (converted(100) - offset) / 100, offset };
}

/**
 * The conversion from a unit to the SI unit, each a mathjs expression such as `ft^3/min` or `1000 BTU/hour`. Worked out by
 * mathjs once and kept. Where `to` is '1' the quantity is a plain number and `from` is the factor itself: '0.01' for a
 * percentage.
 */
function conversion(from: string, to: string): Conversion {
  if (from === to) return unchanged;
  const found = known.get(from)?.get(to);
  if (found) return found;
  const fresh = to === '1' ? { factor: Number(from), offset: 0 } : conversionByMathjs(from, to);
  const fromThis = known.get(from) ?? new Map<string, Conversion>();
  known.set(from, fromThis.set(to, fresh));
  return fresh;
}

/** Two large numbers nearly cancel in a temperature; what is left of a degree at the eleventh decimal is noise. */
const settled = (value: number, { offset }: Conversion): number =>
  offset === 0 ? withoutNoise(value) : Number(value.toFixed(11));

/** The number in the SI unit of a quantity given in another unit. */
export function toSi(value: number, unit: string, si: string): number {
  const step = conversion(unit, si);
  return settled(value * step.factor + step.offset, step);
}

/** The number in another unit of a quantity given in its SI unit. */
export function fromSi(value: number, unit: string, si: string): number {
  const step = conversion(unit, si);
  return settled((value - step.offset) / step.factor, step);
}

/** `fromSi` with the noise of binary fractions left in, for a number that is rounded next: settling it costs more than all the rest. */
export function fromSiToRound(value: number, unit: string, si: string): number {
  const { factor, offset } = conversion(unit, si);
  return (value - offset) / factor;
}

/** How much of the SI unit one step of another unit is, wherever the scale begins. */
export const stepInSi = (step: number, unit: string, si: string): number => step * conversion(unit, si).factor;
