import type { Reply } from '#findings/reply.ts';
import type { AnyQuestion } from '#interview/question.ts';
import { type Outcome, type Recall, replay } from '#interview/replay.ts';
import { worded } from '#interview/worded.ts';
import { meansNotKnown, turnMeant } from '#interview/words.ts';
import { withMetric } from '#quantity/beside.ts';
import { leading } from '#quantity/units.ts';
import { SheetTrouble } from '#store/sheet-trouble.ts';
import type { ScopedStore } from '#store/store.ts';
import { conversationWords } from '#words/conversation.ts';
import type { Language } from '#words/language.ts';
import { type Noted, noteAnswers, recallFor, standInOf, unitsOf } from './answers.ts';
import { withAssumed } from './assumed.ts';
import type { AnswerCommand, Speaker } from './command.ts';
import type { Asking, Screen } from './screen.ts';
import { sheetTroubleText } from './sheet-trouble-text.ts';

/** What a person did with a screen: answered, pressed one of the standing buttons, or asked to change an answer. */
export type Heard =
  | { readonly answers: Readonly<Record<string, string>> }
  | { readonly turn: 'back' | 'why' | 'not-known' }
  | { readonly change: string };

/** What a talk remembers besides the facts on the sheet. Stored after every turn, so a restart loses nothing. */
interface Progress {
  /** Facts noted in this talk, oldest first, so that `back` knows what to take back. */
  readonly noted: readonly Noted[];
  /** The answer being built piece by piece. */
  readonly draft: string;
  /** A question asked again although the sheet has an answer. */
  readonly reopened: string | null;
  /** Questions whose answer was given and could not be read: asked again, whatever the sheet says, before there is an answer. */
  readonly unread?: readonly string[];
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

interface Turned {
  readonly progress: Progress;
  readonly notes: readonly string[];
  /** The ids of the questions answered by this turn. */
  readonly noted?: readonly string[];
}

interface Beginning {
  readonly sheet?: number | undefined;
  /** Options that were meant and did not come through, as where a name was misspelt. */
  readonly missed?: readonly string[];
}

/**
 * Starts a command with whatever was given at once; bad values are all named and asked again, good ones are kept. It is about
 * the sheet that lies open in the channel, unless another is named.
 */
export function begin(
  store: ScopedStore,
  command: AnswerCommand<unknown>,
  given: Readonly<Record<string, string>>,
  { sheet = undefined, missed = [], ...speaker }: Speaker & Beginning,
): Screen {
  return store.together(() =>
    begun(store, command, given, { speaker, missed, sheet: sheet ?? store.currentSheet(speaker).number }),
  );
}

function begun(
  store: ScopedStore,
  command: AnswerCommand<unknown>,
  given: Readonly<Record<string, string>>,
  { speaker, missed, sheet }: { readonly speaker: Speaker; readonly missed: readonly string[]; readonly sheet: number },
): Screen {
  const answers = command.takes.flatMap((question) => {
    const text = given[question.id];
    return text === undefined ? [] : [[question, text] as const];
  });
  const { noted, notes, unread } = noteAnswers(store, sheet, answers, speaker);
  const progress = { noted, draft: '', reopened: null, unread: [...new Set([...unread, ...missed])] };
  const { id, revision } = store.startTalk({
    channel: speaker.channel,
    sheet,
    command: command.name,
    who: speaker.who,
    state: JSON.stringify(progress),
  });
  const talk = { id, command, sheet, who: speaker.who, language: speaker.language, revision, progress };
  return keptFrom(store, talk, screenOf(store, talk, notes, idsOf(noted)));
}

const idsOf = (noted: readonly Noted[]): readonly string[] => noted.map(({ fact }) => fact);

/** Takes one turn of a talk and shows what stands in front of the person next. What was said and the step are kept as one. */
export function hear(store: ScopedStore, talk: Talk, heard: Heard, who: string): Screen {
  try {
    return store.together(() => {
      const { progress, notes, noted } = turn(store, talk, heard, who);
      const kept = store.saveTalk(talk.id, { revision: talk.revision, state: JSON.stringify(progress) });
      if (!kept) throw new TalkMovedOn();
      const moved = { ...talk, revision: talk.revision + 1, progress };
      return keptFrom(store, moved, screenOf(store, moved, notes, noted));
    });
  } catch (error) {
    if (error instanceof TalkMovedOn) {
      const now = recalledTalk(store, [talk.command], talk.id, talk.language);
      if (!now) return screenOf(store, talk, [saidIn(talk).stoppedMeanwhile(talk.command.name)]);
      return screenOf(store, now, [saidIn(talk).answeredMeanwhile]);
    }
    if (error instanceof SheetTrouble) return screenOf(store, talk, [unkept(error, talk)]);
    throw error;
  }
}

/** What an answer measured goes on the sheet, where later commands find it; once, however often the answer is shown. */
function keptFrom(store: ScopedStore, { sheet, who }: Talk, screen: Screen): Screen {
  const keeps = screen.reply?.keeps ?? [];
  if (keeps.length === 0) return screen;
  const known = store.newestFacts(sheet);
  const fresh = keeps.filter(({ fact, typed }) => known.get(fact)?.typed !== typed);
  store.addFacts(
    sheet,
    fresh.map(({ fact, typed }) => ({
      fact,
      typed,
      units: leading(unitsOf(store)),
      value: typed,
      how: 'measured',
      who,
    })),
  );
  return screen;
}

class TalkMovedOn extends Error {
  override readonly name = 'TalkMovedOn';
}

const saidIn = ({ language = 'english' }: Talk) => conversationWords[language];

const unkept = (trouble: SheetTrouble, talk: Talk): string =>
  trouble.code === 'closed' ? saidIn(talk).jobClosed(trouble.sheet) : sheetTroubleText(trouble, talk.language);

/** The screen of a talk as it stands: the next question, or the answer. */
export function screenOf(
  store: ScopedStore,
  talk: Talk,
  notes: readonly string[] = [],
  noted: readonly string[] = [],
): Screen {
  const recall = recallFor(store, talk.sheet, talk.command);
  const { asking, outcome } = standing(recall, talk);
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
  // A stop is never held back by a value that could not be read.
  if (asking && !(outcome.complete && asking.question.id !== talk.progress.reopened && stops(answer()))) {
    const { reopened, unread = [] } = talk.progress;
    const isAgain = asking.question.id === reopened || unread.includes(asking.question.id);
    const standsNow = isAgain && recall(asking.question) !== undefined;
    return { ...screen, asking: standsNow ? { ...asking, now: told(asking.question) } : asking };
  }
  return { ...screen, reply: answer() };
}

const stops = ({ findings }: Reply): boolean => findings.some(({ weight }) => weight === 'stop');

function standing(recall: Recall, talk: Talk): { asking?: Asking; outcome: Outcome<unknown> } {
  const { progress, command } = talk;
  const unlessReopened: Recall = (question) => (question.id === progress.reopened ? undefined : recall(question));
  const outcome = replay(command.interview(), unlessReopened, 'conversation');
  const reopened = command.takes.find(({ id }) => id === progress.reopened);
  const questions = reopened ? [reopened] : unreadFirst(talk, outcome.complete ? [] : outcome.unanswered);
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
const questionsOf = ({ command }: Talk, { outcome }: ReturnType<typeof standing>): readonly AnyQuestion[] => [
  ...command.takes,
  ...outcome.used,
];

function turn(store: ScopedStore, talk: Talk, heard: Heard, who: string): Turned {
  const { progress } = talk;
  const standsAt = standing(recallFor(store, talk.sheet, talk.command), talk);
  const { asking } = standsAt;
  if ('change' in heard) {
    const wanted = questionsOf(talk, standsAt).find(({ id }) => id === heard.change);
    if (!wanted) return { progress, notes: [saidIn(talk).noSuchAnswer] };
    return { progress: { ...progress, draft: '', reopened: wanted.id }, notes: [] };
  }
  if ('turn' in heard) {
    if (heard.turn === 'back') return goneBack(store, talk, who);
    if (!asking) return { progress, notes: [saidIn(talk).nothingAsked] };
    if (heard.turn === 'why') return { progress, notes: [asking.question.why] };
    return answered(store, talk, [[asking.question, "don't know"]], who);
  }
  const said = Object.entries(heard.answers);
  const single = said.length === 1 ? turnMeant(said[0]?.[1] ?? '') : undefined;
  if (single === 'back' || single === 'why') return turn(store, talk, { turn: single }, who);
  const byId = new Map(
    [...talk.command.takes, ...(asking?.questions ?? [])].map((question) => [question.id, question]),
  );
  const answers = said.flatMap(([id, text]) => {
    const question = byId.get(id);
    return question && (text.trim() !== '' || said.length === 1) ? [[question, text] as const] : [];
  });
  const [first] = answers;
  if (first?.[0].growing && !meansNotKnown(first[1])) return grown(store, talk, first[0], first[1], who);
  return answered(store, talk, answers, who);
}

/**
 * Takes back the last answer of this talk that still counts. One that somebody has answered anew or taken back since is
 * left alone.
 */
function goneBack(store: ScopedStore, talk: Talk, who: string): Turned {
  const { progress } = talk;
  const standsAt = standing(recallFor(store, talk.sheet, talk.command), talk);
  const growing = standsAt.asking?.question.growing;
  if (growing && progress.draft !== '') {
    return { progress: { ...progress, draft: growing.shrink(progress.draft) }, notes: [] };
  }
  if (progress.reopened !== null) return { progress: { ...progress, reopened: null }, notes: [] };
  const counting = store.newestFacts(talk.sheet);
  const index = progress.noted.findLastIndex(({ fact, row }) => counting.get(fact)?.id === row);
  const last = progress.noted[index];
  if (!last) return { progress, notes: [saidIn(talk).nothingToTakeBack] };
  store.retractNewest(talk.sheet, { who, fact: last.fact });
  const taken = questionsOf(talk, standsAt).find(({ id }) => id === last.fact);
  const brief = taken ? worded(taken, talk.language).brief : last.fact;
  return { progress: { ...progress, noted: progress.noted.slice(0, index) }, notes: [saidIn(talk).tookBack(brief)] };
}

function answered(
  store: ScopedStore,
  talk: Talk,
  answers: readonly (readonly [AnyQuestion, string])[],
  who: string,
): Turned {
  const { noted, notes, unread } = noteAnswers(store, talk.sheet, answers, { who, language: talk.language });
  const { progress } = talk;
  const isRead = (id: string) => noted.some(({ fact }) => fact === id);
  // One bad answer leaves its question open by itself; of several the bad ones are kept in mind.
  const again = [...(progress.unread ?? []), ...(answers.length > 1 ? unread : [])].filter((id) => !isRead(id));
  const reopened = noted.some(({ fact }) => fact === progress.reopened) ? null : progress.reopened;
  const next = { noted: [...progress.noted, ...noted], draft: '', reopened, unread: [...new Set(again)] };
  return { progress: next, notes, noted: idsOf(noted) };
}

function grown(store: ScopedStore, talk: Talk, question: AnyQuestion, piece: string, who: string): Turned {
  const { progress } = talk;
  const growth = question.growing?.grow(progress.draft, piece, unitsOf(store));
  if (!growth) return { progress, notes: [] };
  if ('rejected' in growth) return { progress, notes: [growth.rejected] };
  if ('draft' in growth) return { progress: { ...progress, draft: growth.draft }, notes: [] };
  return answered(store, talk, [[question, growth.done]], who);
}

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
