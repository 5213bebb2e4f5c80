/** What can be put right, and what a value may stand in the place of. */

export const number = String.raw`(?<![\d./-])(?!1[024]\/[23]\b)-?\d+(?:\.\d+)?(?:[ -](?!1[024]\/[23]\b)\d+\/\d+|\/\d+)?(?![\d/]|\.\d)`;
const side = String.raw`\d+(?:\.\d+)?(?: (?:ft(?: \d+ in)?|in|mm|cm|m))?`;

/** One kind of thing that is said and taken back. */
export interface Kind {
  readonly pattern: RegExp;
  /** Whether it is a number with a unit, which only another of its measure can stand for. */
  readonly counted: boolean;
}

/** What units measure, and how many of the first each is. */
const measures: readonly Readonly<Record<string, number>>[] = [
  { in: 1, ft: 12, mm: 1 / 25.4, cm: 1 / 2.54, m: 39.37 },
  { cfm: 1, 'l/s': 2.12, 'm3/h': 0.589 },
  { fpm: 1, mps: 196.85 },
  { sqin: 1, cm2: 0.155 },
  { sqft: 1, m2: 10.76 },
  { in3: 1, cm3: 0.061, ml: 0.061 },
  { '%': 1 },
  { deg: 1, degf: 1, degc: 1 },
  { sec: 1, min: 60, hr: 3600 },
  { gal: 1, liter: 0.264 },
  { pa: 1 },
  { watt: 1 },
  { sone: 1 },
  { awg: 1 },
  { amp: 1 },
  { hdd: 1, kd: 1.8 },
  { cent: 1 },
];
/** Things that are counted; a count of one is never a count of another. */
const things =
  'elbow|switch|ground|wire|clamp|dimmer|timer|cable|device|conductor|hot|neutral|shower|toilet|tub|gang|yoke';
const unit = String.raw`(?:${measures
  .flatMap((each) => Object.keys(each))
  .sort((one, other) => other.length - one.length)
  .join('|')}|(?:${things})(?:e?s)?)(?![a-z\d])`;

/** A count of things with their gauge, each sort for itself: a switch never stands for a ground. */
const gauged = ['switch|dimmer|timer|device|yoke', 'ground', 'wire|conductor|hot|neutral'].map((sort) => ({
  pattern: new RegExp(String.raw`(?<![\d./-])\d{1,2} (?:${sort})(?:e?s)? (?:on |of )?#?1[024]\b`, 'g'),
  counted: false,
}));

