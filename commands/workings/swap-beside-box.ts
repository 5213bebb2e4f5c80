import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import { cubicInches } from '#quantity/units.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import type { StepValue } from '#walkthrough/walk-event.ts';
import boxfill from '../boxfill.ts';
import { serves } from '../questions/box.ts';
import { roomText } from './box-findings.ts';
import { assumedRemark, fromSheet, lacksRemark } from './from-sheet.ts';
import { remark } from './plain-replies.ts';
import { boxRetold } from './swap-retold.ts';
import { recallFor } from './swap-sheet.ts';
import { besideTold, type OpenWalk } from './swap-walk.ts';

/** What the sheet says a box serves, for each kind of box on a list; the first is how it is asked for. */
const servesFor = { fan: ['fan'], 'switch-box': ['switch'], 'junction-box': ['other', 'light'] } as const;

/** The count of one box, or why there is none. */
export interface Counted {
  /** Room left in cubic inches, below nothing where it is too full. Absent where it is not known. */
  readonly left?: number;
  readonly findings: readonly Finding[];
}

/** The sheet holds one box at a time: its count is used only where it says that it is this kind of box. */
export function boxCounted(desk: Desk, walk: OpenWalk, { box }: ListedStep): Counted {
  if (box === null) return { findings: [] };
  const told = besideTold(walk);
  const { language } = walk.checklist;
  const kinds: readonly string[] = servesFor[box.kind];
  const command = `boxfill serves=${kinds[0]}`;
  const recall = recallFor(desk, walk);
  const worked = fromSheet(boxfill.interview, recall);
  if ('lacks' in worked)
    return { findings: [lacksRemark(told.notCounted(box.name), worked.lacks, { command, language })] };
  const served = recall(serves);
  if (!served?.known || !kinds.includes(String(served.value))) {
    const says = told.otherBox(served?.known ?? false, command);
    return { findings: [remark('other-box', 'advice', says)] };
  }
  const { findings } = boxfill.answer(worked.inputs, desk.telling);
  const verdict = findings.find(({ id }) => id === 'volume-left');
  // What nobody told of the box may take room still: the least that is left counts.
  const left = verdict?.value?.low ?? verdict?.value?.number;
  const shown = findings.filter(
    ({ id, weight }) =>
      id === 'volume-left' ||
      id === 'fill-needed' ||
      id === 'code-edition' ||
      weight === 'caution' ||
      (id === 'box-that-fits' && verdict?.weight === 'stop'),
  );
  return {
    ...(typeof left === 'number' ? { left } : {}),
    findings: [
      ...boxRetold(shown, { language, units: desk.telling.units }),
      ...assumedRemark(worked.assumed, { command, language }),
    ],
  };
}

/**
 * The room to record: what somebody wrote, or what the count comes to where it is less or nothing was written. A box that
 * does not hold what the sheet says is in it never passes by the pen.
 */
export function roomToRecord(
  desk: Desk,
  walk: OpenWalk,
  listed: ListedStep,
  value: StepValue,
): { readonly value: StepValue; readonly findings: readonly Finding[] } {
  const { left, findings } = boxCounted(desk, walk, listed);
  const written = value['spare'];
  if (left === undefined) return { value, findings };
  if (typeof written === 'number' && written <= left + 1e-6) return { value, findings };
  const { units } = desk.telling;
  const told = besideTold(walk);
  const countSays =
    left < 0 ? told.lacking(roomText(cubicInches(-left), units)) : told.onlyLeft(roomText(cubicInches(left), units));
  const differs =
    typeof written === 'number'
      ? [remark('less-room', 'caution', told.written(roomText(cubicInches(written), units), countSays))]
      : [];
  return { value: { ...value, spare: left }, findings: [...differs, ...findings] };
}
