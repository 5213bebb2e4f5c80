import { z } from 'zod';

/**
 * What a button, menu or form says when pressed. Nothing a person typed goes in: only which talk, at which turn, and which
 * of the choices the talk itself offers. The rest is looked up, so a forged press reaches nothing.
 */
export type Press =
  | {
      readonly act: 'answer' | 'form' | 'pick' | 'back' | 'why' | 'not-known' | 'change' | 'working';
      readonly talk: string;
      readonly turn: number;
      readonly choice?: string | undefined;
    }
  | { readonly act: 'start'; readonly command: string };

const acts = ['answer', 'form', 'pick', 'back', 'why', 'not-known', 'change', 'working'] as const;

const talkPress = z.tuple([
  z.literal('v1'),
  z.enum(acts),
  z.string().regex(/^[0-9a-z]{10}$/),
  z.string().regex(/^\d{1,6}$/),
  z.string().max(60).optional(),
]);
const startPress = z.tuple([z.literal('v1'), z.literal('start'), z.string().regex(/^[a-z]{1,32}$/)]);

/** The id that goes on a button. Never longer than the platform's 100 characters. */
export const customId = (press: Press): string =>
  press.act === 'start'
    ? `v1:start:${press.command}`
    : `v1:${press.act}:${press.talk}:${press.turn}${press.choice === undefined ? '' : `:${press.choice}`}`;

/** What was pressed, or nothing when the id is not one of ours. */
export function pressed(id: string): Press | undefined {
  const parts = id.split(':');
  const start = startPress.safeParse(parts);
  if (start.success) return { act: 'start', command: start.data[2] };
  const talk = talkPress.safeParse(parts);
  if (!talk.success) return undefined;
  const [, act, id_, turn, choice] = talk.data;
  return { act, talk: id_, turn: Number(turn), choice };
}
