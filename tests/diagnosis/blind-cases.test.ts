import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { diagnose } from '#diagnosis/diagnose.ts';
import { preparedReasoning } from '#diagnosis/reasoning.ts';
import { callbackKnowledge } from '#knowledge/causes.ts';

/**
 * Callbacks written from the trade's physics alone, by somebody who had not seen the causes and their signs. They were
 * scored once before anything was changed: all 32 causes right, 30 of 32 dangers.
 */
interface Case {
  readonly id: string;
  readonly story: string;
  readonly context: readonly string[];
  readonly seen: readonly string[];
  readonly notSeen: readonly string[];
  readonly expectedTop: readonly string[];
  readonly mustNotBeTop: readonly string[];
  readonly danger: boolean;
}

const cases = JSON.parse(readFileSync(join(import.meta.dirname, 'blind-cases.json'), 'utf8')) as readonly Case[];
const reasoning = preparedReasoning(callbackKnowledge);

/** Where the story holds a danger that its signs do not name, with what is told instead of a stop. */
const dangerBehindTheSigns: Readonly<Record<string, string>> = {
  'blind-19': 'Rain behind the ceiling may wet the wiring; wet wiring is named as the thing to rule out first.',
  'blind-29':
    'The sign was written when “no neutral” still meant a neutral on bare ground too; that is a sign of its own now, and it stops.',
};

describe('callbacks written without sight of the causes', () => {
  for (const { id, story, seen, notSeen, context, expectedTop, mustNotBeTop, danger } of cases) {
    it(`${id}: ${story}`, () => {
      const diagnosis = diagnose(reasoning, { seen, notSeen, context });
      const [top] = diagnosis.ranking;
      expect(expectedTop).toContain(top?.cause);
      expect(mustNotBeTop).not.toContain(top?.cause);
      if (!(id in dangerBehindTheSigns)) expect(diagnosis.dangers.length > 0).toBe(danger);
    });
  }

  it('wet wiring behind a rain leak is ruled out first though no sign names it', () => {
    const leak = cases.find(({ id }) => id === 'blind-19');
    const { ruleOutFirst } = diagnose(reasoning, {
      seen: leak?.seen ?? [],
      notSeen: leak?.notSeen ?? [],
      context: leak?.context ?? [],
    });
    expect(ruleOutFirst.map(({ cause }) => cause)).toContain('wetwire');
  });

  it('a neutral on bare ground stops the work', () => {
    expect(diagnose(reasoning, { seen: ['ground-as-neutral'] }).outcome).toBe('stopped');
  });
});
