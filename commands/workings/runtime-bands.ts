import { quickPace } from '#engine/moisture/drying.ts';
import type { RecoveryTime } from '#engine/moisture/recovery-level.ts';
import { type RunTime, runTime } from '#engine/moisture/run-time.ts';
import { likelyEnds } from '#engine/uncertainty/sampled-answers.ts';
import { type SampleCount, triangularSample } from '#engine/uncertainty/triangular-sample.ts';
import { recoveryLimits } from '#knowledge/moisture.ts';
import { type Seconds, seconds } from '#quantity/units.ts';
import type { UnsureBathroom } from './runtime-room.ts';

const answers = ['fanMayStop', 'airRecovers', 'mirrorClears', 'surfacesDry'] as const;
type Timed = (typeof answers)[number];

/** Where a time usually lies, 5 to 95 of 100 ways the unknowns can fall. `null` stands for later than anybody waits. */
export interface TimeBand {
  readonly low: Seconds | null;
  readonly high: Seconds | null;
}

export type RunTimeBands = Readonly<Record<Timed, TimeBand>>;

const samples: SampleCount = 128;
/** Past two hours nobody waits to see the end: the sampled rooms are followed no longer. */
const followed = { ...recoveryLimits, longest: seconds(2 * 3600) };
/** Later than anything followed: where "never" and "not within hours" stand among the sampled times. */
const endless = 1e9;

const lateness = (time: RecoveryTime): number => (time.found ? time.after : endless);

const told = (time: number): Seconds | null => (time > followed.longest ? null : seconds(time));

/**
 * The likely band of every time from one round of samples: the model is followed once for each, and all the times are read
 * off it. The time that is told lies within its band.
 */
export function runTimeBands(room: UnsureBathroom, central: RunTime): RunTimeBands {
  const { bounded, drivers } = room.parameters;
  const sample = triangularSample({ parameters: bounded, drivers }, samples);
  const times = answers.map(() => new Float64Array(samples));
  sample.restart();
  for (let n = 0; n < samples; n += 1) {
    sample.next();
    const result = runTime(room.bathroom(sample.values), followed, quickPace);
    for (const [index, answer] of answers.entries()) (times[index] as Float64Array)[n] = lateness(result[answer]);
  }
  const band = (answer: Timed): TimeBand => {
    const [low, high] = likelyEnds(times[answers.indexOf(answer)] as Float64Array);
    const at = lateness(central[answer]);
    return { low: told(Math.min(low, at)), high: told(Math.max(high, at)) };
  };
  return {
    fanMayStop: band('fanMayStop'),
    airRecovers: band('airRecovers'),
    mirrorClears: band('mirrorClears'),
    surfacesDry: band('surfacesDry'),
  };
}

/** The run time with one unknown at its low and its high end, the rest as told: how far it alone sways the answer. */
export interface Sway {
  readonly parameter: number;
  readonly ends: readonly [RecoveryTime, RecoveryTime];
  readonly width: number;
}

/** What can be measured on site, the widest sway first. */
export function sways({ parameters, typical, bathroom }: UnsureBathroom): readonly Sway[] {
  const at = (parameter: number, value: number): RecoveryTime => {
    const values = Float64Array.from(typical);
    values[parameter] = value;
    return runTime(bathroom(values), followed, quickPace).fanMayStop;
  };
  return parameters.bounded
    .flatMap(({ low, high }, parameter) => {
      if (parameters.measures[parameter] === undefined) return [];
      const ends = [at(parameter, low), at(parameter, high)] as const;
      return [{ parameter, ends, width: Math.abs(lateness(ends[1]) - lateness(ends[0])) }];
    })
    .sort((one, other) => other.width - one.width);
}
