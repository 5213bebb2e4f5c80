import type { Interview } from '#interview/interview.ts';

/**
 * Another command's interview over what is known alone: nothing is asked, and nothing comes of it where something it needs is
 * not there.
 */
export function* ifKnown<Inputs>(interview: Interview<Inputs>): Interview<Inputs | null> {
  let turn = interview.next();
  while (!turn.done) {
    const { urgency, questions } = turn.value;
    const answers = yield { urgency: 'take', questions };
    if (urgency === 'need' && answers.some(({ known }) => !known)) return null;
    turn = interview.next(answers);
  }
  return turn.value;
}
