import type { AnyQuestion, Reading, UnitSystem } from '#interview/question.ts';
import { inOtherWords } from '#interview/worded.ts';

/** How many texts are remembered for each question, and how long one may be to be worth it. */
const most = { texts: 64, length: 600 } as const;

const read = new WeakMap<AnyQuestion, Map<string, Reading<unknown>>>();

/**
 * A text as a question reads it. A job sheet is read afresh at every turn, and the same text always reads the same, so what
 * was read lately is remembered: a sheet of fifty answers then costs no more than one of five. What was answered in one language
 * is understood by whoever asks in another.
 */
export function readOnce(question: AnyQuestion, text: string, units: UnitSystem): Reading<unknown> {
  if (text.length > most.length) return readInAny(question, text, units);
  const known = read.get(question) ?? new Map<string, Reading<unknown>>();
  read.set(question, known);
  const key = `${units} ${text}`;
  const before = known.get(key);
  if (before) return before;
  const reading = readInAny(question, text, units);
  known.set(key, reading);
  const [oldest] = known.keys();
  if (known.size > most.texts && oldest !== undefined) known.delete(oldest);
  return reading;
}

function readInAny(question: AnyQuestion, text: string, units: UnitSystem): Reading<unknown> {
  const reading = question.read(text, units);
  if ('value' in reading) return reading;
  const others = inOtherWords(question).map((other) => other.read(text, units));
  return others.find((other) => 'value' in other) ?? reading;
}
