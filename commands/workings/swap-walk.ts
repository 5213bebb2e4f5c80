import type { Desk } from '#chat/command.ts';
import type { Reading } from '#interview/question.ts';
import type { Checklist } from '#knowledge/checklist.ts';
import { checklistsIn } from '#knowledge/checklist-spanish.ts';
import { type ChecklistId, checklists } from '#knowledge/checklists.ts';
import { replayWalk, type WalkClock } from '#walkthrough/replay.ts';
import type { WalkEvent } from '#walkthrough/walk-event.ts';
import type { WalkFacts } from '#walkthrough/walk-facts.ts';
import { walkList } from '#walkthrough/walk-list.ts';
import type { WalkState } from '#walkthrough/walk-state.ts';
import type { Language } from '#words/language.ts';
import { languageAt, type SwapWords, swapWords } from '../words/swap.ts';
import { type BesideWords, besideWords } from '../words/swap-beside.ts';
import { isMention, memberNamed } from './crew-people.ts';
import { keyOf } from './short-key.ts';

/** One list of one job, as it stands. */
export interface OpenWalk {
  readonly sheet: number;
  /** Name of the list in the records: its id, with a number behind it where it was walked before. */
  readonly list: string;
  readonly checklist: Checklist;
  readonly events: readonly WalkEvent[];
  readonly state: WalkState;
  readonly clock: WalkClock;
}

/** Who is asking, as the crew's records know the person at this moment. */
export interface Walker {
  readonly who: string;
  readonly standing: WalkEvent['standing'];
  readonly day: string;
  /** Carried on what can be pressed in a terminal, where one keyboard serves several people. */
  readonly as?: string;
}

/** Where a day begins first on earth: where nobody has said where the crew works, a licence rather ends a day early. */
const earliest = 'Pacific/Kiritimati';

const dayFormat = (timeZone: string): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });

/** What a list is read from. */
type Records = Pick<Desk, 'store' | 'now'>;

/** The time zone the crew works in; `undefined` where nobody has set it. */
export const zoneOf = ({ store }: Pick<Desk, 'store'>): string | undefined => store.setting('time-zone');

function clockOf(desk: Records): WalkClock {
  const format = dayFormat(zoneOf(desk) ?? earliest);
  return { now: desk.now(), dayOf: (instant) => format.format(new Date(instant)) };
}

const idOfList = (list: string): string => list.split('~')[0] ?? list;
export const isChecklist = (id: string): id is ChecklistId => Object.hasOwn(checklists, id);

/** What stands at the beginning of every list: the facts it was made from. */
export const startedEvent = 'started';
const factsIn = (value: unknown): WalkFacts =>
  typeof value === 'object' && value !== null && 'facts' in value ? (value.facts as WalkFacts) : {};

/** One list of a job replayed to this moment, told in a language; nothing where it was never started. */
export function walkOn(
  desk: Records,
  sheet: number,
  list: string,
  language: Language = 'english',
): OpenWalk | undefined {
  const [start, ...rest] = desk.store.walkEvents(sheet, list);
  const id = idOfList(list);
  if (start?.what !== startedEvent || !isChecklist(id)) return undefined;
  const checklist = checklistsIn[language][id];
  const clock = clockOf(desk);
  const inputs = walkList({ checklist, facts: factsIn(start.value), boxes: [], crew: [] });
  return { sheet, list, checklist, events: rest, state: replayWalk(inputs, rest, clock), clock };
}

/** What is said of a list, in its language. */
/** What is worked out beside a step, in the language of its list. */
export const besideTold = ({ checklist }: Pick<OpenWalk, 'checklist'>): BesideWords => besideWords[checklist.language];

export const toldOf = ({ checklist }: Pick<OpenWalk, 'checklist'>): SwapWords => swapWords[checklist.language];

/** The lists of a job, the one touched last at the end. */
export const listsOf = ({ store }: Pick<Desk, 'store'>, sheet: number): readonly string[] => {
  const touched = new Set<string>();
  for (const { list } of store.walkEvents(sheet)) {
    touched.delete(list);
    touched.add(list);
  }
  return [...touched];
};

/** Where a list stood when it was shown: the job, the list and how much had happened. It travels on buttons. */
export const tokenOf = ({ sheet, list, events }: OpenWalk): string => `${sheet}.${keyOf(list, 4)}.${events.length}`;

/** The list meant, and how much had happened when it was shown to whoever means it. */
export interface Meant {
  readonly walk: OpenWalk;
  readonly shownAt: number | null;
}

/** Finds the list an action is about: the one on the button, the job named, or the list touched last on the job open here. */
export function walkMeant(desk: Desk, job: string | undefined): Reading<Meant> {
  const language = languageAt(desk);
  const told = swapWords[language];
  const [, number, key, count] = /^(\d{1,9})\.([0-9a-f]{4})\.(\d{1,6})$/.exec(job ?? '') ?? [];
  const sheet =
    number !== undefined
      ? Number(number)
      : job === undefined
        ? desk.store.currentSheet(desk.speaker).number
        : desk.store.findSheet(job)?.number;
  if (sheet === undefined) return { rejected: told.noSuchJob };
  const lists = listsOf(desk, sheet);
  const list = key === undefined ? lists.at(-1) : lists.find((each) => keyOf(each, 4) === key);
  const walk = list === undefined ? undefined : walkOn(desk, sheet, list, language);
  if (!walk) return { rejected: told.noList };
  return { value: { walk, shownAt: count === undefined ? null : Number(count) } };
}

/**
 * Who acts. Where people speak with a name of their own, nobody speaks for another; at one keyboard, `as` says who it is.
 * What that person may do always comes from the crew's records.
 */
export function walkerOf(desk: Desk, as: string | undefined): Reading<Walker> {
  const { day, who } = { day: dayNow(desk), who: desk.speaker.who };
  if (as === undefined) return { value: { who, standing: desk.store.standing(who), day } };
  if (isMention(who)) return { rejected: swapWords[languageAt(desk)].ownName };
  const found = memberNamed(desk, as);
  if ('rejected' in found) return found;
  return { value: { who: found.value.who, standing: desk.store.standing(found.value.who), day, as: found.value.who } };
}

const dayNow = (desk: Desk): string => {
  const { now, dayOf } = clockOf(desk);
  return dayOf?.(now) ?? now.slice(0, 10);
};
