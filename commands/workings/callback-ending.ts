import type { Answers } from '#diagnosis/answers.ts';
import type { Diagnosis } from '#diagnosis/diagnose.ts';
import type { Finding, Table } from '#findings/finding.ts';
import { type CauseId, causes } from '#knowledge/causes.ts';
import { inWords } from './callback-reply.ts';
import { citations } from './citations.ts';

/** What stands on top of a callback's answer. */
export function headlineOf({ outcome, ranking: [top] }: Diagnosis): string {
  const name = top ? causes[top.cause].name : 'nothing known';
  switch (outcome) {
    case 'stopped':
      return 'Stop. Deal with the danger first.';
    case 'not enough to tell':
      return 'Not enough to tell yet; one more check will help most.';
    case 'leaning':
      return top?.band === 'possible' ? `Nothing sure yet. First in line: ${name}.` : `It looks like this: ${name}.`;
    case 'clear':
      return `This is very likely it: ${name}.`;
  }
}

/** How a callback ended, and whether the signs had pointed there. */
export function recordedFinding(
  { outcome, ranking: [top] }: Diagnosis,
  { confirmed, fixed }: { readonly confirmed: CauseId; readonly fixed: string },
): Finding {
  const { name, citation } = causes[confirmed];
  const mended = fixed === '' ? ' What fixed it is not told yet: give what-fixed-it.' : ` What fixed it: ${fixed}.`;
  const pointed =
    top === undefined || outcome === 'not enough to tell'
      ? ''
      : top.cause === confirmed
        ? ' The signs had pointed to it.'
        : ` The signs had pointed to something else: ${causes[top.cause].name}.`;
  return {
    id: 'recorded',
    weight: 'good',
    cause: confirmed,
    says: `Recorded as the cause: ${name}.${mended}${pointed} A new complaint on this job begins a new callback: give complaint.`,
    working: [],
    sources: citations(citation),
  };
}

/** The signs an answer rests on. */
export const restsOn = ({ seen, notSeen, context }: Answers, notUnderstood: readonly string[]): Table => ({
  title: 'What this rests on',
  columns: ['', 'signs'],
  rows: [
    ['there', (seen ?? []).map(inWords).join('; ') || 'nothing yet'],
    ['not there', (notSeen ?? []).map(inWords).join('; ') || 'nothing yet'],
    ...((context ?? []).length > 0 ? [['job', (context ?? []).map(inWords).join('; ')]] : []),
    ...(notUnderstood.length > 0 ? [['not understood', notUnderstood.join('; ')]] : []),
  ],
});
