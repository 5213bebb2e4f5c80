import { factsStillToAsk } from '#engine/electrical/rules-that-apply.ts';
import type { Finding } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { type ObservationId, observations, powerFacts, powerRulesAt } from '#knowledge/circuit-rules.ts';
import { nominalVoltage } from '#knowledge/electrical.ts';
import { current, fanPower } from '#quantity/kinds.ts';
import type { Watts } from '#quantity/units.ts';
import { ampsTooFew, type Facts, type LoadNumbers, leastWatts } from './power-draw.ts';

type Watched = Pick<LoadNumbers, 'heaterWatts' | 'lampWatts' | 'otherFixed'>;

const rules = powerRulesAt('plan');
const labelOf = (id: ObservationId, answer: string | undefined): string =>
  observations[id].options.find((option) => option.id === answer)?.label ?? 'not known';

/** The kind of unit that has what is told of it and what was read as well; nothing where the two agree. */
function fullerKind({ heaterWatts, lampWatts }: Watched, kind: string | undefined): string | undefined {
  if (kind === undefined || kind === 'unknown') return undefined;
  const mayHaveLight = kind.includes('light') || kind === 'paddle-or-hanging';
  const heats = kind.includes('heater') || (heaterWatts ?? 0) > 0;
  const lights = kind.includes('light') || (lampWatts ?? 0) > 0;
  const agrees = heats === kind.includes('heater') && (!lights || mayHaveLight);
  if (agrees) return undefined;
  return heats ? (lights ? 'fan-light-and-heater' : 'fan-and-heater') : 'fan-and-light';
}

/**
 * The answers as told and, where a number contradicts one of them, as the number has it. A rule that speaks for either
 * speaks.
 */
export function readingsOf(facts: Facts, numbers: Watched): readonly Facts[] {
  const kind = fullerKind(numbers, facts['unit-kind']);
  const shared = facts['circuit-serves'] === 'this-unit-only' && (numbers.otherFixed ?? 0) > 0;
  if (kind === undefined && !shared) return [facts];
  return [
    facts,
    {
      ...facts,
      ...(kind === undefined ? {} : { 'unit-kind': kind }),
      ...(shared ? { 'circuit-serves': 'unknown' } : {}),
    },
  ];
}

/** The observations that some reading still leaves worth asking. */
export const openIn = (readings: readonly Facts[], among: readonly ObservationId[]): readonly ObservationId[] => {
  const open = new Set(readings.flatMap((facts) => factsStillToAsk(powerFacts(facts), rules, among)));
  return among.filter((id) => open.has(id));
};

/** Numbers and answers that cannot both be true, each in a sentence with what is counted. */
function contradictions(numbers: LoadNumbers, facts: Facts, units: UnitSystem): readonly string[] {
  const { heaterWatts, lampWatts, otherFixed, fanAmps, fanWatts, lowestLoad } = numbers;
  const kind = facts['unit-kind'];
  const told = kind === undefined || kind === 'unknown' ? undefined : `“${labelOf('unit-kind', kind)}”`;
  const watts = (power: Watts) => fanPower.show(power, units);
  const found: string[] = [];
  if (told !== undefined && kind !== undefined) {
    const heats = kind.includes('heater');
    const lights = kind.includes('light');
    if (!heats && heaterWatts !== null && heaterWatts > 0) {
      found.push(`${told} was told, but a heater of ${watts(heaterWatts)} too: counted with the heater`);
    }
    if (heats && heaterWatts === 0) found.push(`${told} was told, but a heater of no watts: counted as not read`);
    if (!lights && kind !== 'paddle-or-hanging' && lampWatts !== null && lampWatts > 0) {
      found.push(`${told} was told, but lamps of ${watts(lampWatts)} too: counted with the lamps`);
    }
    if (lights && lampWatts === 0) found.push(`${told} was told, but lamps of no watts: counted as not read`);
  }
  if (facts['circuit-serves'] === 'this-unit-only' && otherFixed !== null && otherFixed > 0) {
    found.push(
      `the circuit was told to feed nothing else, but ${current.showShort(otherFixed, units)} of other fixed equipment too: counted as shared`,
    );
  }
  if (fanAmps !== null && ampsTooFew(numbers)) {
    found.push(
      `a fan of ${watts(leastWatts(numbers))} cannot draw as little as ${current.showShort(fanAmps, units)} at ${nominalVoltage} V: counted by the watts`,
    );
  }
  if (fanWatts.known && lowestLoad !== null && lowestLoad > fanWatts.value.high) {
    found.push(
      `the fan cannot draw more at its lowest speed, ${watts(lowestLoad)}, than ${watts(fanWatts.value.high)}: each is counted where it is the worse`,
    );
  }
  return found;
}

/** What was told that cannot all be true. Nothing where it can. */
export function contradicted(numbers: LoadNumbers, facts: Facts, units: UnitSystem): Finding | undefined {
  const found = contradictions(numbers, facts, units);
  if (found.length === 0) return undefined;
  return {
    id: 'told-two-ways',
    weight: 'caution',
    says: `Read the label and the panel again, since not all that was told can be true: ${found.join('; ')}. The worse one holds until then.`,
    working: [],
    sources: [],
  };
}

/** Answers that were given and that no rule turns on, because of another answer. Nothing where each counts. */
export function setAside(readings: readonly Facts[], given: Facts): Finding | undefined {
  const ids = Object.keys(observations).filter((id): id is ObservationId => {
    const answer = given[id];
    const workedOut = observations[id as ObservationId].seen === 'worked-out';
    if (workedOut || answer === undefined || answer === 'unknown') return false;
    const without = readings.map(({ [id]: _, ...rest }) => rest);
    return openIn(without, [id as ObservationId]).length === 0;
  });
  if (ids.length === 0) return undefined;
  return {
    id: 'set-aside',
    weight: 'advice',
    says: `Told, but with the other answers no rule turns on it: ${ids.map((id) => `${observations[id].brief.charAt(0).toLowerCase()}${observations[id].brief.slice(1)} (${labelOf(id, given[id])})`).join('; ')}.`,
    working: [],
    sources: [],
  };
}
