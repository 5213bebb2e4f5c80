import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { remark } from './plain-replies.ts';
import { measuredBeside } from './swap-beside.ts';
import { type Entry, enter, refusedReply } from './swap-entering.ts';
import { nextPage, stepPage } from './swap-page.ts';
import { nextFor, stepKey, stepMeant } from './swap-steps.ts';
import { fieldsOf, filledIn, readFilled } from './swap-values.ts';
import { type Meant, tokenOf, type Walker, walkerOf, walkMeant } from './swap-walk.ts';

export type Given = Readonly<Record<string, string>>;

/** Where an action happens, and for whom. */
export interface Scene extends Meant {
  readonly walker: Walker;
}

export function scene(desk: Desk, given: Given): Scene | { readonly rejected: string } {
  const walker = walkerOf(desk, given['as']);
  if ('rejected' in walker) return walker;
  const meant = walkMeant(desk, given['job']);
  return 'rejected' in meant ? meant : { ...meant.value, walker: walker.value };
}

/** The step meant; the next one of this person when none is named. */
export function stepOf({ walk, walker }: Scene, said: string | undefined): ListedStep | { readonly rejected: string } {
  if (said !== undefined && said.trim() !== '') {
    const meant = stepMeant(walk, said);
    return 'rejected' in meant ? meant : meant.value;
  }
  return nextFor(walk, walker) ?? { rejected: nextPage(walk, walker, { units: 'inch-pound' }).headline };
}

/** Keeps something, then shows what comes next with a word on what was kept. */
export function kept(desk: Desk, at: Scene, entry: Entry, done: string): Reply {
  const entered = enter(desk, at.walk, at.walker, { ...entry, shownAt: at.shownAt });
  if ('refused' in entered) return refusedReply(entered.refused);
  const { walk, says, closes, fresh } = entered;
  const open = entry.step !== null && !closes && fresh && (entry.what === 'done' || entry.what === 'signed');
  const beside = entry.step?.step.id === 'measured-airflow' && fresh ? measuredBeside(desk, entry.value) : [];
  const first: readonly Finding[] = [
    fresh
      ? remark('recorded', open ? 'caution' : 'good', `${open ? 'Recorded, and the step stays open' : done}.`)
      : remark('recorded', 'good', 'That is recorded already. It counts once.'),
    ...(says ? [remark('says', 'caution', says)] : []),
    ...beside,
  ];
  return nextPage(walk, at.walker, { units: desk.telling.units, first });
}

/** What a form or an option says of a step. */
const filledOf = (listed: ListedStep, given: Given): Given => {
  const fields = fieldsOf(listed).flatMap(({ id }) => {
    const text = Object.hasOwn(given, `part-${id}`) ? given[`part-${id}`] : undefined;
    return text === undefined ? [] : [[id, text] as const];
  });
  return { ...filledIn(listed, given['value'] ?? ''), ...Object.fromEntries(fields) };
};

/** `done` and `sign` are one thing to read and two things to mean. */
export function answered(desk: Desk, given: Given, what: 'done' | 'signed'): Reply {
  const at = scene(desk, given);
  if ('rejected' in at) return refusedReply(at.rejected);
  const listed = stepOf(at, given['step']);
  if ('rejected' in listed) return refusedReply(listed.rejected);
  const { walk, walker } = at;
  const filled = filledOf(listed, given);
  const said = Object.keys(filled).length > 0;
  const shown = at.shownAt !== null || given['confirm'] === 'yes';
  const { units } = desk.telling;
  if (what === 'signed' && listed.step.hold && !shown) {
    return stepPage(walk, walker, listed, {
      units,
      first: [
        remark(
          'look-first',
          'advice',
          'This is what you sign for. Press the button below, or say it again with confirm=yes.',
        ),
      ],
    });
  }
  if (!said && listed.parts.length > 0) {
    const page = stepPage(walk, walker, listed, { units });
    return {
      ...page,
      asks: {
        title: listed.title,
        command: 'swap',
        action: what === 'signed' ? 'sign' : 'done',
        given: {
          job: at.shownAt === null ? tokenOf(walk) : (given['job'] ?? ''),
          step: stepKey(listed),
          ...(walker.as ? { as: walker.as } : {}),
        },
        fields: fieldsOf(listed).map((field) => ({ ...field, id: `part-${field.id}` })),
      },
    };
  }
  const reading = readFilled(listed, filled, units);
  if ('rejected' in reading) return refusedReply(reading.rejected);
  const late = given['at'] === undefined ? undefined : new Date(given['at']);
  if (late && Number.isNaN(late.getTime())) return refusedReply('Give the time such as 2027-03-31T14:05Z.');
  const verb = what === 'signed' ? 'Signed' : 'Done';
  return kept(desk, at, { what, step: listed, value: reading.value, at: late }, `${verb}: ${listed.title}`);
}
