import { type Fact, fact, type Rule, rule } from './line.ts';
import { airflow, number } from './measures.ts';

const several = String.raw`${number}(?:(?: ?sec)? ?(?:,|and|&|/|then) ?(?:and )?${number})*`;
const listed = (said: string | undefined): string =>
  (said ?? '')
    .replace(/ ?sec/g, '')
    .split(/ ?(?:,|and|&|\/(?!\d)|then) ?/)
    .filter((each) => each.trim() !== '')
    .join(', ');

export const measuringRules: readonly Rule[] = [
  rule(String.raw`(?<v>${number}) ?(?<u>gal|liter)`, ({ v, u }) =>
    fact('bag-volume', `${v} ${u === 'gal' ? 'gal' : 'L'}`),
  ),
  rule(String.raw`(?<t>${several}) ?sec\b`, ({ t }) => fact('fill-times', `${decimal(listed(t))} s`)),
  rule(String.raw`(?<d>\d+(?:\.\d+)?) (?<u>mm|in|cm) (?:round |diameter )?(?:hole|opening|orifice)`, ({ d, u }) => {
    const across = Number(d) * (u === 'in' ? 2.54 : u === 'mm' ? 0.1 : 1);
    return fact('box-opening', `${Number(((Math.PI / 4) * across ** 2).toFixed(2))} cm2`);
  }),
  rule(String.raw`(?<p>${several}) pa\b`, ({ p }) => fact('box-pressure', `${listed(p)} Pa`)),
  rule(String.raw`(?<p>${several}) fpm\b`, ({ p }) => fact('grille-velocities', `${listed(p)} fpm`)),
];

/** "7-1/2" as 7.5, which a list of readings takes. */
const decimal = (said: string): string =>
  said.replace(/(?:(\d+)[ -])?(\d+)\/(\d+)/g, (_, whole: string | undefined, top: string, bottom: string) =>
    String(Number(whole ?? 0) + Number(top) / Number(bottom)),
  );

export const hoodReading: Rule = rule(
  String.raw`(?:flow )?hood(?: (?:says|shows|reads?|reading|at|gave|out|on|the|it|gives|was|.))*? ?(?<q>${airflow}(?: ?(?:,|and|then) ?(?:and )?${airflow})*)(?: at (?:the )?grille)?`,
  ({ q = '' }) =>
    fact('hood-reading', `${q.match(/\d+(?:\.\d+)?(?!\/)/g)?.join(', ')} ${/l\/s/.test(q) ? 'l/s' : 'cfm'}`),
);

export function methodSaid(line: string): readonly Fact[] {
  if (/\bflow ?box\b/.test(line)) return fact('method', 'flow-box');
  if (/\b(?:anemometer|traverse|vane|fpm)\b/.test(line)) return fact('method', 'traverse');
  if (/\bbags?\b/.test(line)) return fact('method', 'bag');
  return /(?<!range |kitchen )\bhood\b/.test(line) ? fact('method', 'hood') : [];
}
