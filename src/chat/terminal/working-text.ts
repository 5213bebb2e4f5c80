import type { Finding, Step } from '#findings/finding.ts';
import { type Reply, stopsFirst } from '#findings/reply.ts';
import type { Citation } from '#knowledge/sources.ts';
import { standing } from '#words/standing.ts';
import { citationText, stepText, titleOf } from '../saying.ts';
import { type Paper, paragraph } from './paper.ts';

/** The working of a reply, line by line, so that a person with a calculator can follow it; each source once, at the end. */
export function workingText(reply: Reply, paper: Paper): string {
  const { language = 'english' } = reply;
  const { noWorking, takenForGranted, sources } = standing[language];
  const places: string[] = [];
  const mark = (citation: Citation): string => {
    const text = citationText(citation, language);
    if (!places.includes(text)) places.push(text);
    return ` [${places.indexOf(text) + 1}]`;
  };
  const marked = (cited: readonly Citation[]): string => [...new Set(cited.map(mark))].join('');
  const stepLine = (step: Step): string =>
    paragraph(`${stepText(step)}${step.source ? mark(step.source) : ''}`, paper, '  ', '    ');
  const block = ({ id, says, working, sources: cited }: Finding): string => {
    const lines = working.length > 0 ? working.map(stepLine) : [paragraph(says, paper, '  ')];
    return [paragraph(`${titleOf(id, language)}${marked(cited)}`, paper), ...lines].join('\n');
  };
  const blocks = stopsFirst(reply.findings)
    .filter(({ working, sources }) => working.length + sources.length > 0)
    .map(block);
  const reasons = reply.assumedBecause ?? [];
  if (blocks.length + reasons.length === 0) return noWorking;
  return [
    ...blocks,
    ...(reasons.length === 0
      ? []
      : [[takenForGranted, ...reasons.map((reason) => paragraph(reason, paper, '  '))].join('\n')]),
    ...(places.length === 0
      ? []
      : [
          [sources, ...places.map((place, index) => paragraph(place, paper, `${`[${index + 1}]`.padStart(6)} `))].join(
            '\n',
          ),
        ]),
  ].join('\n\n');
}
