/**
 * The words of a duct run, as patterns: how lengths, sizes, kinds of duct and fittings are written, typed or spoken. The
 * parts stand from the fan to outdoors: `reducer 5 to 4 in; 14 ft 4 in smooth; 2 x elbow 90; wall cap`.
 */
import type { DuctKind, FittingId } from '#knowledge/ducts.ts';

const tens: Readonly<Record<string, number>> = { twenty: 20, thirty: 30, forty: 40, fifty: 50 };
const ones: readonly string[] =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const spoken = new RegExp(
  `\\b(?:(${Object.keys(tens).join('|')})(?:[\\s-](${ones.slice(1, 10).join('|')}))?|(${ones.join('|')}))\\b`,
  'g',
);

/** Text in lower case with one kind of dash, quote and fraction. */
export const evenMarks = (text: string): string =>
  text
    .replace(
      /(\d)?\s*([\u00bc-\u00be\u2150-\u215e])/g,
      (_, digit: string | undefined, fraction: string) =>
        `${digit === undefined ? '' : `${digit} `}${fraction.normalize('NFKC').replace('\u2044', '/')}`,
    )
    .normalize('NFKC')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u201c\u201d\u2033]|''/g, '"')
    .replace(/[\u2018\u2019\u2032]/g, "'")
    .toLowerCase();

/** Text with one kind of dash, quote and fraction, and spoken numbers as digits. Everything else stays as typed. */
export const normalised = (text: string): string =>
  evenMarks(text).replace(spoken, (_, ten: string | undefined, unit: string | undefined, single: string | undefined) =>
    String(
      single === undefined
        ? (tens[ten as string] as number) + Math.max(0, ones.indexOf(unit ?? 'zero'))
        : ones.indexOf(single),
    ),
  );

const number = String.raw`(?:\d+(?:[.,]\d+)?(?:[ -]\d+\/\d+)?|\d+\/\d+)`;
const inch = String.raw`(?:inches|inch|in\b\.?|")`;
const foot = String.raw`(?:feet|foot|ft\b\.?|')`;
const size = String.raw`${number}\s*-?\s*(?:${inch}|mm\b|cm\b)`;
const upTo = String.raw`(?:\s*(?:to|-)\s*${number})?`;
const length = String.raw`(?:${number}${upTo}\s*-?\s*${foot}(?:\s*${number}\s*${inch}(?=\s*(?:of\s+)?${number}\s*-?\s*(?:${inch}|mm)))?|${number}${upTo}\s*(?:m|metres?|meters?)\b|${number}\s*${inch}(?=\s+(?:long\b|of\s+${number})))`;
const coefficient = String.raw`(?:\s*\(?(?:k|c)\s*=?\s*(?<k>\d+(?:[.,]\d+)?|[.,]\d+)\)?)?`;
const sized = String.raw`(?:\s*(?<size>${size}))?`;
const count = String.raw`(?:(?<count>\d{1,3}|an?)\s*(?:x|×|\*)?\s*)?`;

const kindWords: readonly (readonly [DuctKind, string])[] = [
  ['foil-flex', '(?:foil|alumini?um|semi[- ]?rigid|corrugated)(?:[- ]*(?:flex(?:ible)?))?'],
  ['flex', String.raw`(?:insulated\s+|wire\s+|vinyl\s+|plastic\s+)?flex(?:ible|ie|y)?`],
  ['spiral', 'spiral'],
  ['smooth', String.raw`(?:smooth|rigid|hard|galvani[sz]ed|sheet\s+metal|metal|steel|pvc|plastic)(?:\s+pipe)?|pipe`],
];
const kindPattern = kindWords.map(([, pattern]) => pattern).join('|');
const kinds = kindWords.map(([kind, pattern]) => [kind, new RegExp(`^(?:${pattern})$`)] as const);

