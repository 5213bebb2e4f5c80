import type { ScopedStore } from '#store/store.ts';
import { cardsOfLead, honestCrew, lastDay, stepShown } from '../support/whole-swap/demo-job.ts';
import { type DeskSight, deskDeed, doneAtDesk } from '../support/whole-swap/desk-place.ts';

const lead = 'Ann (invented)';
const apprentice = 'Ben (invented)';

/** Steps after which the list of the demo house is somewhere in the middle: the box is proven dead and the old fan is out. */
const stepsDone = 56;

/** An invented lead and apprentice walk the list of the demo house part of the way, as its pages ask them to. */
export function walkedPartly(store: ScopedStore, job: string): void {
  const crew = honestCrew();
  const typed = (who: string, words: string, given: Readonly<Record<string, string>> = {}) =>
    doneAtDesk(store, deskDeed.typed(who, words, given), true);
  for (const [person, as] of [
    [lead, 'lead'],
    [apprentice, 'apprentice'],
  ] as const)
    typed(lead, 'crew add', { person, as, name: person });
  for (const [what, number] of cardsOfLead)
    typed(lead, 'crew qualify', { person: lead, what, number, expires: lastDay });
  typed(lead, 'job open', { name: job });
  for (const who of [lead, apprentice]) typed(who, 'swap join');
  for (let done = 0; done < stepsDone; done += 1) {
    // The apprentice does what an apprentice may; the lead the rest.
    const turns = [apprentice, lead].map((who) => ({ who, sight: typed(who, 'swap next') }));
    const turn = turns.find(({ sight }) => stepShown(sight.headline, 'swap') !== undefined);
    if (!turn)
      throw new Error(`nobody can go on after ${done} steps: ${turns.map(({ sight }) => sight.text).join(' / ')}`);
    stepDone(turn.who, turn.sight);
  }

  function stepDone(who: string, sight: DeskSight): void {
    const step = stepShown(sight.headline, 'swap');
    if (!step) return;
    const choice = crew.choice(step);
    const label = choice
      ? sight.presses.find((each) => each === choice.label || each.endsWith(`: ${choice.label}`))
      : sight.presses[0];
    let shows = doneAtDesk(store, deskDeed.pressed(who, sight, label ?? ''), true);
    while (shows.form) shows = doneAtDesk(store, deskDeed.filled(who, shows, crew.fill(step, shows.form)), true);
    if (shows.refused) throw new Error(`${step.code} was refused: ${shows.text}`);
  }
}
