import type { Answers } from '#diagnosis/answers.ts';
import { type Diagnosis, diagnose } from '#diagnosis/diagnose.ts';
import { preparedReasoning } from '#diagnosis/reasoning.ts';
import { type CauseId, callbackKnowledge } from '#knowledge/causes.ts';

/** The whole base, prepared once for all the tests of a file. */
export const reasoning = preparedReasoning(callbackKnowledge);

export const diagnosed = (answers: Answers): Diagnosis => diagnose(reasoning, answers);

/** How likely a cause is after these answers. */
export const chanceOf = (cause: CauseId, answers: Answers): number =>
  diagnosed(answers).ranking.find((ranked) => ranked.cause === cause)?.chance ?? Number.NaN;
