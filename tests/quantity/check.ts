import { expect } from 'vitest';
import type { Kind } from '#quantity/kind.ts';
import type { UnitSystem } from '#quantity/units.ts';

/** What a kind makes of a text: the number in SI, or fails with the sentence the person would get. */
export function read(kind: Kind, text: string, units: UnitSystem = 'inch-pound'): number {
  const reading = kind.read(text, units);
  if ('rejected' in reading) throw new Error(`“${text}” was refused: ${reading.rejected}`);
  return reading.value;
}

/** What a kind says when it will not take a text. */
export function refusal(kind: Kind, text: string, units: UnitSystem = 'inch-pound'): string {
  const reading = kind.read(text, units);
  if ('value' in reading) throw new Error(`“${text}” was read as ${reading.value}`);
  return reading.rejected;
}

/** Low, typical and high in the crew's own unit, to nine decimals. */
export function estimated(kind: Kind, text: string, units: UnitSystem = 'inch-pound'): readonly number[] | string {
  const reading = kind.readEstimate(text, units);
  if ('rejected' in reading) return reading.rejected;
  const { low, typical, high } = reading.value;
  const { of } = kind.scale(units);
  return [low, typical, high].map((value) => Number(of(value).toFixed(9)));
}

/** Equal to a part in a billion: the definitions are exact and the arithmetic is not. */
export const same = (actual: number, expected: number): void => {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(expected), 1e-6));
};
