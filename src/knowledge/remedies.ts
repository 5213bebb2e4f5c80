import { z } from 'zod';
import remediesFile from '../../knowledge/ducts/remedies.json' with { type: 'json' };
import { checked } from './checked.ts';
import { cited } from './duct-measures.ts';
import { citationFields } from './sources.ts';

export type RemedyId = keyof typeof remediesFile;

const remedy = z
  .strictObject({
    name: z.string().min(1),
    /** From 1, minutes and nothing to buy, to 5, opening ceilings or roofs. */
    effort: z.int().min(1).max(5),
    who: z.string().min(1),
    /** Where on the job the work is done. */
    place: z.string().min(1),
    ...citationFields,
  })
  .transform(cited);

/** What can be changed about a fan and its duct, and how much trouble each is. */
export const remedies = checked(
  'knowledge/ducts/remedies.json',
  z.record(z.string(), remedy),
  remediesFile,
) as Readonly<Record<RemedyId, z.output<typeof remedy>>>;
