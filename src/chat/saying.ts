import type { Step, Weight } from '#findings/finding.ts';
import { type Citation, sources } from '#knowledge/sources.ts';
import { findingTitles } from '#words/finding-titles.ts';
import type { Language } from '#words/language.ts';
import { sourceWords } from '#words/sources.ts';
import { standing } from '#words/standing.ts';

/** The word for each weight; it says everything the colour might. */
export const weightWord = (weight: Weight, language: Language = 'english'): string =>
  standing[language].weights[weight];

/** One line of working: "Velocity in the 4 in duct: 73 cfm ÷ 0.0873 sq ft = 836 fpm". */
export const stepText = ({ what, how, value }: Step): string =>
  `${what}: ${how === undefined ? '' : `${how} = `}${value}`;

/** A source in words, with how far it can be leaned on. The publication and the place in it are named as they are printed. */
export function citationText({ source, where, verified }: Citation, language: Language = 'english'): string {
  const { citation, kind } = sources[source];
  const place = where === undefined ? '' : `; ${where}`;
  const plainlyOurs = kind === 'common practice' || kind === 'memory' || kind === 'own working';
  const { kinds, ours, notSeen } = sourceWords[language];
  const named = ours[source] ?? citation;
  return `${named.replace(/\.$/, '')}${place} (${kinds[kind]}${plainlyOurs || verified ? '' : `, ${notSeen}`})`;
}

/** The heading of a finding where its working is shown: "Delivered airflow" for `delivered-airflow`. */
export const titleOf = (id: string, language: Language = 'english'): string => {
  const words = (language === 'english' ? undefined : findingTitles[language][id]) ?? id.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
};
