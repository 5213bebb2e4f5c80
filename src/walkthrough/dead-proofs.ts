import type { BoxKind } from '#knowledge/checklist-facts.ts';
import { recordOf, type Walk } from './walk.ts';
import type { Box, StepValue } from './walk-event.ts';

/** What is known of one box being dead. Anything but `current` means: treat every wire in it as live. */
export interface DeadProof {
  readonly box: Box<BoxKind>;
  readonly state: 'never' | 'current' | 'lapsed';
  readonly signedBy: string | null;
  readonly signedAt: string | null;
  /** The instant it ends by itself at the latest; sooner with a break, a new person, a new day or power. */
  readonly until: string | null;
  /** Why it ended. */
  readonly because: string | null;
  /** The answers of its steps: tester proved, readings, tester proved again. */
  readonly readings: Readonly<Record<string, StepValue>>;
}

/** The proof of every box on the list, by box id. */
export function deadProofs(walk: Walk): ReadonlyMap<string, DeadProof> {
  return new Map(
    walk.list.steps.flatMap(({ id, step, box }): [string, DeadProof][] => {
      if (!step.proves || box === null) return [];
      const { status, answer, because } = recordOf(walk, id);
      const state = status === 'closed' ? 'current' : answer === null ? 'never' : 'lapsed';
      const proof: DeadProof = {
        box,
        state,
        signedBy: answer?.name ?? null,
        signedAt: answer?.enteredAt ?? null,
        until: state === 'current' && answer ? endOf(walk, answer.enteredAt) : null,
        because: state === 'lapsed' ? because : null,
        readings: readingsOf(walk, box.id),
      };
      return [[box.id, proof]];
    }),
  );
}

function endOf({ list, lastOnSite }: Walk, signedAt: string): string {
  const { age, idle } = list.checklist.rules;
  const byAge = Date.parse(signedAt) + age.milliseconds;
  const byQuiet = (lastOnSite ?? Date.parse(signedAt)) + idle.milliseconds;
  return new Date(Math.min(byAge, byQuiet)).toISOString();
}

const readingsOf = (walk: Walk, box: string): Readonly<Record<string, StepValue>> =>
  Object.fromEntries(
    walk.list.steps.flatMap(({ id, step, box: its }) => {
      const { answer } = recordOf(walk, id);
      return its?.id === box && step.lapses.length > 0 && answer ? [[step.id, answer.value] as const] : [];
    }),
  );
