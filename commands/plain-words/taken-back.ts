import type { ReadingWords } from '../words/ask.ts';
import {
  type Kind,
  kinds,
  labelIn,
  labelledValue,
  liesNear,
  number,
  oneBreath,
  sameMeasure,
  unitOf,
  worthOf,
} from './taken-back-kinds.ts';

/** What a speaker takes back: in "4 in flex, no wait, 6 in" the size is 6 in. */

/** Words that take something back wherever they stand. */
const marker =
  /[\s,;.-]*(?:\b(?:(?:no|nope|nah),? (?:wait|hold on|hang on|sorry|scratch that|strike that|i mean(?:t)?|actually|rather|no)|wait,? no|(?<!\b(?:to|they|i|we|you|must|should|he|she|can|long|and) )wait|(?:h[oa]ld|hang) on|(?:oh,? |er,? |um,? |uh,? )?sorry|(?:scratch|strike|cancel|forget) that|correction|i mean(?:t)?|or rather|oops|whoops|actually,? no|my (?:bad|mistake)|nope|nah|i lied|check that|typo|misread(?: (?:it|that))?|(?:i )?(?:read|wrote|typed|had|got|put|heard) (?:it|that|this)(?: down)? wrong)\b|(?<=[,;.] ?|\b(?:no|wait|sorry),? )make (?:that|it)\b|(?<=\d(?: [a-z0-9/]{1,12}){0,3} )make (?:that|it)(?= \d))[\s,:;.-]*/g;

/** Words that take back only what stands right before them: elsewhere "no" answers or denies. */
const nextTo =
  /[\s,;.-]+(?:(?:(?:well|uh|um|er|oh),? )?(?<no>no)(?<pause>[,;:.-]*) |(?<actually>actually),? )(?<soft>(?:(?:it's|its|it is|it was|that's|thats|was|its|stamped|marked|says|make it|more like|only|(?:i |we )?(?:just )?(?:re-?)?(?:checked|measured)(?: it)?(?: again)?(?: and)?|just|the|an?|about|i think|sorry|to be exact) )*)(?:(?:the |my |his |her )?[a-z]+ (?:says|said|reads|shows) )?(?=[-\d.a-z])/g;

