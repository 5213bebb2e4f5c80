import type { AnswerCommand, Telling } from '#chat/command.ts';
import type { GrilleReadings } from '#engine/measuring/measured-airflow.ts';
import type { Reply } from '#findings/reply.ts';
import { ask, type Interview, offer, take, together } from '#interview/interview.ts';
import { airflow } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import { type CubicMetresPerSecond, leading } from '#quantity/units.ts';
import { doorGap, doorOpenAirflow, doorWidth } from './questions/door.ts';
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
  method,
} from './questions/measuring.ts';
import type { AirPath } from './workings/delivery.ts';
import type { DoorAnswer } from './workings/makeup-way-in.ts';
import { airflowRead, bagReadings, predictedAirflow, type ReadAtGrille } from './workings/measure.ts';
import { againstNeededFinding, againstPredictedFinding } from './workings/measure-comparison.ts';
import {
  doorDropFinding,
  doubtFinding,
  type Measured,
  measuredFinding,
  nothingMeasuredFinding,
  whyUnread,
} from './workings/measure-findings.ts';
import { againstOtherMethods, readingsOnSheet } from './workings/measure-other-method.ts';
import { type Needed, neededInterview, neededOnSheet, neededTakes } from './workings/needed.ts';
import { pathOnSheet, pathTakes } from './workings/path-on-sheet.ts';

interface MeasureInputs {
  readonly read: ReadAtGrille;
  /** By whatever way of measuring the sheet has readings of, this one among them. */
  readonly others: readonly GrilleReadings[];
  readonly needed: CubicMetresPerSecond | null;
  readonly neededFrom: Needed['from'];
  readonly open: CubicMetresPerSecond | null;
  readonly path: AirPath | null;
  readonly door: DoorAnswer | null;
}

function* readingInterview(): Interview<ReadAtGrille> {
  const way = yield* ask(method);
  switch (way.value) {
    case 'bag': {
      const [volume, times] = yield* together('need', bagVolume, fillTimes);
      if (!volume.known) return { method: 'incomplete', lacks: 'how much the bag holds' };
      return bagReadings(volume.value, times.value);
    }
    case 'flow-box': {
      const [opening, pressures] = yield* together('need', boxOpening, boxPressure);
      if (opening.value === null) return { method: 'incomplete', lacks: 'how large the opening of the box is' };
      return { method: 'box', opening: opening.value, pressures: pressures.value };
    }
    case 'traverse': {
      const [area, velocities] = yield* together('need', grilleArea, grilleVelocities);
      const share = yield* offer(freeShare);
      if (area.value === null) return { method: 'incomplete', lacks: 'how large the face of the grille is' };
      return { method: 'traverse', velocities: velocities.value, faceArea: area.value, openShare: share.value };
    }
    case 'hood': {
      const shown = yield* ask(hoodReading);
      const powered = yield* offer(hoodPowered);
      return { method: 'hood', powered: powered.value === 'yes', airflows: shown.value };
    }
  }
}

function* measureInterview(): Interview<MeasureInputs> {
  const read = yield* readingInterview();
  const open = yield* offer(doorOpenAirflow);
  const needed = yield* neededInterview();
  const others = yield* readingsOnSheet();
  const path = yield* pathOnSheet();
  const width = yield* take(doorWidth);
  const gap = yield* take(doorGap);
  return {
    read,
    others,
    needed: needed.airflow,
    neededFrom: needed.from,
    open: open.value,
    path,
    door: width.known && gap.known ? { width: width.value, gap: gap.value } : null,
  };
}

function answer({ read, others, needed, neededFrom, open, path, door }: MeasureInputs, { units }: Telling): Reply {
  const nothing = (says: string): Reply => ({
    headline: 'Nothing is measured yet.',
    findings: [nothingMeasuredFinding(says)],
  });
  if (read.method === 'incomplete') return nothing(`Nothing is measured: find out ${read.lacks}.`);
  const outcome = airflowRead(read);
  if (!outcome.measured) return nothing(whyUnread(outcome.why));
  const measured: Measured = { readings: read, airflow: outcome.airflow, limits: outcome.limits };
  const doubt = doubtFinding(measured, units);
  const tooLittle = needed !== null && !meets(measured.airflow.high, needed);
  return {
    headline: `The fan moves about ${airflow.show(measured.airflow.typical, units)}.`,
    findings: [
      measuredFinding(measured, units),
      ...(needed === null ? [] : [againstNeededFinding(measured, needed, units)]),
      ...(path === null
        ? []
        : [againstPredictedFinding(measured, predictedAirflow(path, door, read), { tooLittle, units })]),
      ...againstOtherMethods(measured, others, units),
      ...(open === null || !(open > 0) ? [] : [doorDropFinding(measured, open, units)]),
      ...(doubt ? [doubt] : []),
    ],
    keeps: [{ fact: 'measured-airflow', typed: airflow.showEstimate(measured.airflow, leading(units)) }],
    assumed: [
      ...neededOnSheet({ airflow: needed, from: neededFrom }, units),
      ...(path === null
        ? ['Nothing to compare with: give fan-curve and duct-run, and it is held against the prediction.']
        : []),
    ],
    suggestions: [
      { label: 'How long must it run?', command: 'runtime' },
      { label: 'Does the door starve it?', command: 'makeup' },
    ],
  };
}

const measure: AnswerCommand<MeasureInputs> = {
  kind: 'answer',
  name: 'measure',
  summary: 'The airflow measured at the grille, its error, and whether it is enough and as predicted.',
  example: 'method=bag bag-volume="55 gal" fill-times="6.2, 6.0, 6.4, 6.1, 6.3 s" airflow-needed="50 cfm"',
  takes: [
    method,
    bagVolume,
    fillTimes,
    boxOpening,
    boxPressure,
    grilleArea,
    grilleVelocities,
    freeShare,
    hoodReading,
    hoodPowered,
    doorOpenAirflow,
    ...neededTakes,
    ...pathTakes,
    doorWidth,
    doorGap,
  ],
  interview: measureInterview,
  answer,
};

export default measure;
