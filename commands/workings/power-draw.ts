import { currentDrawn } from '#engine/electrical/current.ts';
import type { Gauge } from '#engine/electrical/gauge.ts';
import type { Step } from '#findings/finding.ts';
import type { Answer, UnitSystem } from '#interview/question.ts';
import { type CircuitLimitId, circuitLimits, nominalVoltage, smallMotorPowerFactor } from '#knowledge/electrical.ts';
import { cite } from '#knowledge/sources.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { current, fanPower } from '#quantity/kinds.ts';
import { within } from '#quantity/meets.ts';
import { type Amperes, amperes, type Ratio, ratio, type Watts, watts } from '#quantity/units.ts';

/** What was read off labels. `null` where nobody has read it. */
export interface LoadNumbers {
  /** A range where nobody has read them. */
  readonly fanWatts: Answer<Estimate<Watts>>;
  readonly fanAmps: Amperes | null;
  readonly heaterWatts: Watts | null;
  readonly lampWatts: Watts | null;
  readonly otherFixed: Amperes | null;
  readonly breaker: Amperes | null;
  readonly thinnestWire: Gauge | null;
  readonly controlRating: Amperes | null;
  readonly controlMinimum: Watts | null;
  readonly lowestLoad: Watts | null;
}

export type Facts = Readonly<Record<string, string | undefined>>;

/** A current, and the most it can be: a motor known by its watts alone may draw more than they tell. */
export interface Draw {
  readonly told: Amperes;
  readonly most: Amperes;
}

/** What each part of the unit draws; `null` where nobody has read it. */
interface Parts {
  readonly fan: Draw;
  readonly heater: Draw | null;
  readonly lamp: Draw | null;
  /** The same of a heater or lamp that the switch works, in the unit or not. */
  readonly switchedHeater: Draw | null;
  readonly switchedLamp: Draw | null;
  readonly steps: readonly Step[];
}

export const limitCite = (id: CircuitLimitId) => cite(circuitLimits[id]);
const drawn = (power: Watts, powerFactor: Ratio) => currentDrawn({ power, voltage: nominalVoltage, powerFactor });
const resistive = (power: Watts): Draw => ({ told: drawn(power, ratio(1)), most: drawn(power, ratio(1)) });
const none: Draw = { told: amperes(0), most: amperes(0) };
const volts = `${nominalVoltage} V`;

/** "0.25 A", or "0.25 to 0.5 A" where the motor may draw more than its watts tell. */
export const drawText = ({ told, most }: Draw, units: UnitSystem): string =>
  most > told ? current.showRangeShort({ low: told, high: most }, units) : current.showShort(told, units);

/** Whether the unit has a part, so far as is known: `undefined` when nobody has said. */
const has = (facts: Facts, part: 'heater' | 'light'): boolean | undefined => {
  const kind = facts['unit-kind'];
  if (kind === undefined || kind === 'unknown') return undefined;
  return kind === 'paddle-or-hanging' && part === 'light' ? undefined : kind.includes(part);
};

/** Whether anybody read what the fan draws. */
export const fanIsRead = ({ fanAmps, fanWatts }: LoadNumbers): boolean => fanAmps !== null || fanWatts.known;

/** The watts of the fan, never less than at its lowest speed. */
const fanWattsCounted = ({ fanWatts: { value }, lowestLoad }: LoadNumbers) => ({
  typical: watts(Math.max(value.typical, lowestLoad ?? 0)),
  high: watts(Math.max(value.high, lowestLoad ?? 0)),
});

/** The fewest watts that were read of the fan, at whatever speed. */
export const leastWatts = ({ fanWatts, lowestLoad }: LoadNumbers): Watts =>
  watts(Math.max(fanWatts.known ? fanWatts.value.low : 0, lowestLoad ?? 0));

/** Whether the amps told are too few for the watts told: no motor draws less than its watts over the volts. */
export const ampsTooFew = (numbers: LoadNumbers): boolean =>
  numbers.fanAmps !== null && !within(drawn(leastWatts(numbers), ratio(1)), numbers.fanAmps);

