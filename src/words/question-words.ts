/** A question in another language. What was answered is told by the question's own `show`, unless `shown` has words for it. */
export interface QuestionWords {
  readonly prompt: string;
  readonly why: string;
  /** What will do. Where it is picked from choices, their names say it. */
  readonly accepts?: string;
  readonly brief: string;
  /** Why something else stands in for an answer nobody had. */
  readonly because: string;
  /** What stands on the choices, by their ids: all of them or none. */
  readonly choices?: Readonly<Record<string, string>>;
  /** The short line under a choice, by its id. */
  readonly hints?: Readonly<Record<string, string>>;
  /** An example in the field, where it is words rather than a number or an id. */
  readonly placeholder?: string;
  /** Other words people answer with, by the id of the choice they mean. */
  readonly also?: Readonly<Record<string, readonly string[]>>;
  /** Values in words where the question's own would be English: "not known". */
  readonly shown?: Readonly<Record<string, string>>;
  /** What is said while an answer grows piece by piece, and the names of the pieces, by their ids, where they are words. */
  readonly growing?: {
    readonly refused: (said: string) => string;
    readonly soFar: (draft: string) => string;
    readonly choices: Readonly<Record<string, string>>;
    /** Words that end the answer. */
    readonly ended: RegExp;
  };
}

/** The same question in the languages beside English. */
export interface InOtherWords {
  readonly spanish: QuestionWords;
}
