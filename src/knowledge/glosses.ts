import { z } from 'zod';
import { type InEach, inEach } from '#words/in-each.ts';
import englishFile from '../../knowledge/glosses.json' with { type: 'json' };
import spanishFile from '../../knowledge/spanish/glosses.json' with { type: 'json' };
import { checked } from './checked.ts';
import { glossary, type TermId } from './glossary.ts';
import { inSpanish } from './spanish.ts';

/** A term of the trade in half a line, for whoever meets it in an answer. */
export interface Gloss {
  readonly id: string;
  /** How it stands in a sentence; several forms where it has them, the first of them the one it is told under. */
  readonly seen: readonly string[];
  readonly says: string;
}

const file = checked(
  'knowledge/glosses.json',
  z.record(
    z.string().refine((id) => Object.hasOwn(glossary.terms, id), 'no such term in glossary.json'),
    z.strictObject({ seen: z.string().min(1), says: z.string().min(1).max(70) }),
  ),
  englishFile,
) as Readonly<Partial<Record<TermId, { readonly seen: string; readonly says: string }>>>;

/** Terms that read alike in both languages. */
const same = ['sone|sones', 'cfm50', 'GFCI', 'AFCI', 'AWG', 'in. w.g.', 'cfm'];

const listed = (texts: typeof file): readonly Gloss[] =>
  Object.entries(texts).map(([id, { seen, says }]) => ({ id, seen: seen.split('|'), says }));

/** The terms that are glossed where they are met, those an apprentice learns last first. */
export const glosses: InEach<readonly Gloss[]> = inEach(
  listed(file),
  listed(inSpanish('knowledge/spanish/glosses.json', { english: file, same }, spanishFile)),
);
