import { describe, expect, it } from 'vitest';
import { diagnose } from '#diagnosis/diagnose.ts';
import { preparedReasoning } from '#diagnosis/reasoning.ts';
import { callbackKnowledge } from '#knowledge/causes.ts';
import { sources } from '#knowledge/sources.ts';
import figures from './figures/callback-cases.json' with { type: 'json' };

interface Case {
  readonly id: string;
  readonly story: string;
  readonly context: readonly string[];
  readonly seen: readonly string[];
  readonly notSeen: readonly string[];
  /** Any of these may come first. */
  readonly leads: readonly string[];
  readonly neverLeads: readonly string[];
  readonly stops: boolean;
  /** Two causes that must be said to be there at once. */
  readonly together?: readonly string[];
  readonly source: string;
  readonly verified: boolean;
}

const reasoning = preparedReasoning(callbackKnowledge);

describe('callbacks invented from the physics of the trade', () => {
  for (const one of figures.cases as readonly Case[]) {
    it(`${one.id}: ${one.story} (${one.source}${one.verified ? '' : ', not seen in print'})`, () => {
      expect(Object.keys(sources)).toContain(one.source);
      const { context, seen, notSeen } = one;
      const { ranking, dangers, together, strangers, contradictions } = diagnose(reasoning, { context, seen, notSeen });
      expect({ strangers, contradictions }).toEqual({ strangers: [], contradictions: [] });
      const [first] = ranking;
      expect(one.leads).toContain(first?.cause);
      expect(one.neverLeads).not.toContain(first?.cause);
      expect(dangers.length > 0).toBe(one.stops);
      if (one.together) {
        const said = together.map(({ causes }) => [...causes].sort());
        expect(said).toContainEqual([...one.together].sort());
      }
    });
  }
});
