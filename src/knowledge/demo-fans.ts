import { z } from 'zod';
import file from '../../knowledge/demo/fans.json' with { type: 'json' };
import { checked } from './checked.ts';
import { type Citation, citationFields, cite } from './sources.ts';

/** A fan made up to try things with, as its label would read in inch-pound units. */
export interface DemoFan {
  readonly name: string;
  /** For each question the label answers, the answer. */
  readonly label: Readonly<Record<string, string>>;
  /** What sort of fan it stands for, and that it is invented. */
  readonly note: string;
  readonly citation: Citation;
}

const fans = checked(
  'knowledge/demo/fans.json',
  z.record(
    z.string(),
    z.strictObject({
      name: z.string().startsWith('Demo', 'an invented fan must be known by its name: begin it with Demo'),
      label: z.record(z.string(), z.string()),
      ...citationFields,
      note: z.string().includes('Invented', { error: 'say in the note that the fan is invented' }),
    }),
  ),
  file,
);

export const demoFans: readonly DemoFan[] = Object.values(fans).map(({ name, label, note, ...entry }) => ({
  name,
  label,
  note,
  citation: cite(entry),
}));
