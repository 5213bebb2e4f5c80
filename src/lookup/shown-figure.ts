import type { Kind } from '#quantity/kind.ts';
import {
  airflow,
  airSpeed,
  boxVolume,
  current,
  ductLength,
  efficacy,
  insulation,
  loudness,
  minutes,
  openingArea,
  percentage,
  roomArea,
  roomPressure,
  roomVolume,
  smallLength,
  soundLevel,
  staticPressure,
  temperature,
  voltage,
} from '#quantity/kinds.ts';
import type { UnitSystem } from '#quantity/units.ts';
import type { Amount, FigureRow, Steps } from './entry.ts';

/** How a number in a printed unit is told in a crew's units, with the other system beside it. */
interface Told {
  one(value: number, units: UnitSystem): string;
  /** Without the other system. */
  short(value: number, units: UnitSystem): string;
  range(low: number, high: number, units: UnitSystem): string;
}

const told = <Q extends number, Unit extends string>(kind: Kind<Q, Unit>, unit: Unit): Told => ({
  one: (value, units) => kind.show(kind.from(value, unit), units),
  short: (value, units) => kind.showShort(kind.from(value, unit), units),
  range: (low, high, units) => kind.showRange({ low: kind.from(low, unit), high: kind.from(high, unit) }, units),
});

/** Printed units that are quantities a crew has its own units for. */
const quantities: Readonly<Record<string, Told>> = {
  cfm: told(airflow, 'cfm'),
  'L/s': told(airflow, 'L/s'),
  inH2O: told(staticPressure, 'inH2O'),
  'in wg': told(staticPressure, 'inH2O'),
  Pa: told(roomPressure, 'Pa'),
  fpm: told(airSpeed, 'fpm'),
  ft: told(ductLength, 'ft'),
  in: told(smallLength, 'in'),
  mm: told(smallLength, 'mm'),
  cm: told(smallLength, 'cm'),
  'ft^2': told(roomArea, 'ft^2'),
  'm^2': told(roomArea, 'm^2'),
  'mm^2': told(openingArea, 'mm^2'),
  'ft^3': told(roomVolume, 'ft^3'),
  'in^3': told(boxVolume, 'in^3'),
  'cm^3': told(boxVolume, 'cm^3'),
  mL: told(boxVolume, 'cm^3'),
  degF: told(temperature, 'degF'),
  degC: told(temperature, 'degC'),
  R: told(insulation, 'Rvalue'),
  Rvalue: told(insulation, 'Rvalue'),
  RSI: told(insulation, 'RSI'),
  s: told(minutes, 's'),
  min: told(minutes, 'minute'),
  minute: told(minutes, 'minute'),
  hour: told(minutes, 'hour'),
  '%': told(percentage, '0.01'),
  A: told(current, 'A'),
  V: told(voltage, 'V'),
  sone: told(loudness, '1'),
  dBA: told(soundLevel, '1'),
  'cfm/W': told(efficacy, 'cfm/W'),
};

/** The coarsest step a unit is printed to above; a figure printed finer is told as it stands. */
const steps: Readonly<Record<string, number>> = {
  cfm: 1,
  in: 1 / 8,
  ft: 1 / 24,
  minute: 0.5,
  '%': 1,
  fpm: 10,
  inH2O: 0.01,
  'ft^2': 0.1,
  degC: 0.5,
};

const isOnStep = (value: number, unit: string): boolean => {
  const step = steps[unit];
  return step === undefined || Math.abs(value / step - Math.round(value / step)) < 1e-9;
};

/** A unit as it stands beside a number. */
const unitWords = (unit: string): string =>
  unit === '1'
    ? ''
    : ` ${unit
        .replaceAll('^2', '²')
        .replaceAll('^3', '³')
        .replace('minute', 'min')
        .replace('hour', 'h')
        .replace('gallon', 'gal')
        .replace(/^lb[mf]$/, 'lb')
        .replace('in/ft', 'in per ft')
        .replace('1/h', 'per hour')
        .replace('inH2O', 'in. w.g.')
        .replace('degR day', '°F·d')
        .replace(/^deg$/, '°')}`;

/** A figure in the crew's units where it is a quantity, as printed where it is not. */
export function shownFigure({ amount, bound }: FigureRow, units: UnitSystem): string {
  const shown =
    typeof amount === 'string' ? amount : 'unit' in amount ? amountText(amount, units) : stepsText(amount, units);
  return bound === undefined ? shown : `${bound} ${shown}`;
}

const stepsText = (steps: Steps, units: UnitSystem): string =>
  steps.map(({ at, is }) => `${shortText(at, units)}: ${shortText(is, units)}`).join('; ');

function shortText(amount: Amount | string, units: UnitSystem): string {
  if (typeof amount === 'string') return amount;
  const { value = 0, unit } = amount;
  return quantities[unit]?.short(value, units) ?? `${value}${unitWords(unit)}`;
}

function amountText({ value, low, typical, high, values, unit }: Amount, units: UnitSystem): string {
  const known = quantities[unit];
  const plain = (number: number | string) =>
    known && typeof number === 'number' && isOnStep(number, unit)
      ? known.one(number, units)
      : `${number}${unitWords(unit)}`;
  if (values !== undefined) return values.map(plain).join('; ');
  if (value !== undefined) return plain(value);
  if (low === undefined || high === undefined) return 'no figure';
  if (low === high) return plain(low);
  const finely = known && [low, high].every((end) => isOnStep(end, unit));
  const range = finely ? known.range(low, high, units) : `${low} to ${high}${unitWords(unit)}`;
  return typical === undefined ? range : `${range}, most likely ${plain(typical)}`;
}
