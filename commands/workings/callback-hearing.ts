import { dangersSeen } from '#diagnosis/dangers.ts';
import type { HeardWords } from '#diagnosis/findings-in-words.ts';
import type { Reasoning } from '#diagnosis/reasoning.ts';
import { type Interview, offer } from '#interview/interview.ts';
import type { CallbackFindingId } from '#knowledge/callback-findings.ts';
import type { ContextId } from '#knowledge/callback-scale.ts';
import { checkQuestion, type HeardSign, heardQuestion } from '../questions/callback-checks.ts';

/** What was taken from the complaint, once the person has had a look at it. */
export interface HeardComplaint {
  readonly seen: readonly CallbackFindingId[];
  readonly notSeen: readonly CallbackFindingId[];
  readonly context: readonly ContextId[];
  readonly notUnderstood: readonly string[];
  /** A danger was named: nothing more is asked before that is said. */
  readonly isUrgent: boolean;
}

/** The complaint as it was understood, with nobody to look at it. */
export const asHeard = (heard: HeardWords): HeardComplaint => ({
  seen: heard.seen.map(({ id }) => id),
  notSeen: heard.notSeen.map(({ id }) => id),
  context: heard.context.map(({ id }) => id),
  notUnderstood: heard.notUnderstood,
  isUrgent: false,
});

/** Somebody who has put this much right had better begin again. */
const mostCorrections = 4;

/**
 * Shows what was understood, to be put right one press at a time. A danger is never held up by that: one that was named ends
 * the asking, and one that was only wondered about, or denied in a way that may mean something else ("no idea why it sparks"),
 * is asked first and counts as there until somebody says no.
 */
export function* hearing(heard: HeardWords, reasoning: Reasoning): Interview<HeardComplaint> {
  const { seen, notSeen, context, notUnderstood } = asHeard(heard);
  const ruledOut: CallbackFindingId[] = [];
  const isDanger = (ids: readonly string[]) => dangersSeen({ seen: ids }, reasoning).length > 0;
  if (isDanger(seen)) return { seen, notSeen, context, notUnderstood, isUrgent: true };
  const denied = heard.notSeen.filter(({ confidence }) => confidence === 'probable');
  for (const { id } of [...heard.unsure, ...denied]) {
    if (!isDanger([id])) continue;
    const { value } = yield* offer(checkQuestion(id, 'yes'));
    if (value !== 'no') {
      const others = notSeen.filter((each) => each !== id);
      return { seen: [...seen, id], notSeen: others, context, notUnderstood, isUrgent: true };
    }
    ruledOut.push(id);
  }
  let signs: readonly HeardSign[] = [
    ...heard.seen.map(({ id }) => ({ kind: 'seen' as const, id })),
    ...heard.notSeen.map(({ id }) => ({ kind: 'not seen' as const, id })),
    ...heard.context.map(({ id }) => ({ kind: 'context' as const, id })),
  ];
  for (let turn = 1; turn <= mostCorrections && signs.length > 0; turn += 1) {
    const answer = yield* offer(heardQuestion(signs, turn === 1 ? notUnderstood : [], turn));
    if (answer.value === 'right') break;
    signs = signs.filter(({ id }) => id !== answer.value);
  }
  const kept = new Set<string>(signs.map(({ id }) => id));
  const wrong = new Set<string>(
    [...heard.seen, ...heard.notSeen, ...heard.context].map(({ id }) => id as string).filter((id) => !kept.has(id)),
  );
  const right = <Id extends string>(all: readonly Id[]) => all.filter((id) => !wrong.has(id));
  return {
    seen: right(seen),
    notSeen: [...right(notSeen), ...ruledOut],
    context: right(context),
    notUnderstood,
    isUrgent: false,
  };
}
