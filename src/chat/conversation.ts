import type { AnyQuestion } from '#interview/question.ts';
import { worded } from '#interview/worded.ts';
import { meansNotKnown, turnMeant } from '#interview/words.ts';
import { SheetTrouble } from '#store/sheet-trouble.ts';
import type { ScopedStore } from '#store/store.ts';
import { noteAnswers, unitsOf } from './answers.ts';
import type { AnswerCommand, Speaker } from './command.ts';
import {
  apartFrom,
  begunHere,
  begunOn,
  complaintIn,
  heardElsewhere,
  heldBy,
  idsOf,
  jobPicked,
  keptFrom,
  nameGiven,
} from './elsewhere.ts';
import type { Screen } from './screen.ts';
import { sheetTroubleText } from './sheet-trouble-text.ts';
import {
  type Heard,
  type Progress,
  questionsOf,
  recalledTalk,
  saidIn,
  screenOf,
  standing,
  type Talk,
  TalkMovedOn,
} from './talk.ts';
import { strangerIn } from './which-job.ts';

interface Turned {
  readonly progress: Progress;
  readonly notes: readonly string[];
  /** The ids of the questions answered by this turn. */
  readonly noted?: readonly string[];
}

interface Beginning {
  readonly sheet?: number | undefined;
  /** The whole line, where more was said than the options hold. */
  readonly line?: string | undefined;
  /** Options that were meant and did not come through, as where a name was misspelt. */
  readonly missed?: readonly string[];
}

/**
 * Starts a command with whatever was given at once; bad values are all named and asked again, good ones are kept. It is about
 * the sheet that lies open in the channel, unless another is named. Where the line names a house that sheet does not know, that
 * is asked before anything is kept.
 */
export function begin(
  store: ScopedStore,
  command: AnswerCommand<unknown>,
  given: Readonly<Record<string, string>>,
  { sheet, line, missed = [], ...speaker }: Speaker & Beginning,
): Screen {
  const answers = command.takes.flatMap((question) => {
    const text = given[question.id];
    return text === undefined ? [] : [[question, text] as const];
  });
  const said = line ?? (command.inWords && given[command.inWords.id]) ?? '';
  return store.together(() =>
    sheet === undefined
      ? begunHere(store, command, answers, { ...speaker, line: said, missed })
      : begunOn(store, command, answers, { speaker, sheet, missed }),
  );
}

/** Takes one turn of a talk and shows what stands in front of the person next. What was said and the step are kept as one. */
export function hear(store: ScopedStore, talk: Talk, heard: Heard, who: string): Screen {
  try {
    return store.together(() => {
      const elsewhere = heardElsewhere(store, talk, heard, who);
      if (elsewhere) return elsewhere;
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

const unkept = (trouble: SheetTrouble, talk: Talk): string =>
  trouble.code === 'closed' ? saidIn(talk).jobClosed(trouble.sheet) : sheetTroubleText(trouble, talk.language);

function turn(store: ScopedStore, talk: Talk, heard: Heard, who: string): Turned {
  const { progress } = talk;
  const standsAt = standing(store, talk);
  const { asking } = standsAt;
  if (progress.apart) {
    if (jobPicked(store, talk, progress.apart, heard) === 'here') {
      const { apart, ...kept } = progress;
      return answered(store, { ...talk, progress: kept }, heldBy(talk.command, apart), who);
    }
    if (!('turn' in heard && heard.turn === 'why')) return { progress, notes: [] };
  }
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
  const told = complaintIn(talk, heard);
  const stranger = told && strangerIn(store, talk.sheet, told[1]);
  if (stranger) return { progress: { ...progress, apart: apartFrom([told], stranger) }, notes: [] };
  const called = told ? nameGiven(store, talk.sheet, told[1], { channel: '', who, language: talk.language }) : [];
  const answers = said.flatMap(([id, text]) => {
    const question = byId.get(id);
    return question && (text.trim() !== '' || said.length === 1) ? [[question, text] as const] : [];
  });
  const [first] = answers;
  if (first?.[0].growing && !meansNotKnown(first[1])) return grown(store, talk, first[0], first[1], who);
  const turned = answered(store, talk, answers, who);
  return { ...turned, notes: [...called, ...turned.notes] };
}

/**
 * Takes back the last answer of this talk that still counts. One that somebody has answered anew or taken back since is
 * left alone.
 */
function goneBack(store: ScopedStore, talk: Talk, who: string): Turned {
  const { progress } = talk;
  const standsAt = standing(store, talk);
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
  const next = { ...progress, noted: [...progress.noted, ...noted], draft: '', reopened, unread: [...new Set(again)] };
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
