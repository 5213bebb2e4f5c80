import type { Dimension } from './dimensions.ts';
import type { FoundNumber } from './number-words.ts';
import { numberAt, properFractionAt } from './reading-numbers.ts';
import { echoed } from './reading-text.ts';
import { type FoundUnit, unitAt, unitBeforeAt } from './reading-units.ts';

/** Why a text will not do: the first half of the sentence, or the whole of it. */
export interface Trouble {
  readonly trouble: string;
  readonly whole?: true;
}

/** One amount as written: "8 ft 6 in" has two terms. A term without a unit has none written. */
export interface Phrase {
  readonly terms: readonly Term[];
  readonly end: number;
}

interface Term {
  readonly amount: number;
  readonly unit: string | undefined;
}

/** What the reader of one phrase must know about the question. */
export interface Setting {
  readonly dimension: Dimension;
  /** The unit of a bare number. */
  readonly bare: string;
  /** Words that may follow and change nothing. */
  readonly after: string;
}

export const isTrouble = (outcome: object): outcome is Trouble => 'trouble' in outcome;

/** The place after a pattern, or nothing when the pattern is not there. */
export function passed(text: string, at: number, pattern: RegExp): number | undefined {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : undefined;
}

const spaces = /\s*/y;
const minus = /[-–]\s?(?=[\d.])/y;
const jointToUnit = /\s*(?:-(?=[a-z]))?/y;
const wordsBetween =
  /(?:to|thru|through|and|or so|most|likeliest|likely|probably|typical|typically|usually|best|approx|roughly)\b/y;
const strangeWord = /[^\s\d(),;–-][^\s(),;–]*/y;
const jointToNext = /\s*,\s*|\s+and\s+|\s*-\s*|\s*/y;
const andJoint = /\s+and\s+/y;

const meaningFor = ({ meanings }: FoundUnit, dimension: Dimension): string | undefined =>
  meanings.find((meaning) => meaning.dimension === dimension)?.unit;

const otherDimension = ({ meanings }: FoundUnit): Trouble => ({
  trouble: `That is ${meanings[0]?.dimension.noun ?? 'something else'}`,
});

/** The unit after a number, if one is written; a word that is no unit at all is trouble. */
function unitAfter(text: string, at: number, setting: Setting): Trouble | { unit: string | undefined; end: number } {
  const place = passed(text, at, jointToUnit) ?? at;
  const wordStart = passed(text, place, spaces) ?? place;
  const found = unitAt(text, wordStart);
  if (found) {
    const meant = meaningFor(found, setting.dimension);
    if (meant === undefined) return otherDimension(found);
    return { unit: meant === 'own' ? setting.bare : meant, end: passAfter(text, found.end, setting) };
  }
  const beyond = passAfter(text, at, setting);
  if (beyond > at || passed(text, wordStart, wordsBetween) !== undefined) return { unit: undefined, end: beyond };
  const strange = passed(text, wordStart, strangeWord);
  if (strange === undefined || !/[\p{L}%°]/u.test(text.charAt(wordStart))) return { unit: undefined, end: at };
  return { trouble: `I do not know the unit “${echoed(text.slice(wordStart, strange))}”` };
}

const afterPatterns = new Map<string, RegExp>();

function passAfter(text: string, at: number, { after }: Setting): number {
  if (after === '') return at;
  const pattern = afterPatterns.get(after) ?? new RegExp(`\\s*(?:${after})\\b`, 'y');
  afterPatterns.set(after, pattern);
  return passed(text, at, pattern) ?? at;
}

/**
 * A hyphen between two whole-looking numbers of a length: 8-6 is eight foot six. Where it could as well be a range, it is
 * refused, and where it can only be a range (or is not a length) nothing is returned.
 */
