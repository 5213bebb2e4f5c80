import type { Walk } from './walk.ts';
import type { WalkEvent } from './walk-event.ts';

/** Whether an event counts. A refusal is one sentence that says what would be right. */
export type Verdict =
  | {
      readonly accepted: true;
      /** False where the answer is kept but the step stays open, as with a value out of range. */
      readonly closes: boolean;
      /** What to say with it: a value out of range, a stop, a remark. */
      readonly says: string | null;
      /** The same was said before, so nothing changes by it. */
      readonly again?: true;
    }
  | { readonly refused: string };

/** A verdict with what it changes, which is done only when the event is really kept. */
export type Judgement =
  | { readonly refused: string }
  | { readonly verdict: Verdict; readonly change: (walk: Walk) => void };

/** An event together with its moment, where the crew works. */
export interface Moment {
  readonly event: WalkEvent;
  /** When it was entered. */
  readonly milliseconds: number;
  /** The day it was entered: 2027-03-31. */
  readonly day: string;
}

export const refused = (because: string): Judgement => ({ refused: because });

export const accepted = (
  change: (walk: Walk) => void,
  { closes = false, says = null }: { closes?: boolean; says?: string | null } = {},
): Judgement => ({ verdict: { accepted: true, closes, says }, change });

/** Nothing new: the same thing was said before. */
export const sameAgain = (closes: boolean): Judgement => ({
  verdict: { accepted: true, closes, says: null, again: true },
  change: () => {},
});
