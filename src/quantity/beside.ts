import type { Kind } from './kind.ts';
import * as kinds from './kinds.ts';
import { numberAt } from './reading-numbers.ts';

/** A number as it stands in a text: its value and how many digits it was written with. */
interface Written {
  readonly value: number;
  readonly digits: number;
}

/** How numbers in an inch-pound unit are said in the metric one. */
interface Twin {
  one(written: Written): string;
  range(low: Written, high: Written): string;
}

/** As many digits as the number was written with, at least two and at most four. */
const inDigits = (value: number, { digits }: Written): string =>
  String(Number(value.toPrecision(Math.min(Math.max(digits, 2), 4))));

/** As a value of this kind is printed anywhere; where the number was written finer than that, as finely as it was. */
function asKind<Unit extends string>(kind: Kind<number, Unit>, unit: Unit): Twin {
  const { unit: name, of } = kind.scale('metric');
  const isFiner = ({ value }: Written): boolean => {
    const printed = kind.showShort(kind.from(value, unit), 'inch-pound').replace(/^\D+/, '');
    return Math.abs((numberAt(printed, 0)?.value ?? Number.NaN) - Math.abs(value)) > 1e-9;
  };
  const one = (written: Written): string => {
    const value = kind.from(written.value, unit);
    if (!isFiner(written)) return kind.showShort(value, 'metric');
    const figures = inDigits(of(value), written);
    return name === 'RSI' ? `RSI ${figures}` : `${figures} ${name}`;
  };
  return {
    one,
    range(low, high) {
      return isFiner(low) || isFiner(high)
        ? `${one(low)} to ${one(high)}`
        : kind.showRangeShort({ low: kind.from(low.value, unit), high: kind.from(high.value, unit) }, 'metric');
    },
  };
}

/** For a unit made of two, which is no kind of quantity here. */
const timesOver = (factor: number, name: string): Twin => {
  const one = (written: Written): string => `${inDigits(written.value * factor, written)} ${name}`;
  return { one, range: (low, high) => `${one(low)} to ${one(high)}` };
};

const each = '(?:per|a|for each|for every|of fall per|of fall for each)';
/** "14 ft 4 in flex" is 14 ft of a duct of 4 in, "8 ft 6 in" alone one length. */
const ofDuct = '(?: (?:flex|foil|smooth|spiral))';
const difference = '(?:colder|warmer|cooler|apart|difference|of difference|rise|drop)';
/** "3 in the attic", "2 in 10" and "2 in Denver" are no inches. */
const noPreposition =
  '(?!\\. w|-lb| (?:the|a|an|any|all|each|every|this|that|these|those|its|their|your|our|it|one|two|place|use|order|case|turn|total|front|force|effect|print|writing|words|both|some|most|many|winter|summer|houses|homes|\\d+)\\b| [A-Z])';

/**
 * Inch-pound units as they stand behind a number in a sentence, with how to say them. The first that fits is taken, so a unit
 * made of two stands before the one it begins with. Factors follow from 1 ft = 0.3048 m, 1 lb = 0.45359237 kg,
 * 1 Btu = 1055.056 J, 1 in. w.g. = 249.089 Pa and 1 cfm = 0.47194745 L/s.
 */
const units: readonly (readonly [written: string, twin: Twin])[] = [
  [`cfm ${each} (?:sq ft|square foot)`, timesOver(0.47194745 / 0.09290304, 'L/s per m²')],
  ['cfm50|cfm at 50 Pa', asKind(kinds.houseLeakage, 'cfm')],
  ['cfm/W|cfm per [Ww](?:att)?', asKind(kinds.efficacy, 'cfm/W')],
  ['cfm', asKind(kinds.airflow, 'cfm')],
  ['in\\. w\\.g\\. (?:per|for each) 100 ft', timesOver(249.089 / 30.48, 'Pa per m')],
  ['in\\. w\\.g\\.|in wg|inches of water', asKind(kinds.staticPressure, 'inH2O')],
  ['fpm|feet (?:a|per) minute', asKind(kinds.airSpeed, 'fpm')],
  ['mph|miles an hour', timesOver(1.609344, 'km/h')],
  ['°F·d', asKind(kinds.degreeDays, 'degR day')],
  [`Btu/h ${each} °F`, timesOver(0.527528, 'W/K')],
  [`°F ${difference}`, timesOver(5 / 9, 'K')],
  [`°F(?!·| ${difference})`, asKind(kinds.temperature, 'degF')],
  ['Btu/h', asKind(kinds.heatOutput, 'BTU/hour')],
  ['Btu', timesOver(0.001055056, 'MJ')],
  ['cu ft/lb', timesOver(0.0283168466 / 0.45359237, 'm³/kg')],
  ['lb/ft³|lb/cu ft', asKind(kinds.airDensity, 'lbm/ft^3')],
  ['cu ft|ft³|cubic f(?:ee|oo)t', asKind(kinds.roomVolume, 'ft^3')],
  ['cu in|in³|cubic inch(?:es)?', asKind(kinds.boxVolume, 'in^3')],
  ['sq ft|ft²|square f(?:ee|oo)t', asKind(kinds.roomArea, 'ft^2')],
  ['sq in|in²|square inch(?:es)?', asKind(kinds.openingArea, 'in^2')],
  ['gal(?:lons?)?', asKind(kinds.containerVolume, 'gallon')],
  ['in-lb|inch-pounds', timesOver(0.1129848, 'N·m')],
  ['lbs?|pounds?', timesOver(0.45359237, 'kg')],
  [`(?:in|inch(?:es)?) ${each} (?:ft|foot)`, timesOver(25.4 / 0.3048, 'mm per m')],
  [`ft(?! \\d+(?:[ -]\\d/\\d)? in\\b(?!${ofDuct}))|f(?:ee|oo)t`, asKind(kinds.ductLength, 'ft')],
  [`in${noPreposition}|inch(?:es)?`, asKind(kinds.smallLength, 'in')],
];

