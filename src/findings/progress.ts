/** How a step of a list stands. `hold`: open, and a qualified person signs it. `passed`: passed over by a lead. */
export type StepMark = 'done' | 'passed' | 'hold' | 'open' | 'stopped';

/** How far a list is, as data: pictures draws it, the terminal sketches it. */
export interface Progress {
  /** Stage by stage, a mark for each step in its order. */
  readonly stages: readonly { readonly label: string; readonly marks: readonly StepMark[] }[];
  /** What is still to be signed and by whom, and values that are not as they should be: a line each, in that order. */
  readonly remarks: readonly string[];
  /** What the key and the counts say, where that is not English. */
  readonly words?: ProgressWords;
}

export interface ProgressWords {
  readonly marks: Readonly<Record<StepMark, string>>;
  /** Between the steps done and all of them: "3 of 8". */
  readonly of: string;
}

/** Closed, passed over by a lead, or open, in words for the key; and how far a stage is. */
export const progressWords: ProgressWords = {
  marks: { done: 'done', passed: 'passed over', hold: 'hold, to be signed', open: 'open', stopped: 'stopped' },
  of: 'of',
};

/** The steps of a stage that are behind the crew. */
export const doneIn = (marks: readonly StepMark[]): number =>
  marks.filter((mark) => mark === 'done' || mark === 'passed').length;
