import type { Reply } from '#findings/reply.ts';
import type { AnyQuestion, UnitSystem } from '#interview/question.ts';
import type { Assumption } from '#interview/replay.ts';
import { worded } from '#interview/worded.ts';
import { conversationWords } from '#words/conversation.ts';
import { standInOf } from './answers.ts';
import { glossed } from './glossed.ts';
import { inUnits } from './in-units.ts';

/** A reply with what stands in for answers nobody had, in the crew's units: in short lines, with the reasons for the working. */
export function withAssumed(reply: Reply, assumptions: readonly Assumption[], units: UnitSystem): Reply {
  const { language = 'english' } = reply;
  const briefOf = (question: AnyQuestion) => worded(question, language).brief;
  const taken = assumptions.flatMap(({ question }) => {
    const instead = standInOf(question, units, language);
    return instead === undefined ? [] : [`${briefOf(question)}: ${instead}`];
  });
  const left = assumptions.filter(({ question }) => standInOf(question, units) === undefined);
  const whole: Reply = {
    ...reply,
    assumed: [
      ...(reply.assumed ?? []),
      ...taken,
      ...(left.length === 0
        ? []
        : [conversationWords[language].notKnown(left.map(({ question }) => inSentence(briefOf(question))).join('; '))]),
    ],
    assumedBecause: [
      ...(reply.assumedBecause ?? []),
      ...assumptions.map(({ question }) => {
        const { brief, whenUnknown } = worded(question, language);
        return `${brief}: ${whenUnknown.because}`;
      }),
    ],
  };
  return glossed(inUnits(whole, units));
}

/** "Airflow the room needs" inside a sentence; a name in capitals stays as it is. */
const inSentence = (brief: string): string =>
  /^\p{Lu}\p{Ll}/u.test(brief) ? brief.charAt(0).toLowerCase() + brief.slice(1) : brief;
