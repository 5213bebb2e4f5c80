import type { Step, Weight } from '#findings/finding.ts';
import { type Citation, sources } from '#knowledge/sources.ts';

/** The word for each weight; it says everything the colour might. */
export const weightWords: Readonly<Record<Weight, string>> = {
  stop: 'STOP',
  caution: 'Caution',
  advice: 'Advice',
  good: 'Fine',
};

/** One line of working: "Velocity in the 4 in duct: 73 cfm ÷ 0.0873 sq ft = 836 fpm". */
export const stepText = ({ what, how, value }: Step): string =>
  `${what}: ${how === undefined ? '' : `${how} = `}${value}`;

/** A source in words, with how far it can be leaned on. */
export function citationText({ source, where, verified }: Citation): string {
  const { citation, kind } = sources[source];
  const place = where === undefined ? '' : `; ${where}`;
  const plainlyOurs = kind === 'common practice' || kind === 'memory' || kind === 'own working';
  return `${citation.replace(/\.$/, '')}${place} (${kind}${plainlyOurs || verified ? '' : ', not seen in print'})`;
}

/** The heading of a finding where its working is shown: "Delivered airflow" for `delivered-airflow`. */
export const titleOf = (id: string): string => {
  const words = id.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
};
