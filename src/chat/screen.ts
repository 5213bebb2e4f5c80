import type { Reply } from '#findings/reply.ts';
import type { AnyQuestion, Choice } from '#interview/question.ts';
import type { Language } from '#words/language.ts';

/** What stands in front of a person after each turn: notes, then either the next question or the answer. Plain data. */
export interface Screen {
  /** The conversation this belongs to; absent where there is nothing to answer, as after `/help`. */
  readonly talk?: string;
  /** Counts the turns of the talk, so that a button from an earlier screen is known as stale. */
  readonly revision: number;
  /** The language of what stands around question and answer; English where it is left out. */
  readonly language?: Language | undefined;
  readonly command: string;
  /** Short sentences about what was just said: not understood, taken back, why it is asked. */
  readonly notes: readonly string[];
  /** What the answers just given were understood as. */
  readonly noted?: readonly Given[];
  /** The notes say on which sheet it goes, and that it can still go on one of its own. */
  readonly mayGoElsewhere?: true;
  readonly asking?: Asking;
  readonly reply?: Reply;
  /** The answers so far, in the order asked. Those a reply rests on can be changed. */
  readonly given?: readonly Given[];
}

export interface Asking {
  /** Everything unanswered on this screen; the first is the one asked now. */
  readonly questions: readonly AnyQuestion[];
  readonly question: AnyQuestion;
  readonly prompt: string;
  readonly choices: readonly Choice[];
  readonly canGoBack: boolean;
  /** What the sheet says at present, where an answer is being changed. */
  readonly now?: string;
}

/** An answer read back. */
export interface Given {
  readonly id: string;
  readonly brief: string;
  readonly shown: string;
}
