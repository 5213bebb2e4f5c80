import type { ChecklistStep } from '#knowledge/checklist.ts';
import type { Said } from './demo-job.ts';

/** What somebody did, as it must stand in the records. */
export interface Deed {
  /** Who, what, where and which choices, in one line. */
  readonly says: string;
  /**
   * `acknowledged`: whoever did it was told so. `unknown`: the program died before it said anything. `refused`: tried again
   * after that, it was refused, so it cannot have happened.
   */
  state: 'acknowledged' | 'unknown' | 'refused';
  /** It was acknowledged the first time, so its place among the others is known. */
  atOnce: boolean;
}

/** What is compared of an event in the records. */
export interface Recorded {
  readonly id: string;
  readonly who: string;
  readonly what: string;
  readonly step: string | null;
  readonly value: unknown;
}

const answered = ['done', 'signed'];

/** An answer to a step in one line. Numbers and words are left out: they are read and rounded on the way. */
export function answerLine(who: string, step: ChecklistStep, said: Said): string {
  const choices = step.evidence.flatMap((part) => {
    if (part.kind !== 'choice') return [];
    const words = said[part.id] ?? said[`part-${part.id}`];
    const option = part.options.find(({ id, label }) => id === words || label === words);
    return option ? [`${part.id}=${option.id}`] : [];
  });
  return [who, step.hold ? 'signed' : 'done', step.id, ...choices.sort()].join(' ');
}

/** An event in one line, as `answerLine` or whoever typed it says it. */
function recordedLine({ who, what, step, value }: Recorded, steps: readonly ChecklistStep[]): string {
  const id = step?.replace(/@.*$/, '');
  if (answered.includes(what)) {
    const known = steps.find((each) => each.id === id);
    const said = (typeof value === 'object' ? value : {}) as Said;
    return known ? answerLine(who, known, said) : `${who} ${what} ${id}`;
  }
  if (what === 'noted') return `${who} noted ${(value as { says: string }).says}`;
  return what === 'photo' ? `${who} photo ${id}` : `${who} ${what}`;
}

/**
 * What is wrong with the records, one line each: something acknowledged that is missing or out of order, something that is
 * there twice, and something that nobody did.
 */
export function complaintsAbout(
  deeds: readonly Deed[],
  events: readonly Recorded[],
  steps: readonly ChecklistStep[],
): string[] {
  const recorded = events.map((event) => recordedLine(event, steps));
  const counts = [...new Set([...deeds.map(({ says }) => says), ...recorded])].flatMap((line) => {
    const mine = deeds.filter(({ says }) => says === line);
    const must = mine.filter(({ state }) => state === 'acknowledged').length;
    const may = mine.filter(({ state }) => state === 'unknown').length;
    const there = recorded.filter((each) => each === line).length;
    return there < must || there > must + may
      ? [`“${line}” stands there ${there} times; ${must} acknowledged, ${may} not known`]
      : [];
  });
  let at = -1;
  const misplaced = deeds.find(({ says, state, atOnce }) => {
    if (state !== 'acknowledged' || !atOnce) return false;
    at = recorded.indexOf(says, at + 1);
    return at < 0;
  });
  const names = new Set(events.map(({ id }) => id));
  return [
    ...counts,
    ...(misplaced ? [`“${misplaced.says}” is missing or not in its place`] : []),
    ...(names.size === events.length ? [] : ['two events have one name']),
  ];
}
