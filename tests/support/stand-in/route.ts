import type { Case } from '../payload-judge/judge.ts';
import type { ReceivedBody } from './multipart.ts';
import type { Answer } from './refusals.ts';
import type { World } from './world.ts';

/** One request while it is being answered. */
export interface Request extends ReceivedBody {
  readonly method: string;
  readonly path: string;
  readonly query: URLSearchParams;
  /** When its head arrived (`performance.now()`). */
  readonly arrivedAt: number;
  /** Judges the body; gives the refusal if the platform would refuse it. */
  readonly judged: (around?: Pick<Case, 'answering' | 'standing'>) => Answer | undefined;
}

export interface Route {
  readonly method: string;
  readonly pattern: RegExp;
  /** Answers; `parts` are the variable parts of the path in order. */
  readonly handle: (world: World, request: Request, ...parts: string[]) => Answer;
}
