import type { Desk } from '#chat/command.ts';
import type { Interview } from '#interview/interview.ts';
import { take } from '#interview/interview.ts';
import type { Question } from '#interview/question.ts';
import { replay } from '#interview/replay.ts';
import type { StepView } from '#walkthrough/walk-state.ts';
import type { Language } from '#words/language.ts';
import { measuredAirflow } from '../questions/airflow.ts';
import { runTimeSet } from '../questions/callback-measured.ts';
import { doorGap } from '../questions/door.ts';
import { airflowNeeded } from '../questions/fan.ts';
import { occupantWords } from '../words/occupant.ts';
import { walksBroughtIn } from './handoff-brought-in.ts';
import { listsOf, type OpenWalk, walkOn, zoneOf } from './swap-walk.ts';

/** What a question is answered with; nothing where nobody knows. */
type Answer<Asked> = Asked extends Question<infer Value> ? Value | null : never;

/** What the papers are made from. */
export interface HandOff {
  readonly sheet: { readonly number: number; readonly name: string | null };
  /** The lists that were walked here. */
  readonly walks: readonly OpenWalk[];
  /** The lists a file says were walked elsewhere. Nothing in them counts. */
  readonly broughtIn: readonly OpenWalk[];
  readonly day: (instant: string) => string;
  readonly moment: (instant: string) => string;
  readonly zone: string;
  readonly made: Date;
  /** In which its lists and dates are told. */
  readonly language: Language;
}

/** Every list of a job, with dates told where the crew works. */
export function handOffOf(desk: Desk, number: number, language: Language = 'english'): HandOff {
  const words = occupantWords[language];
  const zone = zoneOf(desk) ?? 'UTC';
  const days = new Intl.DateTimeFormat(words.locale, { timeZone: zone, dateStyle: 'long' });
  const moments = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    year: 'numeric',
    month: 'short',
    day: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  return {
    language,
    sheet: { number, name: desk.store.findSheet(number)?.name ?? null },
    walks: listsOf(desk, number).flatMap((list) => walkOn(desk, number, list, language) ?? []),
    broughtIn: walksBroughtIn(desk, number),
    day: (instant) => days.format(new Date(instant)),
    moment: (instant) => moments.format(new Date(instant)),
    zone: zoneOf(desk) ?? words.noZone,
    made: new Date(desk.now()),
  };
}

/** A step that counts as closed on the list walked last that has it; nothing while it is open. */
function closedStep({ walks }: HandOff, step: string): (StepView & Pick<Recorded, 'value'>) | undefined {
  for (const { state } of walks.toReversed()) {
    const view = state.steps.get(step);
    // A step that a lead passed over has closed as well, by what was measured before.
    const counts = view?.status === 'closed' || view?.status === 'skipped';
    if (counts && view.answer) return { ...view, value: view.answer.value };
  }
  return undefined;
}

interface Recorded {
  readonly value: Readonly<Record<string, string | number | boolean>>;
}

/** A number that a closed step recorded, in the SI unit of its part. */
export function numberRecorded(off: HandOff, step: string, part: string): number | null {
  const said = closedStep(off, step)?.value[part];
  return typeof said === 'number' ? said : null;
}

/** How long the control lets the fan run on, in seconds: what was said last, on the sheet or on a list. */
export function runOnNow(desk: Desk, off: HandOff): number | null {
  const walked = numberRecorded(off, runTimeSet.id, 'minutes');
  const enteredAt = closedStep(off, runTimeSet.id)?.answer?.enteredAt;
  const fact = desk.store.newestFacts(off.sheet.number).get(runTimeSet.id);
  if (fact === undefined || (walked !== null && enteredAt !== undefined && enteredAt > fact.enteredAt)) return walked;
  return onSheet(desk, off).runOn ?? walked;
}

/** Words that a closed step recorded. */
export function wordsRecorded(off: HandOff, step: string, part: string): string | null {
  const said = closedStep(off, step)?.value[part];
  return typeof said === 'string' ? said : null;
}

/** Why a lead passed a step over; nothing where it was done, or is open. */
export function passedBecause(off: HandOff, step: string): string | null {
  const view = closedStep(off, step);
  return view?.status === 'skipped' ? view.because : null;
}

/** The choice a closed step recorded: its id, and the words on its button. */
export function choiceRecorded(off: HandOff, step: string, part: string) {
  const view = closedStep(off, step);
  const said = view?.value[part];
  const asked = view?.listed.parts.find((each) => each.id === part);
  const option = asked?.kind === 'choice' ? asked.options.find(({ id }) => id === said) : undefined;
  return option && { id: option.id, label: option.label };
}

/** What the sheet knows of the airflow and the door; nothing where nobody has said it. */
export function onSheet(desk: Desk, { sheet }: HandOff) {
  function* taking(): Interview<{
    needed: Answer<typeof airflowNeeded>;
    gap: Answer<typeof doorGap>;
    measured: Answer<typeof measuredAirflow>;
    runOn: number | null;
  }> {
    const needed = yield* take(airflowNeeded);
    const gap = yield* take(doorGap);
    const measured = yield* take(measuredAirflow);
    const runOn = yield* take(runTimeSet);
    return {
      needed: needed.known ? needed.value : null,
      gap: gap.known ? gap.value : null,
      measured: measured.known ? measured.value : null,
      runOn: runOn.known ? runOn.value : null,
    };
  }
  const outcome = replay(taking(), desk.recallOn(sheet.number), 'one-shot');
  return outcome.complete ? outcome.inputs : { needed: null, gap: null, measured: null, runOn: null };
}
