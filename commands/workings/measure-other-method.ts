import type { GrilleReadings } from '#engine/measuring/measured-airflow.ts';
import type { Finding } from '#findings/finding.ts';
import { type Interview, take } from '#interview/interview.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { airflow } from '#quantity/kinds.ts';
import { cubicMetresPerSecond } from '#quantity/units.ts';
import {
  bagVolume,
  boxOpening,
  boxPressure,
  fillTimes,
  freeShare,
  grilleArea,
  grilleVelocities,
  hoodPowered,
  hoodReading,
} from '../questions/measuring.ts';
import { citations } from './citations.ts';
import { fineFlow } from './fine.ts';
import { airflowRead, bagReadings, compared } from './measure.ts';
import { explainedStep, verdictWeights } from './measure-comparison.ts';
import { type Measured, methodWords } from './measure-findings.ts';
import { measuringSteps, methodCitations } from './measure-working.ts';

/** What the sheet has of readings by every way of measuring; nothing is asked. */
export function* readingsOnSheet(): Interview<readonly GrilleReadings[]> {
  const [volume, times] = [yield* take(bagVolume), yield* take(fillTimes)];
  const [opening, pressures] = [yield* take(boxOpening), yield* take(boxPressure)];
  const [area, velocities, share] = [yield* take(grilleArea), yield* take(grilleVelocities), yield* take(freeShare)];
  const [shown, powered] = [yield* take(hoodReading), yield* take(hoodPowered)];
  const found: GrilleReadings[] = [];
  if (volume.known && times.known) found.push(bagReadings(volume.value, times.value));
  if (opening.value !== null && opening.known && pressures.known) {
    found.push({ method: 'box', opening: opening.value, pressures: pressures.value });
  }
  if (area.value !== null && area.known && velocities.known) {
    found.push({ method: 'traverse', velocities: velocities.value, faceArea: area.value, openShare: share.value });
  }
  if (shown.known) found.push({ method: 'hood', powered: powered.value === 'yes', airflows: shown.value });
  return found;
}

/** What was measured beside each other measurement on the sheet: whether the two agree within their errors. */
export function againstOtherMethods(
  { readings, airflow: moved }: Measured,
  others: readonly GrilleReadings[],
  units: UnitSystem,
): readonly Finding[] {
  return others.flatMap((other): Finding[] => {
    if (other.method === readings.method) return [];
    const outcome = airflowRead(other);
    if (!outcome.measured) return [];
    const { verdict, difference, explained } = compared(moved, outcome.airflow);
    const [one, two] = [methodWords[readings.method], methodWords[other.method]];
    const gap = airflow.showShort(cubicMetresPerSecond(Math.abs(difference)), units);
    const second = `${airflow.showShort(outcome.airflow.typical, units)} with ${two}`;
    const holdsBack = [readings.method, other.method].includes('box')
      ? ' The box itself holds a little back; the rest is one of them read or held wrong.'
      : ' One of them was read or held wrong.';
    const spoken = {
      agrees: `The sheet has ${second} too: the two agree within their errors.`,
      'cannot tell': `The sheet has ${second} too, but their errors are too wide for that to say anything.`,
      lower: `The sheet has ${second} too, ${gap} more, and their errors do not explain it. Measure both again, one right after the other.${holdsBack}`,
      higher: `The sheet has ${second} too, ${gap} less, and their errors do not explain it. Measure both again, one right after the other.${holdsBack}`,
    } as const;
    return [
      {
        id: 'against-other-method',
        weight: verdictWeights[verdict],
        says: spoken[verdict],
        value: {
          number: difference,
          unit: airflow.siUnit,
          low: difference - explained,
          high: difference + explained,
          shown: `${gap} ${difference < 0 ? 'below' : 'above'} ${two}: ${verdict}`,
        },
        working: [
          ...measuringSteps(other, outcome.airflow, units),
          { what: `Measured with ${one}`, value: fineFlow(moved.typical, units) },
          explainedStep(moved, outcome.airflow, units),
        ],
        sources: citations(methodCitations[other.method], airflowMethods['measured-against-predicted'].citation),
      },
    ];
  });
}
