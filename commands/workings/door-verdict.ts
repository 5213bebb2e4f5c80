import { doorPressureLimits } from '#knowledge/make-up.ts';
import type { Pascals } from '#quantity/units.ts';

const { fine, choked } = doorPressureLimits;

/** What a pressure across a shut door is called in a table. */
export const doorWord = (pressure: Pascals): 'fine' | 'tight' | 'choked' =>
  pressure <= fine.value ? 'fine' : pressure <= choked.value ? 'tight' : 'choked';

/** The same in a sentence: every page that speaks of a door says it alike. */
export const doorVerdict = {
  fine: 'little enough',
  tight: 'tight, though a fan can bear it',
  choked: 'more than a bath fan can spare',
} as const;
