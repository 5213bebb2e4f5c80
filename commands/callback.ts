import type { AnswerCommand, Telling } from '#chat/command.ts';
import type { Answers } from '#diagnosis/answers.ts';
import { diagnose } from '#diagnosis/diagnose.ts';
import { findingsInWords } from '#diagnosis/findings-in-words.ts';
import { nextCheck } from '#diagnosis/next-check.ts';
import { evidenceFromNumbers, type NumberEvidence } from '#diagnosis/numbers.ts';
import { preparedWords } from '#diagnosis/phrases.ts';
import { preparedReasoning } from '#diagnosis/reasoning.ts';
import type { Reply } from '#findings/reply.ts';
import { type Interview, offer, take } from '#interview/interview.ts';
import { callbackLines } from '#knowledge/callback-scale.ts';
import { englishCallbackWords } from '#knowledge/callback-words.ts';
import { type CauseId, callbackKnowledge, causes } from '#knowledge/causes.ts';
import {
  cannotCheck,
  checkQuestion,
  complaint,
  confirmedCause,
  context,
  deadProven,
  heardQuestion,
  notSeen,
  seen,
  whatFixedIt,
} from './questions/callback.ts';
import { callbackNumbers, callbackNumbersTake } from './workings/callback-numbers.ts';
import { callbackFindingsTold, inWords } from './workings/callback-reply.ts';

interface CallbackInputs {
  readonly told: Answers;
  readonly numbers: readonly NumberEvidence[];
  readonly notUnderstood: readonly string[];
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
const wordsReady = once(() => preparedWords(englishCallbackWords));

/** More checks than this in one go tire anybody; what is known by then is answered. */
const mostChecks = 25;

function* callbackInterview(): Interview<CallbackInputs> {
  const confirmed = yield* take(confirmedCause);
  const fixed = yield* take(whatFixedIt);
  const given = yield* take(seen);
  const denied = yield* take(notSeen);
  const unable = yield* take(cannotCheck);
  const bare = given.known || denied.known;
  const said = bare ? yield* take(complaint) : yield* offer(complaint);
  const reasoning = reasoningReady();
  const heard = findingsInWords(wordsReady(), said.value);
  const heardIds = heard.seen.map(({ id }) => id);
  const agreed = heardIds.length > 0 ? (yield* offer(heardQuestion(heardIds))).value : 'right';
  const situation = bare ? yield* take(context) : yield* offer(context);
  const proven = yield* take(deadProven);
  const numbers = evidenceFromNumbers(callbackLines, yield* callbackNumbers());
  const seenIds: string[] = [...given.value, ...heardIds.filter((id) => id !== agreed), ...idsOf(numbers, true)];
  const notSeenIds: string[] = [...denied.value, ...heard.notSeen.map(({ id }) => id), ...idsOf(numbers, false)];
  const cannot: string[] = [...unable.value];
  const told = (): Answers => ({
    seen: [...new Set(seenIds)],
    notSeen: [...new Set(notSeenIds)],
    context: [...new Set([...situation.value, ...heard.context.map(({ id }) => id)])],
    cannotCheck: cannot,
    deadProven: proven.value === 'yes',
  });
  for (let count = 0; count < mostChecks; count += 1) {
    const next = nextCheck(reasoning, told());
    if (next.kind !== 'check') break;
    const { id } = next.check;
    const answer = yield* offer(checkQuestion(id));
    if (answer.asked === false || answer.value === 'enough') break;
    if (!answer.known) cannot.push(id);
    else if (answer.value === 'yes') seenIds.push(id);
    else if (answer.value === 'no') notSeenIds.push(id);
    else seenIds.push(answer.value);
  }
  return { told: told(), numbers, notUnderstood: heard.notUnderstood, confirmed: confirmed.value, fixed: fixed.value };
}

const idsOf = (numbers: readonly NumberEvidence[], wanted: boolean): string[] =>
  numbers.filter((each) => each.seen === wanted).map(({ finding }) => finding);

function answer({ told, numbers, notUnderstood, confirmed, fixed }: CallbackInputs, { units }: Telling): Reply {
  const reasoning = reasoningReady();
  const diagnosis = diagnose(reasoning, told);
  const next = nextCheck(reasoning, told);
  const top = diagnosis.ranking[0];
  const headline = {
    stopped: 'Stop. Deal with the danger first.',
    'not enough to tell': 'Not enough to tell yet; one more check will help most.',
    leaning: `It looks like this: ${top ? causes[top.cause].name : 'nothing known'}.`,
    clear: `This is very likely it: ${top ? causes[top.cause].name : 'nothing known'}.`,
  }[diagnosis.outcome];
  const closed =
    confirmed === null
      ? []
      : [
          {
            id: 'recorded',
            weight: 'good',
            cause: confirmed,
            says: `Recorded as the cause: ${causes[confirmed].name}.${fixed === '' ? '' : ` What fixed it: ${fixed}.`}`,
            working: [],
            sources: [],
          } as const,
        ];
  return {
    headline,
    findings: [...closed, ...callbackFindingsTold(diagnosis, next, { numbers, units })],
    tables: [
      {
        title: 'What this rests on',
        columns: ['', 'signs'],
        rows: [
          ['there', (told.seen ?? []).map(inWords).join('; ') || 'nothing yet'],
          ['not there', (told.notSeen ?? []).map(inWords).join('; ') || 'nothing yet'],
          ...((told.context ?? []).length > 0 ? [['job', (told.context ?? []).map(inWords).join('; ')]] : []),
          ...(notUnderstood.length > 0 ? [['not understood', notUnderstood.join('; ')]] : []),
        ],
      },
    ],
    suggestions: [{ label: 'Measure the airflow', command: 'measure' }],
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
    ...callbackNumbersTake,
  ],
  interview: callbackInterview,
  answer,
};

export default callback;
