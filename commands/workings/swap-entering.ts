import type { Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { accepts } from '#walkthrough/replay.ts';
import { words } from '#walkthrough/walk-event.ts';
import { keyOf } from './short-key.ts';
import { type OpenWalk, toldOf, type Walker, walkOn } from './swap-walk.ts';

/** Something a person wants kept. */
export interface Entry {
  readonly what: string;
  readonly step: ListedStep | null;
  readonly value: unknown;
  /** When it was so, where it is entered later than it was done. */
  readonly at?: Date | undefined;
}

/** How it went: the list as it stands now, and what goes with it; or why nothing was kept. */
export type Entered =
  | { readonly walk: OpenWalk; readonly says: string | null; readonly closes: boolean; readonly fresh: boolean }
  | { readonly refused: string };

/** Nothing was done, and this is why. */
export const refusedReply = (because: string, more: Partial<Reply> = {}): Reply => ({
  headline: because,
  findings: [],
  refused: true,
  ...more,
});

/**
 * One id for each thing that happens. What was pressed carries where the list stood when it was shown, so that the same
 * press delivered twice is one thing; what was typed happens at the place the list has reached.
 */
function idOf({ sheet, list, events }: OpenWalk, { who }: Walker, entry: Entry, shownAt: number | null): string {
  const { what, step, value } = entry;
  return `swap-${keyOf(JSON.stringify([sheet, list, shownAt ?? events.length, what, step?.id ?? null, who, value]), 24)}`;
}

/** What changes a step by being kept. */
const answers = ['done', 'signed', 'overridden', 'undone'];
/** What changes nothing of what a signature rests on. */
const besides = ['noted', 'photo'];

function staleness(walk: OpenWalk, { what, step, value }: Entry, shownAt: number | null): string | null {
  if (shownAt === null) return null;
  const told = toldOf(walk);
  const since = walk.events.slice(shownAt);
  if (what === 'fact') {
    const fact = words(value, 'fact');
    return since.some((event) => event.what === 'fact' && words(event.value, 'fact') === fact) ? told.factSince : null;
  }
  if (step === null) return null;
  if (what === 'signed' && since.some((event) => !besides.includes(event.what))) {
    return told.recordedSince;
  }
  return since.some((event) => event.step === step.id && answers.includes(event.what)) ? told.answeredSince : null;
}

/** Keeps one event if the list accepts it from this person at this moment. */
export function enter(
  desk: Desk,
  walk: OpenWalk,
  walker: Walker,
  { shownAt, ...entry }: Entry & { readonly shownAt: number | null },
): Entered {
  const id = idOf(walk, walker, entry, shownAt);
  const known = walk.events.some((event) => event.id === id);
  if (known) return { walk, says: null, closes: false, fresh: false };
  const stale = staleness(walk, entry, shownAt);
  if (stale) return { refused: stale };
  const { now } = walk.clock;
  const event = {
    id,
    step: entry.step?.id ?? null,
    what: entry.what,
    value: entry.value,
    who: walker.who,
    standing: walker.standing,
    at: entry.at?.toISOString() ?? now,
  };
  const verdict = accepts(walk.state, event, walk.clock);
  if ('refused' in verdict) return verdict;
  if (verdict.again) return { walk, says: null, closes: false, fresh: false };
  const { standing: _, at: __, ...fresh } = event;
  desk.store.addWalkEvent(walk.sheet, { ...fresh, list: walk.list, at: entry.at });
  const after = walkOn(desk, walk.sheet, walk.list, walk.checklist.language) ?? walk;
  const late = after.state.refused.find((each) => each.event.id === id);
  return late ? { refused: late.because } : { walk: after, says: verdict.says, closes: verdict.closes, fresh: true };
}

/** Keeps nothing of what a refusal came after. */
export function allOrNothing(desk: Desk, work: () => Reply): Reply {
  class Refused extends Error {}
  let reply: Reply | undefined;
  try {
    return desk.store.together(() => {
      reply = work();
      if (reply.refused) throw new Refused();
      return reply;
    });
  } catch (error) {
    if (error instanceof Refused && reply) return reply;
    throw error;
  }
}
