import type { Checklist, ChecklistStep } from '#knowledge/checklist.ts';
import type { Condition } from '#knowledge/checklist-evidence.ts';
import { type WalkFactId, walkFacts } from '#knowledge/checklist-facts.ts';
import type { WalkFacts } from '#walkthrough/walk-facts.ts';

/** Everything in a step that reads a fact. */
export const conditionsOf = ({ when, stricter, evidence }: ChecklistStep): readonly Condition[] => [
  ...when,
  ...stricter.flatMap((rule) => rule.when),
  ...evidence.flatMap((part) => (part.kind === 'choice' ? part.options.flatMap(({ onlyWhen }) => onlyWhen ?? []) : [])),
];

const limitsOf = ({ evidence }: ChecklistStep) =>
  evidence
    .flatMap((part) => (part.kind === 'number' ? [part.least, part.most] : []))
    .flatMap((limit) => (limit && limit.by !== null ? [{ by: limit.by, limit }] : []));

/** Facts a step reads together: they cannot be tried one without the other. */
const factsRead = (step: ChecklistStep): readonly WalkFactId[] => [
  ...new Set([...conditionsOf(step).map(({ fact }) => fact), ...limitsOf(step).map(({ by }) => by)]),
];

const answers = (fact: WalkFactId): readonly string[] => [...walkFacts[fact].options.map(({ id }) => id), 'unknown'];

/**
 * Answers that no condition, limit or option of the list tells apart are one class; one of each class stands for all. Built
 * from the data, so a new condition makes new classes by itself.
 */
export function classesOf(fact: WalkFactId, { steps }: Checklist): readonly string[] {
  const mark = (answer: string): string =>
    steps
      .flatMap((step) => [
        ...conditionsOf(step).flatMap((each) => (each.fact === fact ? [each.is.includes(answer)] : [])),
        ...limitsOf(step).flatMap(({ by, limit }) =>
          by === fact ? [(limit.values[answer] ?? limit.otherwise).si] : [],
        ),
      ])
      .join(',');
  const byMark = new Map(answers(fact).map((answer) => [mark(answer), answer]));
  return [...byMark.values()];
}

/** Facts that decide together, in groups that have no step in common. */
export function groupsOf({ steps }: Checklist): readonly (readonly WalkFactId[])[] {
  let groups: WalkFactId[][] = [];
  for (const step of steps) {
    const read = factsRead(step);
    if (read.length === 0) continue;
    const joined = groups.filter((group) => group.some((fact) => read.includes(fact)));
    groups = [...groups.filter((group) => !joined.includes(group)), [...new Set([...joined.flat(), ...read])]];
  }
  return groups;
}

export const product = (
  group: readonly WalkFactId[],
  choices: (fact: WalkFactId) => readonly string[],
): readonly WalkFacts[] =>
  group.reduce<readonly WalkFacts[]>(
    (some, fact) => some.flatMap((facts) => choices(fact).map((answer) => ({ ...facts, [fact]: answer }))),
    [{}],
  );

/** How many combinations of answers there are at all, classes or not. */
export const countOfAll = (checklist: Checklist): bigint =>
  groupsOf(checklist)
    .flat()
    .reduce((count, fact) => count * BigInt(answers(fact).length), 1n);

/** The answers that take the most precautions off the list. */
export function mildest(checklist: Checklist): WalkFacts {
  const needs = (fact: WalkFactId, answer: string) =>
    checklist.steps.flatMap(conditionsOf).filter((each) => each.fact === fact && each.is.includes(answer)).length;
  const best = (fact: WalkFactId) =>
    answers(fact).reduce((mild, answer) => (needs(fact, answer) < needs(fact, mild) ? answer : mild));
  return Object.fromEntries(
    groupsOf(checklist)
      .flat()
      .map((fact) => [fact, best(fact)]),
  );
}

/** Rows in which every answer class of every fact meets every class of every other fact at least once. */
export function everyPair(checklist: Checklist): readonly WalkFacts[] {
  const facts = groupsOf(checklist).flat();
  const classes = new Map(facts.map((fact) => [fact, classesOf(fact, checklist)]));
  const open = new Set<string>();
  const key = (one: WalkFactId, a: string, other: WalkFactId, b: string) => `${one}=${a}&${other}=${b}`;
  facts.forEach((one, index) => {
    for (const other of facts.slice(index + 1)) {
      for (const a of classes.get(one) ?? []) for (const b of classes.get(other) ?? []) open.add(key(one, a, other, b));
    }
  });
  const gained = (row: Record<string, string>, fact: WalkFactId, answer: string): string[] =>
    Object.entries(row).flatMap(([other, b]) =>
      [key(other as WalkFactId, b, fact, answer), key(fact, answer, other as WalkFactId, b)].filter((pair) =>
        open.has(pair),
      ),
    );
  const rows: Record<string, string>[] = [];
  while (open.size > 0) {
    const [first = ''] = open;
    const row: Record<string, string> = Object.fromEntries(
      first.split('&').map((each) => each.split('=') as [string, string]),
    );
    for (const fact of facts) {
      if (row[fact] !== undefined) continue;
      const [mild = 'unknown', ...rest] = classes.get(fact) ?? [];
      row[fact] = rest.reduce(
        (best, answer) => (gained(row, fact, answer).length > gained(row, fact, best).length ? answer : best),
        mild,
      );
    }
    for (const [fact, answer] of Object.entries(row)) {
      const others = Object.fromEntries(Object.entries(row).filter(([other]) => other !== fact));
      for (const pair of gained(others, fact as WalkFactId, answer)) open.delete(pair);
    }
    rows.push(row);
  }
  return rows;
}
