import type { Answers } from '#diagnosis/answers.ts';
import type { OpenDanger } from '#diagnosis/dangers.ts';
import type { Diagnosis } from '#diagnosis/diagnose.ts';
import type { Finding, Table } from '#findings/finding.ts';
import { callbackTexts } from '#knowledge/callback-texts.ts';
import { type CauseId, causes } from '#knowledge/causes.ts';
import type { Language } from '#words/language.ts';
import { callbackWords } from '../words/callback.ts';
import { openInWords } from './callback-danger.ts';
import { inWords } from './callback-in-words.ts';
import { citations } from './citations.ts';

/** What stands on top of a callback's answer. */
export function headlineOf({ outcome, dangers, open, ranking: [top] }: Diagnosis, language: Language): string {
  const texts = callbackWords[language];
  if (dangers.length === 0 && open.length > 0) {
    return texts[outcome === 'stopped' ? 'stopAndFindOut' : 'findOutFirst'](openInWords(open, language));
  }
  const name = top ? callbackTexts[language].causes[top.cause].name : texts.nothingKnown;
  switch (outcome) {
    case 'stopped':
      return texts.stop;
    case 'not enough to tell':
      return texts.notEnough;
    case 'leaning':
      return top?.told === 'possible' ? texts.firstInLine(name) : texts.looksLike(name);
    case 'clear':
      return top?.told === 'very-likely' ? texts.veryLikelyIt(name) : texts.looksLike(name);
  }
}

/** How a callback ended, and whether the signs had pointed there. */
export function recordedFinding(
  { outcome, ranking: [top] }: Diagnosis,
  { confirmed, fixed, language }: { readonly confirmed: CauseId; readonly fixed: string; readonly language: Language },
): Finding {
  const texts = callbackWords[language];
  const named = callbackTexts[language].causes;
  const mended = fixed === '' ? texts.fixNotTold : texts.fixedBy(fixed);
  const pointed =
    top === undefined || outcome === 'not enough to tell'
      ? ''
      : top.cause === confirmed
        ? texts.hadPointedToIt
        : texts.hadPointedElsewhere(named[top.cause].name);
  return {
    id: 'recorded',
    weight: 'good',
    cause: confirmed,
    says: texts.recorded(named[confirmed].name, mended, pointed),
    working: [],
    sources: citations(causes[confirmed].citation),
  };
}

/** The signs an answer rests on. */
export function restsOn(
  { seen = [], notSeen = [], context = [] }: Answers,
  { lost, open, language }: { lost: readonly string[]; open: readonly OpenDanger[]; language: Language },
): Table {
  const { restsOn: title, signs, there, notThere, notKnown, job, notUnderstood, nothingYet } = callbackWords[language];
  const listed = (ids: readonly string[]): string => ids.map((id) => inWords(id, language)).join('; ');
  return {
    title,
    columns: ['', signs],
    rows: [
      [there, listed(seen) || nothingYet],
      [notThere, listed(notSeen) || nothingYet],
      ...(open.length > 0 ? [[notKnown, openInWords(open, language)]] : []),
      ...(context.length > 0 ? [[job, listed(context)]] : []),
      ...(lost.length > 0 ? [[notUnderstood, lost.join('; ')]] : []),
    ],
  };
}
