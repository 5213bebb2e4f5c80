import type { Answer, AnyQuestion, Question } from './question.ts';

/**
 * What an interview asks for. `need`: without it there is no answer. `offer`: asked when there is a person to ask, assumed
 * (and said so) in one-shot use. `take`: used when the sheet has it, never asked.
 */
export type Urgency = 'need' | 'offer' | 'take';

/** Questions asked together: one screen of up to five typed answers where the medium has screens. */
export interface Request {
  readonly urgency: Urgency;
  readonly questions: readonly AnyQuestion[];
}

/**
 * The script of a command: a generator replayed over the answers on the sheet. No clock, no chance, no reading of files
 * inside; branches are ordinary ifs.
 */
export type Interview<Inputs> = Generator<Request, Inputs, readonly Answer<unknown>[]>;

type Asked<Value> = Generator<Request, Answer<Value>, readonly Answer<unknown>[]>;

function* request<Value>(urgency: Urgency, question: Question<Value>): Asked<Value> {
  const [answer] = yield { urgency, questions: [question] };
  return answer as Answer<Value>;
}

/** Asks what must be answered (or answered "don't know") before the command can go on. */
export const ask = <Value>(question: Question<Value>): Asked<Value> => request('need', question);

/** Asks in conversation, assumes in one-shot use. */
export const offer = <Value>(question: Question<Value>): Asked<Value> => request('offer', question);

/** Takes what the sheet or the crew's settings hold; never asks. */
export const take = <Value>(question: Question<Value>): Asked<Value> => request('take', question);

type Answers<Questions extends readonly AnyQuestion[]> = {
  readonly [Index in keyof Questions]: Questions[Index] extends Question<infer Value> ? Answer<Value> : never;
};

/** Up to five questions on one screen. */
export function* together<const Questions extends readonly AnyQuestion[]>(
  urgency: Urgency,
  ...questions: Questions
): Generator<Request, Answers<Questions>, readonly Answer<unknown>[]> {
  return (yield { urgency, questions }) as unknown as Answers<Questions>;
}
