import { heaviest } from '#findings/reply.ts';
import type { AnyQuestion } from '#interview/question.ts';
import { worded } from '#interview/worded.ts';
import { meansNotKnown, turnMeant } from '#interview/words.ts';
import { leading } from '#quantity/units.ts';
import type { ScopedStore } from '#store/store.ts';
import { whichJobWords } from '#words/which-job.ts';
import { type Noted, noteAnswers, unitsOf } from './answers.ts';
import type { AnswerCommand, Speaker } from './command.ts';
import type { Screen } from './screen.ts';
import {
  type Answers,
  type Heard,
  type Progress,
  questionsOf,
  screenOf,
  standing,
  type Talk,
  TalkMovedOn,
} from './talk.ts';
import { type Apart, goesOn, nameFor, openedFor, sheetPicked, strangerIn, whichJob, whichJobId } from './which-job.ts';

/** On the sheet open here, where the line may be about another. */
export function begunHere(
  store: ScopedStore,
  command: AnswerCommand<unknown>,
  answers: Answers,
  { line, missed, ...speaker }: Speaker & { readonly line: string; readonly missed: readonly string[] },
): Screen {
  const sheet = store.currentSheet(speaker).number;
  const named = strangerIn(store, sheet, line);
  if (named !== undefined) {
    const danger = stoppedElsewhere(store, command, answers, { ...speaker, sheet, named });
    if (danger) return danger;
    const progress = { noted: [], draft: '', reopened: null, unread: missed, apart: apartFrom(answers, named) };
    return screenOf(store, talkStarted(store, command, { speaker, sheet, progress }));
  }
  const called = nameGiven(store, sheet, line, speaker);
  const where = goesOn(store, sheet, { complaint: command.inWords?.id, line, language: speaker.language });
  const screen = begunOn(store, command, answers, { speaker, sheet, missed });
  return where === undefined
    ? { ...screen, notes: [...called, ...screen.notes] }
    : { ...screen, notes: [where, ...screen.notes], mayGoElsewhere: true };
}

/** On this very sheet. */
export function begunOn(
  store: ScopedStore,
  command: AnswerCommand<unknown>,
  answers: Answers,
  {
    speaker,
    sheet,
    missed = [],
  }: { readonly speaker: Speaker; readonly sheet: number; readonly missed?: readonly string[] },
): Screen {
  const { noted, notes, unread } = noteAnswers(store, sheet, answers, speaker);
  const progress = { noted, draft: '', reopened: null, unread: [...new Set([...unread, ...missed])] };
  const talk = talkStarted(store, command, { speaker, sheet, progress });
  return keptFrom(store, talk, screenOf(store, talk, notes, idsOf(noted)));
}

function talkStarted(
  store: ScopedStore,
  command: AnswerCommand<unknown>,
  { speaker, sheet, progress }: { readonly speaker: Speaker; readonly sheet: number; readonly progress: Progress },
): Talk {
  const { channel, who, language } = speaker;
  const { id, revision } = store.startTalk({
    channel,
    sheet,
    command: command.name,
    who,
    state: JSON.stringify(progress),
  });
  return { id, command, sheet, who, language, revision, progress };
}

