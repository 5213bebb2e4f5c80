import type { AnswerCommand, Telling } from '#chat/command.ts';
import type { Answers } from '#diagnosis/answers.ts';
import { diagnose } from '#diagnosis/diagnose.ts';
import { nextCheck } from '#diagnosis/next-check.ts';
import { evidenceFromNumbers, type NumberEvidence } from '#diagnosis/numbers.ts';
import { preparedReasoning } from '#diagnosis/reasoning.ts';
import { tellingContexts } from '#diagnosis/telling-contexts.ts';
import type { Reply } from '#findings/reply.ts';
import { type Interview, offer, take } from '#interview/interview.ts';
import { type ContextId, callbackLines } from '#knowledge/callback-scale.ts';
import { callbackTexts } from '#knowledge/callback-texts.ts';
import { type CauseId, callbackKnowledge } from '#knowledge/causes.ts';
import {
  cannotCheck,
  complaint,
  confirmedCause,
  context,
  contextAmong,
  deadProven,
  notSeen,
  seen,
  whatFixedIt,
} from './questions/callback.ts';
import { checkQuestion, dangerOfCheck } from './questions/callback-checks.ts';
import type { EarlierDanger } from './questions/callback-earlier.ts';
import { fittedLately, leftAtSwap, swapDay } from './questions/callback-measured.ts';
import { callbackWords } from './words/callback.ts';
import { chirpFinding, dangerFindings } from './workings/callback-danger.ts';
import { askedBefore, earlierFinding, heardWithoutOver, withoutOver } from './workings/callback-earlier.ts';
import { headlineOf, recordedFinding, restsOn } from './workings/callback-ending.ts';
import { asHeard, hearing } from './workings/callback-hearing.ts';
import { callbackNumbers, callbackNumbersTake } from './workings/callback-numbers.ts';
import { recallingCallback } from './workings/callback-records.ts';
import { callbackFindingsTold } from './workings/callback-reply.ts';
import { type ThenFitted, thenFinding, thenFitted } from './workings/callback-then.ts';
import { heardIn } from './workings/danger-heard.ts';

interface CallbackInputs {
  readonly told: Answers;
  readonly numbers: readonly NumberEvidence[];
  readonly fitted: ThenFitted | null;
  readonly notUnderstood: readonly string[];
  /** The complaint speaks of a carbon monoxide alarm that chirps. */
  readonly alarmChirps: boolean;
  /** A danger of an earlier day that is still so, or may be. */
  readonly before: readonly EarlierDanger[];
  readonly confirmed: CauseId | null;
  readonly fixed: string;
}

