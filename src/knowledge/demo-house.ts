import { z } from 'zod';
import file from '../../knowledge/demo/house.json' with { type: 'json' };
import { checked } from './checked.ts';
import { citationFields } from './sources.ts';

/** A command, or one action of one, with what it is given; `#` stands for the number of the house's job. */
export interface DemoDeed {
  readonly command: string;
  /** The name of the action; empty where a command does one thing or answers. */
  readonly action: string;
  readonly given: Readonly<Record<string, string>>;
}

/** One stop on the way through a job. */
export interface DemoStop {
  readonly title: string;
  /** What is going on, in a sentence or two. */
  readonly happens: string;
  /** What to type for the same on a job of one's own, without the slash. */
  readonly type: string;
  /** What has to be done before, where something has. */
  readonly before?: DemoDeed | undefined;
  readonly shows: DemoDeed;
  /** Whether what it answers goes on the sheet for the stops after it. */
  readonly keeps: boolean;
  /** What is answered here for the first time, or anew, each under the id of its question. */
  readonly answers: Readonly<Record<string, string>>;
}

const deed = z.strictObject({
  command: z.string(),
  action: z.string().default(''),
  given: z.record(z.string(), z.string()).default({}),
});

/** A house made up to try things with, and the way through its job. */
export const demoHouse = checked(
  'knowledge/demo/house.json',
  z.strictObject({
    name: z.string().regex(/^Demo: .*\(invented\)$/, 'an invented house must be known by its name'),
    ...citationFields,
    note: z.string().includes('Invented', { error: 'say in the note that the house is invented' }),
    stops: z
      .array(
        z.strictObject({
          title: z.string(),
          happens: z.string().regex(/[.?]$/, 'end the sentence'),
          type: z.string(),
          before: deed.optional(),
          shows: deed,
          keeps: z.boolean().default(false),
          answers: z.record(z.string(), z.string()),
        }),
      )
      .min(1),
  }),
  file,
);
