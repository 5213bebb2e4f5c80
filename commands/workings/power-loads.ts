import { breakerForLoad, continuousCurrent, mostCurrent } from '#engine/electrical/circuit-load.ts';
import type { Gauge } from '#engine/electrical/gauge.ts';
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
import { current } from '#quantity/kinds.ts';
import { within } from '#quantity/meets.ts';
import { type Amperes, amperes, ratio } from '#quantity/units.ts';
import { citations } from './citations.ts';
import { controlLoad } from './power-control.ts';
import {
  type Draw,
  drawText,
  type Facts,
  fanIsRead,
  type LoadNumbers,
  limitCite,
  lowestCounted,
  partsOf,
  sum,
  switchedParts,
  together,
} from './power-draw.ts';

const given = <Value, const Name extends string>(name: Name, value: Value | null) =>
  (value === null ? {} : { [name]: value }) as Partial<Record<Name, Value>>;

/** What is known of a load that is not known whole, where that alone is already too much; nothing where it is not. */
const tooMuchAlready = (known: Amperes, limit: Amperes | undefined): Amperes | null =>
  limit !== undefined && !within(known, limit) ? known : null;

/** The answers that follow from the numbers. What cannot be worked out stays open. */
export function factsFromNumbers(numbers: LoadNumbers, facts: Facts): WorkedOutFacts {
  const parts = partsOf(numbers, facts, 'inch-pound');
  const { otherFixed, breaker, controlRating } = numbers;
  const fan = fanIsRead(numbers) ? parts.fan : null;
  const other = otherFixed === null ? null : { told: otherFixed, most: otherFixed };
  const fixed = [fan, parts.heater, parts.lamp, other];
  const switched = Object.values({ ...switchedParts(parts, facts), 'the fan': fan });
  const half = breaker === null ? undefined : mostCurrent(breaker, fixedShareOfSharedCircuit);
  const rated = controlRating === null ? undefined : mostCurrent(controlRating, motorShareOfSwitch);
  return workedOutFacts(
    {
      ...given('breaker', breaker),
      ...given('thinnestWire', numbers.thinnestWire),
      ...given('fixedLoad', together(...fixed)?.most ?? tooMuchAlready(sum(fixed).most, half)),
      ...given('controlRating', controlRating),
      ...given('controlledLoad', together(...switched)?.most ?? tooMuchAlready(sum(switched).most, rated)),
      ...given('controlMinimum', numbers.controlMinimum),
      ...given('lowestLoad', lowestCounted(numbers)),
    },
    {
      fixedShareOfSharedCircuit,
      motorShareOfSwitch,
      breakerCeilings,
    },
  );
}

const ceilings: ReadonlyMap<Gauge, Amperes> = breakerCeilings;

/** The load of the unit against its breaker. A sum of watts, never a word on the wiring. */
function circuitLoad(numbers: LoadNumbers, facts: Facts, units: UnitSystem): Finding {
  const { steps, fan, heater, lamp } = partsOf(numbers, facts, units);
  const unit = sum([fan, heater, lamp]);
  const other = numbers.otherFixed ?? amperes(0);
  const draw = { told: amperes(unit.told + other), most: amperes(unit.most + other) };
  const allDay = facts['control-wanted'] === 'continuous-with-boost';
  const heats = heater !== null && heater.told > 0;
  const factor = heats ? fixedHeatFactor : allDay ? continuousFactor : ratio(1);
  // Nobody asks for how many hours the other equipment is on, so it counts as on for all of them.
  const otherCounted = continuousCurrent(other, continuousFactor);
  const counted = {
    told: amperes(continuousCurrent(unit.told, factor) + otherCounted),
    most: amperes(continuousCurrent(unit.most, factor) + otherCounted),
  };
  const more = counted.most > draw.most;
  const mayBeShared = facts['circuit-serves'] !== 'this-unit-only';
  const lacking = [
    ...(heater === null ? ['the heater'] : []),
    ...(lamp === null ? ['the lamps'] : []),
    ...(mayBeShared && numbers.otherFixed === null ? ['other fixed equipment on the circuit'] : []),
  ];
  const guessed = fanIsRead(numbers) ? '' : ' Nobody read what the fan draws.';
  const { breaker, thinnestWire } = numbers;
  const ceiling = thinnestWire === null ? undefined : ceilings.get(thinnestWire);
  const overWire = ceiling !== undefined && !within(counted.most, ceiling);
  const over = overWire || (breaker !== null && !within(counted.most, breaker));
  const fitting = breakerForLoad(counted.most, standardBreakers);
  const text = (value: Draw) => drawText(value, units);
  const wire =
    ceiling === undefined || breaker !== null
      ? ''
      : ` (its ${thinnestWire} AWG wire takes ${current.showShort(ceiling, units)} at most)`;
  const verdict = overWire
    ? `that is more than the ${current.showShort(ceiling, units)} that its ${thinnestWire} AWG wire takes`
    : breaker === null && lacking.length > 0
      ? `no breaker can be named before the rest is read${wire}`
      : breaker === null
        ? fitting.found
          ? `by this sum it takes a breaker of ${current.showShort(fitting.breaker, units)} or more${wire}, and the label goes before the sum`
          : 'that is more than any breaker listed here, so the label has to name its circuit'
        : over
          ? `that is more than its ${current.showShort(breaker, units)} breaker`
          : `its ${current.showShort(breaker, units)} breaker may carry ${current.showShort(mostCurrent(breaker, continuousShare), units)} for hours`;
  const source = limitCite(heats ? 'fixed-heat-factor' : 'continuous-factor');
  return {
    id: 'circuit-load',
    weight: over ? 'stop' : lacking.length > 0 || guessed !== '' ? 'caution' : 'advice',
    says: `${over ? 'Do not connect it to this circuit: the' : 'The'} unit draws ${text(unit)}${other > 0 ? `, with ${current.showShort(other, units)} of other fixed equipment ${text(draw)},` : ''}${more ? ` and counts as ${text(counted)}` : ''}; ${verdict}.${lacking.length === 0 ? '' : ` Not in it, because nobody read it: ${lacking.join(' and ')}.`}${guessed}`,
    value: {
      number: draw.told,
      unit: current.siUnit,
      ...(draw.most > draw.told ? { low: draw.told, high: draw.most } : {}),
      shown: text(draw),
    },
    working: [
      ...steps,
      { what: 'The unit, together', value: text(unit) },
      ...(factor > 1
        ? [
            {
              what: heats ? 'Counted, since heat counts as always on' : 'Counted, since the fan runs all day',
              how: `${text(unit)} × ${factor}`,
              value: text({
                told: continuousCurrent(unit.told, factor),
                most: continuousCurrent(unit.most, factor),
              }),
              source,
            },
          ]
        : []),
      ...(other > 0
        ? [
            {
              what: 'Other fixed equipment, counted as on for hours',
              how: `${current.showShort(other, units)} × ${continuousFactor}`,
              value: current.showShort(otherCounted, units),
              source: limitCite('continuous-factor'),
            },
            { what: 'Counted, all together', value: text(counted) },
          ]
        : []),
      ...(ceiling === undefined
        ? []
        : [{ what: `Most that ${thinnestWire} AWG copper takes`, value: current.showShort(ceiling, units) }]),
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

/** The sums that can be made with what was read. */
export const loadFindings = (numbers: LoadNumbers, facts: Facts, units: UnitSystem): readonly Finding[] =>
  [circuitLoad(numbers, facts, units), controlLoad(numbers, facts, units)].filter((finding) => finding !== undefined);
