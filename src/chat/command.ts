import type { Reply } from '#findings/reply.ts';
import type { Interview } from '#interview/interview.ts';
import type { AnyQuestion, UnitSystem } from '#interview/question.ts';

/** How to tell a crew its numbers. */
export interface Telling {
  /** The units that come first; the other system follows in brackets. */
  readonly units: UnitSystem;
}

/**
 * A command that asks and then answers: its whole story on one page. `Inputs` is what the interview ends with.
 */
export interface AnswerCommand<Inputs> {
  readonly kind: 'answer';
  /** A trade word, lowercase. */
  readonly name: string;
  /** At most 100 characters. */
  readonly summary: string;
  /** The `key=value` part of a one-shot line that works when pasted. */
  readonly example: string;
  /** Every question the interview may ask or take, in the order asked; these are the options of the command. */
  readonly takes: readonly AnyQuestion[];
  interview(): Interview<Inputs>;
  answer(inputs: Inputs, telling: Telling): Reply;
}
