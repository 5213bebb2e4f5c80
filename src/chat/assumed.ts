import type { Reply } from '#findings/reply.ts';
import type { UnitSystem } from '#interview/question.ts';
import type { Assumption } from '#interview/replay.ts';
import { standInOf } from './answers.ts';

/** A reply with what stands in for answers nobody had: in short lines, with the reasons kept for the working. */
export function withAssumed(reply: Reply, assumptions: readonly Assumption[], units: UnitSystem): Reply {
  const taken = assumptions.flatMap(({ question }) => {
    const instead = standInOf(question, units);
    return instead === undefined ? [] : [`${question.brief}: ${instead}`];
  });
  const left = assumptions.filter(({ question }) => standInOf(question, units) === undefined);
  return {
    ...reply,
    assumed: [
      ...(reply.assumed ?? []),
      ...taken,
      ...(left.length === 0 ? [] : [`Not known: ${left.map(({ question }) => inSentence(question.brief)).join('; ')}`]),
    ],
    assumedBecause: [
      ...(reply.assumedBecause ?? []),
      ...assumptions.map(({ question, because }) => `${question.brief}: ${because}`),
    ],
  };
}

/** "Airflow the room needs" inside a sentence; a name in capitals stays as it is. */
const inSentence = (brief: string): string =>
  /^\p{Lu}\p{Ll}/u.test(brief) ? brief.charAt(0).toLowerCase() + brief.slice(1) : brief;
