import sweat from '#commands/sweat.ts';
import type { Finding } from '#findings/finding.ts';
import { toSi } from '#quantity/unit-factors.ts';
import { findingOf, once } from './talked.ts';

/** Of two words of one name the later counts, so that a case can change one thing. */
export const asked = (...words: readonly string[]) =>
  once(sweat, ...new Map(words.map((word) => [word.split('=')[0], word])).values());
export const valueIn = (id: string, ...words: readonly string[]) => findingOf(asked(...words), id).value;
export const feet = (metres: number | null | undefined) => (metres ?? Number.NaN) / 0.3048;
export const rValue = (rsi: number | null | undefined) => (rsi ?? Number.NaN) / toSi(1, 'Rvalue', 'm^2 K/W');
export const stepOf = ({ working }: Finding, what: RegExp) => {
  const step = working.find((each) => what.test(each.what));
  if (!step) throw new Error(`no line ${what} among ${working.map((each) => each.what).join('; ')}`);
  return step;
};

/** A duct of 15 ft through an attic at 20 °F, the exhaust as it is at a shower. */
export const duct = [
  'duct-run=15 ft 4 in smooth',
  'attic-temperature=20 F',
  'exhaust-humidity=80',
  'exhaust-temperature=75 F',
] as const;
export const flow = 'delivered-airflow=80 cfm';
