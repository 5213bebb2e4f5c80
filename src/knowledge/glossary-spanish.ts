import { z } from 'zod';
import spanishFile from '../../knowledge/spanish/glossary.json' with { type: 'json' };
import namesFile from '../../knowledge/spanish/look-up-names.json' with { type: 'json' };
import { checked } from './checked.ts';
import { glossary } from './glossary.ts';
import { inSpanish } from './spanish.ts';

const file = 'knowledge/spanish/glossary.json';

/** A term as it is told in Spanish, and every other name it goes by from Tijuana to Buenos Aires. */
interface SpanishTerm {
  readonly name: string;
  readonly says: string;
  readonly also: readonly string[];
}

const terms: Readonly<Record<string, SpanishTerm>> = checked(
  file,
  z.record(
    z.string(),
    z.strictObject({
      name: z.string().min(1),
      says: z.string().endsWith('.').max(260),
      also: z.array(z.string().trim().min(1)),
    }),
  ),
  spanishFile,
);

const told = <Of extends { readonly name: string; readonly says: string }>(entries: Readonly<Record<string, Of>>) =>
  Object.fromEntries(Object.entries(entries).map(([id, { name, says }]) => [id, { name, says }]));

/** Terms that are called the same in both languages. */
const same = ['cfm', 'cfm50', 'Sone', 'GFCI', 'AFCI', 'AWG', 'Vapor', 'Capacitor'];

inSpanish(file, { english: told(glossary.terms), same }, told(terms));

/** The glossary in Spanish, term by term. */
export const glossaryInSpanish = terms;

/** What entries of the look-up that have no Spanish of their own are called in it: the title, then other names. */
export const lookedUpInSpanish: Readonly<Record<string, readonly string[]>> = checked(
  'knowledge/spanish/look-up-names.json',
  z.record(z.string(), z.array(z.string().trim().min(1)).min(1)),
  namesFile,
);
