import type { OpenDanger } from '#diagnosis/dangers.ts';
import type { Diagnosis } from '#diagnosis/diagnose.ts';
import type { Finding } from '#findings/finding.ts';
import { callbackFindings, callbackVariables, isVariable } from '#knowledge/callback-findings.ts';
import { callbackDangers } from '#knowledge/callback-scale.ts';
import { callbackTexts } from '#knowledge/callback-texts.ts';
import type { Language } from '#words/language.ts';
import { callbackWords } from '../words/callback.ts';
import { inWords } from './callback-in-words.ts';
import { citations } from './citations.ts';

/** The dangers told, then those nobody could say anything to: what to do is said before anything else. */
export function dangerFindings({ dangers, open }: Diagnosis, language: Language): readonly Finding[] {
  const texts = callbackWords[language];
  const told = callbackTexts[language].dangers;
  // One order at a time: where everybody is to leave, nobody is sent to a breaker, and the rest goes to the fire service.
  const everyoneOut = dangers.some(({ danger }) => callbackDangers[danger].everyoneOut);
  const stops = dangers.map(({ danger, findings }): Finding => {
    const signs = listed(findings, language);
    const isOrder = !everyoneOut || callbackDangers[danger].everyoneOut;
    return {
      id: 'danger',
      weight: 'stop',
      ...(findings[0] ? { check: findings[0] } : {}),
      says: isOrder ? texts.saidBecause(told[danger].says, signs) : texts.tellThemToo(signs),
      working: findings.map((finding) => ({ what: texts.becauseOf, value: inWords(finding, language) })),
      sources: citations({ source: 'common-practice', verified: false }),
    };
  });
  const untilKnown = open.map(
    ({ danger, checks, stops: isStop }): Finding => ({
      id: 'danger',
      weight: isStop ? 'stop' : 'caution',
      ...(checks[0] ? { check: checks[0] } : {}),
      says: everyoneOut
        ? texts.tellThemUnknown(listed(checks, language))
        : texts.notKnownWhether(told[danger].untilKnown, listed(checks, language)),
      working: checks.map((check) => ({ what: texts.notKnown, value: inWords(check, language) })),
      sources: citations({ source: 'common-practice', verified: false }),
    }),
  );
  const isGraver = ({ weight }: Finding) => weight === 'stop';
  return [...stops, ...untilKnown.filter(isGraver), ...untilKnown.filter((each) => !isGraver(each))];
}

/** What to do about an alarm that chirps; never told beside the order to leave. */
export const chirpFinding = (language: Language): Finding => ({
  id: 'alarm-chirps',
  weight: 'caution',
  says: callbackWords[language].alarmChirps,
  working: [],
  sources: citations({ source: 'common-practice', verified: false }),
});

/** What is to be found out before anything else. What takes a running or an opened fan is left to the lead. */
export function findOutFinding({ open, outcome }: Pick<Diagnosis, 'open' | 'outcome'>, language: Language): Finding {
  const texts = callbackWords[language];
  const { findings, variables } = callbackTexts[language];
  const [first] = open.flatMap(({ checks }) => checks);
  if (first === undefined) throw new Error('nothing is to be found out');
  const { leavesAlone } = isVariable(first) ? callbackVariables[first] : callbackFindings[first];
  const { question, how } = isVariable(first) ? variables[first] : findings[first];
  return {
    id: 'next-check',
    weight: outcome === 'stopped' ? 'stop' : 'caution',
    check: first,
    says: `${leavesAlone ? texts.askAgain(question, how) : texts.leadFindsOut(question)}${texts.heldUntilKnown}`,
    working: [],
    sources: citations({ source: 'own-working', verified: false }),
  };
}

/** The checks of open dangers in a few words. */
export const openInWords = (open: readonly OpenDanger[], language: Language): string =>
  listed(
    open.flatMap(({ checks }) => checks),
    language,
  );

const listed = (ids: readonly string[], language: Language): string =>
  ids.map((id) => inWords(id, language)).join('; ');