/** Small words between a marker and the value that is meant. */
const filler =
  /^(?:(?!(?:also|forgot|plus|and|another|for|about|what|how|will|if|do|does|can|should|until|till|before|after|while|then|to|with|there|no|not)\b)[a-z]+(?:'[a-z]+)?[,:=]? (?:- )?){0,10}?(?:(?:r|rsi)-?)?(?=[-\d])/;
const softer =
  /^(?:(?:it's|its|it|is|that's|that|was|should|be|an?|the|only|just|make|more|like|about|really|actually|got|all|use|say|says|on|my) )*/;

interface PutRight {
  readonly line: string;
  /** What was taken back and what stands for it, in sentences. */
  readonly told: readonly string[];
}

interface Mended {
  readonly before: string;
  readonly after: string;
  readonly told: readonly string[];
}

/** What stands behind a marker: the value that is meant, and the name before or behind it, if it is told by one. */
interface Meant {
  readonly kind: Kind;
  readonly said: string;
  readonly match: RegExpMatchArray;
  readonly label: string | undefined;
  readonly labelBehind: boolean;
}

const atStart = (kind: Kind, after: string): RegExpMatchArray | undefined => {
  const [found] = after.matchAll(kind.pattern);
  return found?.index === 0 ? found : undefined;
};

function meantAt(words: string, after: string): Meant | undefined {
  for (const kind of kinds) {
    const match = atStart(kind, after);
    if (match === undefined) continue;
    const behind = labelIn(/^ (?:[a-z]+ )?[a-z]+/.exec(after.slice(match[0].length))?.[0] ?? '');
    const ahead = /\b(?:says|said|reads|shows|shown|told)\b/.test(words) ? undefined : labelIn(words);
    return { kind, said: match[0], match, label: ahead ?? behind, labelBehind: ahead === undefined };
  }
  return undefined;
}

/** The value before the marker that is taken back. */
function takenFrom(before: string, { kind, said, match, label }: Meant, close: boolean): RegExpMatchArray | undefined {
  const found = [...before.matchAll(kind.pattern)].reverse();
  const unit = unitOf(match);
  const fits = (each: RegExpMatchArray): boolean =>
    !kind.counted || (sameMeasure(each, match) && liesNear(before, each, said));
  if (label !== undefined) {
    const under = labelledValue(before, label, found);
    if (under !== undefined) return fits(under) ? under : undefined;
    const [last] = found;
    // A name that was not told before names something new, unless the same measure stands right before.
    const right =
      last !== undefined &&
      /^[\s,;.-]*$/.test(before.slice((last.index ?? 0) + last[0].length)) &&
      !/(?:x|by) ?$/.test(before.slice(0, last.index));
    return right && kind.counted && unit !== undefined && unitOf(last) === unit && fits(last) ? last : undefined;
  }
  if (!kind.counted) return found[0];
  if (close) return found[0] !== undefined && fits(found[0]) ? found[0] : undefined;
  if (unit !== undefined)
    return found.find((each) => unitOf(each) === unit && fits(each)) ?? found.slice(0, 1).find(fits);
  return found.slice(0, 2).find(fits);
}

/** A value behind a marker, put in the place of what it takes back. */
function mendedBy(before: string, after: string, meant: Meant, say: ReadingWords, close = false): Mended | undefined {
  const wrong = takenFrom(before, meant, close);
  if (wrong === undefined) return undefined;
  const [old, unit] = [wrong[0], unitOf(wrong)];
  const instead =
    meant.kind.counted && unit !== undefined && unitOf(meant.match) === undefined
      ? `${meant.said} ${unit}`
      : meant.said;
  const behind = after.slice(meant.said.length);
  const at = wrong.index ?? 0;
  return {
    before: `${before.slice(0, at)}${instead}${before.slice(at + old.length)}`,
    after:
      meant.labelBehind && meant.label !== undefined && before.includes(meant.label)
        ? behind.replace(new RegExp(String.raw`^((?: [a-z]+)?) ${meant.label}\w*`), '$1')
        : behind,
    told: old === instead ? [] : [say.takenBack(old, instead)],
  };
}

/** How many things are put right in one breath: "4 in rigid". */
const most = 3;

/** All that is told right behind a marker. */
function mendedFrom(before: string, words: string, after: string, say: ReadingWords): Mended | undefined {
  const meant = meantAt(words, after);
  const first = meant && mendedBy(before, after, meant, say);
  if (first === undefined) return undefined;
  let sofar = first;
  for (let count = 1; count < most; count += 1) {
    const rest = sofar.after.replace(/^ /, '');
    const next = meantAt('', rest);
    // What follows without a unit of its own is told for the first time.
    if (next === undefined || !oneBreath(next.kind, next.match)) break;
    const mended = mendedBy(sofar.before, rest, next, say);
    if (mended === undefined) break;
    sofar = { ...mended, told: [...sofar.told, ...mended.told] };
  }
  return sofar;
}

/** Where the value or the word begins that a marker leads to. */
function ledTo(after: string): string | undefined {
  const soft = softer.exec(after)?.[0] ?? '';
  if (kinds.some((kind) => !kind.counted && atStart(kind, after.slice(soft.length)) !== undefined)) return soft;
  const words = filler.exec(after)?.[0];
  return words?.replace(/(?:rsi|r)-?$/, '');
}

/** "5 in, not 4 in" and "not 4 in, 5 in". */
function notThis(line: string, say: ReadingWords): PutRight {
  const unit = String.raw`(?: (?<u>[a-z]+\d?(?:\/[a-z]+)?))?`;
  const told: string[] = [];
  const text = line.replace(
    new RegExp(
      String.raw`\bnot (?:an? |the )?(?<old>${number})${unit}(?: [a-z]+)? ?,? (?:but |it's |its |it is |rather )*(?<meant>${number})(?= ?(?<v>[a-z]+\d?)?)`,
      'g',
    ),
    (...found) => {
      const [said, groups] = [String(found[0]), found.at(-1) as Record<string, string | undefined>];
      const { old = '', u, meant = '', v } = groups;
      const known = worthOf(`${old} ${u ?? ''}`);
      if (u !== undefined && known !== undefined && v !== u) return said;
      told.push(say.takenBack(known === undefined ? old : `${old} ${u}`, v === undefined ? meant : `${meant} ${v}`));
      return meant;
    },
  );
  return {
    line: text.replace(
      new RegExp(
        String.raw`(?<meant>${number}) (?<u>[a-z]+\d?(?:\/[a-z]+)?)(?<w>(?: [a-z]+)?) ?,? not (?:an? |the )?(?<old>${number})(?: \k<u>(?![a-z]))?(?=\s*(?:[,;.?!)]|$))`,
        'g',
      ),
      (said, meant: string, u: string, w: string, old: string) => {
        if (worthOf(`${meant} ${u}`) === undefined) return said;
        told.push(say.takenBack(`${old} ${u}`, `${meant} ${u}`));
        return `${meant} ${u}${w}`;
      },
    ),
    told,
  };
}

const ending = 'roof cap|roof jack|roof vent|wall cap|wall hood|wall vent|soffit vent';
const otherEnding = new RegExp(
  String.raw`\b(?<old>${ending})(?<gap>[\s,;.-]+)(?:no|nope|actually|wait)\b,? (?<why>(?:(?!and\b|or\b|not?\b|with\b|another\b)[a-z']+,? ){1,8}?)(?<meant>${ending})\b`,
  'g',
);

/** "Roof cap, no they go out the side so wall cap": where a duct ends, put right with the reason before it. */
function endingPutRight(line: string, say: ReadingWords): PutRight {
  const told: string[] = [];
  const text = line.replace(otherEnding, (said, old: string, _gap: string, _why: string, meant: string) => {
    if (old === meant) return said;
    told.push(say.takenBack(old, meant));
    return meant;
  });
  return { line: text, told };
}

const answered = /\b(?:ok|okay|right|enough|good|yes|fine)\b/;
const printed = /\b(?:carton|rated|rating|label|box|sticker|nominal|marked|fan|unit)\b/;

/** What a carton and a hood tell of the same fan. */
const airOrNone = /^(?:cfm|l\/s|m3\/h)?$/;

/** A "no" or an "actually" right behind a value, with another value of its kind behind it. */
function nextToIt(line: string, say: ReadingWords): PutRight {
  let text = line;
  const told: string[] = [];
  for (const match of [...line.matchAll(nextTo)].reverse()) {
    const { index, 0: words, groups = {} } = match;
    const [before, after] = [text.slice(0, index), text.slice(index + words.length)];
    const meant = meantAt('', after);
    if (meant === undefined) continue;
    const [last] = [...before.matchAll(meant.kind.pattern)].reverse();
    const between = last && before.slice((last.index ?? 0) + last[0].length);
    if (between === undefined || !/^(?: [a-z]+(?:'s)?){0,3}$/.test(between) || answered.test(between)) continue;
    const paused = groups['pause'] !== '' || groups['soft'] !== '';
    // "Flex no rigid" denies; a number is not denied so.
    if (!/\d/.test(meant.said) && !paused) continue;
    // "Carton says 110, actually 80" tells two airflows; "5 wires, no 12 wires" denies the second.
    if (
      groups['actually'] !== undefined &&
      meant.kind.counted &&
      printed.test(before) &&
      airOrNone.test(unitOf(meant.match) ?? '')
    )
      continue;
    if (
      groups['no'] !== undefined &&
      !paused &&
      /^(?:wires?|grounds?|switch|clamps?|way|gang)/.test(unitOf(meant.match) ?? '')
    )
      continue;
    if (/^(?:s\b| way\b|-way\b)/.test(after.slice(meant.said.length))) continue;
    const mended = mendedBy(before, after, meant, say, true);
    if (mended === undefined) continue;
    told.unshift(...mended.told);
    text = `${mended.before}${mended.after}`;
  }
  return { line: text, told };
}

/** A line made even, with what was taken back replaced by what was meant. */
export function putRight(line: string, say: ReadingWords): PutRight {
  const ended = endingPutRight(line, say);
  const beside = notThis(ended.line, say);
  const told: string[] = [];
  let text = beside.line;
  for (const { index, 0: words } of [...text.matchAll(marker)].reverse()) {
    const [before, from] = [text.slice(0, index), text.slice(index + words.length)];
    // "A shower, sorry no shower".
    const [, denied] = /^no (toilet|shower|tub)\b/.exec(from) ?? [];
    const said = denied === undefined ? -1 : before.lastIndexOf(denied);
    if (denied !== undefined && said >= 0) {
      told.unshift(say.takenBack(denied, `no ${denied}`));
      text = `${before.slice(0, said)}${before.slice(said + denied.length)}, ${from}`;
      continue;
    }
    const led = ledTo(from);
    const mended = led === undefined ? undefined : mendedFrom(before, led, from.slice(led.length), say);
    if (mended === undefined) continue;
    told.unshift(...mended.told);
    // "5 - sorry 6 - elbows": the second dash closes what the first one opened.
    const after = /-\s*$/.test(words.replace(/[a-z ,]+$/, '')) ? mended.after.replace(/^ - /, ' ') : mended.after;
    text = `${mended.before}${after}`;
  }
  const near = nextToIt(text, say);
  return { line: near.line, told: [...ended.told, ...beside.told, ...told, ...near.told] };
}
