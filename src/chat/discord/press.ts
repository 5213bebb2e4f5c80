import { z } from 'zod';

const acts = [
  'answer',
  'form',
  'pick',
  'back',
  'why',
  'not-known',
  'another-job',
  'change',
  'working',
  'everything',
  'start',
] as const;

/**
 * What a button, menu or form says when pressed. Nothing a person typed goes in: only which talk, at which turn, and which
 * of the choices the talk itself offers. The rest is looked up, so a forged press reaches nothing.
 */
export interface Press {
  readonly act: (typeof acts)[number];
  readonly talk: string;
  readonly turn: number;
  /** The number of the choice for `answer`, the name of the command for `start`. */
  readonly choice?: string | undefined;
}

const parts = z.tuple([
  z.literal('v1'),
  z.enum(acts),
  z.string().regex(/^[0-9a-z]{10}$/),
  z.string().regex(/^\d{1,6}$/),
  z
    .string()
    .regex(/^[0-9a-z]{1,32}$/)
    .optional(),
]);

/** The id that goes on a button. Never longer than the platform's 100 characters. */
export const customId = ({ act, talk, turn, choice }: Press): string =>
  `v1:${act}:${talk}:${turn}${choice === undefined ? '' : `:${choice}`}`;

/** What was pressed, or nothing when the id is not one of ours. */
export function pressed(id: string): Press | undefined {
  const read = parts.safeParse(id.split(':'));
  if (!read.success) return undefined;
  const [, act, talk, turn, choice] = read.data;
  return { act, talk, turn: Number(turn), choice };
}
