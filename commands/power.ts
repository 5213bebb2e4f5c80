import type { AnswerCommand, Telling } from '#chat/command.ts';
import { isGauge } from '#engine/electrical/gauge.ts';
import type { Reply } from '#findings/reply.ts';
import { type Interview, offer, take, together } from '#interview/interview.ts';
import { type ObservationId, observationIds, plannedObservations } from '#knowledge/circuit-rules.ts';
import { fanWatts } from './questions/cost.ts';
import {
  breaker,
  controlAmps,
  controlMinimum,
  fanAmps,
  fanWattsLow,
  heaterWatts,
  lampWatts,
  otherFixedLoad,
  thinnestWire,
} from './questions/loads.ts';
import { wiringQuestion } from './questions/wiring.ts';
import type { LoadNumbers } from './workings/power-draw.ts';
import { powerFindings, stopsCounted } from './workings/power-findings.ts';
import { factsFromNumbers, loadFindings } from './workings/power-loads.ts';
import { contradicted, openIn, readingsOf, setAside } from './workings/power-told.ts';

interface PowerInputs {
  /** An answer for each observation that was worth asking; `unknown` where nobody could say. */
  readonly facts: Readonly<Record<string, string>>;
  /** Answers that no rule asked for, with the others as they are. */
  readonly idle: Readonly<Record<string, string>>;
  readonly numbers: LoadNumbers;
}

/** Whether the unit has a part, or may have it. */
const mayHave = (facts: Readonly<Record<string, string>>, part: 'heater' | 'light'): boolean => {
  const kind = facts['unit-kind'] ?? 'unknown';
  return kind === 'unknown' || kind.includes(part) || (part === 'light' && kind === 'paddle-or-hanging');
};

/** The watts and amps of the unit: one screen of typed answers. */
function* unitNumbers(
  facts: Readonly<Record<string, string>>,
): Interview<Pick<LoadNumbers, 'fanWatts' | 'fanAmps' | 'heaterWatts' | 'lampWatts'>> {
  const amps = yield* take(fanAmps);
  const fan = amps.known ? yield* take(fanWatts) : yield* offer(fanWatts);
  const heater = mayHave(facts, 'heater') ? yield* offer(heaterWatts) : yield* take(heaterWatts);
  const lamp = mayHave(facts, 'light') ? yield* offer(lampWatts) : yield* take(lampWatts);
  return { fanWatts: fan, fanAmps: amps.value, heaterWatts: heater.value, lampWatts: lamp.value };
}

/** The numbers that an open answer is worked out from, asked when it is that answer’s turn; taken when it never is. */
function* numbersFor(facts: Readonly<Record<string, string>>, open: readonly ObservationId[]): Interview<LoadNumbers> {
  const isOpen = (id: ObservationId) => open.includes(id);
  const unit = yield* unitNumbers(facts);
  const other = isOpen('fixed-load-share') ? yield* offer(otherFixedLoad) : yield* take(otherFixedLoad);
  const [rated, wire] = yield* together(isOpen('wire-and-breaker') ? 'offer' : 'take', breaker, thinnestWire);
  const rating = isOpen('control-rating') ? yield* offer(controlAmps) : yield* take(controlAmps);
  const [least, lowest] = yield* together(
    isOpen('control-minimum-load') ? 'offer' : 'take',
    controlMinimum,
    fanWattsLow,
  );
  const awg = Number(wire.value);
  return {
    ...unit,
    otherFixed: other.value,
    breaker: rated.value,
    thinnestWire: wire.known && isGauge(awg) ? awg : null,
    controlRating: rating.value,
    controlMinimum: least.value,
    lowestLoad: lowest.value,
  };
}

function* powerInterview(): Interview<PowerInputs> {
  const facts: Record<string, string> = {};
  // Numbers that may contradict an answer are looked at first: what they bring up is then asked for as well.
  const watched = {
    heaterWatts: (yield* take(heaterWatts)).value,
    lampWatts: (yield* take(lampWatts)).value,
    otherFixed: (yield* take(otherFixedLoad)).value,
  };
  let toAsk = openIn(readingsOf(facts, watched), plannedObservations);
  for (let [next] = toAsk; next !== undefined; [next] = toAsk) {
    const { value, known } = yield* offer(wiringQuestion(next));
    facts[next] = known ? value : 'unknown';
    // An answer that nobody has settles nothing else.
    toAsk = known ? openIn(readingsOf(facts, watched), plannedObservations) : toAsk.slice(1);
  }
  const idle: Record<string, string> = {};
  for (const id of plannedObservations.filter((each) => facts[each] === undefined)) {
    const { value, known } = yield* take(wiringQuestion(id));
    if (known) idle[id] = value;
  }
  const open = openIn(readingsOf(facts, watched), observationIds);
  const numbers = yield* numbersFor(facts, open);
  return { facts: { ...facts, ...factsFromNumbers(numbers, facts) }, idle, numbers };
}

function answer({ facts, idle, numbers }: PowerInputs, { units }: Telling): Reply {
  const loads = loadFindings(numbers, facts, units);
  const readings = readingsOf(facts, numbers);
  const told = [contradicted(numbers, facts, units), setAside(readings, { ...idle, ...facts })];
  const findings = powerFindings(
    readings,
    loads,
    told.filter((finding) => finding !== undefined),
  );
  const { certain: byRule, open } = stopsCounted(readings);
  const certain = byRule + loads.filter(({ weight }) => weight === 'stop').length;
  const counted = (count: number) => `${count} ${count === 1 ? 'thing stops' : 'things stop'} this job`;
  return {
    headline:
      certain > 0
        ? `${counted(certain)}${open > 0 ? `, and ${open} more for want of an answer` : ''}.`
        : open > 0
          ? `${counted(open)} until somebody finds out.`
          : 'Nothing told here stops this job. That is a reminder, not permission.',
    findings,
    suggestions: [{ label: 'Does it fit in the box?', command: 'boxfill' }],
  };
}

/** The few that say most come first: of a long list a medium may offer only the beginning. */
const telling: readonly ObservationId[] = [
  'unit-kind',
  'fan-place',
  'control-wanted',
  'wiring-era',
  'wiring-kind',
  'fan-ground',
  'switch-box-neutral',
  'switch-box-ground',
  'heater-circuit',
  'who-wires',
  'trouble-signs',
];

const power: AnswerCommand<PowerInputs> = {
  kind: 'answer',
  name: 'power',
  summary: 'Which circuit and control rules apply to this fan: what stops the job, who decides, what it draws.',
  example: 'unit-kind=fan-only fan-place=elsewhere control-wanted=countdown-timer wiring-era=1985-on fan-ground=none',
  takes: [
    ...[...telling, ...plannedObservations.filter((id) => !telling.includes(id))].map(wiringQuestion),
    fanWatts,
    fanAmps,
    heaterWatts,
    lampWatts,
    otherFixedLoad,
    breaker,
    thinnestWire,
    controlAmps,
    controlMinimum,
    fanWattsLow,
  ],
  interview: powerInterview,
  answer,
};

export default power;
