import type { Desk } from '#chat/command.ts';
import { checklists } from '#knowledge/checklists.ts';
import { replayWalk } from '#walkthrough/replay.ts';
import type { WalkFacts } from '#walkthrough/walk-facts.ts';
import { walkList } from '#walkthrough/walk-list.ts';
import { isChecklist, type OpenWalk, startedEvent } from './swap-walk.ts';

/** The facts a file says a list began with; what could not be a fact is left out, and so counts as not known. */
function factsIn(value: unknown): WalkFacts {
  const facts = typeof value === 'object' && value !== null && 'facts' in value ? value.facts : undefined;
  if (typeof facts !== 'object' || facts === null) return {};
  const isWords = (said: unknown): said is string | readonly string[] =>
    typeof said === 'string' || (Array.isArray(said) && said.every((each) => typeof each === 'string'));
  return Object.fromEntries(
    Object.entries(facts).flatMap(([fact, said]) => (isWords(said) ? [[fact, said] as const] : [])),
  );
}

/** The lists that came with a file, as the file says they were walked: for reading, and for nothing else. */
export function walksBroughtIn({ store, now }: Pick<Desk, 'store' | 'now'>, sheet: number): readonly OpenWalk[] {
  const happened = store.importedWalkEvents(sheet);
  return [...new Set(happened.map(({ list }) => list))].flatMap((list) => {
    const [start, ...events] = happened.filter((event) => event.list === list);
    const id = list.split('~')[0] ?? list;
    if (start?.what !== startedEvent || !isChecklist(id)) return [];
    const checklist = checklists[id];
    const inputs = walkList({ checklist, facts: factsIn(start.value), boxes: [], crew: [] });
    // Looked at as of its last word: how long ago that is takes nothing off what the file says.
    const clock = { now: events.at(-1)?.enteredAt ?? now() };
    return [{ sheet, list, checklist, events, state: replayWalk(inputs, events, clock), clock }];
  });
}
