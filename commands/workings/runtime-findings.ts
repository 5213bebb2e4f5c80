import type { RecoveryTime } from '#engine/moisture/recovery-level.ts';
import { roundedUp, runTimeAdvice } from '#engine/moisture/run-time-advice.ts';
import type { Finding, Value, Weight } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { moistureMethods, recoveryLimits, runTimeSentences, runTimeSteps } from '#knowledge/moisture.ts';
import { airflow, minutes, relativeHumidity, temperature } from '#quantity/kinds.ts';
import { type Seconds, seconds } from '#quantity/units.ts';
import { citations } from './citations.ts';
import { type RunTimeBands, sways, type TimeBand } from './runtime-bands.ts';
import { airMinuteStep } from './runtime-by-hand.ts';
import { adviceSteps, mirrorSteps, reboundSteps, surfaceSteps } from './runtime-drying-working.ts';
import { airSteps, type FollowedRoom, roomSteps } from './runtime-working.ts';

/** Under this a modelled time is told as "within about 5 min": the model cannot tell one minute from three. */
const shortest = runTimeSteps.step;

const anHour = runTimeSteps.most;

const nearestMinute = (time: Seconds): Seconds => seconds(Math.round(time / 60) * 60);

const span = ({ low, high }: { low: Seconds; high: Seconds }, units: UnitSystem): string =>
  minutes.showRangeShort({ low: nearestMinute(low), high: nearestMinute(high) }, units);

/** "14 to 45 min", "up to 25 min", "14 min or far longer": where a time usually lies. */
function bandText({ low, high }: TimeBand, units: UnitSystem): string {
  const single = (time: Seconds) => minutes.showShort(nearestMinute(time), units);
  if (low === null) return 'never';
  if (high === null) return low < shortest ? 'anything from a few minutes to hours' : `${single(low)} or far longer`;
  if (high < shortest) return `under ${single(shortest)}`;
  return low < shortest ? `up to ${single(high)}` : span({ low, high }, units);
}

/** "about 26 min", "within about 5 min". */
const about = (time: Seconds, units: UnitSystem): string =>
  time < shortest
    ? `within about ${minutes.showShort(shortest, units)}`
    : `about ${minutes.showShort(nearestMinute(time), units)}`;

type Why = Exclude<RecoveryTime, { found: true }>['why'];

/** Why there is no time, in full: once in a reply. */
function neverSays(why: Why, { room }: FollowedRoom, units: UnitSystem): string {
  const { houseRelativeHumidity: humidity, houseTemperature, roomTemperature } = room.cautious;
  if (why !== 'house air too humid') return `${neverShort(why, units)} Find out why before anything else.`;
  return `the house air, ${relativeHumidity.showShort(humidity, units)} at ${temperature.showShort(houseTemperature, units)}, already holds more water than the bathroom may keep at ${temperature.showShort(roomTemperature, units)}. Dry or air the house first.`;
}

const neverShort = (why: Why, units: UnitSystem): string =>
  ({
    'no air moves': 'no air moves.',
    'house air too humid': 'the house air is too damp.',
    'longer than followed': `not within ${minutes.showShort(recoveryLimits.longest, units)}. More air, not more time.`,
  })[why];

/** A time under an hour is in order; a longer one is worth doing something about. */
const weightOf = (time: RecoveryTime): Weight => (time.found ? (time.after > anHour ? 'advice' : 'good') : 'caution');

const unit = minutes.siUnit;

function timeValue(time: RecoveryTime, band: TimeBand, units: UnitSystem): Value {
  if (!time.found)
    return { number: null, unit, shown: time.why === 'longer than followed' ? 'not within hours' : 'never' };
  return {
    number: time.after,
    unit,
    ...(band.low === null ? {} : { low: band.low }),
    ...(band.high === null ? {} : { high: band.high }),
    shown: `${about(time.after, units)}, usually ${bandText(band, units)}`,
  };
}

