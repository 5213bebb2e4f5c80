import { type Fact, fact, type Rule, rule } from './line.ts';
import { airflow, decimal, number } from './measures.ts';

/** Readings in a row: marks or small words between them, the unit and "the first time" anywhere, or three and more side by side. */
const several = (unit: string): string => {
  const between = String.raw`(?: ?${unit})?(?: the)?(?: (?:first|second|third)(?: time)?)?(?: ?(?:,|and|&|/|then))+`;
  return String.raw`(?:${number}(?: ${number})+(?: ?(?:,|and|&|then))+ ?${number}|${number}(?: ${number}){2,}|${number}(?:${between} ?${number})*)`;
};
/** What comes behind a reading in a row: the rest of the row, which needs no unit. */
const further = (unit: string): string =>
  String.raw`(?:(?: the)?(?: (?:first|second|third)(?: time)?)?(?:(?: ?(?:,|and|&|then))+|(?= \d)) ?${number}(?: ?${unit}\b)?(?! ?(?:cfm|l/s|gal|liter|in|ft|mm|cm|m|sqin|pa|watt|min|x|times?|fan|bag|duct|elbow)\b))*`;
const inRow = (unit: string): string => String.raw`${several(unit)} ?${unit}\b${further(unit)}`;
const listed = (said: string | undefined): string =>
  decimal(said ?? '')
    .match(/\d+(?:\.\d+)?/g)
    ?.join(', ') ?? '';

export const measuringRules: readonly Rule[] = [
  rule(String.raw`(?<v>${number}) ?(?<u>gal|liter)`, ({ v, u }) =>
    fact('bag-volume', `${v} ${u === 'gal' ? 'gal' : 'L'}`),
  ),
  rule(String.raw`(?<t>${inRow('sec')})`, ({ t }) => fact('fill-times', `${listed(t)} s`)),
  rule(String.raw`(?<d>\d+(?:\.\d+)?) (?<u>mm|in|cm) (?:round |diameter )?(?:hole|opening|orifice)`, ({ d, u }) => {
    const across = Number(d) * (u === 'in' ? 2.54 : u === 'mm' ? 0.1 : 1);
    return fact('box-opening', `${Number(((Math.PI / 4) * across ** 2).toFixed(2))} cm2`);
  }),
  rule(String.raw`(?<p>${inRow('pa')})`, ({ p }) => fact('box-pressure', `${listed(p)} Pa`)),
  rule(String.raw`(?<p>${inRow('fpm')})`, ({ p }) => fact('grille-velocities', `${listed(p)} fpm`)),
  rule(String.raw`(?<p>${inRow('mps')})`, ({ p }) => fact('grille-velocities', `${listed(p)} m/s`)),
  rule(String.raw`(?<a>${number}) (?<u>sqin|cm2)`, ({ a, u }) =>
    fact('grille-area', `${decimal(`${a}`)} ${u === 'sqin' ? 'sq in' : u}`),
  ),
];

const hoodList = (said: string): string =>
  `${said
    .replace(/m3\/h/g, '')
    .match(/\d+(?:\.\d+)?(?!\/)/g)
    ?.join(', ')} ${/l\/s|m3\/h/.exec(said)?.[0] ?? 'cfm'}`;

export const hoodReading: Rule = rule(
  String.raw`(?<!range |kitchen |draft )(?:flow )?hood\b(?:(?!need|requir|\bfan|rated|duct|code|elbow)[^\d~]){0,36}?(?<q>${airflow}(?:(?: ${airflow}){2,}|(?: ?(?:,|and|then) ?(?:and )?${airflow})*))(?: at (?:the )?grille)?`,
  ({ q = '' }) => fact('hood-reading', hoodList(q)),
);

/** "62, 60 and 63 cfm with a flow hood". */
export const readByHood: Rule = rule(
  String.raw`(?<q>${airflow}(?:(?:(?: ?(?:,|and|then|&))+ ?| )${airflow})*) (?:was |were )?(?:with|on|by|using|from|off|at) (?:an? |the |my |our )?(?:flow |balometer )?hood\b`,
  ({ q = '' }) => fact('hood-reading', hoodList(q)),
);

/** "92 with the door open": the same reading with nothing in the air's way. */
export const doorOpen: Rule = rule(
  String.raw`(?<q>${airflow}) (?:with |when )?(?:the )?(?:bath(?:room)? )?door(?: is)? (?:wide )?open|door(?: is)? (?:wide )?open[^\d.;~]{0,12}(?<p>${airflow})(?! (?:with |when )?(?:the )?door (?:is )?(?:shut|closed))`,
  ({ q, p }) => fact('door-open-airflow', `${q ?? p}`),
);

export function methodSaid(line: string): readonly Fact[] {
  if (/\bflow ?box\b/.test(line)) return fact('method', 'flow-box');
  if (/\b(?:anemometer|traverse|vane|fpm)\b/.test(line)) return fact('method', 'traverse');
  if (/\bbags?\b|\d (?:gal|liter)\b.*\d sec\b|\d sec\b.*\d (?:gal|liter)\b/.test(line)) return fact('method', 'bag');
  return /(?<!range |kitchen )\bhood\b/.test(line) ? fact('method', 'hood') : [];
}
