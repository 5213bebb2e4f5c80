import type { UnitSystem } from '#interview/question.ts';
import type { ReadingWords } from '../words/ask.ts';
import type { Fact } from './line.ts';

/** Facts with the units they were left without, and a sentence for each unit that was worked out. */
export interface Settled {
  readonly facts: readonly Fact[];
  readonly told: readonly string[];
}

const metricSaid = /\d (?:mm|cm|m|m2|cm2|cm3|degc|liter|mps)\b|\bl\/s\b|\bm3\/h\b|\brsi\b|\blit(?:er|re)s? per\b/;
const inchSaid = /\d (?:ft|in|sqft|sqin|degf|gal)\b|\bcfm\b/;

/** The system a line speaks in, where it speaks in one alone. */
function systemSaid(line: string): UnitSystem | undefined {
  const [metric, inch] = [metricSaid.test(line), inchSaid.test(line)];
  return metric === inch ? undefined : metric ? 'metric' : 'inch-pound';
}

const bare = /^(?:-\d+|\d+\/\d+|\d+(?:\.\d+)?(?:[ -]\d+\/\d+)?)$/;
const value = (said: string): number => {
  const [, whole = '0', top = '0', bottom = '1'] =
    /^(?:(\d+(?:\.\d+)?)(?![\d/]))?[ -]?(?:(\d+)\/(\d+))?$/.exec(said) ?? [];
  return Number(whole) + Number(top) / Number(bottom);
};

/** Below this many square feet no bath has a floor: the sides were metres. */
const leastFloor = 10;
/** A bath of more square metres than this was told in feet. */
const mostFloor = 25;

/** The unit of two sides that have none: the only one in which they make a bath; else the one that is spoken in. */
function unitOfSides(one: number, other: number, system: UnitSystem): string {
  const [small, large] = [Math.min(one, other), Math.max(one, other)];
  if (small >= 500) return 'mm';
  if (system === 'metric' && small >= 100) return 'cm';
  if (small >= 48 && large <= 144) return 'in';
  return one * other < leastFloor || (system === 'metric' && one * other <= mostFloor) ? 'm' : 'ft';
}

function unitOfHeight(high: number, system: UnitSystem): string {
  if (high >= 1500) return 'mm';
  if (high >= 200 && high <= 400) return 'cm';
  if (high >= 72 && high <= 144) return 'in';
  return high < 4 || (system === 'metric' && high < 5) ? 'm' : 'ft';
}

/** Numbers without a unit take the unit in which they make sense; what is not the usual one is told. */
export function settled(
  facts: readonly Fact[],
  line: string,
  { crew, say }: { readonly crew: UnitSystem; readonly say: ReadingWords },
): Settled {
  const system = systemSaid(line) ?? crew;
  const told: string[] = [];
  const answerOf = (id: string): string | undefined => facts.find((each) => each.id === id)?.answer;
  const [long, wide] = [answerOf('room-length'), answerOf('room-width')];
  const sides =
    long !== undefined && wide !== undefined && bare.test(long) && bare.test(wide)
      ? unitOfSides(value(long), value(wide), system)
      : 'ft';
  if (sides !== 'ft') told.push(say.noUnit(`${long} x ${wide}`, say.units[sides] ?? sides));
  const flow = /\bcfm\b/.test(line)
    ? 'cfm'
    : /\bl\/s\b/.test(line)
      ? 'l/s'
      : /\bm3\/h\b/.test(line)
        ? 'm3/h'
        : undefined;
  const unitFor = (id: string, answer: string): string | undefined => {
    if (id === 'room-length' || id === 'room-width') return sides;
    if (id === 'ceiling-height') {
      const unit = unitOfHeight(value(answer), system);
      if (unit !== 'ft') told.push(say.noUnitHigh(answer, say.units[unit] ?? unit));
      return unit;
    }
    if (id.endsWith('-temperature')) {
      if (system === 'metric') told.push(say.noUnit(answer, '°C'));
      return system === 'metric' ? 'C' : 'F';
    }
    if (id === 'door-gap') return value(answer) > 4 ? 'mm' : 'in';
    if (id === 'door-width') return value(answer) >= 300 ? 'mm' : value(answer) > 48 ? 'cm' : 'in';
    if (id === 'degree-days') {
      // The same cold is told in a smaller number by the metric base.
      if (system !== 'metric') return undefined;
      told.push(say.noUnit(answer, 'K·d'));
      return 'K·d';
    }
    if (!airflows.has(id)) return undefined;
    if (flow === undefined && system === 'metric') told.push(say.noUnitFlow(answer));
    return flow ?? 'cfm';
  };
  const withUnits = facts.map(({ id, answer }) => {
    const unit = bare.test(answer) ? unitFor(id, answer) : undefined;
    return { id, answer: unit === undefined ? answer : `${answer} ${unit}` };
  });
  return { facts: withUnits, told };
}

const airflows: ReadonlySet<string> = new Set([
  'fan-curve',
  'hood-reading',
  'fan-setting',
  'airflow-needed',
  'measured-airflow',
  'delivered-airflow',
]);
