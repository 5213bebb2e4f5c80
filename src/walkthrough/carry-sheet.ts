import { type WalkWords, walkWords } from '#words/walkthrough.ts';
import type { ListedStep } from './listed-step.ts';
import type { WalkState } from './walk-state.ts';

/** One step on a sheet of paper: what to do, and a blank for each thing to write down. */
export interface CarryLine {
  readonly id: string;
  readonly title: string;
  readonly do: string;
  readonly lookFor: string;
  readonly caution: string | null;
  /** "Between straps: at most 4 ft ____" without the line. */
  readonly blanks: readonly string[];
  /** False where it is only entered at once, with signal: everything at the wiring. */
  readonly mayBeEnteredLater: boolean;
}

/** What is left of some stages, for a place without signal. Nothing on it counts until it is entered. */
export const carrySheet = (state: WalkState, stages: readonly string[]): readonly CarryLine[] =>
  [...state.steps.values()]
    .filter(
      ({ listed, status }) => stages.includes(listed.step.stage) && !['closed', 'skipped', 'served'].includes(status),
    )
    .map(({ listed }) => lineOf(listed, walkWords[state.list.checklist.language]));

function lineOf({ id, title, step, parts }: ListedStep, told: WalkWords): CarryLine {
  return {
    id,
    title,
    do: step.do,
    lookFor: step.lookFor,
    caution: step.caution ?? null,
    blanks: parts.map((part) => blankOf(part, told)),
    mayBeEnteredLater: step.risk !== 'electrical',
  };
}

function blankOf(part: ListedStep['parts'][number], told: WalkWords): string {
  if (part.kind === 'choice') return `${part.label}: ${part.options.map(({ label }) => label).join(' / ')}`;
  if (part.kind === 'pair') return `${part.label}: ${part.first.label}, ${part.second.label} (${part.unit})`;
  if (part.kind !== 'number') return part.label;
  const range = [
    part.least && told.atLeast(part.least.shown),
    part.most && told.atMost(part.most.shown),
    part.under && told.under(part.under.shown),
  ].filter(Boolean);
  return `${part.label} (${part.unit})${range.length > 0 ? `: ${range.join(', ')}` : ''}`;
}
