import { type Reply, stopsFirst } from '#findings/reply.ts';
import type { Citation } from '#knowledge/sources.ts';
import { standing } from '#words/standing.ts';
import { citationText, stepText, titleOf } from '../saying.ts';
import { inMessage, type Style } from './text.ts';

/**
 * The working of a reply, finding by finding, so that a person with a calculator can follow it. Each source is written out
 * once, at the end, and pointed at by its number.
 */
export function workingText(reply: Reply, style: Style = inMessage): string {
  const { text, bold, small } = style;
  const { language = 'english' } = reply;
  const { noWorking, whyTakenForGranted, whereFrom } = standing[language];
  const places: string[] = [];
  const mark = (citation: Citation): string => {
    const place = citationText(citation, language);
    if (!places.includes(place)) places.push(place);
    return `[${places.indexOf(place) + 1}]`;
  };
  const marks = (cited: readonly Citation[]): string => [...new Set(cited.map(mark))].join('');
  const parts = stopsFirst(reply.findings)
    .filter(({ working, sources }) => working.length + sources.length > 0)
    .flatMap(({ id, says, working, sources }) => [
      `${bold(text(titleOf(id, language)))} ${text(marks(sources))}`.trim(),
      ...(working.length > 0
        ? working.map((step) => `- ${text(`${stepText(step)} ${marks(step.source ? [step.source] : [])}`.trim())}`)
        : [`- ${text(says)}`]),
    ]);
  const reasons = (reply.assumedBecause ?? []).map((reason) => `- ${text(reason)}`);
  if (parts.length + reasons.length === 0) return noWorking;
  const list = places.map((place, index) => small(text(`[${index + 1}] ${place}`)));
  return [
    ...parts,
    ...(reasons.length > 0 ? [bold(whyTakenForGranted), ...reasons] : []),
    ...(list.length > 0 ? [bold(whereFrom), ...list] : []),
  ].join('\n');
}
