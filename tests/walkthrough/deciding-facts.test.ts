import { describe, expect, it } from 'vitest';
import { type WalkFactId, walkFacts } from '#knowledge/checklist-facts.ts';
import { checklists } from '#knowledge/checklists.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { replayWalk } from '#walkthrough/replay.ts';
import type { WalkFacts } from '#walkthrough/walk-facts.ts';
import { walkList } from '#walkthrough/walk-list.ts';
import { crew, event, instant, type Role, roles } from './crew.ts';

const lists = Object.values(checklists);
const box = { id: 'by-the-door', kind: 'switch-box', name: 'by the door' } as const;
const facts = Object.entries(walkFacts) as readonly (readonly [WalkFactId, (typeof walkFacts)[WalkFactId]])[];

const listOf = (checklist: (typeof lists)[number], known: WalkFacts) =>
  walkList({ checklist, facts: known, boxes: [box], crew: [] });

const isGuarded = ({ step }: ListedStep): boolean => step.hold || step.risk !== 'none';
const asks = ({ signers, parts }: ListedStep): string => JSON.stringify([signers, parts]);

/** Holds and steps where somebody can be hurt that an answer takes off a list where nothing is known, or changes. */
function relieved(fact: WalkFactId, value: string): readonly string[] {
  return lists.flatMap((checklist) => {
    const before = listOf(checklist, {});
    const after = listOf(checklist, { [fact]: value });
    return before.steps.filter(isGuarded).flatMap((listed) => {
      const now = after.byId.get(listed.id);
      return now && asks(now) === asks(listed) ? [] : [listed.id];
    });
  });
}

/** Answers that put stricter steps in the place of the one they take off. */
const standIns: readonly string[] = [
  // The steps at a heater are for a licensed electrician, and its label is read for spray as well.
  'unit-kind=fan-and-heater',
  // Above the tub the unit itself has to be marked for it, and a GFCI proven where its label wants one.
  'fan-place=over-tub-or-shower',
];

/** As a list stands after some said something, one after another. */
function told(checklist: (typeof lists)[number], ...said: readonly (readonly [Role, string, string])[]) {
  const events = said.map(([role, fact, value], index) =>
    event(`${index}`, role, index, { what: 'fact', step: null, value: { fact, value } }),
  );
  return replayWalk(listOf(checklist, {}), events, { now: instant(60) });
}

const asked = (fact: WalkFactId) =>
  lists.find(({ steps }) => steps.some(({ when }) => when.some((each) => each.fact === fact))) ?? checklists.swap;

/** Who may clear a fact, by the cards of this crew on that day. */
const mayClear: Readonly<Record<string, readonly Role[]>> = {
  anyone: ['lead', 'apprentice', 'qualified', 'electrician', 'renovator', 'tester', 'carded'],
  lead: ['lead', 'qualified'],
  'electrically-qualified': ['qualified', 'electrician'],
  'licensed-electrician': ['electrician'],
  'combustion-tester': ['tester'],
};

describe('an answer that takes a precaution off a list', () => {
  it.each(facts)(
    '%s: is marked as one, and is a lead’s or a qualified person’s to give',
    (fact, { safe, clearedBy, options }) => {
      for (const { id } of options) {
        if (relieved(fact, id).length === 0 || standIns.includes(`${fact}=${id}`)) continue;
        expect(safe, `${fact}=${id} takes off ${relieved(fact, id).join(', ')}`).toContain(id);
        expect(clearedBy, `${fact}=${id}`).not.toContain('anyone');
      }
    },
  );

  it('has stand-ins that are needed', () => {
    const needed = standIns.filter((each) => {
      const [fact, value = ''] = each.split('=');
      return relieved(fact as WalkFactId, value).length > 0;
    });
    expect(needed).toEqual(standIns);
  });

  it.each(facts.filter(([, { safe }]) => safe.length > 0))(
    '%s: counts from those it names, and from nobody else',
    (fact, { safe, clearedBy }) => {
      const may = new Set(clearedBy.flatMap((each) => mayClear[each] ?? []));
      const checklist = asked(fact);
      const unknown = told(checklist).list.steps.map(({ id }) => id);
      for (const value of safe) {
        for (const role of roles) {
          const { facts: known, list, reported } = told(checklist, [role, fact, value]);
          expect(known[fact] ?? 'unknown', `${role}: ${value}`).toBe(may.has(role) ? value : 'unknown');
          if (may.has(role)) continue;
          expect(
            list.steps.map(({ id }) => id),
            `${role}: ${value}`,
          ).toEqual(unknown);
          // Whoever works for the crew is heard, and it waits for those whose word counts.
          expect(reported.length, `${role}: ${value}`).toBe(role === 'stranger' ? 0 : 1);
        }
      }
    },
  );

  it.each(facts.filter(([, { safe, options }]) => safe.length > 0 && options.some(({ id }) => !safe.includes(id))))(
    '%s: never lifts the dangerous answer that a lead or anyone has given, by an apprentice’s word',
    (fact, { safe, options }) => {
      const checklist = asked(fact);
      const worse = options.find(({ id }) => !safe.includes(id))?.id ?? '';
      for (const role of ['apprentice', 'carded'] as const) {
        expect(told(checklist, [role, fact, worse]).facts[fact]).toBe(worse);
        const { facts: known, list } = told(checklist, ['electrician', fact, worse], [role, fact, safe[0] ?? '']);
        expect(safe).not.toContain(known[fact]);
        const before = told(checklist, ['electrician', fact, worse]).list.steps.filter(isGuarded);
        const gone = before.filter(({ id }) => !list.byId.has(id)).map(({ id }) => id);
        // Not known puts on the list whatever any answer would, but for the step that one answer alone brings.
        const unknown = told(checklist).list;
        expect(gone.filter((id) => unknown.byId.has(id))).toEqual([]);
      }
    },
  );

  it('is confirmed by a lead, yet a card is never confirmed by a lead without one', () => {
    const [first] = told(checklists.swap, ['apprentice', 'wiring-kind', 'copper-cable']).reported;
    expect(first).toMatchObject({ fact: 'wiring-kind', name: crew.apprentice.name });
    const by = (role: Role) =>
      told(checklists.swap, ['apprentice', 'wiring-kind', 'copper-cable'], [role, 'wiring-kind', 'copper-cable']).facts[
        'wiring-kind'
      ];
    expect(by('lead') ?? 'unknown').toBe('unknown');
    expect(by('qualified')).toBe('copper-cable');
  });
});