export const kinds: readonly Kind[] = [
  ...gauged,
  // A rated point, cables with their count, two sides, a count and a gauge, a cable.
  { pattern: /(?<![\d.])\d+(?:\.\d+)?(?: cfm| l\/s)? ?(?:@|at) ?0?\.\d+(?: in)?/g, counted: false },
  { pattern: /(?<![\d./-])\d{1,2} ?(?:x ?)?1[024]\/[23]\b(?: with ground)?/g, counted: false },
  {
    pattern: new RegExp(String.raw`(?<![\d.])${side} ?(?:x|by) ?${side}(?: ?(?:x|by) ?${side})?`, 'g'),
    counted: false,
  },
  { pattern: /(?<![\d./-])\d{1,2} ?(?:#1[0248]|(?:of )?1[0248] ?(?:awg|ga(?:uge)?))\b/g, counted: false },
  { pattern: /\b1[024][/-][23]\b/g, counted: false },
  { pattern: /\brsi ?-? ?\d+(?:\.\d+)?|\br ?-? ?\d+(?:\.\d+)?|\b(?:bare|uninsulated|unwrapped)\b/g, counted: false },
  {
    pattern: new RegExp(
      String.raw`${number}(?: (?<unit>ft) ${number} in(?![a-z])| ?(?<other>%)| (?<another>${unit})(?:(?<=elbow) (?:90|45)(?![\w./]| ?(?:cfm|in|ft)\b))?)?`,
      'g',
    ),
    counted: true,
  },
  { pattern: /\b(?:flex|smooth|rigid|spiral|foil flex|foil|hard pipe)\b/g, counted: false },
  {
    pattern: /\b(?:roof cap|roof jack|roof vent|wall cap|wall hood|wall vent|soffit vent|soffit)\b/g,
    counted: false,
  },
  { pattern: /\b(?:toilet|shower|(?:jetted |bath)?tub|steam shower)\b/g, counted: false },
  { pattern: /\b(?:garbage bag|bag|flow box|flow hood|anemometer)\b/g, counted: false },
];

/** The unit of a number, where one was said. */
export const unitOf = ({ groups }: RegExpMatchArray): string | undefined =>
  (groups?.['unit'] ?? groups?.['other'] ?? groups?.['another'])?.replace(/(?<=..)(?<!pas)s$/, '');

/** What a number and its unit come to; nothing where the word is no unit. */
export function worthOf(said: string): number | undefined {
  const [, amount = '', word = ''] = /^(\S+(?: \d+\/\d+)?) (\S+)$/.exec(said.trim()) ?? [];
  const measure = measures.find((each) => Object.hasOwn(each, word));
  if (measure !== undefined) return plain(amount) * (measure[word] ?? 1);
  return new RegExp(`^${unit}$`).test(word) ? plain(amount) : undefined;
}

/** "7-1/2" as 7.5. */
function plain(said: string): number {
  const [, minus = '', whole = '0', top = '0', bottom = '1'] =
    /^(-?)(?:(\d+(?:\.\d+)?)(?![\d/]))?[ -]?(?:(\d+)\/(\d+))?/.exec(said) ?? [];
  return (Number(whole) + Number(top) / Number(bottom)) * (minus === '' ? 1 : -1);
}

/** Whether a value can stand for another by its unit: the same measure, or none said. */
export function sameMeasure(old: RegExpMatchArray, meant: RegExpMatchArray): boolean {
  const [one, other] = [unitOf(old), unitOf(meant)];
  if (one === undefined || other === undefined || one === other) return true;
  return measures.some((each) => Object.hasOwn(each, one) && Object.hasOwn(each, other));
}

/** A slip is a slip: nobody says five times too much. Degrees may be anything. */
const farthest = 5;
const gauges: ReadonlySet<number> = new Set([18, 16, 14, 12, 10, 8, 6]);

/** Whether a number may have been said for another. */
export function liesNear(line: string, old: RegExpMatchArray, said: string): boolean {
  const one = unitOf(old);
  const meant = /^(-?\S+(?: \d+\/\d+)?)(?: (\S+))?/.exec(said);
  const worth = (amount: string, word: string | undefined): number =>
    (word === undefined ? undefined : worthOf(`${amount} ${word}`)) ?? plain(amount);
  const [was, is] = [worth(old[0].split(/ (?!\d+\/)/)[0] ?? '', one), worth(meant?.[1] ?? '', meant?.[2] ?? one)];
  const at = old.index ?? 0;
  if (/(?:#|\dx) ?$/.test(line.slice(0, at)) && !gauges.has(is)) return false;
  if (/^deg/.test(one ?? '') || was < 0 || is < 0) return true;
  if (one === undefined && /\b(?:attic|temperature|exhaust|outside)\b[^,;.]{0,16}$/.test(line.slice(0, at)))
    return true;
  // A part of an inch is no airflow, no power and no count.
  if (/\//.test(said) && one !== undefined && !/^(?:in|ft|hr|min)$/.test(one)) return false;
  return Math.max(was, is) <= farthest * Math.min(was, is);
}

const labels =
  'ceiling|room|door|gap|undercut|fan|attic|shower|house|bath|bathroom|box|temperature|humidity|rh|hood|collar|length|width|height|need|needed|airflow|flow|watts|hours|hdd|price|rate|elevation|altitude|breaker|opening|pressure|conductors|joist|insulation|exhaust|leakage|dryer|measured|delivered|delivers|moves|pulls|bag|grille|carton|rated';
const labelAt = new RegExp(String.raw`\b(?:${labels})(?=s?\b)(?! again)`, 'g');

/** The last name of something asked for that stands in a few words. */
export const labelIn = (words: string): string | undefined => words.match(labelAt)?.at(-1);

/** "It does 90, I mean 80 delivered": what it moves needs no other name, unless the label was spoken of. */
const moved = /^deliver/;
const moving =
  /^(?!.*\b(?:carton|rated|label|box says|sticker|nominal)\b).*\b(?:does|doing|moves|moving|pulls|gets|makes|running)(?: (?:about|only|like|really))* ?$/;

/** The last value before the marker that stands under this name. */
export function labelledValue(
  before: string,
  label: string,
  values: readonly RegExpMatchArray[],
): RegExpMatchArray | undefined {
  return values.find((each) => {
    const at = each.index ?? 0;
    if (moved.test(label) && moving.test(before.slice(0, at))) return true;
    return (
      new RegExp(
        String.raw`\b${label}(?:'?s)?(?: (?:is|of|at|was|the|a|about|says|on|for|under|it)){0,3} ?[:=]? ?$`,
      ).test(before.slice(0, at)) ||
      new RegExp(String.raw`^(?: (?!and|with)[a-z]+)? ${label}`).test(before.slice(at + each[0].length))
    );
  });
}

/** Whether what follows in the same breath is put right too: a word, or a number with its unit. */
export const oneBreath = ({ counted }: Kind, match: RegExpMatchArray): boolean =>
  !counted || unitOf(match) !== undefined;
