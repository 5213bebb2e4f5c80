import { describe, expect, it } from 'vitest';
import { withoutClientHabits } from '../support/payload-judge/client-habits.ts';
import { type Case, judge } from '../support/payload-judge/judge.ts';
import { operationOf } from '../support/payload-judge/operations.ts';
import type { Problem } from '../support/payload-judge/problem.ts';
import { descriptionIsPresent, descriptionProblems } from '../support/payload-judge/published-description.ts';
import { badAnswers, goodAnswers } from './judged/answers.ts';
import { badCommands, goodCommands } from './judged/commands.ts';
import { badMessages, goodMessages } from './judged/messages.ts';

const goodCases = [...goodMessages, ...goodAnswers, ...goodCommands];
const badCases = [...badMessages, ...badAnswers, ...badCommands];

describe('a payload the platform takes', () => {
  it.each(goodCases)('%s passes', (_, request) => {
    expect(judge(request)).toEqual([]);
  });
});

describe('a payload with one thing wrong', () => {
  it.each(badCases)('%s is found where it is', (_, request, { at, by, refused = true }) => {
    const found = judge(request);
    expect(found).toContainEqual(expect.objectContaining({ at, by, refused }));
    // One mistake is told once by each reader, not once for every component it might have been.
    expect(found.filter((problem) => problem.by === by)).toHaveLength(1);
  });
});

describe.skipIf(!descriptionIsPresent)("the platform's own description (needs a copy beside the checkout)", () => {
  it.each(goodCases)('agrees that %s passes', (_, request) => {
    expect(byDescription(request)).toEqual([]);
  });

  it.each(badCases.filter(([, , { by }]) => by === 'schema'))(
    'objects to %s as well',
    (_, request, { at, refused = true }) => {
      expect(byDescription(request)).toContainEqual(expect.objectContaining({ at, refused }));
    },
  );
});

function byDescription({ method, path, body }: Case): readonly Problem[] {
  const operation = operationOf(method, path);
  if (!operation) throw new Error(`no operation for ${method} ${path}`);
  // Through JSON, as it would travel: a field that is undefined does not arrive.
  return descriptionProblems(operation, withoutClientHabits(operation.meaning, JSON.parse(JSON.stringify(body))));
}
