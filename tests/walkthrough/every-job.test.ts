import { describe, expect, it } from 'vitest';
import type { Checklist } from '#knowledge/checklist.ts';
import { walkFacts } from '#knowledge/checklist-facts.ts';
import { checklists } from '#knowledge/checklists.ts';
import { newWalk } from '#walkthrough/walk.ts';
import { conditionHolds, type WalkFacts } from '#walkthrough/walk-facts.ts';
import { type WalkList, walkList } from '#walkthrough/walk-list.ts';
import { honestWalk, siteCrew } from './honest-walk.ts';
import { secondOpinion } from './oracle.ts';
import { classesOf, conditionsOf, countOfAll, everyPair, groupsOf, mildest, product } from './scenarios.ts';

const listFor = (checklist: Checklist, facts: WalkFacts): WalkList =>
  walkList({ checklist, facts, boxes: [], crew: siteCrew });

/** What a list comes down to: its steps, who signs them, and what they allow. */
const formOf = (list: WalkList): string =>
  JSON.stringify(
    list.steps.map(({ id, signers, parts }) => [
      id,
      signers,
      parts.map((part) =>
        part.kind === 'choice' ? part.options.length : part.kind === 'number' ? [part.least, part.most] : 0,
      ),
    ]),
  );

/**
 * The jobs each list is tried on. Facts that no step reads together cannot act on each other's steps, so each group of facts
 * is tried in full, once with everything else harmless and once with everything else unknown; then every answer of every
 * fact together with every answer of every other. Answers that the data does not tell apart stand for each other.
 */
const jobsOf = (checklist: Checklist): readonly WalkFacts[] => {
  const inFull = groupsOf(checklist).flatMap((group) => product(group, (fact) => classesOf(fact, checklist)));
  const harmless = mildest(checklist);
  return [...inFull.map((facts) => ({ ...harmless, ...facts })), ...inFull, ...everyPair(checklist), {}];
};

describe.each(Object.values(checklists))('on every job the list $id', (checklist) => {
  const jobs = jobsOf(checklist);

  it('can be walked to its close, every step of it, without a hand in a live box or a hold passed', () => {
    for (const facts of jobs) {
      const oracle = secondOpinion();
      const list = listFor(checklist, facts);
      const { watch } = oracle;
      const { walk, stuck } = honestWalk(list, { from: newWalk(list), watch });
      expect(stuck, JSON.stringify(facts)).toEqual([]);
      expect(walk.closed, JSON.stringify(facts)).not.toBeNull();
      expect(walk.refused).toEqual([]);
      expect(oracle.complaints, JSON.stringify(facts)).toEqual([]);
    }
  }, 60_000);

  it('meets every condition both ways', () => {
    for (const step of checklist.steps) {
      for (const condition of conditionsOf(step)) {
        const held = new Set(jobs.map((facts) => conditionHolds(condition, facts, walkFacts)));
        expect(held, `${step.id} on ${condition.fact}`).toEqual(new Set([true, false]));
      }
    }
  });

  it('has every one of its steps on some job', () => {
    const met = new Set(jobs.flatMap((facts) => listFor(checklist, facts).steps.map(({ step }) => step.id)));
    expect(checklist.steps.filter(({ id }) => !met.has(id))).toEqual([]);
  });

  it('is the same for answers that stand for each other, and steps hang on their own facts only', () => {
    const harmless = mildest(checklist);
    for (const group of groupsOf(checklist)) {
      for (const fact of group) {
        const forms = [...walkFacts[fact].options.map(({ id }) => id), 'unknown'].map((answer) =>
          formOf(listFor(checklist, { ...harmless, [fact]: answer })),
        );
        const classes = classesOf(fact, checklist).map((answer) =>
          formOf(listFor(checklist, { ...harmless, [fact]: answer })),
        );
        expect(new Set(forms), fact).toEqual(new Set(classes));
      }
    }
  });

  it('is never shorter for not knowing: a step that some answer needs, or one stricter, is there when nobody knows', () => {
    const unknown = new Set(listFor(checklist, {}).steps.map(({ step }) => step.id));
    const explained = checklist.steps.filter(({ when }) => when.some(({ because }) => because !== undefined));
    const left = checklist.steps.filter((step) => !unknown.has(step.id) && !explained.includes(step));
    expect(left.map(({ id }) => id)).toEqual([]);
  });
});

it('leaves no combination of answers to the swap untried: what is tried stands for all of them', () => {
  expect(groupsOf(checklists.swap).flat().length).toBe(24);
  expect(countOfAll(checklists.swap)).toBe(526_607_182_725_120n);
  expect(jobsOf(checklists.swap).length).toBeGreaterThan(150);
});
