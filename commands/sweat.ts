import type { AnswerCommand, Telling } from '#chat/command.ts';
import { ductVerdict } from '#engine/condensation/condensation-start.ts';
import type { Reply } from '#findings/reply.ts';
import { type Interview, offer, take, together } from '#interview/interview.ts';
import { airflow, distance } from '#quantity/kinds.ts';
import { leading, metres } from '#quantity/units.ts';
import { atticDuctLength, atticTemperature, ductDiameter, ductInsulation } from './questions/attic.ts';
import { doorGap, doorWidth } from './questions/door.ts';
import { altitude, ductRun } from './questions/duct.ts';
import { exhaustHumidity, exhaustTemperature } from './questions/moisture.ts';
import { deliveredInterview, deliveredTakes } from './workings/delivered.ts';
import { frostFinding, pitchFinding, runOnFinding, sweatRemarks } from './workings/sweat-advice.ts';
import { sweatBands } from './workings/sweat-bands.ts';
import { sweatChart } from './workings/sweat-chart.ts';
import { climbs, piecesOf, type SweatInputs, unsureDuct } from './workings/sweat-duct.ts';
import { measureNextFinding, startFinding } from './workings/sweat-findings.ts';
import { alongText, atTheFan, type JudgedDuct, worthAWord } from './workings/sweat-judged.ts';
import { insulationFinding } from './workings/sweat-wrap.ts';

type Duct = Pick<SweatInputs, 'pieces' | 'coldLength' | 'climbs'>;

function* sweatInterview(): Interview<SweatInputs> {
  const delivered = yield* deliveredInterview();
  const duct = yield* ductInterview();
  const wrap = yield* offer(ductInsulation);
  const [cold, damp, warm] = yield* together('offer', atticTemperature, exhaustHumidity, exhaustTemperature);
  const high = yield* take(altitude);
  return {
    delivered,
    ...duct,
    insulation: wrap.value,
    surroundings: cold.value,
    exhaustHumidity: damp.value,
    exhaustTemperature: warm.value,
    altitude: high.value ?? metres(0),
  };
}

/** The duct on the sheet, cut to the part in the cold where that is known; else its width and length. */
function* ductInterview(): Interview<Duct> {
  const run = yield* take(ductRun);
  const pieces = run.known ? piecesOf(run.value) : [];
  if (pieces.length > 0) {
    const cold = yield* take(atticDuctLength);
    return { pieces, coldLength: cold.known ? cold.value : null, climbs: climbs(run.value) };
  }
  const [diameter, length] = yield* together('need', ductDiameter, atticDuctLength);
  return { pieces: [{ diameter: diameter.value, length: length.value }], coldLength: null, climbs: false };
}

/** The duct judged by the low end of the airflow, with all that its findings need. */
function judgedDuct(inputs: SweatInputs): JudgedDuct {
  const unsure = unsureDuct(inputs);
  const { duct, pieces } = unsure.cautious;
  return { inputs, unsure, verdict: ductVerdict(duct, pieces), bands: sweatBands(unsure) };
}

function answer(inputs: SweatInputs, { units }: Telling): Reply {
  const judged = judgedDuct(inputs);
  const { verdict, bands } = judged;
  const headline = !verdict.wet
    ? bands.wetShare >= worthAWord
      ? 'This duct may stay dry in steady running, but that is not sure.'
      : 'This duct stays dry in steady running.'
    : verdict.startsAt < atTheFan
      ? 'This duct sweats right from the fan.'
      : `This duct sweats from about ${alongText(verdict.startsAt, units)} on.`;
  return {
    headline,
    findings: [
      startFinding(judged, units),
      insulationFinding(judged, units),
      frostFinding(judged, units),
      pitchFinding(judged, units),
      runOnFinding(judged, units),
      measureNextFinding(judged, units),
      ...sweatRemarks(inputs),
    ].filter((finding) => finding !== undefined),
    get chart() {
      return sweatChart(judged, leading(units));
    },
    assumed: assumptions(inputs, judged, { units }),
    suggestions: [
      { label: 'How long should the fan run?', command: 'runtime' },
      { label: 'What does the fan deliver?', command: 'duct' },
    ],
  };
}

function assumptions(inputs: SweatInputs, { unsure }: JudgedDuct, { units }: Telling): readonly string[] {
  const { low, high } = inputs.delivered.airflow;
  const { length } = unsure.cautious.duct;
  return [
    ...(low === high
      ? []
      : [`Airflow: told by the low end of ${airflow.showRangeShort({ low, high }, units)}, for slow air cools more.`]),
    ...(inputs.coldLength === null
      ? [`Cold part: all ${distance.showShort(length, units)} of duct; bends and caps are left out.`]
      : [`Cold part: the first ${distance.showShort(length, units)} from the fan; bends and caps are left out.`]),
    'Humidity: the exhaust is taken to keep its relative humidity, as a hygrometer shows it, whatever its temperature.',
  ];
}

const sweat: AnswerCommand<SweatInputs> = {
  kind: 'answer',
  name: 'sweat',
  summary: 'Where an exhaust duct sweats in the cold, what wrap keeps it dry, and what to do where none does.',
  example:
    'delivered-airflow="60 cfm" duct-diameter="4 in" attic-duct-length="15 ft" duct-insulation=R-4.2 attic-temperature="20 F"',
  takes: [
    ...deliveredTakes,
    ductDiameter,
    atticDuctLength,
    ductInsulation,
    atticTemperature,
    exhaustHumidity,
    exhaustTemperature,
    altitude,
    doorWidth,
    doorGap,
  ],
  interview: sweatInterview,
  answer,
};

export default sweat;
