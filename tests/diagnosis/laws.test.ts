import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Answers, understood } from '#diagnosis/answers.ts';
import { nextCheck } from '#diagnosis/next-check.ts';
import type { Column } from '#diagnosis/reasoning.ts';
import { presentChances, weighed } from '#diagnosis/weighing.ts';
import { checkPlaces } from '#knowledge/callback-scale.ts';
import { callbackKnowledge } from '#knowledge/causes.ts';
import { diagnosed, reasoning } from './reasoning-at-hand.ts';

const { findings } = callbackKnowledge;
const findingIds = reasoning.findingIds;
const contextIds = Object.keys(callbackKnowledge.contexts);
const some = (ids: readonly string[], most: number) => fc.uniqueArray(fc.constantFrom(...ids), { maxLength: most });
const answersFrom = (ids: readonly string[]): fc.Arbitrary<Answers> =>
  fc.record({ seen: some(ids, 4), notSeen: some(ids, 4), context: some(contextIds, 3) });
const harmless = findingIds.filter((id) => findings[id].danger === undefined);

/** A finding with a cause that explains it and one that rules it out. */
const contests = findingIds.flatMap((id, at) => {
  if (findings[id].anyOf) return [];
  const { chance, excluded } = reasoning.columns[at] as Column;
  const causes = reasoning.causeIds.map((_, cause) => cause);
  const explaining = causes.filter((cause) => (chance[cause] as number) >= 0.7);
  const ruledOut = causes.filter((cause) => excluded[cause] === 1);
  return explaining.length > 0 && ruledOut.length > 0 ? [{ id, explaining, ruledOut }] : [];
});

/** Whatever already says something of this finding: itself, another value of its variable, a vaguer answer. */
const relatives = (id: (typeof findingIds)[number]): readonly string[] =>
  findingIds.filter(
    (other) =>
      other === id ||
      (findings[id].variable !== undefined && findings[other].variable === findings[id].variable) ||
      findings[other].anyOf?.includes(id),
  );

describe('the laws of reasoning about a callback', () => {
  it('a finding that one cause explains never puts it below another that rules the finding out', () => {
    expect(contests.length).toBeGreaterThan(15);
    fc.assert(
      fc.property(fc.constantFrom(...contests), answersFrom(findingIds), fc.nat(), fc.nat(), (contest, told, a, b) => {
        const { id, explaining, ruledOut } = contest;
        const known = relatives(id);
        const clean = (ids: readonly string[] | undefined) => (ids ?? []).filter((other) => !known.includes(other));
        const before: Answers = { seen: clean(told.seen), notSeen: clean(told.notSeen), context: told.context ?? [] };
        const after: Answers = { ...before, seen: [...(before.seen ?? []), id] };
        const explains = explaining[a % explaining.length] as number;
        const excludes = ruledOut[b % ruledOut.length] as number;
        const isAhead = (answers: Answers) => {
          const present = presentChances(weighed(understood(answers, reasoning), reasoning), reasoning);
          return (present[explains] as number) > (present[excludes] as number);
        };
        if (isAhead(before)) expect(isAhead(after)).toBe(true);
      }),
      { seed: 1, numRuns: 150 },
    );
  });

  it('the order of answers does not matter', () => {
    fc.assert(
      fc.property(answersFrom(findingIds), (told) => {
        const reversed: Answers = {
          seen: [...(told.seen ?? [])].reverse(),
          notSeen: [...(told.notSeen ?? [])].reverse(),
          context: [...(told.context ?? [])].reverse(),
        };
        expect(diagnosed(reversed)).toEqual(diagnosed(told));
        expect(nextCheck(reasoning, reversed)).toEqual(nextCheck(reasoning, told));
      }),
      { seed: 1, numRuns: 25 },
    );
  });

  it('saying a thing twice says it once', () => {
    fc.assert(
      fc.property(answersFrom(findingIds), (told) => {
        const twice = { ...told, seen: [...(told.seen ?? []), ...(told.seen ?? [])] };
        expect(diagnosed(twice)).toEqual(diagnosed(told));
      }),
      { seed: 1, numRuns: 20 },
    );
  });

  it('skipping everything ends politely', () => {
    fc.assert(
      fc.property(answersFrom(harmless), fc.boolean(), (told, deadProven) => {
        const cannotCheck: string[] = [];
        for (let turn = 0; turn < 150; turn += 1) {
          const next = nextCheck(reasoning, { ...told, cannotCheck, deadProven });
          if (next.kind !== 'check') {
            expect(['nothing left', 'clear', 'stopped']).toContain(next.kind);
            return;
          }
          expect(cannotCheck).not.toContain(next.check.id);
          cannotCheck.push(next.check.id);
        }
        expect.unreachable('it never stopped asking');
      }),
      { seed: 1, numRuns: 15 },
    );
  });

  it('nothing inside the grille is proposed without a current proof that it is dead', () => {
    fc.assert(
      fc.property(answersFrom(harmless), fc.constantFrom(...checkPlaces), (told, upTo) => {
        const next = nextCheck(reasoning, { ...told, upTo });
        if (next.kind !== 'check') return;
        for (const { power, from } of [next.check, ...next.others]) {
          expect(power).not.toBe('off and proven');
          expect(checkPlaces.indexOf(from)).toBeLessThanOrEqual(checkPlaces.indexOf(upTo));
        }
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it('never fails, whatever the ids', () => {
    const any = fc.array(
      fc.oneof(fc.string(), fc.constantFrom('__proto__', 'constructor', 'toString', ...findingIds)),
      {
        maxLength: 6,
      },
    );
    fc.assert(
      fc.property(fc.record({ seen: any, notSeen: any, context: any, cannotCheck: any }), (told) => {
        const { ranking } = diagnosed(told);
        const sum = ranking.reduce((total, { chance }) => total + chance, 0);
        expect(ranking).toHaveLength(reasoning.causeIds.length);
        expect(sum).toBeGreaterThan(0.99);
        expect(sum).toBeLessThan(2.01);
        expect(nextCheck(reasoning, told).kind).toBeDefined();
      }),
      { seed: 1, numRuns: 50 },
    );
  });
});