function feetAndInches(text: string, feet: FoundNumber, setting: Setting): Phrase | Trouble | undefined {
  const hyphen = passed(text, feet.end, /-(?=\d)/y);
  const small = setting.dimension.followedBy?.['ft'];
  if (hyphen === undefined || !small || !feet.whole) return undefined;
  const inches = numberAt(text, hyphen);
  if (!inches || inches.value >= small.below) return undefined;
  const unit = unitAfter(text, inches.end, setting);
  if (isTrouble(unit)) return undefined;
  if (unit.unit !== undefined && unit.unit !== 'ft' && unit.unit !== small.unit) return undefined;
  const couldBeRange = feet.value < inches.value && !(unit.unit === undefined && setting.bare === 'ft');
  const written = `${feet.value} ft ${inches.value} in`;
  if (couldBeRange) {
    const other = `${feet.value} to ${inches.value}`;
    return {
      trouble: `That could be ${written}, or from ${other}; write it out as one of those, with its unit.`,
      whole: true,
    };
  }
  if (unit.unit === 'ft') return { trouble: `With ft at its end that is unclear; write ${written}.`, whole: true };
  return {
    terms: [
      { amount: feet.value, unit: 'ft' },
      { amount: inches.value, unit: small.unit },
    ],
    end: unit.end,
  };
}

/** "and a half", "and 3/4" after a unit belongs to that unit, unless it has one of its own. */
function fractionOfSame(text: string, at: number, setting: Setting): FoundNumber | undefined {
  const start = passed(text, at, andJoint);
  const fraction = start === undefined ? undefined : properFractionAt(text, start);
  if (!fraction) return undefined;
  const unit = unitAfter(text, fraction.end, setting);
  return isTrouble(unit) || unit.unit !== undefined ? undefined : fraction;
}

/** What follows "8 ft": "6 in", "6 1/2", "and six inches". Nothing when what follows is no part of the same amount. */
function smallerTerm(text: string, last: Term, at: number, setting: Setting, between: boolean) {
  const next = last.unit === undefined ? undefined : setting.dimension.followedBy?.[last.unit];
  if (!next) return undefined;
  const start = passed(text, at, jointToNext) ?? at;
  const joint = text.slice(at, start);
  if (between && joint.includes('and')) return undefined;
  const number = numberAt(text, start);
  if (!number) return undefined;
  const unit = unitAfter(text, number.end, setting);
  if (isTrouble(unit)) return joint.includes('-') ? undefined : unit;
  if (unit.unit !== undefined && unit.unit !== next.unit) return undefined;
  const hyphened = joint.includes('-');
  const looselyJoined = joint.includes(',') || (hyphened && (joint !== '-' || last.unit !== 'ft'));
  const fractionAlone = !number.whole && number.value < 1;
  if (unit.unit === undefined && (looselyJoined || fractionAlone || number.article)) return undefined;
  if (hyphened && number.value >= next.below) return undefined;
  if (number.value >= next.below || !Number.isInteger(last.amount)) {
    return { trouble: `After a whole number of ${last.unit} I expect fewer than ${next.below} ${next.unit}` };
  }
  return { term: { amount: number.value, unit: next.unit }, end: unit.end };
}

/** One amount beginning at a place in folded text. `between`: "and" divides two amounts and joins none. */
export function phraseAt(text: string, start: number, setting: Setting, between = false): Phrase | Trouble {
  const at = passed(text, start, spaces) ?? start;
  const leading = unitBeforeAt(text, at);
  const leadingUnit = leading && meaningFor(leading, setting.dimension);
  if (leading && leadingUnit === undefined) return otherDimension(leading);
  const signed = leading ? undefined : passed(text, at, minus);
  const number = numberAt(text, leading?.end ?? signed ?? at);
  if (!number) return { trouble: '' };
  if (!leading && signed === undefined) {
    const dashed = feetAndInches(text, number, setting);
    if (dashed) return dashed;
  }
  const unit = unitAfter(text, number.end, setting);
  if (isTrouble(unit)) return unit;
  if (number.article && unit.unit === undefined) return { trouble: '' };
  const sign = signed === undefined ? 1 : -1;
  const own = leadingUnit === 'own' ? setting.bare : leadingUnit;
  let last: Term = { amount: sign * number.value, unit: unit.unit ?? own };
  const terms = [last];
  let end = unit.end;
  for (let count = 0; count < 3; count += 1) {
    const fraction = between || last.unit === undefined ? undefined : fractionOfSame(text, end, setting);
    if (fraction) {
      terms[terms.length - 1] = { amount: last.amount + sign * fraction.value, unit: last.unit };
      return { terms, end: fraction.end };
    }
    const more = smallerTerm(text, last, end, setting, between);
    if (!more) break;
    if (isTrouble(more)) return more;
    last = { amount: sign * more.term.amount, unit: more.term.unit };
    terms.push(last);
    end = more.end;
  }
  return { terms, end };
}
