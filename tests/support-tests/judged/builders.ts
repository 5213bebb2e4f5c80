import type { Case } from '../../support/payload-judge/judge.ts';
import type { Problem } from '../../support/payload-judge/problem.ts';

/** A payload the platform takes, with a name for it. */
export type GoodCase = readonly [name: string, request: Case];
/** A payload with one thing wrong, where it is and who finds it. */
export type BadCase = readonly [name: string, request: Case, mistake: Mistake];

interface Mistake {
  readonly at: string;
  readonly by: Problem['by'];
  readonly refused?: false;
}

export type Fields = Record<string, unknown>;

/** What every message of this project says: it pings nobody. */
export const quiet = { allowed_mentions: { parse: [] } };
export const times = <T>(count: number, make: (nth: number) => T): T[] =>
  Array.from({ length: count }, (_, nth) => make(nth));
export const reply = (data: Fields, more: Partial<Case> = {}): Case => ({
  method: 'POST',
  path: '/interactions/1/token/callback',
  body: { type: 4, data: { ...quiet, tts: false, enforce_nonce: false, ...data } },
  ...more,
});
export const answer = (body: unknown, more: Partial<Case> = {}): Case => ({ ...reply({}, more), body });
export const edit = (body: Fields, more: Partial<Case> = {}): Case => ({
  method: 'PATCH',
  path: '/webhooks/1/token/messages/@original',
  body: { ...quiet, tts: false, enforce_nonce: false, ...body },
  ...more,
});
export const form = (data: Fields): Case => answer({ type: 9, data: { custom_id: 'form', title: 'Room', ...data } });
export const commands = (...body: Fields[]): Case => ({ method: 'PUT', path: '/applications/1/commands', body });
export const command = (more: Fields = {}): Fields => ({
  name: 'duct',
  description: 'Air through a duct',
  nsfw: false,
  ...more,
});

export const row = (...components: Fields[]): Fields => ({ type: 1, components });
export const button = (nth: number | string = 0, more: Fields = {}): Fields => ({
  type: 2,
  style: 1,
  label: 'Next',
  custom_id: `next:${nth}`,
  ...more,
});
export const choices = (count: number): Fields[] =>
  times(count, (nth) => ({ label: `Choice ${nth}`, value: `${nth}` }));
export const menu = (more: Fields = {}): Fields => ({ type: 3, custom_id: 'menu', options: choices(3), ...more });
export const text = (content: string): Fields => ({ type: 10, content });
export const label = (component: Fields, more: Fields = {}): Fields => ({
  type: 18,
  label: 'Length',
  component,
  ...more,
});
export const input = (more: Fields = {}): Fields => ({ type: 4, style: 1, custom_id: 'length', ...more });
export const option = (name: string, more: Fields = {}): Fields => ({
  type: 3,
  name,
  description: 'A length',
  ...more,
});
export const chart = { field: 'files[0]', name: 'chart.png', size: 1000 };
export const layout = 1 << 15;
