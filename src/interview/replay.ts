import type { Interview, Request } from './interview.ts';
import type { Answer, AnyQuestion } from './question.ts';

/** What is known about one question: its answer, or `undefined` when nobody has said anything yet. */
export type Recall = (question: AnyQuestion) => Answer<unknown> | undefined;

/** An answer nobody had, used because the interview could go on without it. */
export interface Assumption {
  readonly question: AnyQuestion;
  readonly because: string;
}

export type Outcome<Inputs> =
  | {
      readonly complete: true;
      readonly inputs: Inputs;
      readonly assumed: readonly Assumption[];
      /** The questions whose answers were used, in the order asked. */
      readonly used: readonly AnyQuestion[];
    }
  | {
      readonly complete: false;
      /** The questions answered on the way there. */
      readonly used: readonly AnyQuestion[];
      /** The first request with something unanswered. */
      readonly request: Request;
      readonly unanswered: readonly AnyQuestion[];
    };

/** More requests than any honest interview makes: a script that loops is a mistake of ours. */
const mostRequests = 500;

/**
 * Runs an interview over what is known, up to the first request that is not answered.
 *
 * @param asking `conversation` stops at offers too; `one-shot` goes on with their `whenUnknown` value.
 */
export function replay<Inputs>(
  interview: Interview<Inputs>,
  recall: Recall,
  asking: 'conversation' | 'one-shot',
): Outcome<Inputs> {
  // A question may be met more than once, as where one part takes what another has asked: it is named once.
  const assumed = new Map<string, Assumption>();
  const used = new Map<string, AnyQuestion>();
  let turn = interview.next();
  for (let count = 0; !turn.done; count += 1) {
    if (count > mostRequests) throw new Error('an interview asks without end');
    const { urgency, questions } = turn.value;
    const answers = questions.map(recall);
    const stopsHere = urgency === 'need' || (urgency === 'offer' && asking === 'conversation');
    const unanswered = questions.filter((_, index) => answers[index] === undefined);
    if (stopsHere && unanswered.length > 0) {
      const answered = questions.filter((_, index) => answers[index] !== undefined);
      for (const question of answered) used.set(question.id, question);
      return { complete: false, request: turn.value, unanswered, used: [...used.values()] };
    }
    turn = interview.next(
      answers.map((answer, index) => {
        const question = questions[index] as AnyQuestion;
        if (answer) used.set(question.id, question);
        if (answer ? !answer.known : urgency !== 'take') {
          assumed.set(question.id, { question, because: question.whenUnknown.because });
        }
        return answer ?? { value: question.whenUnknown.value, known: false, asked: false };
      }),
    );
  }
  return { complete: true, inputs: turn.value, assumed: [...assumed.values()], used: [...used.values()] };
}

/**
 * Every question the interview still lacks, found by going on past each with its `whenUnknown` value. One-shot use names
 * them all at once.
 */
export function missing<Inputs>(interview: Interview<Inputs>, recall: Recall): readonly AnyQuestion[] {
  const lacking = new Map<string, AnyQuestion>();
  let turn = interview.next();
  for (let count = 0; !turn.done && count <= mostRequests; count += 1) {
    const { urgency, questions } = turn.value;
    turn = interview.next(
      questions.map((question): Answer<unknown> => {
        const answer = recall(question);
        if (answer) return answer;
        if (urgency === 'need') lacking.set(question.id, question);
        return { value: question.whenUnknown.value, known: false, asked: false };
      }),
    );
  }
  return [...lacking.values()];
}