/** What an answer measured goes on the sheet, where later commands find it; once, however often the answer is shown. */
export function keptFrom(store: ScopedStore, { sheet, who }: Talk, screen: Screen): Screen {
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

export const idsOf = (noted: readonly Noted[]): readonly string[] => noted.map(({ fact }) => fact);

/** Answers put aside until it is said which job they are about. */
export const apartFrom = (answers: Answers, named: string): Apart => ({
  answers: answers.map(([{ id }, typed]) => [id, typed]),
  named,
});

/** A clean sheet without a name takes the name of the house the line is about; what is said of that. */
export function nameGiven(
  store: ScopedStore,
  sheet: number,
  line: string,
  { who, language = 'english' }: Speaker,
): string[] {
  const name = nameFor(store, sheet, line);
  if (name === undefined) return [];
  store.renameSheet(sheet, { name, who });
  return [whichJobWords[language].called(name, sheet)];
}

/** A danger is told before it is asked whose house it is in: on a sheet of its own, so that nothing gets mixed. */
function stoppedElsewhere(
  store: ScopedStore,
  command: AnswerCommand<unknown>,
  answers: Answers,
  { sheet, named, ...speaker }: Speaker & { readonly sheet: number; readonly named: string },
): Screen | undefined {
  class NoDanger extends Error {}
  try {
    return store.together(() => {
      const to = sheetPicked(store, 'known', { ...speaker, sheet, named });
      const screen = begunOn(store, command, answers, { speaker, sheet: to });
      if (!screen.reply || heaviest(screen.reply.findings) !== 'stop') throw new NoDanger();
      const note = openedFor(store, { to, from: sheet, moved: false, language: speaker.language });
      return { ...screen, notes: [...screen.notes, note] };
    });
  } catch (error) {
    if (error instanceof NoDanger) return undefined;
    throw error;
  }
}

/** What belongs to another job goes there, the talk with it; nothing where it stays on this sheet. */
export function heardElsewhere(store: ScopedStore, talk: Talk, heard: Heard, who: string): Screen | undefined {
  const { command, sheet, language, progress } = talk;
  const { apart } = progress;
  const channel = store.talk(talk.id)?.channel ?? '';
  const speaker = { channel, who, language };
  const leave = () => {
    if (!store.saveTalk(talk.id, { revision: talk.revision, state: JSON.stringify(progress) })) throw new TalkMovedOn();
    store.endTalk(talk.id);
  };
  const goneTo = (picked: string, answers: Answers, named: string | null): Screen => {
    leave();
    const to = sheetPicked(store, picked, { ...speaker, sheet, named });
    const screen = begunOn(store, command, answers, { speaker, sheet: to });
    const note = openedFor(store, { to, from: sheet, moved: !apart && answers.length > 0, language });
    return { ...screen, notes: [note, ...screen.notes] };
  };
  if (apart) {
    const picked = jobPicked(store, talk, apart, heard);
    return picked === undefined || picked === 'here' ? undefined : goneTo(picked, heldBy(command, apart), apart.named);
  }
  if (meansAnotherJob(heard)) return goneTo('new', takenAlong(store, talk, who), null);
  const told = complaintIn(talk, heard);
  const named = told && strangerIn(store, sheet, told[1]);
  const danger = named && told && stoppedElsewhere(store, command, [told], { ...speaker, sheet, named });
  if (danger) leave();
  return danger || undefined;
}

/** Which job was picked; nothing where something else was said. */
export function jobPicked(store: ScopedStore, talk: Talk, apart: Apart, heard: Heard): string | undefined {
  if (meansAnotherJob(heard) || ('turn' in heard && heard.turn === 'not-known')) return 'new';
  const said = 'answers' in heard ? (heard.answers[whichJobId] ?? '') : '';
  if (meansNotKnown(said)) return 'new';
  const reading = worded(whichJob(store, talk.sheet, apart), talk.language).read(said, unitsOf(store));
  return 'value' in reading ? String(reading.value) : undefined;
}

/** The answers that were put aside, with their questions. */
export const heldBy = ({ takes }: AnswerCommand<unknown>, { answers }: Apart): Answers =>
  answers.flatMap(([id, typed]) => {
    const question = takes.find((each) => each.id === id);
    return question ? [[question, typed] as const] : [];
  });

const meansAnotherJob = (heard: Heard): boolean => {
  if ('turn' in heard) return heard.turn === 'another-job';
  const said = 'answers' in heard ? Object.values(heard.answers) : [];
  return said.length === 1 && turnMeant(said[0] ?? '') === 'another-job';
};

/** The complaint, where it is what was just said. */
export function complaintIn({ command, progress }: Talk, heard: Heard): readonly [AnyQuestion, string] | undefined {
  const { inWords } = command;
  const text = 'answers' in heard && inWords && !progress.reopened ? heard.answers[inWords.id] : undefined;
  return inWords && text !== undefined ? [inWords, text] : undefined;
}

/** Takes what this talk noted, and still counts, off its sheet, to be noted on another. */
function takenAlong(store: ScopedStore, talk: Talk, who: string): Answers {
  const standsAt = standing(store, talk);
  const { reply } = screenOf(store, talk);
  const counting = store.newestFacts(talk.sheet);
  const measured = (reply?.keeps ?? []).filter(({ fact, typed }) => counting.get(fact)?.typed === typed);
  for (const { fact } of measured) store.retractNewest(talk.sheet, { who, fact });
  return talk.progress.noted.flatMap(({ fact, row }) => {
    const counted = counting.get(fact);
    const question = questionsOf(talk, standsAt).find(({ id }) => id === fact);
    if (counted?.id !== row || !question) return [];
    store.retractNewest(talk.sheet, { who, fact });
    return [[question, counted.typed] as const];
  });
}
