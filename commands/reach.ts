import type { AnswerCommand, Telling } from '#chat/command.ts';
import type { Finding, Step } from '#findings/finding.ts';
import type { Chart, Reply } from '#findings/reply.ts';
import { ask, type Interview, offer, take } from '#interview/interview.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import type { DuctKind } from '#knowledge/ducts.ts';
import { exactly } from '#quantity/estimate.ts';
import { airflow, ductDiameter as diameterKind, ductLength } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import { type CubicMetresPerSecond, leading, type Metres, metres, type OneSystem } from '#quantity/units.ts';
import { ductDiameter } from './questions/attic.ts';
import { collar, type FanAnswer, fanCurve } from './questions/fan.ts';
import { ductKind, elbows } from './questions/reach.ts';
import type { DuctRun, RunPart } from './questions/run-parts.ts';
import { citations } from './workings/citations.ts';
import { codeLengthFinding, codeLengthOfRun } from './workings/code-length.ts';
import { type AirflowAtCorners, airflowAtCorners, type Delivery, delivery, readyPath } from './workings/delivery.ts';
import { deliveryAssumed } from './workings/delivery-assumed.ts';
import { deliveredSteps } from './workings/delivery-findings.ts';
import { lossSteps } from './workings/duct-working.ts';
import { fanSettingsOf } from './workings/fan-model.ts';
import { type Needed, neededInterview, neededOnSheet, neededTakes } from './workings/needed.ts';
import { onTheShortSide } from './workings/short-side.ts';

interface ReachInputs {
  readonly fan: FanAnswer;
  readonly kind: DuctKind;
  readonly diameter: Metres;
  readonly elbows: number;
  readonly needed: CubicMetresPerSecond | null;
  readonly neededFrom: Needed['from'];
  readonly collar: Metres | null;
}

function* reachInterview(): Interview<ReachInputs> {
  const fan = yield* ask(fanCurve);
  const kind = yield* ask(ductKind);
  const diameter = yield* ask(ductDiameter);
  const turns = yield* offer(elbows);
  const needed = yield* neededInterview();
  const wide = yield* take(collar);
  return {
    fan: fan.value,
    kind: kind.value,
    diameter: diameter.value.typical,
    elbows: Math.round(turns.value.typical),
    needed: needed.airflow,
    neededFrom: needed.from,
    collar: wide.value,
  };
}

const foot = 0.3048;
/** The lengths tried for the table and the chart, in feet. */
const tried = [2, 5, 10, 15, 20, 25, 30, 40, 60, 80, 100];

/** A run of one kind of duct with its elbows and a wall cap. */
const runOf = ({ kind, diameter, elbows: turns }: ReachInputs, length: Metres): DuctRun => {
  const parts: RunPart[] = [
    { part: 'duct', kind, diameter, length: exactly(length), compression: null, roughness: null },
  ];
  if (turns > 0) parts.push({ part: 'fitting', fitting: 'elbow-90', count: turns, diameter: null, coefficient: null });
  return { parts: [...parts, { part: 'fitting', fitting: 'wall-cap', count: 1, diameter: null, coefficient: null }] };
};

const pathOf = (inputs: ReachInputs, length: Metres) => {
  const settings = fanSettingsOf(inputs.fan, []);
  const setting = settings.at(-1);
  if (!setting) throw new Error('a fan without a setting');
  return { setting, run: runOf(inputs, length), collar: inputs.collar, altitude: metres(0) };
};

/** Stands in where a run is needed but its length makes no difference to what is told. */
const someLength = metres(15 * foot);

const longestTried = metres(200 * foot);
const mostHalvings = 24;

/** The longest run that still moves enough, at one end of what is unknown; nothing when even a foot is too long. */
function longest(inputs: ReachInputs, need: CubicMetresPerSecond, end: keyof AirflowAtCorners): Metres | null {
  const enough = (length: number) => meets(airflowAtCorners(pathOf(inputs, metres(length)))[end], need);
  if (!enough(foot)) return null;
  if (enough(longestTried)) return longestTried;
  let [low, high]: [number, number] = [foot, longestTried];
  for (let halving = 0; halving < mostHalvings; halving += 1) {
    const middle = (low + high) / 2;
    if (enough(middle)) low = middle;
    else high = middle;
  }
  return metres(low);
}

/** How the airflow at one length comes about, part by part. */
function stepsAt(inputs: ReachInputs, length: Metres, units: UnitSystem): readonly Step[] {
  const moved = deliveredAt(inputs, length);
  return [...lossSteps(moved, units), ...deliveredSteps(moved, units)];
}

const deliveredAt = (inputs: ReachInputs, length: Metres): Delivery => delivery(pathOf(inputs, length), 128);

