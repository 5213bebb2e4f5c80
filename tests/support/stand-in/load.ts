import { setTimeout as delay } from 'node:timers/promises';
import type { Begun } from './person.ts';

export interface LoadOptions {
  /** How many are fired each second, whether or not the bot keeps up. */
  readonly rate?: number;
  /** How many wait for the bot at any time, as an alternative to a rate. */
  readonly inFlight?: number;
  readonly seconds: number;
  /** How many seconds answers that were promised are waited for afterwards; as long as the platform has patience if not said. */
  readonly untilAnswered?: number;
  /** Does the nth thing, and does not wait: `(nth) => user.begin.slash('duct')`. */
  readonly make: (nth: number) => Begun;
}

/** Milliseconds. */
interface Latencies {
  readonly p50: number;
  readonly p90: number;
  readonly p99: number;
  readonly max: number;
}

export interface LoadResult {
  readonly fired: number;
  readonly acknowledged: number;
  readonly answered: number;
  /** Never acknowledged, or later than the three seconds the platform allows. */
  readonly missed: number;
  readonly seconds: number;
  readonly perSecond: number;
  /** From the event to the bot's first answer. */
  readonly acknowledgement: Latencies;
  /** From the event to the answer itself, after a promise was kept. */
  readonly answer: Latencies;
}

const platformPatience = 3000;
const ticksPerSecond = 200;

/** Fires at the bot and measures how it keeps up. */
export async function load({ rate, inFlight, seconds, untilAnswered, make }: LoadOptions): Promise<LoadResult> {
  const acknowledgements: number[] = [];
  const answers: number[] = [];
  let fired = 0;
  const fire = (whenAnswered: () => void) => {
    const done = make(fired);
    fired += 1;
    done.onAcknowledged((milliseconds) => acknowledgements.push(milliseconds));
    done.onAnswered((milliseconds) => {
      answers.push(milliseconds);
      whenAnswered();
    });
  };
  const start = performance.now();
  const end = start + seconds * 1000;
  if (rate === undefined) await keepInFlight(inFlight ?? 1, end, fire);
  else await keepRate(rate, start, end, () => fire(() => undefined));
  const last = performance.now() + (untilAnswered === undefined ? platformPatience : untilAnswered * 1000);
  while (answers.length < fired && performance.now() < last) await delay(5);
  const took = (performance.now() - start) / 1000;
  const inTime = acknowledgements.filter((milliseconds) => milliseconds <= platformPatience).length;
  return {
    fired,
    acknowledged: acknowledgements.length,
    answered: answers.length,
    missed: fired - inTime,
    seconds: took,
    perSecond: answers.length / took,
    acknowledgement: latencies(acknowledgements),
    answer: latencies(answers),
  };
}

/** Each answer lets the next one go; a bot that never answers lets nothing go. */
const keepInFlight = (count: number, end: number, fire: (whenAnswered: () => void) => void): Promise<void> =>
  new Promise((resolve) => {
    const next = () => {
      if (performance.now() < end) fire(next);
      else resolve();
    };
    for (let nth = 0; nth < count; nth += 1) fire(next);
    setTimeout(resolve, end - performance.now());
  });

async function keepRate(rate: number, start: number, end: number, fire: () => void): Promise<void> {
  let fired = 0;
  for (let now = start; now < end; ) {
    await delay(1000 / ticksPerSecond);
    now = Math.min(performance.now(), end);
    // After a hitch those that fell due meanwhile are fired at once, so that the count is kept.
    const due = Math.floor(((now - start) / 1000) * rate);
    for (; fired < due; fired += 1) fire();
  }
}

function latencies(values: readonly number[]): Latencies {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
  return { p50: at(0.5), p90: at(0.9), p99: at(0.99), max: at(1) };
}
