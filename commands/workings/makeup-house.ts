import type { Finding, Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { makeUpDefaults, makeUpSentences, otherExhausts } from '#knowledge/make-up.ts';
import { moistureMethods } from '#knowledge/moisture.ts';
import type { Citation } from '#knowledge/sources.ts';
import { type Estimate, exactly } from '#quantity/estimate.ts';
import { airflow, houseLeakage, roomPressure } from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, type Pascals, pascals } from '#quantity/units.ts';
import { exhaustAirflow, exhaustName, type OtherExhaust } from '../questions/house-exhausts.ts';
import { citations } from './citations.ts';
import { houseFall } from './makeup-air.ts';

/** Everything that draws air out of the house, and how tight the house is. */
export interface HousePull {
  /** This fan with its door open: likely, and the most it can draw. */
  readonly fan: Estimate<CubicMetresPerSecond>;
  readonly others: { readonly value: readonly OtherExhaust[]; readonly known: boolean };
  /** `null` without a blower-door figure: then nothing is worked out. */
  readonly leakage: Estimate<CubicMetresPerSecond> | null;
}

/** The other exhausts counted beside this fan: the largest of them, at their upper flow; hardly ever do more run at once. */
const mostCounted = 3;

const flow = cubicMetresPerSecond;

/** The largest of the other exhausts. What nobody named counts at the high end only. */
function countedExhausts({ others }: HousePull): readonly (readonly [OtherExhaust, Estimate<CubicMetresPerSecond>])[] {
  return others.value
    .map((each) => [each, exhaustAirflow(each)] as const)
    .map(
      ([each, { high, ...rest }]) =>
        [each, others.known ? { ...rest, high } : { low: flow(0), typical: flow(0), high }] as const,
    )
    .toSorted(([, one], [, other]) => other.high - one.high)
    .slice(0, mostCounted);
}

function allExhausts(pull: HousePull): Estimate<CubicMetresPerSecond> {
  const counted = countedExhausts(pull).map(([, each]) => each);
  const sum = (end: keyof Estimate) => flow(counted.reduce<number>((total, each) => total + each[end], pull.fan[end]));
  return { low: sum('low'), typical: sum('typical'), high: sum('high') };
}

/** How far the house falls below outdoors with all of them drawing; nothing without a blower-door figure. */
export const houseFallOf = (pull: HousePull): Estimate<Pascals> | null =>
  pull.leakage === null
    ? null
    : houseFall(pull.leakage, makeUpDefaults['leakage-exponent'].estimate, allExhausts(pull));

/**
 * The pressure of the blower-door test. Past it the power law is carried where nobody measured, and no fan of a house keeps
 * its airflow against as much: a figure there would be a number without a meaning, so it is told as more than this.
 */
const testPressure = pascals(50);
const beyondTest = (units: UnitSystem): string => `more than ${roomPressure.showShort(testPressure, units)}`;
const tooTight = 'No fan keeps its airflow against that: the house is far too tight for these fans together.';

/** How far the fans pull the house below outdoors, as what cannot be ruled out rather than as a reading. */
export function houseFinding(pull: HousePull, units: UnitSystem): Finding {
  const fall = houseFallOf(pull);
  const { citation } = moistureMethods['house-leakage'];
  const calm = makeUpSentences['calm-day'];
  if (fall === null || pull.leakage === null) {
    return {
      id: 'house-depressurisation',
      weight: 'advice',
      says: 'To have the pull on the whole house worked out, give the blower-door figure (house-leakage).',
      value: { number: null, unit: roomPressure.siUnit, shown: 'not known' },
      working: exhaustSteps(pull, units),
      sources: citations(citation),
    };
  }
  const { low, typical, high } = fall;
  const range = high > testPressure ? beyondTest(units) : roomPressure.showRangeShort({ low, high }, units);
  const alone = pull.others.known ? 'With every exhaust on' : 'With this fan alone';
  const worst = pull.others.known
    ? `${range} cannot be ruled out`
    : `with a dryer and a range hood on too, ${high > testPressure ? beyondTest(units) : roomPressure.showShort(high, units)} cannot be ruled out`;
  const likely = typical > testPressure ? beyondTest(units) : `about ${roomPressure.show(typical, units)}`;
  return {
    id: 'house-depressurisation',
    weight: 'advice',
    says: `${alone} the house falls ${likely} below outdoors; ${worst}.${high > testPressure ? ` ${tooTight}` : ''} ${calm.says}`,
    value: {
      number: Math.min(typical, testPressure),
      unit: roomPressure.siUnit,
      low: Math.min(low, testPressure),
      high: Math.min(high, testPressure),
      shown: `${likely}, ${range} cannot be ruled out`,
    },
    working: [...exhaustSteps(pull, units), ...fallSteps(pull, pull.leakage, fall, units)],
    sources: citations(citation, calm.citation, makeUpDefaults['leakage-exponent'].citation),
  };
}

function exhaustSteps(pull: HousePull, units: UnitSystem): Step[] {
  const span = (estimate: Estimate<CubicMetresPerSecond>) => airflow.showRangeShort(estimate, units);
  const usual = (each: OtherExhaust): { source?: Citation } => {
    const source = usualCitation(each);
    return source ? { source } : {};
  };
  return [
    { what: 'This fan, door open, to the most it can draw', value: span(pull.fan) },
    ...countedExhausts(pull).map(([each, estimate]) => ({
      what: `${exhaustName(each)}${each.airflow === null ? ', as such things usually draw' : ''}`,
      value: span(estimate),
      ...usual(each),
    })),
    { what: 'All at once', value: span(allExhausts(pull)) },
  ];
}

const usualCitation = ({ id, airflow: told }: OtherExhaust): Citation | undefined =>
  told === null && id !== 'other' ? otherExhausts[id].citation : undefined;

function fallSteps(
  pull: HousePull,
  leakage: Estimate<CubicMetresPerSecond>,
  fall: Estimate<Pascals>,
  units: UnitSystem,
): Step[] {
  const { estimate: n, citation } = makeUpDefaults['leakage-exponent'];
  const all = allExhausts(pull);
  const { of, unit } = airflow.scale(units);
  const sum = (exhaust: CubicMetresPerSecond, leak: CubicMetresPerSecond, exponent: number) =>
    `50 Pa × (${of(exhaust).toFixed(1)} ÷ ${of(leak).toFixed(1)} ${unit})^(1 ÷ ${exponent})`;
  const atMost = [n.low, n.typical, n.high].find(
    (exponent) =>
      Math.abs(houseFall(exactly(leakage.low), exactly(exponent), exactly(all.high)).high - fall.high) < 1e-9,
  );
  return [
    { what: 'Blower-door figure', value: houseLeakage.showEstimate(leakage, units) },
    {
      what: 'Below outdoors, likely',
      how: sum(all.typical, leakage.typical, n.typical),
      value: `${fall.typical.toPrecision(3)} Pa`,
      source: moistureMethods['house-leakage'].citation,
    },
    {
      what: 'Below outdoors, at most: upper flows and the cracks that read highest',
      how: sum(all.high, leakage.low, atMost ?? n.high),
      value: `${fall.high.toPrecision(3)} Pa${fall.high > testPressure ? ` by the formula, told as ${beyondTest(units)}` : ''}`,
      source: citation,
    },
  ];
}
