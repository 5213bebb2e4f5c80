import { isTrouble, type Phrase, passed, phraseAt, type Setting, type Trouble } from './reading-phrases.ts';
import { toSi, withoutNoise } from './unit-factors.ts';

/** What a whole text said, in SI. */
export interface Said {
  readonly low: number;
  readonly high: number;
  /** Given only after a range: "most likely 72". */
  readonly typical?: number;
  readonly isRange: boolean;
  /** A bare number, which took the question's own unit. */
  readonly bare: boolean;
  /** The same again in other units, in brackets, as it is printed. */
  readonly again?: { readonly low: number; readonly high: number };
}

interface Span {
  readonly phrases: readonly Phrase[];
  readonly end: number;
}

const about =
  /(?:(?:about|around|roughly|approximately|approx|circa|ca|maybe|perhaps|say|nearly|some)\b\s*|[~≈]\s*|(?:the|an?)\s+(?=\d))*/y;
const between = /between\s+/y;
const from = /from\s+/y;
const toJoint = /\s*(?:(?:to|thru|through)\b|–|-|\.\.+)\s*/y;
const andJoint = /\s+(?:and|to)\s+|\s*[–-]\s*/y;
const likely = /\s*[,;:]?\s*(?:most likely|likeliest|likely|probably|typically|typical|usually|best guess)\b\s*:?\s*/y;
const loose = /\s*(?:or so|approx|roughly|approximately|about)\b/y;
const bracket = /\s*\(([^()]*)\)/y;

const passAbout = (text: string, at: number): number => passed(text, at, about) ?? at;

/** One amount, or two with "to" between. */
function spanAt(text: string, start: number, setting: Setting): Span | Trouble {
  const begun = passAbout(text, start);
  const afterBetween = passed(text, begun, between);
  const isBetween = afterBetween !== undefined;
  const low = phraseAt(text, passAbout(text, afterBetween ?? passed(text, begun, from) ?? begun), setting, isBetween);
  if (isTrouble(low)) return low;
  const joined = passed(text, low.end, isBetween ? andJoint : toJoint);
  if (joined === undefined) return isBetween ? { trouble: '' } : { phrases: [low], end: low.end };
  const high = phraseAt(text, passAbout(text, joined), setting);
  return isTrouble(high) ? high : { phrases: [low, high], end: high.end };
}

/** "60 to 80 cfm": a number without a unit takes the unit of its neighbour, the one after it first. */
function unitFor(phrases: readonly Phrase[], index: number): string | undefined | Trouble {
  for (const phrase of phrases.slice(index + 1)) {
    const unit = phrase.terms[0]?.unit;
    if (unit !== undefined) return unit;
  }
  for (const phrase of phrases.slice(0, index)) {
    const [first, second] = phrase.terms;
    if (second) return { trouble: 'The second number needs its unit too' };
    if (first?.unit !== undefined) return first.unit;
  }
  return undefined;
}

function valuesOf(phrases: readonly Phrase[], setting: Setting): readonly number[] | Trouble {
  const values: number[] = [];
  for (const [index, phrase] of phrases.entries()) {
    let value = 0;
    for (const { amount, unit } of phrase.terms) {
      const own = unit ?? unitFor(phrases, index) ?? setting.bare;
      if (typeof own !== 'string') return own;
      value += toSi(amount, own, setting.dimension.si);
    }
    values.push(withoutNoise(value));
  }
  return values;
}

interface Bracket {
  readonly again: { readonly low: number; readonly high: number };
  readonly end: number;
}

/** The bracket that follows a printed value, such as "(34.5 L/s)". It must be a value too. */
function bracketAt(text: string, at: number, setting: Setting): Bracket | Trouble | undefined {
  bracket.lastIndex = at;
  const inside = bracket.exec(text)?.[1];
  if (inside === undefined) return undefined;
  const end = bracket.lastIndex;
  const span = spanAt(inside, 0, setting);
  if (isTrouble(span)) return span;
  if (span.end !== inside.length) return { trouble: '' };
  const values = valuesOf(span.phrases, setting);
  if (isTrouble(values)) return values;
  const [low = Number.NaN, high = low] = values;
  return { again: { low, high }, end };
}

/** Understands a whole folded text, or says what is wrong with it. An empty trouble means: nothing in it made sense. */
export function said(text: string, setting: Setting): Said | Trouble {
  const span = spanAt(text, 0, setting);
  if (isTrouble(span)) return span;
  const doubled = bracketAt(text, span.end, setting);
  if (doubled && isTrouble(doubled)) return doubled;
  let end = doubled?.end ?? span.end;
  let phrases = span.phrases;
  const isRange = phrases.length === 2;
  const likelyAt = isRange ? passed(text, end, likely) : undefined;
  if (likelyAt !== undefined) {
    const typical = phraseAt(text, passAbout(text, likelyAt), setting);
    if (isTrouble(typical)) return typical;
    phrases = [...phrases, typical];
    const typicalDoubled = bracketAt(text, typical.end, setting);
    if (typicalDoubled && isTrouble(typicalDoubled)) return typicalDoubled;
    end = typicalDoubled?.end ?? typical.end;
  }
  end = passed(text, end, loose) ?? end;
  if (text.slice(end).trim() !== '') {
    return /^[\s,]*[\d.]/.test(text.slice(end))
      ? { trouble: 'I cannot tell what the two numbers mean' }
      : { trouble: '' };
  }
  const values = valuesOf(phrases, setting);
  if (isTrouble(values)) return values;
  const [low = Number.NaN, high = low, typical] = values;
  return {
    low,
    high,
    isRange,
    bare: phrases.every((phrase) => phrase.terms[0]?.unit === undefined),
    ...(typical === undefined ? {} : { typical }),
    ...(doubled === undefined ? {} : { again: doubled.again }),
  };
}
