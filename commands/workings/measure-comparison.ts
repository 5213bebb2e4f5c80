import { type ComparisonVerdict, comparedWithNeeded } from '#engine/measuring/comparison.ts';
import type { Finding, Step, Weight } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { fieldMethods } from '#knowledge/field-methods.ts';
import { commonPractice, ownWorking } from '#knowledge/sources.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { airflow, percentage, roomPressure } from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond } from '#quantity/units.ts';
import { citations } from './citations.ts';
import { fineFlow } from './fine.ts';
import { compared, type Predicted } from './measure.ts';
import type { Measured } from './measure-findings.ts';
import { methodCitations } from './measure-working.ts';

/** Whether what was measured is enough. Only the low end proves it. */
export function againstNeededFinding(
  { airflow: moved }: Measured,
  needed: CubicMetresPerSecond,
  units: UnitSystem,
): Finding {
  const outcome = comparedWithNeeded(moved, needed);
  const need = airflow.showShort(needed, units);
  const low = airflow.showShort(moved.low, units);
  const high = airflow.showShort(moved.high, units);
  const margin = (flow: CubicMetresPerSecond) => flow - needed;
  const spoken = {
    met: `Enough: even the low end, ${low}, meets the ${need} needed.`,
    'not shown': `Not shown to be enough: ${need} is needed, and this measurement says anything from ${low} to ${high}. Measure it better, or count on too little.`,
    'not met': `Too little: ${need} is needed, and even the high end is ${high}.`,
  } as const;
  const off = Math.abs(margin(moved.typical));
  return {
    id: 'against-needed',
    weight: outcome === 'met' ? 'good' : 'caution',
    says: spoken[outcome],
    value: {
      number: margin(moved.typical),
      unit: airflow.siUnit,
      low: margin(moved.low),
      high: margin(moved.high),
      shown: `${airflow.show(cubicMetresPerSecond(off), units)} ${margin(moved.typical) < 0 ? 'short' : 'over'}: ${outcome}`,
    },
    working: [
      { what: 'Low end of what was measured', value: fineFlow(moved.low, units) },
      { what: 'Airflow needed', value: fineFlow(needed, units) },
      { what: 'Met only if the low end is at least that', value: outcome },
    ],
    sources: citations(ownWorking),
  };
}

/** A shortfall of this size, and where to look first. Judgement; no source. */
const shortfalls = [
  {
    below: 0.5,
    look: 'So far below, look for a blocked or crushed duct, a flap that does not open, or a taped damper.',
  },
  {
    below: 0.8,
    look: 'Look for sagging or kinked flex, a sticking flap, lint on the hood’s screen, or a size nobody mentioned.',
  },
  { below: 1, look: 'A little below: the run may be longer, slacker or sharper than told, or the grille dirty.' },
] as const;

const tooMuch =
  'Look whether the duct has come off its collar or ends in the attic: a fan with nothing to push against moves more, and wets the roof. A higher setting or a shorter run does it too.';

/** How grave it is where two airflows differ, or do not. */
export const verdictWeights = {
  agrees: 'good',
  'cannot tell': 'advice',
  lower: 'caution',
  higher: 'caution',
} as const satisfies Record<ComparisonVerdict, Weight>;

/** How large a difference the errors of two airflows explain, with the sum. */
export function explainedStep(
  one: Estimate<CubicMetresPerSecond>,
  other: Estimate<CubicMetresPerSecond>,
  units: UnitSystem,
): Step {
  const { difference, explained } = compared(one, other);
  const half = ({ low, typical, high }: Estimate<CubicMetresPerSecond>, upper: boolean) =>
    fineFlow(cubicMetresPerSecond(upper ? high - typical : typical - low), units);
  return {
    what: 'What both errors together explain, from the sides that face each other',
    how: `√(${half(one, difference < 0)}² + ${half(other, difference >= 0)}²)`,
    value: fineFlow(explained, units),
    source: airflowMethods['measured-against-predicted'].citation,
  };
}

/** What was measured beside what this fan should give through this duct, and what a difference of that size usually means. */
export function againstPredictedFinding(
  { airflow: moved, readings }: Measured,
  predicted: Predicted,
  { tooLittle, units }: { readonly tooLittle: boolean; readonly units: UnitSystem },
): Finding {
  const { airflow: expected, meterTakes } = predicted;
  const { verdict, difference, explained } = compared(moved, expected);
  const ratioMoved = moved.typical / expected.typical;
  const short = airflow.showShort(cubicMetresPerSecond(expected.typical), units);
  const gap = airflow.showShort(cubicMetresPerSecond(Math.abs(difference)), units);
  const look = shortfalls.find(({ below }) => ratioMoved < below)?.look ?? shortfalls[2].look;
  const spoken = {
    agrees: tooLittle
      ? `As predicted, ${short}: the fan gives what this duct lets it. Fan or duct is too small for the need; see what would help with duct.`
      : `As predicted, ${short}: the duct does what its length and bends say.`,
    'cannot tell': `Predicted ${short}, but both figures are too uncertain to say whether they differ. A flow box, a powered hood or a better known duct would tell.`,
    lower: `${gap} less than the ${short} predicted, more than the errors explain. ${look}`,
    higher: `${gap} more than the ${short} predicted, more than the errors explain. ${tooMuch}`,
  } as const;
  const below = difference < 0;
  return {
    id: 'against-predicted',
    weight: verdictWeights[verdict],
    says: spoken[verdict],
    value: {
      number: difference,
      unit: airflow.siUnit,
      low: difference - explained,
      high: difference + explained,
      shown: `${gap} ${below ? 'below' : 'above'} the ${short} predicted: ${verdict}`,
    },
    working: [
      ...(readings.method === 'box'
        ? [
            {
              what: 'The box itself takes, so it is put in the way of the fan that is predicted',
              value: roomPressure.show(meterTakes, units),
              source: methodCitations.box,
            },
          ]
        : []),
      {
        what: 'Predicted with fan, duct, door and meter together',
        value: `${fineFlow(expected.typical, units)}, usually ${fineFlow(expected.low, units)} to ${fineFlow(expected.high, units)}`,
        source: airflowMethods['operating-point'].citation,
      },
      { what: 'Measured', value: fineFlow(moved.typical, units) },
      {
        what: 'Difference',
        value: `${below ? '−' : ''}${fineFlow(cubicMetresPerSecond(Math.abs(difference)), units)}`,
      },
      explainedStep(moved, expected, units),
      {
        what: 'Agreeing says something only where that is no more than this share of the predicted',
        value: percentage.showShort(fieldMethods.comparison.widestTelling.value, units),
        source: fieldMethods.comparison.widestTelling.citation,
      },
    ],
    sources: citations(
      airflowMethods['measured-against-predicted'].citation,
      airflowMethods['operating-point'].citation,
      ...(verdict === 'lower' || verdict === 'higher' ? [commonPractice] : []),
    ),
  };
}