const modifier = String.raw`(?:[\s,]*\(?(?:(?:compressed|squeezed|squashed)\s*(?:by\s*)?(?<c1>${number})\s*(?:%|percent|pct)|(?<c2>${number})\s*(?:%|percent|pct)\s*(?:compressed|compression|slack|squeezed)|(?<loose>slack|sloppy|loose|sagging|saggy|(?:with\s+)?(?:an?\s+)?sags?\b)|(?<tight>(?:pulled\s+|fully\s+)?(?:tight|taut|stretched)(?:\s+out)?)|(?<long>long)|(?:roughness|rough)\s*=?\s*(?<rough>${number})\s*(?<roughUnit>ft|mm|in|m)\b)\)?)?`;

/** Patterns by what they read, tried in this order at each place. All are anchored where the reading stands. */
export const partPatterns = {
  duct: [
    new RegExp(
      String.raw`(?<length>${length})\s*(?:of\s+|x\s+|run\s+)?(?:(?<size>${size})\s*(?:of\s+|round\s+)?)?(?<kind>${kindPattern})\b(?:\s+duct(?:ing)?)?`,
      'y',
    ),
    new RegExp(
      String.raw`(?:(?<size>${size})\s*(?:round\s+)?)(?<kind>${kindPattern})\b(?:\s+duct(?:ing)?)?[\s,x]*(?<length>${length})`,
      'y',
    ),
    new RegExp(
      String.raw`(?<kind>${kindPattern})\b(?:\s+duct(?:ing)?)?[\s,]*(?:(?<size>${size})[\s,x]*)?(?<length>${length})`,
      'y',
    ),
  ],
  modifier: new RegExp(modifier, 'y'),
  kindless: new RegExp(String.raw`(?<length>${length})\s*(?:of\s+)?(?:${size})?\s*(?:duct(?:ing)?)?`, 'y'),
  transition: new RegExp(
    String.raw`${count}(?<way>reducers?|reduced?|increasers?|enlargers?|transitions?)\s*(?:from\s*)?(?<from>${number})\s*-?\s*(?<fromUnit>${inch}|mm\b|cm\b)?\s*(?:to|->|x|-)\s*(?<to>${number})\s*-?\s*(?<toUnit>${inch}|mm\b|cm\b)?${coefficient}`,
    'y',
  ),
  turned: new RegExp(
    String.raw`(?<from>${number})\s*-?\s*(?<fromUnit>${inch}|mm\b|cm\b)?\s*(?:to|->|x)\s*(?<to>${number})\s*-?\s*(?<toUnit>${inch}|mm\b|cm\b)?\s*(?<way>reducer|increaser|transition)${coefficient}`,
    'y',
  ),
  custom: new RegExp(`${count}fitting${sized}${coefficient}`, 'y'),
} as const;

/** Which kind of duct a word means. */
export const kindMeant = (word: string): DuctKind | undefined => kinds.find(([, pattern]) => pattern.test(word))?.[0];

/** A bare number is a fitting only where no unit follows: "2 90s", never "90 ft". */
const notAMeasure = String.raw`(?!\s*-?\s*(?:${foot}|${inch}|mm\b|cm\b|m\b|%|cfm|\d))`;

/** The name of a fitting as a pattern: spaces may be hyphens or missing, words may be plural, a number may say "degrees". */
const namePattern = (name: string): string => {
  if (/^\d+$/.test(name)) return String.raw`${name}(?:\s*(?:°|degrees?\b|deg\b))?'?s?${notAMeasure}`;
  return name
    .split(/[ -]+/)
    .map((word) => (/^\d/.test(word) ? String.raw`${word.replace('°', '')}\s*(?:°|degrees?\b|deg\b)?` : `${word}s?`))
    .join(String.raw`[\s-]*`);
};

/** Every name of every fitting as a pattern, the longest names first, so that "flex elbow" is not taken for "elbow". */
export const fittingPatterns = (
  names: readonly (readonly [FittingId, readonly string[]])[],
): readonly (readonly [FittingId, RegExp])[] =>
  names
    .flatMap(([id, called]) => called.map((name) => [id, name] as const))
    .sort(([, one], [, other]) => other.length - one.length)
    .map(([id, name]) => [
      id,
      new RegExp(
        String.raw`${count}(?:(?<before>${size})\s*)?${namePattern(name)}(?![a-z])(?:\s*(?:,|at)?\s*(?<size>${size}))?${coefficient}`,
        'y',
      ),
    ]);
