import { currentDrawn } from '#engine/electrical/current.ts';
import type { Gauge } from '#engine/electrical/gauge.ts';
import type { Step } from '#findings/finding.ts';
import type { Answer, UnitSystem } from '#interview/question.ts';
import { type CircuitLimitId, circuitLimits, nominalVoltage, smallMotorPowerFactor } from '#knowledge/electrical.ts';
import { cite } from '#knowledge/sources.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { current, fanPower } from '#quantity/kinds.ts';
import { type Amperes, amperes, type Ratio, ratio, type Watts } from '#quantity/units.ts';

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
  return kind === undefined || kind === 'unknown' ? undefined : kind.includes(part);
};

/** Whether anybody read what the fan draws. */
export const fanIsRead = ({ fanAmps, fanWatts }: LoadNumbers): boolean => fanAmps !== null || fanWatts.known;

function fanDraw({ fanAmps, fanWatts }: LoadNumbers): Draw {
  if (fanAmps !== null) return { told: fanAmps, most: fanAmps };
  const { typical, high } = fanWatts.value;
  return { told: drawn(typical, ratio(1)), most: drawn(high, smallMotorPowerFactor) };
}

export function partsOf(numbers: LoadNumbers, facts: Facts, units: UnitSystem): Parts {
  const { fanAmps, fanWatts, heaterWatts, lampWatts } = numbers;
  const fan = fanDraw(numbers);
  const part = (power: Watts | null, there: boolean | undefined) =>
    there === false ? none : power === null ? null : resistive(power);
  const heater = part(heaterWatts, has(facts, 'heater'));
  const lamp = part(lampWatts, has(facts, 'light'));
  const watts = (power: Watts) => fanPower.show(power, units);
  const steps: Step[] = [
    ...(fanAmps !== null
      ? [{ what: 'Fan, by its label', value: current.show(fanAmps, units) }]
      : [
          {
            what: 'Fan, by its watts',
            how: `${watts(fanWatts.value.typical)} ÷ ${volts}`,
            value: current.show(fan.told, units),
          },
          {
            what: 'Fan, at most',
            how: `${watts(fanWatts.value.high)} ÷ (${volts} × ${smallMotorPowerFactor})`,
            value: current.show(fan.most, units),
            source: limitCite('small-motor-power-factor'),
          },
        ]),
    ...(heater && heater.told > 0 && heaterWatts !== null
      ? [{ what: 'Heater', how: `${watts(heaterWatts)} ÷ ${volts}`, value: current.show(heater.told, units) }]
      : []),
    ...(lamp && lamp.told > 0 && lampWatts !== null
      ? [{ what: 'Lamps', how: `${watts(lampWatts)} ÷ ${volts}`, value: current.show(lamp.told, units) }]
      : []),
  ];
  return { fan, heater, lamp, steps };
}

/** What several parts draw together, those left out that nobody has read. */
export const sum = (all: readonly (Draw | null)[]): Draw => ({
  told: amperes(all.reduce((total, draw) => total + (draw?.told ?? 0), 0)),
  most: amperes(all.reduce((total, draw) => total + (draw?.most ?? 0), 0)),
});

/** Several draws at once; nothing when one of them is not known. */
export const together = (...all: readonly (Draw | null)[]): Draw | null =>
  all.some((each) => each === null) ? null : sum(all);

/** What the control is to switch; everything in the unit where nobody knows what the switch works. */
export function switched({ fan, heater, lamp }: Parts, facts: Facts): Draw | null {
  switch (facts['switch-controls']) {
    case 'fan-only':
    case 'fan-and-light-apart':
      return fan;
    case 'fan-and-light-together':
      return together(fan, lamp);
    case 'fan-and-heater':
      return together(fan, heater);
    default:
      return together(fan, heater, lamp);
  }
}