const figure = String.raw`[-−]?(?:\d+[ -]\d+/\d+|\d+/\d+|\d{1,3}(?:,\d{3})+(?!\d)|\d+(?:\.\d+)?)`;
/** Nothing stands before it that it is a part of: a longer number, a name, a setting to type. */
const alone = String.raw`(?<![\w.,/@="“-]|\d )(?<!(?:m|L/s|Pa|°C|m²|m³|kg|K|W|RSI [\d.]+) \()(?<!\b(?:[Jj]ob|[Ss]tep|[Ss]top|[Pp]age|[Tt]able|[Cc]hapter|[Ss]ection|[Ff]igure|[Ee]xample|NEC|IRC|CEC|edition of) )`;
/** No metric number in brackets follows. */
const noTwin = String.raw`(?!\.?[\w/])(?! ?\((?:about )?(?:RSI )?[-−]?\d)`;
const joint = '( to | or | and |–|-)';

const measured = new RegExp(
  `${alone}(${figure})(?:${joint}(${figure}))?[ -](?:${units.map(([written]) => `(${written})`).join('|')})${noTwin}`,
  'g',
);
const feetAndInches = new RegExp(`${alone}(\\d+) ft (\\d+(?:[ -]\\d/\\d)?) in(?!${ofDuct})${noTwin}`, 'g');
const resistance = new RegExp(`${alone}R-(\\d+(?:\\.\\d+)?)(?: to R-(\\d+(?:\\.\\d+)?))?(?! to R-)${noTwin}`, 'g');
/** Behind a unit that begins a unit made of two, which has its bracket: " for each foot (". */
const goesOn = new RegExp(`^ ${each} [^(]{1,12} \\(\\d`);

const insulationTwin = asKind(kinds.insulation, 'Rvalue');

function read(text: string): Written {
  const digits = text.replace(/^[-−]/, '');
  const value = numberAt(digits, 0)?.value ?? Number.NaN;
  return {
    value: digits === text ? value : -value,
    digits: digits
      .replace(/,/g, '')
      .replace(/^[0.]+/, '')
      .replace('.', '').length,
  };
}

function twinOf(twin: Twin, first: string, between: string | undefined, second: string | undefined): string {
  if (second === undefined || between === undefined) return twin.one(read(first));
  const [low, high] = [read(first), read(second)];
  return / or | and /.test(between) ? `${twin.one(low)}${between}${twin.one(high)}` : twin.range(low, high);
}

/** The same text with the metric number in brackets behind each inch-pound one that has none. What is quoted stays as it is. */
export const withMetric = (text: string): string =>
  /\d/.test(text)
    ? text
        .split(/(“[^”]*”)/)
        .map((part, index) => (index % 2 ? part : doubled(part)))
        .join('')
    : text;

const doubled = (text: string): string =>
  text
    .replace(feetAndInches, (found, feet: string, inches: string) => {
      const length = kinds.ductLength.from(Number(feet) + read(inches).value / 12, 'ft');
      return `${found} (${kinds.ductLength.showShort(length, 'metric')})`;
    })
    .replace(measured, (found: string, ...rest: readonly (string | number | undefined)[]) => {
      const [first, between, second, ...groups] = rest.slice(0, 3 + units.length) as (string | undefined)[];
      const [offset, whole] = rest.slice(3 + units.length) as [number, string];
      const twin = units[groups.findIndex((group) => group !== undefined)]?.[1];
      if (twin === undefined || first === undefined || goesOn.test(whole.slice(offset + found.length))) return found;
      return `${found} (${twinOf(twin, first, between, second)})`;
    })
    .replace(resistance, (found, low: string, high?: string) => {
      return `${found} (${twinOf(insulationTwin, low, high === undefined ? undefined : ' to ', high)})`;
    });