const model = moistureMethods['run-time'].citation;

/** What to set the timer to. */
export function runTimeFinding(followed: FollowedRoom, bands: RunTimeBands, units: UnitSystem): Finding {
  const { result } = followed;
  const { fanMayStop, airRecovers, mirrorClears } = result;
  const band = bands.fanMayStop;
  const byLow = lowFlowSays(followed, units);
  const advice = runTimeAdvice(fanMayStop, runTimeSteps);
  const told =
    advice.kind === 'run'
      ? minutes.showShort(advice.for, units)
      : advice.kind === 'never'
        ? 'never'
        : 'more than an hour';
  const base = {
    id: 'run-time',
    working: [...roomSteps(followed, units), ...reboundSteps(followed, units), ...adviceSteps(followed, told, units)],
    sources: citations(model, recoveryLimits.citations.air, recoveryLimits.citations.surface),
  };
  if (advice.kind === 'never' || !fanMayStop.found) {
    const why = fanMayStop.found ? 'no air moves' : fanMayStop.why;
    return {
      ...base,
      weight: 'caution',
      says:
        advice.kind === 'more air'
          ? `Give it more air, not more time: the fan would need hours.${byLow}`
          : `No run time will do: ${neverSays(why, followed, units)}${why === 'no air moves' ? '' : byLow}`,
      value: { number: null, unit, shown: told },
    };
  }
  const ends = {
    ...(band.low === null ? {} : { low: band.low }),
    ...(band.high === null ? {} : { high: band.high }),
  };
  if (advice.kind === 'more air') {
    const number = roundedUp(fanMayStop.after, runTimeSteps.step);
    return {
      ...base,
      weight: 'caution',
      says: `Give it more air, not more time: more than an hour, about ${minutes.showShort(number, units)}, would be needed.${byLow}`,
      value: { number, unit, ...ends, high: Math.max(number, band.high ?? number), shown: told },
    };
  }
  const until =
    fanMayStop.after === (airRecovers.found && airRecovers.after)
      ? `until the air is back under ${relativeHumidity.showShort(recoveryLimits.air, units)}`
      : fanMayStop.after === (mirrorClears.found && mirrorClears.after)
        ? 'until the mirror is clear'
        : 'until what is left on the walls can dry with the fan off';
  const usually = advisedBand(band, units);
  return {
    ...base,
    weight: 'advice',
    says: `Run the fan about ${told} after the shower, ${until}. It usually takes ${usually}.${byLow}`,
    value: {
      number: advice.for,
      unit,
      ...ends,
      ...(band.high === null ? {} : { high: Math.max(advice.for, band.high) }),
      shown: `about ${told}, usually ${usually}`,
    },
  };
}

/** That the low end of the airflow decides, and what the likeliest would make of it. */
function lowFlowSays({ inputs, likely }: FollowedRoom, units: UnitSystem): string {
  const { low, typical, high } = inputs.delivered.airflow;
  if (low === high) return '';
  const reckoned = ` Reckoned at the low end of the airflow, ${airflow.showShort(low, units)}`;
  if (!likely) return `${reckoned}.`;
  const advice = runTimeAdvice(likely.fanMayStop, runTimeSteps);
  const told =
    advice.kind === 'run'
      ? `about ${minutes.showShort(advice.for, units)} would do`
      : advice.kind === 'never'
        ? 'none would do either'
        : 'it is more than an hour too';
  return `${reckoned}; at the likeliest, ${airflow.showShort(typical, units)}, ${told}.`;
}

/** The band in steps a timer can be set to. */
function advisedBand({ low, high }: TimeBand, units: UnitSystem): string {
  const step = (time: Seconds) => seconds(Math.max(runTimeSteps.least, roundedUp(time, runTimeSteps.step)));
  if (low === null || low > anHour) return 'more than an hour';
  if (high === null || high > anHour) return `${minutes.showShort(step(low), units)} to more than an hour`;
  return minutes.showRangeShort({ low: step(low), high: step(high) }, units);
}

