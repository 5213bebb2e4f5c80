import { type FoundNumber, spokenFractionAt, spokenNumberAt } from './number-words.ts';

/** Ways a numeral is written, most particular first. Three digits after a comma are thousands, unless a lone zero leads. */
const numerals: readonly (readonly [RegExp, (written: string) => string])[] = [
  [/[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?(?![.,]?\d)/y, (written) => written.replaceAll(',', '')],
  [/[1-9]\d{0,2}(?:\.\d{3})+,\d+(?![.,]?\d)/y, (written) => written.replaceAll('.', '').replace(',', '.')],
  [/0,\d+(?![.,]?\d)/y, (written) => written.replace(',', '.')],
  [/\d+,(?!\d{3}(?!\d))\d+(?![.,]?\d)/y, (written) => written.replace(',', '.')],
  [/(?:\d+\.?\d*|\.\d+)(?!,?\d)/y, (written) => written],
];

const fractionPattern = /(\d{1,4})\s*\/\s*(\d{1,4})(?![.,]?\d)/y;

/** "3/4". Below one when it follows a whole number. */
function fractionAt(text: string, start: number): FoundNumber | undefined {
  fractionPattern.lastIndex = start;
  const match = fractionPattern.exec(text);
  if (!match || Number(match[2]) === 0) return undefined;
  return { value: Number(match[1]) / Number(match[2]), end: fractionPattern.lastIndex, whole: false };
}

function numeralAt(text: string, start: number): FoundNumber | undefined {
  for (const [pattern, plain] of numerals) {
    pattern.lastIndex = start;
    const match = pattern.exec(text);
    if (match) {
      return { value: Number(plain(match[0])), end: pattern.lastIndex, whole: /^\d+$/.test(match[0]) };
    }
  }
  return undefined;
}

/** The fraction of a mixed number: "4 1/2", "4-1/2", "4 and 1/2", "4 and a half", "four and three quarters". */
function mixedWith(whole: FoundNumber, text: string): FoundNumber {
  const joint = /\s+and\s+|\s+|-/y;
  joint.lastIndex = whole.end;
  const joined = joint.exec(text)?.[0];
  if (joined === undefined) return whole;
  const at = joint.lastIndex;
  const rest = fractionAt(text, at) ?? (joined.includes('and') ? spokenFractionAt(text, at) : undefined);
  return rest && rest.value < 1 ? { value: whole.value + rest.value, end: rest.end, whole: false } : whole;
}

/** The number that begins at a place in folded text, in figures or in words. Signs are not its business. */
export function numberAt(text: string, start: number): FoundNumber | undefined {
  const found = fractionAt(text, start) ?? numeralAt(text, start) ?? spokenNumberAt(text, start);
  return found?.whole && !found.article ? mixedWith(found, text) : found;
}

/** A fraction below one and nothing else, as after "eight feet and": "a half", "3/4". */
export const properFractionAt = (text: string, start: number): FoundNumber | undefined => {
  const found = fractionAt(text, start) ?? spokenFractionAt(text, start);
  return found && found.value < 1 ? found : undefined;
};
