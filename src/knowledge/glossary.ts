import { z } from 'zod';
import glossaryFile from '../../knowledge/glossary.json' with { type: 'json' };
import { checked } from './checked.ts';
import { type Citation, citationFields, cite } from './sources.ts';

export type TermId = keyof typeof glossaryFile;

/** A word of the trade, told to somebody new to it. */
export interface Term {
  readonly name: string;
  /** One or two sentences, in words an apprentice has. */
  readonly says: string;
  /** Other names the trade has for it. */
  readonly also: readonly string[];
  /** Words our own texts must not use for it, so that one thing has one name. */
  readonly avoid: readonly string[];
  /** The commands that go on from here. */
  readonly see: readonly string[];
  readonly citation: Citation;
  readonly note?: string;
}

const termSchema = z
  .strictObject({
    name: z.string().min(1),
    says: z.string().endsWith('.').max(260),
    also: z.array(z.string().min(1)),
    avoid: z.array(z.string().min(1)).default([]),
    see: z.array(z.string().min(1)).min(1),
    ...citationFields,
  })
  .transform(
    ({ name, says, also, avoid, see, note, ...entry }): Term => ({
      name,
      says,
      also,
      avoid,
      see,
      citation: cite(entry),
      ...(note === undefined ? {} : { note }),
    }),
  );

const terms = checked('knowledge/glossary.json', z.record(z.string(), termSchema), glossaryFile) as Readonly<
  Record<TermId, Term>
>;

/** The trade's terms: all of them, or one by its id. */
export const glossary = {
  terms,
  term: (id: TermId): Term => terms[id],
};
