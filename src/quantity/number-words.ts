/** A number found in a text, and where it ends. */
export interface FoundNumber {
  readonly value: number;
  readonly end: number;
  /** Written as a whole number, so that a fraction may still follow it. */
  readonly whole: boolean;
  /** "A foot": an article counts as one only when a unit follows. */
  readonly article?: true;
}

const smallNumbers =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen';
const small = new Map(smallNumbers.split(' ').map((word, value) => [word, value])).set('none', 0).set('nil', 0);
const tens = new Map(
  'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ').map((w, i) => [w, 20 + 10 * i]),
);
const parts = new Map([
  ['half', 2],
  ['halves', 2],
  ['third', 3],
  ['thirds', 3],
  ['quarter', 4],
  ['quarters', 4],
  ['eighth', 8],
  ['eighths', 8],
  ['sixteenth', 16],
  ['sixteenths', 16],
]);

interface Word {
  readonly text: string;
  readonly end: number;
}

const wordPattern = /[\s-]*([a-z]+)/y;

function wordAt(text: string, at: number): Word | undefined {
  wordPattern.lastIndex = at;
  const match = wordPattern.exec(text);
  return match?.[1] === undefined ? undefined : { text: match[1], end: wordPattern.lastIndex };
}

/** The count a word adds to what has been said so far, or nothing when it cannot follow: "twenty five" but not "five twenty". */
function nextCount(soFar: number | undefined, word: string): number | undefined {
  const low = small.get(word);
  const ten = tens.get(word);
  if (soFar === undefined) return low ?? ten;
  if (word === 'hundred') return soFar >= 1 && soFar <= 9 ? soFar * 100 : undefined;
  if (low !== undefined && low >= 1 && low <= 9) {
    const roomForOnes = soFar % 10 === 0 && soFar % 100 !== 10 && soFar > 0;
    return roomForOnes ? soFar + low : undefined;
  }
  const above = low !== undefined && low >= 10 ? low : ten;
  return above !== undefined && soFar > 0 && soFar % 100 === 0 ? soFar + above : undefined;
}

/** "one hundred and ten", "twenty five": a whole number below a thousand. */
function countAt(text: string, start: number): { readonly value: number; readonly end: number } | undefined {
  let value: number | undefined;
  let end = start;
  for (let steps = 0; steps < 6; steps += 1) {
    let word = wordAt(text, end);
    if (word && value === undefined && word.text === 'a') {
      const hundred = wordAt(text, word.end);
      if (hundred?.text !== 'hundred') break;
      value = 100;
      end = hundred.end;
      continue;
    }
    if (word?.text === 'and' && value !== undefined && value >= 100 && value % 100 === 0) {
      const after = wordAt(text, word.end);
      const beyond = after && wordAt(text, after.end);
      if (beyond && parts.has(beyond.text)) break;
      word = after;
    }
    const next = word && nextCount(value, word.text);
    if (!word || next === undefined) break;
    value = next;
    end = word.end;
  }
  return value === undefined ? undefined : { value, end };
}

/** Passes "of", "of a", "an": "half an inch", "three quarters of an inch". */
const passArticle = (text: string, at: number): number => {
  const pattern = /(?:\s+of)?(?:\s+an?)?(?=\s)/y;
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
};

/** "half an", "a quarter of an", "three quarter", "five eighths of an": a share of the unit that follows, below one. */
export function spokenFractionAt(text: string, start: number): FoundNumber | undefined {
  const first = wordAt(text, start);
  if (!first) return undefined;
  const leads = first.text === 'a' || first.text === 'an' ? 1 : small.get(first.text);
  const divisor = leads === undefined ? first : wordAt(text, first.end);
  const of = divisor && parts.get(divisor.text);
  const count = leads ?? 1;
  if (!divisor || of === undefined || count < 1 || count >= of) return undefined;
  return { value: count / of, end: passArticle(text, divisor.end), whole: false };
}

/** "two point six", "point two five". */
function spokenDecimalAt(text: string, whole: number, start: number): FoundNumber | undefined {
  const point = wordAt(text, start);
  if (point?.text !== 'point') return undefined;
  let digits = '';
  let end = point.end;
  for (let word = wordAt(text, end); word && digits.length < 6; word = wordAt(text, end)) {
    const digit = small.get(word.text);
    if (digit === undefined || digit > 9) break;
    digits += digit;
    end = word.end;
  }
  return digits === '' ? undefined : { value: Number(`${whole}.${digits}`), end, whole: false };
}

/** A number in words, as speech is written down: "fourteen", "four and a half", "three quarter", "two point six". */
export function spokenNumberAt(text: string, start: number): FoundNumber | undefined {
  const fraction = spokenFractionAt(text, start) ?? spokenDecimalAt(text, 0, start);
  if (fraction) return fraction;
  const count = countAt(text, start);
  if (!count) {
    const word = wordAt(text, start);
    const isArticle = word?.text === 'a' || word?.text === 'an';
    return isArticle ? { value: 1, end: word.end, whole: true, article: true } : undefined;
  }
  return spokenDecimalAt(text, count.value, count.end) ?? { ...count, whole: true };
}
