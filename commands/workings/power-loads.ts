import { breakerForLoad, continuousCurrent, mostCurrent } from '#engine/electrical/circuit-load.ts';
import { controlCarries, controlHolds } from '#engine/electrical/control-load.ts';
import { type WorkedOutFacts, workedOutFacts } from '#engine/electrical/worked-out-facts.ts';
import type { Finding } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import {
  breakerCeilings,
  continuousFactor,
  continuousShare,
  fixedHeatFactor,
  fixedShareOfSharedCircuit,
  motorShareOfSwitch,
  standardBreakers,
} from '#knowledge/electrical.ts';
import { current, fanPower } from '#quantity/kinds.ts';
import { within } from '#quantity/meets.ts';
import { type Amperes, ratio } from '#quantity/units.ts';
import { citations } from './citations.ts';
import {
  type Draw,
  drawText,
  type Facts,
  fanIsRead,
  type LoadNumbers,
  limitCite,
  partsOf,
  sum,
  switched,
  together,
} from './power-draw.ts';

const given = <Value, const Name extends string>(name: Name, value: Value | null) =>
  (value === null ? {} : { [name]: value }) as Partial<Record<Name, Value>>;

/** The answers that follow from the numbers. What cannot be worked out stays open. */
export function factsFromNumbers(numbers: LoadNumbers, facts: Facts): WorkedOutFacts {
  const parts = partsOf(numbers, facts, 'inch-pound');
  const { otherFixed } = numbers;
  const other = otherFixed === null ? null : { told: otherFixed, most: otherFixed };
  return workedOutFacts(
    {
      ...given('breaker', numbers.breaker),
      ...given('thinnestWire', numbers.thinnestWire),
      ...given(
        'fixedLoad',
        fanIsRead(numbers) ? (together(parts.fan, parts.heater, parts.lamp, other)?.most ?? null) : null,
      ),
      ...given('controlRating', numbers.controlRating),
      ...given('controlledLoad', fanIsRead(numbers) ? (switched(parts, facts)?.most ?? null) : null),
      ...given('controlMinimum', numbers.controlMinimum),
      ...given('lowestLoad', numbers.lowestLoad),
    },
    {
      fixedShareOfSharedCircuit,
      motorShareOfSwitch,
      breakerCeilings,
    },
  );
}

/** The load of the unit against its breaker. A sum of watts, never a word on the wiring. */
function circuitLoad(numbers: LoadNumbers, facts: Facts, units: UnitSystem): Finding {
  const { steps, fan, heater, lamp } = partsOf(numbers, facts, units);
  const draw = sum([fan, heater, lamp]);
  const allDay = facts['control-wanted'] === 'continuous-with-boost';
  const heats = heater !== null && heater.told > 0;
  const factor = heats ? fixedHeatFactor : allDay ? continuousFactor : ratio(1);
  const counted = { told: continuousCurrent(draw.told, factor), most: continuousCurrent(draw.most, factor) };
  const lacking = [...(heater === null ? ['the heater'] : []), ...(lamp === null ? ['the lamps'] : [])];
  const guessed = fanIsRead(numbers) ? '' : ' Nobody read what the fan draws.';
  const { breaker } = numbers;
  const over = breaker !== null && !within(counted.most, breaker);
  const fitting = breakerForLoad(counted.most, standardBreakers);
  const text = (value: Draw) => drawText(value, units);
  const verdict =
    breaker === null && lacking.length > 0
      ? 'no breaker can be named before the rest is read'
      : breaker === null
        ? fitting.found
          ? `by this sum it takes a breaker of ${current.showShort(fitting.breaker, units)} or more, and the label goes before the sum`
          : 'that is more than any breaker listed here, so the label has to name its circuit'
        : over
          ? `that is more than its ${current.showShort(breaker, units)} breaker`
          : `its ${current.showShort(breaker, units)} breaker may carry ${current.showShort(mostCurrent(breaker, continuousShare), units)} for hours`;
  const source = limitCite(heats ? 'fixed-heat-factor' : 'continuous-factor');
  return {
    id: 'circuit-load',
    weight: over ? 'stop' : lacking.length > 0 || guessed !== '' ? 'caution' : 'advice',
    says: `${over ? 'Do not connect it to this circuit: the' : 'The'} unit draws ${text(draw)}${factor > 1 ? ` and counts as ${text(counted)}` : ''}; ${verdict}.${lacking.length === 0 ? '' : ` Not in it, because nobody read it: ${lacking.join(' and ')}.`}${guessed}`,
    value: {
      number: draw.told,
      unit: current.siUnit,
      ...(draw.most > draw.told ? { low: draw.told, high: draw.most } : {}),
      shown: text(draw),
    },
    working: [
      ...steps,
      { what: 'The unit, together', value: text(draw) },
      ...(factor > 1
        ? [
            {
              what: heats ? 'Counted, since heat counts as always on' : 'Counted, since the fan runs all day',
              how: `${text(draw)} × ${factor}`,
              value: text(counted),
              source,
            },
          ]
        : []),
      ...(breaker === null
        ? []
        : [
            {
              what: 'The breaker may carry for hours',
              how: `${current.showShort(breaker, units)} × ${continuousShare}`,
              value: current.showShort(mostCurrent(breaker, continuousShare), units),
              source: limitCite('continuous-share'),
            },
          ]),
    ],
    sources: citations(limitCite('continuous-share'), ...(factor > 1 ? [source] : []), limitCite('nominal-voltage')),
  };
}

