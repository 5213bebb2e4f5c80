import type { AnyQuestion, Reading, UnitSystem } from '#interview/question.ts';

/** How many texts are remembered for each question, and how long one may be to be worth it. */
const most = { texts: 64, length: 600 } as const;

const read = new WeakMap<AnyQuestion, Map<string, Reading<unknown>>>();

/**
 * A text as a question reads it. A job sheet is read afresh at every turn, and the same text always reads the same, so what
 * was read lately is remembered: a sheet of fifty answers then costs no more than one of five.
 */
export function readOnce(question: AnyQuestion, text: string, units: UnitSystem): Reading<unknown> {
  if (text.length > most.length) return question.read(text, units);
  const known = read.get(question) ?? new Map<string, Reading<unknown>>();
  read.set(question, known);
  const key = `${units} ${text}`;
  const before = known.get(key);
  if (before) return before;
  const reading = question.read(text, units);
  known.set(key, reading);
  const [oldest] = known.keys();
  if (known.size > most.texts && oldest !== undefined) known.delete(oldest);
  return reading;
}