/** Made ready at the first callback: it takes a third of a second that no other command need wait for. */
function once<Made>(make: () => Made): () => Made {
  let made: { readonly value: Made } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

const reasoningReady = once(() => preparedReasoning(callbackKnowledge));

/** As many as a phone shows without scrolling. */
const mostContexts = 6;

/** A conclusion from what is told, kept: every turn of a talk goes over all that led to it. */
function byAnswers<Made>(make: (answers: Answers) => Made): (answers: Answers) => Made {
  const made = new Map<string, Made>();
  return (answers) => {
    const told = JSON.stringify(answers);
    const before = made.get(told);
    if (before !== undefined) return before;
    const fresh = make(answers);
    if (made.size >= mostKept) made.clear();
    made.set(told, fresh);
    return fresh;
  };
}

/** Some tens of talks at a time, each of up to a few dozen turns. */
const mostKept = 1000;

/** What the job may be that would change the answer to this complaint most. */
const contextsFor = byAnswers((answers): readonly ContextId[] =>
  tellingContexts(reasoningReady(), answers, mostContexts),
);

const nextFor = byAnswers((answers) => nextCheck(reasoningReady(), answers));

/** More checks than this in one go tire anybody; what is known by then is answered. */
const mostChecks = 25;

function* callbackInterview(): Interview<CallbackInputs> {
  const confirmed = yield* take(confirmedCause);
  const fixed = yield* take(whatFixedIt);
  const before = yield* askedBefore();
  if (before.still.length > 0) {
    const told = { seen: before.still.flatMap(({ findings }) => findings) };
    const nothing = { numbers: [], fitted: null, notUnderstood: [], alarmChirps: false };
    return { told, ...nothing, before: before.still, confirmed: confirmed.value, fixed: fixed.value };
  }
  const given = yield* take(seen);
  const denied = yield* take(notSeen);
  const unable = yield* take(cannotCheck);
  // A callback that is closed asks nothing more, and one told by its signs needs no words.
  const ask = confirmed.known ? take : offer;
  const tell = given.known || denied.known ? take : ask;
  const said = yield* tell(complaint);
  const reasoning = reasoningReady();
  const words = heardWithoutOver(heardIn(said.value), before);
  const closing = {
    confirmed: confirmed.value,
    fixed: fixed.value,
    alarmChirps: words.alarmChirps,
    before: before.waiting,
  };
  const heard = confirmed.known ? asHeard(words) : yield* hearing(words, reasoning);
  const { notUnderstood } = heard;
  const seenIds: string[] = [...withoutOver(given.value, before), ...heard.seen];
  const over = before.over.flatMap(({ findings }) => findings).filter((id) => !seenIds.includes(id));
  const notSeenIds: string[] = [...denied.value, ...heard.notSeen, ...over];
  if (heard.isUrgent) {
    return { told: { seen: seenIds, notSeen: notSeenIds }, numbers: [], fitted: null, notUnderstood, ...closing };
  }
  const lately = yield* take(fittedLately);
  const known = [...heard.context, ...(lately.value === 'yes' ? ['recent-swap'] : [])];
  const situation = yield* tell(
    tell === take ? context : contextAmong(contextsFor({ seen: seenIds, notSeen: notSeenIds, context: known })),
  );
  const proven = yield* take(deadProven);
  const numbers = evidenceFromNumbers(callbackLines, yield* callbackNumbers());
  const fitted = yield* thenFitted();
  const contexts = [...situation.value, ...known];
  seenIds.push(...idsOf(numbers, true));
  notSeenIds.push(...idsOf(numbers, false));
  const cannot: string[] = [...unable.value];
  const told = (): Answers => ({
    seen: [...new Set(seenIds)],
    notSeen: [...new Set(notSeenIds)],
    context: [...new Set(contexts)],
    cannotCheck: cannot,
    deadProven: proven.value === 'yes',
  });
  for (let count = 0; count < mostChecks; count += 1) {
    const next = nextFor(told());
    if (next.kind !== 'check') break;
    const { id } = next.check;
    const answer = yield* ask(checkQuestion(id));
    if (answer.asked === false) break;
    // Whoever stops the asking at a danger has not said that it is not there.
    if (!answer.known || (answer.value === 'enough' && dangerOfCheck(id))) cannot.push(id);
    if (answer.value === 'enough') break;
    if (!answer.known) continue;
    if (answer.value === 'yes') seenIds.push(id);
    else if (answer.value === 'no') notSeenIds.push(id);
    else seenIds.push(answer.value);
  }
  return { told: told(), numbers, fitted, notUnderstood, ...closing };
}

const idsOf = (numbers: readonly NumberEvidence[], wanted: boolean): string[] =>
  numbers.filter((each) => each.seen === wanted).map(({ finding }) => finding);

function answer(
  { told, numbers, fitted, notUnderstood, alarmChirps, before, confirmed, fixed }: CallbackInputs,
  { units, language = 'english' }: Telling,
): Reply {
  const texts = callbackWords[language];
  const reasoning = reasoningReady();
  const diagnosis = diagnose(reasoning, told);
  const next = nextCheck(reasoning, told);
  const table = restsOn(told, { lost: notUnderstood, open: diagnosis.open, language });
  const atSwap = fitted === null ? [] : [thenFinding(fitted, { units, language })];
  const isOut = diagnosis.dangers.some(({ danger }) => danger === 'carbon-monoxide');
  const chirp = alarmChirps && !isOut ? [chirpFinding(language)] : [];
  if (confirmed !== null && diagnosis.outcome !== 'stopped') {
    return {
      language,
      headline: texts.closed(callbackTexts[language].causes[confirmed].name),
      findings: [
        ...dangerFindings(diagnosis, language),
        recordedFinding(diagnosis, { confirmed, fixed, language }),
        ...atSwap,
        ...chirp,
      ],
      tables: [table],
    };
  }
  return {
    language,
    headline: headlineOf(diagnosis, language),
    findings: [
      ...before.map((each) => earlierFinding(each, language)),
      ...atSwap,
      ...callbackFindingsTold(diagnosis, next, { numbers, units, language }),
      ...chirp,
    ],
    tables: [table],
    suggestions:
      diagnosis.outcome === 'stopped' || diagnosis.open.length > 0
        ? []
        : [{ label: texts.wasItMeasured, command: 'measure' }],
  };
}

const callback: AnswerCommand<CallbackInputs> = {
  kind: 'answer',
  name: 'callback',
  summary: 'From a complaint to the likeliest cause, the check that proves it, and the remedy.',
  example: 'seen="fog, hood-none" not-seen="rattle" context="recent-swap"',
  takes: [
    complaint,
    seen,
    notSeen,
    context,
    cannotCheck,
    deadProven,
    confirmedCause,
    whatFixedIt,
    swapDay,
    fittedLately,
    leftAtSwap,
    ...callbackNumbersTake,
  ],
  inWords: complaint,
  interview: callbackInterview,
  recalling: recallingCallback,
  answer,
};

export default callback;
