import { setTimeout as delay } from 'node:timers/promises';
import type { Answer } from './refusals.ts';

/** Something the stand-in does wrong on purpose. */
export interface Fault {
  /** The method it befalls; every one if not said. */
  readonly method?: string;
  /** The path it befalls, without prefix and version. */
  readonly path: RegExp;
  /** How often; once if not said. */
  readonly times?: number;
  /** What is answered. Without it the request is only slowed down. */
  readonly status?: number;
  readonly code?: number;
  readonly message?: string;
  /** For 429: seconds to wait, sent in the header the client obeys. */
  readonly retryAfter?: number;
  /** Milliseconds before anything is answered. */
  readonly slowBy?: number;
}

const left = new WeakMap<Fault, number>();

/** The answer a planned fault gives instead of the true one; undefined when the request may go on. */
export async function faultFor(faults: readonly Fault[], method: string, path: string): Promise<Answer | undefined> {
  const fault = faults.find(
    (candidate) =>
      (candidate.method ?? method) === method &&
      candidate.path.test(path) &&
      (left.get(candidate) ?? candidate.times ?? 1) > 0,
  );
  if (!fault) return undefined;
  left.set(fault, (left.get(fault) ?? fault.times ?? 1) - 1);
  if (fault.slowBy !== undefined) await delay(fault.slowBy);
  return fault.status === undefined ? undefined : faulty(fault, fault.status);
}

const wordsFor: Readonly<Record<number, string>> = {
  401: '401: Unauthorized',
  403: 'Missing Permissions',
  404: '404: Not Found',
  429: 'You are being rate limited.',
  500: '500: Internal Server Error',
  503: 'upstream connect error',
};

function faulty({ code = 0, message, retryAfter = 1 }: Fault, status: number): Answer {
  const words = message ?? wordsFor[status] ?? `${status}`;
  if (status !== 429) return { status, body: { message: words, code } };
  return {
    status,
    body: { message: words, retry_after: retryAfter, global: false },
    headers: {
      'retry-after': String(Math.ceil(retryAfter)),
      'x-ratelimit-scope': 'shared',
      'x-ratelimit-limit': '5',
      'x-ratelimit-remaining': '0',
      'x-ratelimit-reset-after': String(retryAfter),
      'x-ratelimit-bucket': 'stand-in',
    },
  };
}
