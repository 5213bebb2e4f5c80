import type { Store } from '#store/store.ts';

/** Days that what a server kept stays after the bot was sent away, in case that was a slip. Common practice, no source. */
const daysAfterLeaving = 30;

const day = 86_400_000;

/**
 * Erases everything kept for servers the bot has been away from for a month. Being back for a moment starts the month anew.
 *
 * @param mayErase Whether the clock can be trusted just now; if not, only who is away is noted.
 * @param present The servers the bot is in; what is kept for the terminal is none and stays.
 * @returns how many servers were erased.
 */
export function letGo(
  store: Pick<Store, 'scopes' | 'note' | 'saveNote' | 'scoped'>,
  present: ReadonlySet<string>,
  { now, mayErase }: { readonly now: Date; readonly mayErase: boolean },
): number {
  let erased = 0;
  for (const scope of store.scopes().filter((each) => /^\d+$/.test(each))) {
    const mark = `left ${scope}`;
    const left = store.note(mark) || undefined;
    if (present.has(scope)) {
      if (left !== undefined) store.saveNote(mark, '');
    } else if (left === undefined) store.saveNote(mark, now.toISOString());
    else if (mayErase && now.getTime() - Date.parse(left) >= daysAfterLeaving * day) {
      store.scoped(scope).eraseScope();
      store.saveNote(mark, '');
      erased += 1;
    }
  }
  return erased;
}