/** Watts of the fan at its lowest speed, the least that was told; its ordinary watts where they are already too few. */
export function lowestCounted({ fanWatts, lowestLoad, controlMinimum }: LoadNumbers): Watts | null {
  const most = fanWatts.known ? fanWatts.value.high : null;
  if (lowestLoad !== null) return most === null ? lowestLoad : watts(Math.min(lowestLoad, most));
  return most !== null && controlMinimum !== null && most < controlMinimum ? most : null;
}

function fanDraw(numbers: LoadNumbers): Draw {
  const { fanAmps } = numbers;
  if (fanAmps !== null && !ampsTooFew(numbers)) return { told: fanAmps, most: fanAmps };
  const { typical, high } = fanWattsCounted(numbers);
  return { told: drawn(typical, ratio(1)), most: drawn(high, smallMotorPowerFactor) };
}

export function partsOf(numbers: LoadNumbers, facts: Facts, units: UnitSystem): Parts {
  const { fanAmps, fanWatts, heaterWatts, lampWatts } = numbers;
  const counted = fanWattsCounted(numbers);
  const fan = fanDraw(numbers);
  // Watts that were read count whatever was said of the unit; no watts for a part that is there were not read.
  const part = (power: Watts | null, there: boolean | undefined) => {
    if (power !== null && power > 0) return resistive(power);
    return there === false || (power !== null && there === undefined) ? none : null;
  };
  const heater = part(heaterWatts, has(facts, 'heater'));
  const lamp = part(lampWatts, has(facts, 'light'));
  const shown = (power: Watts) => fanPower.show(power, units);
  const steps: Step[] = [
    ...(fanAmps !== null ? [{ what: 'Fan, by the amps of its label', value: current.show(fanAmps, units) }] : []),
    ...(fanAmps !== null && !ampsTooFew(numbers)
      ? fanWatts.known
        ? [
            {
              what: 'Fan, by its watts, which the amps go before',
              how: `${shown(counted.typical)} ÷ ${volts}`,
              value: current.show(drawn(counted.typical, ratio(1)), units),
            },
          ]
        : []
      : [
          {
            what: 'Fan, by its watts',
            how: `${shown(counted.typical)} ÷ ${volts}`,
            value: current.show(fan.told, units),
          },
          {
            what: 'Fan, at most',
            how: `${shown(counted.high)} ÷ (${volts} × ${smallMotorPowerFactor})`,
            value: current.show(fan.most, units),
            source: limitCite('small-motor-power-factor'),
          },
        ]),
    ...(heater && heater.told > 0 && heaterWatts !== null
      ? [{ what: 'Heater', how: `${shown(heaterWatts)} ÷ ${volts}`, value: current.show(heater.told, units) }]
      : []),
    ...(lamp && lamp.told > 0 && lampWatts !== null
      ? [{ what: 'Lamps', how: `${shown(lampWatts)} ÷ ${volts}`, value: current.show(lamp.told, units) }]
      : []),
  ];
  const elsewhere = { switchedHeater: part(heaterWatts, undefined), switchedLamp: part(lampWatts, undefined) };
  return { fan, heater, lamp, ...elsewhere, steps };
}

/** What several parts draw together, those left out that nobody has read. */
export const sum = (all: readonly (Draw | null)[]): Draw => ({
  told: amperes(all.reduce((total, draw) => total + (draw?.told ?? 0), 0)),
  most: amperes(all.reduce((total, draw) => total + (draw?.most ?? 0), 0)),
});

/** Several draws at once; nothing when one of them is not known. */
export const together = (...all: readonly (Draw | null)[]): Draw | null =>
  all.some((each) => each === null) ? null : sum(all);

/** What the control is to switch, part by part; everything in the unit where nobody knows what the switch works. */
export function switchedParts(parts: Parts, facts: Facts): Readonly<Record<string, Draw | null>> {
  const { fan, heater, lamp, switchedHeater, switchedLamp } = parts;
  switch (facts['switch-controls']) {
    case 'fan-only':
    case 'fan-and-light-apart':
      return { 'the fan': fan };
    case 'fan-and-light-together':
      return { 'the fan': fan, 'the lamps': switchedLamp };
    case 'fan-and-heater':
      return { 'the fan': fan, 'the heater': switchedHeater };
    default:
      return { 'the fan': fan, 'the heater': heater, 'the lamps': lamp };
  }
}
