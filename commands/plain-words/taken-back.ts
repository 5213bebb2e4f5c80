import type { ReadingWords } from '../words/ask.ts';

/** What a speaker takes back: in "4 in flex, no wait, 6 in" the size is 6 in. */

const marker =
  /[\s,;.-]*(?:\b(?:no,? wait|wait,? no|wait|hold on|(?:oh |no,? )?sorry|(?:no,? )?(?:scratch|strike) that|correction|(?:no,? )?i mean(?:t)?|or rather|oops|whoops|no,? actually|actually,? no|my bad|no,? no|no,(?= ?\d))|(?<=[,;.] ?|\b(?:no|wait|sorry),? )make (?:that|it)|(?<=\d(?: [a-z]{1,4})? )make (?:that|it)(?= \d))[\s,:;-]*(?:(?:it's|its|it is|that's|it was|should be|make that|a|an|the) )*/g;

const number = String.raw`(?<![\d./-])-?\d+(?:\.\d+)?(?:[ -]?\d*\/\d+)?(?![\d/])`;
const side = String.raw`\d+(?:\.\d+)?(?: (?:ft|in|mm|cm|m))?`;
/** What can be put right: two sides, a cable, a number with the word behind it, a kind of duct, an outlet. */
const kinds: readonly RegExp[] = [
  new RegExp(String.raw`(?<![\d.])${side} ?(?:x|by) ?${side}(?: ?(?:x|by) ?${side})?`, 'g'),
  /\b1[024][/-][23]\b/g,
  new RegExp(String.raw`${number}(?: (?<unit>[a-z]+\d?(?:\/[a-z]+)?))?`, 'g'),
  /\b(?:flex|smooth|rigid|spiral|foil flex|foil|hard pipe)\b/g,
  /\b(?:roof cap|roof jack|roof vent|wall cap|wall hood|wall vent|soffit vent|soffit)\b/g,
];

interface PutRight {
  readonly line: string;
  /** What was taken back and what stands for it, in sentences. */
  readonly told: readonly string[];
}

/** Words behind a number that say nothing of what it counts. */
const noUnit = /^(?:and|or|to|with|on|for|the|of|is|then|not|no|wait|sorry|x|by|oops|whoops|make|scratch)$/;
const unitOf = ({ groups }: RegExpMatchArray): string | undefined => {
  const unit = groups?.['unit'];
  return unit === undefined || noUnit.test(unit) ? undefined : unit;
};
const saidIn = (match: RegExpMatchArray): string => {
  const word = match.groups?.['unit'];
  return word === undefined || unitOf(match) !== undefined ? match[0] : match[0].slice(0, -word.length - 1);
};

interface Mended {
  readonly before: string;
  readonly after: string;
  readonly told: readonly string[];
}

/** The first thing said behind a marker, put in the place of the last of its kind before it. */
function mendedOnce(before: string, after: string, say: ReadingWords): Mended | undefined {
  for (const kind of kinds) {
    const [meant] = after.matchAll(kind);
    if (meant === undefined || meant.index > 0) continue;
    const unit = unitOf(meant);
    const wrong = [...before.matchAll(kind)].reverse().find((each) => unit === undefined || unitOf(each) === unit);
    if (wrong === undefined) continue;
    const [old, said] = [saidIn(wrong), saidIn(meant)];
    const instead = unit === undefined && unitOf(wrong) !== undefined ? `${said} ${unitOf(wrong)}` : said;
    return {
      before: `${before.slice(0, wrong.index)}${instead}${before.slice(wrong.index + old.length)}`,
      after: after.slice(said.length),
      told: old === instead ? [] : [say.takenBack(old, instead)],
    };
  }
  return undefined;
}

/** How many things are put right in one breath: "4 in rigid". */
const most = 3;

/** A line made even, with what was taken back replaced by what was meant. */
export function putRight(line: string, say: ReadingWords): PutRight {
  const told: string[] = [];
  let text = line;
  for (const { index, 0: words } of [...line.matchAll(marker)].reverse()) {
    let [before, after] = [text.slice(0, index), text.slice(index + words.length)];
    for (let count = 0; count < most; count += 1) {
      const mended = mendedOnce(before, count === 0 ? after : after.replace(/^ /, ''), say);
      if (mended === undefined) break;
      ({ before, after } = mended);
      told.unshift(...mended.told);
      text = `${before}${after}`;
    }
  }
  return { line: text, told };
}