function longestFinding(inputs: ReachInputs, need: CubicMetresPerSecond, { units }: Telling): Finding {
  const [sure, likely] = [longest(inputs, need, 'worst'), longest(inputs, need, 'typical')];
  const of = `${diameterKind.showShort(inputs.diameter, units)} ${inputs.kind.replace('-', ' ')}`;
  const told = (length: Metres | null) =>
    length === null
      ? 'not even a foot'
      : length === longestTried
        ? `more than ${ductLength.showShort(longestTried, units)}`
        : ductLength.show(onTheShortSide(length, units), units);
  const working = [
    { what: 'Airflow wanted', value: airflow.show(need, units) },
    {
      what: 'Longest run with everything unknown as expected',
      how: 'the length is halved between too short and too long until the airflow below is what is wanted',
      value: told(likely),
      source: airflowMethods['operating-point'].citation,
    },
    ...(likely === null ? [] : stepsAt(inputs, likely, units)),
    {
      what: 'Longest run with everything unknown at its worst',
      how: 'the same sum, each unknown at the end that costs most air',
      value: told(sure),
    },
  ];
  const base = { id: 'longest-run', working, sources: citations(airflowMethods['operating-point'].citation) } as const;
  const value = {
    number: likely,
    unit: ductLength.siUnit,
    ...(sure === null ? {} : { low: sure }),
    shown: told(likely),
  };
  if (likely === null) {
    return {
      ...base,
      weight: 'caution',
      value,
      says: `No length of ${of} will do for ${airflow.showShort(need, units)}: go a size up.`,
    };
  }
  return {
    ...base,
    weight: 'advice',
    value,
    says:
      likely === longestTried
        ? `Any length a house has will do: ${told(likely)} of ${of} with ${inputs.elbows} elbows and a wall cap still brings ${airflow.showShort(need, units)}${sure === longestTried ? ', whatever is unknown' : `; to be sure whatever is unknown, ${told(sure)}`}.`
        : `Run at most ${told(likely)} of ${of} with ${inputs.elbows} elbows and a wall cap for ${airflow.showShort(need, units)}; to be sure whatever is unknown, ${told(sure)}.`,
  };
}

function answer(inputs: ReachInputs, telling: Telling): Reply {
  const { units } = telling;
  const rows = tried.map((feet) => ({
    length: metres(feet * foot),
    ...airflowAtCorners(pathOf(inputs, metres(feet * foot))),
  }));
  const { says, working, ...code } = codeLengthFinding(readyPath(pathOf(inputs, someLength)), units);
  const table = {
    title: 'What comes out, by length of duct',
    columns: ['length', 'likely', 'worst to best'],
    rows: rows.map(({ length, typical, worst, best }) => [
      ductLength.showShort(length, units),
      airflow.showShort(typical, units),
      airflow.showRangeShort({ low: worst, high: best }, units),
    ]),
  };
  const at15 = rows.find(({ length }) => length > 4.4 && length < 4.7);
  return {
    headline:
      inputs.needed === null
        ? `Through 15 ft of it about ${airflow.show(at15?.typical ?? rows[0]?.typical ?? (0 as CubicMetresPerSecond), units)} comes out. Say the airflow needed for the longest run.`
        : `How far this duct can run for ${airflow.show(inputs.needed, units)}.`,
    findings: [
      ...(inputs.needed === null ? [] : [longestFinding(inputs, inputs.needed, telling)]),
      {
        ...code,
        says: says.replace(/; this run has .*$/, '.'),
        working: working.filter(({ what }) => what !== codeLengthOfRun),
      },
    ],
    tables: [table],
    chart: reachChart(rows, inputs.needed, leading(telling.units)),
    assumed: [
      ...neededOnSheet({ airflow: inputs.needed, from: inputs.neededFrom }, units),
      'End of the duct: a wall cap. A roof cap takes more.',
      ...deliveryAssumed(deliveredAt(inputs, someLength), units),
    ],
    suggestions: [{ label: 'What does the duct that is there deliver?', command: 'duct' }],
  };
}

function reachChart(
  rows: readonly ({ readonly length: Metres } & AirflowAtCorners)[],
  need: CubicMetresPerSecond | null,
  units: OneSystem,
): Chart {
  const x = ductLength.scale(units);
  const y = airflow.scale(units);
  const most = Math.max(...rows.map(({ best }) => y.of(best)));
  return {
    title: 'Airflow by length of duct',
    x: { label: `length of duct, ${x.unit}`, min: 0, max: x.of(metres(100 * foot)) },
    y: { label: `airflow, ${y.unit}`, min: 0, max: Math.ceil(most / 20) * 20 },
    lines: [
      { label: 'likely', role: 'main', points: rows.map(({ length, typical }) => [x.of(length), y.of(typical)]) },
    ],
    bands: [
      {
        label: 'worst to best',
        points: rows.map(({ length, worst, best }) => [x.of(length), y.of(worst), y.of(best)]),
      },
    ],
    marks: [],
    levels: need === null ? [] : [{ label: `needed ${airflow.showShort(need, units)}`, axis: 'y', at: y.of(need) }],
    alt: `Chart of airflow falling with the length of duct: ${rows.map(({ length, typical }) => `${ductLength.showShort(length, units)} ${airflow.showShort(typical, units)}`).join(', ')}.`,
  };
}

const reach: AnswerCommand<ReachInputs> = {
  kind: 'answer',
  name: 'reach',
  summary: 'How far a duct of one kind and size can run with a fan and still move enough.',
  example: 'fan-curve="110" duct-kind=flex duct-diameter="4 in" elbows=2 airflow-needed="70 cfm"',
  takes: [fanCurve, ductKind, ductDiameter, elbows, ...neededTakes, collar],
  interview: reachInterview,
  answer,
};

export default reach;
