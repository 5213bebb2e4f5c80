import type { Table } from '#findings/finding.ts';
import type { Reply, StillToFindOut } from '#findings/reply.ts';
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
  const unknown = left.map(({ question }) => ({ id: question.id, brief: inSentence(briefOf(question)) }));
  const { stillToFindOut, ...told } = reply;
  const whole: Reply = {
    ...told,
    ...(stillToFindOut ? { tables: [...(reply.tables ?? []), ...findOutTable(stillToFindOut, unknown)] } : {}),
    assumed: [
      ...(reply.assumed ?? []),
      ...taken,
      ...(unknown.length === 0 || stillToFindOut
        ? []
        : [conversationWords[language].notKnown(unknown.map(({ brief }) => brief).join('; '))]),
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

/** One row for each part: what is worth most, then what nobody knew. */
function findOutTable(
  { title, columns, parts, first, partOf }: StillToFindOut,
  unknown: readonly { readonly id: string; readonly brief: string }[],
): readonly Table[] {
  const rows = parts.flatMap((part) => {
    const says = first.filter(([of]) => of === part).map(([, each]) => each);
    const briefs = unknown.filter(({ id }) => partOf.get(id) === part).map(({ brief }) => brief);
    const notKnown = briefs.length === 0 ? [] : [`${capital(briefs.join('; '))}.`];
    return says.length + notKnown.length === 0 ? [] : [[part, [...says, ...notKnown].join(' ')]];
  });
  return rows.length === 0 ? [] : [{ title, columns, rows }];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "Airflow the room needs" inside a sentence; a name in capitals stays as it is. */
const inSentence = (brief: string): string =>
  /^\p{Lu}\p{Ll}/u.test(brief) ? brief.charAt(0).toLowerCase() + brief.slice(1) : brief;
