/** How a step of a list stands. `hold`: open, and a qualified person signs it. `passed`: passed over by a lead. */
export type StepMark = 'done' | 'passed' | 'hold' | 'open' | 'stopped';

/** How far a list is, as data: pictures draws it, the terminal sketches it. */
export interface Progress {
  /** Stage by stage, a mark for each step in its order. */
  readonly stages: readonly { readonly label: string; readonly marks: readonly StepMark[] }[];
  /** What is still to be signed and by whom, and values that are not as they should be: a line each, in that order. */
  readonly remarks: readonly string[];
}

/** Closed, passed over by a lead, or open, in words for the key. */
export const markWords: Readonly<Record<StepMark, string>> = {
  done: 'done',
  passed: 'passed over',
  hold: 'hold, to be signed',
  open: 'open',
  stopped: 'stopped',
};

/** The steps of a stage that are behind the crew. */
export const doneIn = (marks: readonly StepMark[]): number =>
  marks.filter((mark) => mark === 'done' || mark === 'passed').length;
