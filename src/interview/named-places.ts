import { plain } from './words.ts';

/** Ways of writing the same kind of street, the short one first. */
const streets: Readonly<Record<string, string>> = {
  street: 'st',
  avenue: 'ave',
  road: 'rd',
  drive: 'dr',
  lane: 'ln',
  court: 'ct',
  boulevard: 'blvd',
};

/** The words of an address, without points and letters' size: "14 Maple St." is 14, maple, st. */
export const wordsOfName = (name: string): readonly string[] =>
  plain(name)
    .replace(/[^\p{L}\p{M}\d]+/gu, ' ')
    .trim()
    .split(' ')
    .filter((word) => word !== '')
    .map((word) => streets[word] ?? word);

const kinds = 'street|st|avenue|ave|road|rd|drive|dr|lane|ln|court|ct|boulevard|blvd|circle|cir|parkway|pkwy|terrace';

/** A house number, one to three words, and a kind of street; a street called by a number too, such as 12 5th Ave. */
const address = new RegExp(
  String.raw`(?<![\p{L}\d./'"-])\d{1,5}[a-z]?\s+(?:(?:[nsew]|ne|nw|se|sw)\.?\s+)?(?:(?:[\p{L}][\p{L}'’-]*|\d{1,3}(?:st|nd|rd|th))\.?\s+){1,3}(?:${kinds})\b`,
  'giu',
);

/** The same as it is said in Spanish: calle Roble 9. */
const calle = /\b(?:calle|avenida|av)\.?\s+(?:[\p{L}][\p{L}'’-]*\s+){1,3}\d{1,5}\b/giu;

/** "Mrs. Lee", "Sra. Ortiz". "Dr" is left out: it is a drive as often. */
const person = /\b(?:mrs|mr|ms|sra|sr|señora|señor)\b\.?\s+(\p{L}[\p{L}'’-]+)/giu;

/** After a number these make a measure or a count of parts, not the beginning of an address. */
const measures =
  /^\d{1,5}[a-z]?\s.*\b(?:ft|foot|feet|in|inch|inches|m|cm|mm|cfm|pa|min|mins|minutes?|hours?|hrs?|days?|weeks?|months?|years?|gang|wires?|amps?|watts?|sones?|gauge|gal|gallons?|by|x|of|to|the|and|or|a|at|on|for|is|baths?|bathrooms?|fans?|elbows?|showers?|story|storey|stories|times?)\b/iu;

/** What a line names that tells one house from another. */
export interface Named {
  /** As it was written, tidied: "9 Oak Ave", "Mrs. Lee". */
  readonly as: string;
  /** The words that must all stand in another text for it to name the same. */
  readonly telling: readonly string[];
}

const kindWords = new Set(kinds.split('|'));

const matched = (text: string, pattern: RegExp): readonly string[] =>
  [...text.matchAll(pattern)].map(([found]) => found.replace(/\s+/g, ' ').trim());

/** The addresses a line names, then the people. A number of feet and a trade word are neither. */
export function namedIn(text: string): readonly Named[] {
  const line = text.slice(0, 500);
  const addresses = [...matched(line, address), ...matched(line, calle)].filter((found) => !measures.test(found));
  const people = [...line.matchAll(person)].map(([found, surname = '']) => ({
    as: found.replace(/\s+/g, ' ').trim(),
    telling: wordsOfName(surname),
  }));
  return [
    ...addresses.map((as) => ({
      as,
      telling: wordsOfName(as).filter((word) => !kindWords.has(word) && word !== 'calle' && word !== 'avenida'),
    })),
    ...people,
  ];
}

/** Whether a text names the same house or person, however the street is written. */
export function isNamedBy(text: string, { telling }: Named): boolean {
  const words = new Set(wordsOfName(text));
  return telling.length > 0 && telling.every((word) => words.has(word));
}

/** A line without the houses and people it names, for whoever reads the rest of it. */
export const withoutNamed = (line: string): string =>
  namedIn(line).reduce((rest, { as }) => rest.replace(spaced(as), ' '), line);

/** A name as it was written, however many spaces stood between its words. */
const spaced = (name: string): RegExp =>
  new RegExp(name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '\\s+'));
