import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { tellingContexts } from '#diagnosis/telling-contexts.ts';
import { diagnosed, reasoning } from './reasoning-at-hand.ts';

/** Callbacks written from the trade's physics alone; see blind-cases.test.ts. */
const cases: readonly { readonly id: string; readonly seen: readonly string[]; readonly notSeen: readonly string[] }[] =
  JSON.parse(readFileSync(join(import.meta.dirname, 'blind-cases.json'), 'utf8'));

const every = Object.keys(reasoning.knowledge.contexts);

describe('what is asked of the job is what would change the answer', () => {
  it('and is a short list, in the order of the whole one, without what was told', () => {
    const asked = tellingContexts(reasoning, { seen: ['fog'], context: ['cold'] }, 6);
    expect(asked.length).toBeGreaterThanOrEqual(6);
    expect(asked.length).toBeLessThan(every.length - 1);
    expect(asked).not.toContain('cold');
    expect(asked).toEqual(every.filter((id) => (asked as readonly string[]).includes(id)));
  });

  it.each(cases.slice(0, 12))('nothing that can hurt somebody hides in what is left out: $id', ({ seen, notSeen }) => {
    const answers = { seen, notSeen };
    const asked: readonly string[] = tellingContexts(reasoning, answers, 6);
    const dangers = (context: readonly string[]) =>
      diagnosed({ ...answers, context }).ruleOutFirst.map(({ cause }) => cause);
    const now = dangers([]);
    const left = every.filter((id) => !asked.includes(id));
    expect(left.length).toBeGreaterThan(0);
    for (const id of left)
      expect(
        dangers([id]).filter((cause) => !now.includes(cause)),
        id,
      ).toEqual([]);
  });
});
