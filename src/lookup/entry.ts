import type { EntryKind } from '#knowledge/library.ts';
import type { Citation } from '#knowledge/sources.ts';

/** A number as its source prints it: one value, a low and a high, or several in a row. */
export interface Amount {
  readonly value?: number;
  readonly low?: number;
  readonly typical?: number;
  readonly high?: number;
  readonly values?: readonly (number | string)[];
  readonly unit: string;
}

/** A row of a printed table: what stands under each head. */
export type Steps = readonly { readonly at: Amount | string; readonly is: Amount | string }[];

/** One figure of an entry. Its own source stands here where it differs from that of the entry. */
export interface FigureRow {
  readonly what: string;
  readonly amount: Amount | Steps | string;
  /** "at least" or "at most". */
  readonly bound?: string;
  readonly citation?: Citation;
}

/** Something that can be looked up. */
export interface Entry {
  /** Lowercase words, dots and hyphens, at most 40 characters, so that it fits on a button. */
  readonly id: string;
  readonly kind: EntryKind;
  readonly title: string;
  /** Other names for it. */
  readonly names: readonly string[];
  /** What it says, the main sentence first. */
  readonly says: string;
  /** More about it, each under a word or two. */
  readonly more: readonly (readonly [label: string, says: string])[];
  readonly caution?: string;
  readonly figures: readonly FigureRow[];
  readonly citations: readonly Citation[];
  /** Names of the commands that use it. */
  readonly commands: readonly string[];
  /** The same in Spanish, as far as it is told in it: a figure or a rule of a publication stays as it is printed. */
  readonly spanish?: Pick<Entry, 'title' | 'names'> & Partial<Pick<Entry, 'says' | 'more' | 'caution'>>;
}

/** Words that stand in capitals wherever they come from a key. */
const capitals = new Set(
  'gfci afci irc iecc ashrae nec awg ul led ic rh co amca hvi epa bpi hud rrp osha cdc who'.split(' '),
);

/** "elbow-90-flex" and "propertyLine" as words: "Elbow 90 flex", "Property line". */
export function inWords(key: string): string {
  const words = key
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[-\s]+/)
    .map((word) => (capitals.has(word) ? word.toUpperCase() : word));
  return upperFirst(words.join(' '));
}

export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
