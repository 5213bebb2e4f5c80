import type { Reading } from '#interview/question.ts';
import { plain } from '#interview/words.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { nextSteps } from '#walkthrough/next-steps.ts';
import { keyOf } from './short-key.ts';
import { type OpenWalk, toldOf, type Walker } from './swap-walk.ts';

/** A step on a button: it cannot be mistaken for another, however the list changes. */
export const stepKey = ({ id }: ListedStep): string => keyOf(id);

const called = ({ step, box, person }: ListedStep): string =>
  plain([step.code, box?.name ?? person?.name].filter(Boolean).join(' '));

/** A box that nobody named goes by its id as well, whatever the language it is told in. */
const byBox = ({ step, box }: ListedStep): string => plain(`${step.code} ${box?.id.replaceAll('-', ' ') ?? ''}`);

/** The step meant: by its button, its id, or its code with the box or the person behind it (E06 fan). */
export function stepMeant(walk: OpenWalk, text: string): Reading<ListedStep> {
  const said = plain(text);
  const { steps } = walk.state.list;
  const told = toldOf(walk);
  const exact = steps.find(
    (each) => stepKey(each) === said || each.id === text.trim() || called(each) === said || byBox(each) === said,
  );
  if (exact) return { value: exact };
  const alike = steps.filter(({ step }) => plain(step.code) === said || plain(step.id.replaceAll('-', ' ')) === said);
  const [only] = alike;
  if (only && alike.length === 1) return { value: only };
  return {
    rejected: only ? told.severalSteps(alike.length, alike.slice(0, 4).map(called).join(', ')) : told.notOnList,
  };
}

/** What comes first for one person. */
export const nextFor = ({ state }: OpenWalk, walker: Walker): ListedStep | undefined =>
  nextSteps(state, walker).yours[0];