export function airFinding(followed: FollowedRoom, bands: RunTimeBands, units: UnitSystem): Finding {
  const { airRecovers: time } = followed.result;
  const limit = relativeHumidity.showShort(recoveryLimits.air, units);
  return {
    id: 'air-recovers',
    weight: weightOf(time),
    says: time.found
      ? `The air is back under ${limit} humidity ${about(time.after, units)} after the shower, usually ${bandText(bands.airRecovers, units)}.`
      : `The air does not come back under ${limit} humidity: ${neverShort(time.why, units)}`,
    value: timeValue(time, bands.airRecovers, units),
    working: [...roomSteps(followed, units), ...airSteps(followed, units), ...airMinuteStep(followed, time, units)],
    sources: citations(recoveryLimits.citations.air, model, moistureMethods.dilution.citation),
  };
}

export function mirrorFinding(followed: FollowedRoom, bands: RunTimeBands, units: UnitSystem): Finding {
  const { mirrorClears: time } = followed.result;
  return {
    id: 'mirror-clears',
    weight: weightOf(time),
    says: time.found
      ? `The mirror fogs, and clears ${about(time.after, units)} after the shower, usually ${bandText(bands.mirrorClears, units)}.`
      : `The mirror fogs and does not clear: ${neverShort(time.why, units)}`,
    value: timeValue(time, bands.mirrorClears, units),
    working: mirrorSteps(followed),
    sources: citations(model, moistureMethods['moisture-transfer'].citation),
  };
}

export function surfacesFinding(followed: FollowedRoom, bands: RunTimeBands, units: UnitSystem): Finding {
  const { surfacesDry: time } = followed.result;
  return {
    id: 'surfaces-dry',
    weight: weightOf(time),
    says: time.found
      ? `Wet walls and curtain are dry ${about(time.after, units)} after the shower, usually ${bandText(bands.surfacesDry, units)}.`
      : `Wet walls and curtain do not dry: ${neverShort(time.why, units)}`,
    value: timeValue(time, bands.surfacesDry, units),
    working: surfaceSteps(followed),
    sources: citations(moistureMethods['measured-drying'].citation, model),
  };
}

/** The one thing to measure that sways the run time most by itself. */
export function measureNextFinding({ room }: FollowedRoom, units: UnitSystem): Finding | undefined {
  const swayed = sways(room).filter(({ width }) => width > shortest);
  const [most] = swayed;
  const name = (parameter: number) => room.parameters.measures[parameter]?.(units) ?? '';
  if (!most) return undefined;
  const ends = ({ ends: [one, other] }: (typeof swayed)[number]) => {
    const [low, high] = [one, other]
      .map((time) => (time.found ? time.after : null))
      .sort((a, b) => (a ?? Infinity) - (b ?? Infinity));
    return bandText({ low: low ?? null, high: high ?? null }, units);
  };
  return {
    id: 'measure-next',
    weight: 'advice',
    says: `To be surer, find out ${name(most.parameter)}: within what is likely, that alone makes it ${ends(most)}.`,
    working: swayed.map((each) => ({ what: `Run time with only ${name(each.parameter)} in doubt`, value: ends(each) })),
    sources: citations(model),
  };
}

/** What must stand beside every run time. */
export function runTimeRemarks(): readonly Finding[] {
  return [
    {
      id: 'wet-floor',
      weight: 'advice',
      says: runTimeSentences.wetFloor.says,
      working: [],
      sources: citations(runTimeSentences.wetFloor.citation),
    },
    {
      id: 'how-sure',
      weight: 'advice',
      says: runTimeSentences.caution.says,
      working: [],
      sources: citations(runTimeSentences.caution.citation, moistureMethods['measured-drying'].citation),
    },
  ];
}
