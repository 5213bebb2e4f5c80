import { heaviest, type Reply } from '#findings/reply.ts';
import type { AnyQuestion } from '#interview/question.ts';
import { type Outcome, type Recall, replay } from '#interview/replay.ts';
import { worded } from '#interview/worded.ts';
import { withMetric } from '#quantity/beside.ts';
import type { ScopedStore } from '#store/store.ts';
import { conversationWords } from '#words/conversation.ts';
import type { Language } from '#words/language.ts';
import { type Noted, recallFor, standInOf, unitsOf } from './answers.ts';
import { withAssumed } from './assumed.ts';
import type { AnswerCommand } from './command.ts';
import type { Asking, Screen } from './screen.ts';
import { type Apart, whichJob } from './which-job.ts';

/** What a person did with a screen: answered, pressed one of the standing buttons, or asked to change an answer. */
export type Heard =
  | { readonly answers: Readonly<Record<string, string>> }
  | { readonly turn: 'back' | 'why' | 'not-known' | 'another-job' }
  | { readonly change: string };

/** What a talk remembers besides the facts on the sheet. Stored after every turn, so a restart loses nothing. */
export interface Progress {
  /** Facts noted in this talk, oldest first, so that `back` knows what to take back. */
  readonly noted: readonly Noted[];
  /** The answer being built piece by piece. */
  readonly draft: string;
  /** A question asked again although the sheet has an answer. */
  readonly reopened: string | null;
  /** Questions whose answer was given and could not be read: asked again, whatever the sheet says, before there is an answer. */
  readonly unread?: readonly string[];
  /** Answers not noted yet, since they may be about another job. */
  readonly apart?: Apart;
}

export interface Talk {
  readonly id: string;
  readonly command: AnswerCommand<unknown>;
  readonly sheet: number;
  readonly who: string;
  /** The language of whoever looks at it now. */
  readonly language?: Language | undefined;
  /** Counts the turns, so that a button from an earlier screen is known as stale. */
  readonly revision: number;
  readonly progress: Progress;
}

export type Answers = readonly (readonly [question: AnyQuestion, typed: string])[];

export class TalkMovedOn extends Error {
  override readonly name = 'TalkMovedOn';
}

export const saidIn = ({ language = 'english' }: Talk) => conversationWords[language];

/** The screen of a talk as it stands: the next question, or the answer. */
export function screenOf(
  store: ScopedStore,
  talk: Talk,
  notes: readonly string[] = [],
  noted: readonly string[] = [],
): Screen {
  const recall = recallFor(store, talk.sheet, talk.command);
  const { asking, outcome } = standing(store, talk);
  const units = unitsOf(store);
  const { language } = talk;
  const shown = (question: AnyQuestion) =>
    worded(question, language).show(recall(question)?.value ?? question.whenUnknown.value, units);
  const told = (question: AnyQuestion) => {
    if (recall(question)?.known !== false) return shown(question);
    const instead = standInOf(question, units, language);
    return instead === undefined ? saidIn(talk).dontKnow : saidIn(talk).dontKnowTaken(instead);
  };
  const readBack = (question: AnyQuestion) => ({
    id: question.id,
    brief: worded(question, language).brief,
    shown: units === 'both' ? withMetric(told(question)) : told(question),
  });
  const screen = {
    talk: talk.id,
    revision: talk.revision,
    language,
    command: talk.command.name,
    notes,
    noted: talk.command.takes
      .filter((question) => noted.includes(question.id) && recall(question)?.known)
      .map(readBack),
    given: outcome.used.map(readBack),
  };
  const answer = (): Reply => {
    if (!outcome.complete) throw new Error(`${talk.command.name} neither asks nor answers`);
    return withAssumed(talk.command.answer(outcome.inputs, { units, language }), outcome.assumed, units);
  };
  const { reopened, unread = [], apart } = talk.progress;
  // A stop is never held back by a value that could not be read.
  const isOnlyUnread = asking && outcome.complete && !apart && asking.question.id !== reopened;
  if (asking && !(isOnlyUnread && stops(answer()))) {
    const isAgain = asking.question.id === reopened || unread.includes(asking.question.id);
    const standsNow = isAgain && recall(asking.question) !== undefined;
    return { ...screen, asking: standsNow ? { ...asking, now: told(asking.question) } : asking };
  }
  const reply = answer();
  return { ...screen, notes: [...notes, ...(reply.notes ?? [])], reply };
}

const stops = ({ findings }: Reply): boolean => heaviest(findings) === 'stop';

export function standing(store: ScopedStore, talk: Talk): { asking?: Asking; outcome: Outcome<unknown> } {
  const { progress, command } = talk;
  const recall = recallFor(store, talk.sheet, command);
  const unlessReopened: Recall = (question) => (question.id === progress.reopened ? undefined : recall(question));
  const outcome = replay(command.interview(), unlessReopened, 'conversation');
  const reopened = command.takes.find(({ id }) => id === progress.reopened);
  const whose = progress.apart && whichJob(store, talk.sheet, progress.apart);
  const open = unreadFirst(talk, outcome.complete ? [] : outcome.unanswered);
  const questions = whose ? [whose] : reopened ? [reopened] : open;
  const [question, ...others] = questions.map((each) => worded(each, talk.language));
  if (!question) return { outcome };
  const { growing, widget } = question;
  return {
    outcome,
    asking: {
      questions: growing ? [question] : [question, ...others],
      question,
      prompt: growing && progress.draft !== '' ? growing.prompt(progress.draft) : question.prompt,
      choices: growing ? growing.choices(progress.draft) : widget.kind === 'text' ? [] : widget.choices,
      canGoBack: progress.draft !== '' || progress.reopened !== null || progress.noted.length > 0,
    },
  };
}

/**
 * What is asked next, where an answer was given and could not be read: that again, a matter of safety first. Nothing goes on to
 * an answer without it, nor with what the sheet said before.
 */
function unreadFirst({ command, progress }: Talk, unanswered: readonly AnyQuestion[]): readonly AnyQuestion[] {
  const again = (progress.unread ?? []).flatMap(
    (id) => [...unanswered, ...command.takes].find((question) => question.id === id) ?? [],
  );
  const first = again.find(({ safety }) => safety) ?? again[0];
  if (first === undefined) return unanswered;
  if (!unanswered.includes(first)) return [first];
  return first.safety ? [first, ...unanswered.filter((question) => question !== first)] : unanswered;
}

/** Every question of a talk: those the command lists, and those that came up on the way. */
export const questionsOf = ({ command }: Talk, { outcome }: ReturnType<typeof standing>): readonly AnyQuestion[] => [
  ...command.takes,
  ...outcome.used,
];

/** A stored talk brought back, or nothing when it was stopped, is not of this place, or its command is gone. */
export function recalledTalk(
  store: ScopedStore,
  commands: readonly AnswerCommand<unknown>[],
  id: string,
  language?: Language,
): Talk | undefined {
  const row = store.talk(id);
  const command = commands.find(({ name }) => name === row?.command);
  if (!row || row.endedAt !== null || !command) return undefined;
  return {
    id: row.id,
    command,
    sheet: row.sheet,
    who: row.who,
    language,
    revision: row.revision,
    progress: JSON.parse(row.state) as Progress,
  };
}
