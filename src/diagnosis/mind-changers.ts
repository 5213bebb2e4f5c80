import type { CallbackFindingId } from '#knowledge/callback-findings.ts';
import type { CauseId } from '#knowledge/causes.ts';
import { presentAfter, type State } from './checks.ts';
import type { Check, Column } from './reasoning.ts';

/** An answer that would unseat the leading cause, and what would lead in its place. */
export interface MindChanger {
  readonly finding: CallbackFindingId;
  readonly answer: 'seen' | 'not seen';
  readonly leads: CauseId;
}

/** An answer less likely than this is not worth holding out. */
const tooUnlikely = 0.01;

/** The few answers, among the checks left, after which another cause would lead: the likeliest of them first. */
export function mindChangers(leading: number, checks: readonly Check[], state: State): readonly MindChanger[] {
  const { reasoning } = state;
  return checks
    .flatMap(({ columns }) =>
      columns.flatMap((at) => (columns.length === 1 ? [true, false] : [true]).flatMap(change(at))),
    )
    .sort((a, b) => b.likelihood - a.likelihood)
    .slice(0, 3)
    .map(({ finding, answer, leads }) => ({ finding, answer, leads }));

  function change(at: number) {
    return (isSeen: boolean) => {
      const column = reasoning.columns[at] as Column;
      const { likelihood, present } = presentAfter(column, isSeen, state);
      if (likelihood < tooUnlikely) return [];
      const first = present.reduce((best, chance, cause) => (chance > (present[best] as number) ? cause : best), 0);
      if (first === leading) return [];
      const answer = isSeen ? ('seen' as const) : ('not seen' as const);
      return [{ finding: column.id, answer, leads: reasoning.causeIds[first] as CauseId, likelihood }];
    };
  }
}