/** What the control is rated for against what it is to switch, and its least load. */
function controlLoad(numbers: LoadNumbers, facts: Facts, units: UnitSystem): Finding | undefined {
  const parts = partsOf(numbers, facts, units);
  const load = fanIsRead(numbers) ? switched(parts, facts) : null;
  const { controlRating, controlMinimum, lowestLoad } = numbers;
  const shown = (amps: Amperes) => current.showShort(amps, units);
  const carried =
    load === null || controlRating === null
      ? undefined
      : controlCarries({ current: load.most, rating: controlRating, share: motorShareOfSwitch });
  const held =
    controlMinimum === null || lowestLoad === null
      ? undefined
      : controlHolds({ lowest: lowestLoad, minimum: controlMinimum });
  if (carried === undefined && held === undefined) return undefined;
  const says = [
    ...(carried && load !== null && controlRating !== null
      ? [
          carried.carries
            ? `The control is to switch ${drawText(load, units)} and may take ${shown(carried.most)} of motor; its marking still has to say motor`
            : `Do not fit this control: it is to switch ${drawText(load, units)} and may take ${shown(carried.most)} of motor`,
        ]
      : []),
    ...(held === undefined || lowestLoad === null || controlMinimum === null
      ? []
      : [
          controlMinimum === 0
            ? 'it needs no least load'
            : `it needs ${fanPower.show(controlMinimum, units)} and the fan takes ${fanPower.show(lowestLoad, units)} at its lowest${held ? '' : ', too little to hold it'}`,
        ]),
  ].join('; ');
  return {
    id: 'control-load',
    weight: carried?.carries === false ? 'stop' : held === false ? 'caution' : 'advice',
    says: `${says.charAt(0).toUpperCase()}${says.slice(1)}.`,
    ...(load === null
      ? {}
      : {
          value: {
            number: load.told,
            unit: current.siUnit,
            ...(load.most > load.told ? { low: load.told, high: load.most } : {}),
            shown: drawText(load, units),
          },
        }),
    working: [
      ...parts.steps,
      ...(carried && load !== null && controlRating !== null
        ? [
            { what: 'To be switched', value: drawText(load, units) },
            {
              what: 'The control may take',
              how: `${shown(controlRating)} × ${motorShareOfSwitch}`,
              value: shown(carried.most),
              source: limitCite('motor-share-of-switch'),
            },
          ]
        : []),
    ],
    sources: citations(limitCite('motor-share-of-switch')),
  };
}

/** The sums that can be made with what was read. */
export const loadFindings = (numbers: LoadNumbers, facts: Facts, units: UnitSystem): readonly Finding[] =>
  [circuitLoad(numbers, facts, units), controlLoad(numbers, facts, units)].filter((finding) => finding !== undefined);
