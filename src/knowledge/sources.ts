import { z } from 'zod';
import airflow from '../../knowledge/sources/airflow.json' with { type: 'json' };
import electrical from '../../knowledge/sources/electrical.json' with { type: 'json' };
import general from '../../knowledge/sources/general.json' with { type: 'json' };
import moisture from '../../knowledge/sources/moisture.json' with { type: 'json' };
import practice from '../../knowledge/sources/practice.json' with { type: 'json' };
import { checked } from './checked.ts';

/** How far a publication can be leaned on. Shown beside every figure, so that a forum post never reads like the code. */
export const sourceKinds = [
  'code text',
  'agency',
  'standard',
  'handbook',
  'research',
  'library',
  'trade press',
  'forum',
  'own working',
  'common practice',
  'memory',
] as const;

const sourceSchema = z.strictObject({
  citation: z.string().min(1),
  kind: z.enum(sourceKinds),
  note: z.string().optional(),
});

const files = { general, airflow, moisture, electrical, practice };
export type SourceId =
  | keyof typeof general
  | keyof typeof airflow
  | keyof typeof moisture
  | keyof typeof electrical
  | keyof typeof practice;

/** Where a figure comes from: the publication, the place in it, and whether anybody saw it there. */
export interface Citation {
  readonly source: SourceId;
  /** Table, section, page or equation. */
  readonly where?: string;
  /** True when the figure was seen in the published page; false when it is from memory or own arithmetic. */
  readonly verified: boolean;
}

/** Every publication, by id. */
export const sources = Object.fromEntries(
  Object.entries(files).flatMap(([name, file]) =>
    Object.entries(checked(`knowledge/sources/${name}.json`, z.record(z.string(), sourceSchema), file)),
  ),
) as Readonly<Record<SourceId, z.infer<typeof sourceSchema>>>;

/** The fields every figure in /knowledge carries. `verified` true means it was seen in the publication. */
export const citationFields = {
  source: z.string().refine((id): id is SourceId => id in sources, 'no such id in knowledge/sources'),
  where: z.string().optional(),
  verified: z.boolean(),
  note: z.string().optional(),
};

/** The citation of a knowledge entry. */
export const cite = (entry: { source: SourceId; where?: string | undefined; verified: boolean }): Citation => ({
  source: entry.source,
  verified: entry.verified,
  ...(entry.where === undefined ? {} : { where: entry.where }),
});

export const commonPractice: Citation = { source: 'common-practice', verified: false };
export const ownWorking: Citation = { source: 'own-working', verified: false };
