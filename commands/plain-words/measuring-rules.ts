import { type Fact, fact, type Rule, rule } from './line.ts';
import { airflow, decimal, number } from './measures.ts';

/** What may stand between two readings: marks, small words, and which of them it was. */
const nth = String.raw`(?: (?:the )?(?:first|second|third|fourth|fifth|nth|last|next|1st|2nd|3rd)(?: (?:time|one|try|go|run|bag|reading))?)?`;
const between = String.raw`(?:${nth}(?: ?(?:,|and then|and|&|/|then|plus))+|${nth}(?= the ))(?: ?(?:the|another|again)(?! (?:first|second|third)))*${nth}(?: ?(?:,|was|at|is))?`;
/** Readings in a row: marks or small words between them, the unit anywhere, or three and more side by side. */
const several = (unit: string): string =>
  String.raw`(?:${number}(?: ${number})+(?: ?(?:,|and|&|then))+ ?${number}|${number}(?: ${number}){2,}|${number}(?:(?: ?${unit}\b)?${between} ?${number})*)`;
/** What comes behind a reading in a row: the rest of the row, which needs no unit. */
const further = (unit: string): string =>
  String.raw`(?:(?:${between}|(?= \d)) ?${number}(?: ?${unit}\b)?(?! ?(?:cfm|l/s|gal|liter|in|ft|mm|cm|m|sqin|pa|watt|min|x|times?|fan|bag|duct|elbow|%)\b|\.\d| ?%))*`;
const inRow = (unit: string): string => String.raw`${several(unit)} ?${unit}\b${further(unit)}`;
const listed = (said: string | undefined): string =>
  decimal(said ?? '')
    .match(/\d+(?:\.\d+)?/g)
    ?.join(', ') ?? '';

const area = (said: string | undefined, unit: string | undefined): string =>
  `${decimal(`${said}`)} ${unit === 'sqin' ? 'sq in' : unit}`;

/** Two sides as the area between them. */
function sides(one: string | undefined, other: string | undefined, unit = 'in'): string {
  const product = Number(decimal(`${one}`)) * Number(decimal(`${other}`));
  return unit === 'in' ? `${product} sq in` : `${Number((unit === 'mm' ? product / 100 : product).toFixed(2))} cm2`;
}

export const measuringRules: readonly Rule[] = [
  rule(String.raw`(?<v>${number}) ?(?<u>gal|liter)`, ({ v, u }) =>
    fact('bag-volume', `${v} ${u === 'gal' ? 'gal' : 'L'}`),
  ),
  rule(String.raw`(?<t>${inRow('sec')})`, ({ t }) => fact('fill-times', `${listed(t)} s`)),
  rule(
    String.raw`(?:(?<a>${number}) ?(?:in |mm |cm )?(?:x|by) ?(?<b>${number}) ?(?<u>in|mm|cm)? (?:hole|opening|orifice|slot)|(?:hole|opening|orifice)(?: (?:is|of|in|the|box|at|was))*[:=,]? ?(?<c>${number}) ?(?:in |mm |cm )?(?:x|by) ?(?<d>${number}) ?(?<v>in|mm|cm)?)`,
    ({ a, b, u, c, d, v }) => fact('box-opening', sides(a ?? c, b ?? d, u ?? v)),
  ),
  rule(String.raw`(?<d>\d+(?:\.\d+)?) (?<u>mm|in|cm) (?:round |diameter )?(?:hole|opening|orifice)`, ({ d, u }) => {
    const across = Number(d) * (u === 'in' ? 2.54 : u === 'mm' ? 0.1 : 1);
    return fact('box-opening', `${Number(((Math.PI / 4) * across ** 2).toFixed(2))} cm2`);
  }),
  rule(String.raw`(?<!(?:\bat|@) ?)(?<![\d.])(?<p>0?\.\d+) in (?:of )?(?:wg|wc|w\.?[gc]\.?|water)(?![a-z])`, ({ p }) =>
    fact('box-pressure', `${p} in wg`),
  ),
  rule(String.raw`(?<p>${inRow('pa')})`, ({ p }) => fact('box-pressure', `${listed(p)} Pa`)),
  rule(String.raw`(?<p>${inRow('fpm')})`, ({ p }) => fact('grille-velocities', `${listed(p)} fpm`)),
  rule(
    String.raw`\b(?:anemometer|traverse|vane|speeds?|velocit(?:y|ies))\b[^\d~.;]{0,32}(?<p>\d{2,3}(?:(?: ?(?:,|and|then))* \d{2,3}){2,})(?! ?(?:mps|cfm|l/s|sqin|cm2|fan|x|by|/)\b|[\d.])`,
    ({ p }) => fact('grille-velocities', listed(p)),
  ),
  rule(String.raw`(?<p>${inRow('mps')})`, ({ p }) => fact('grille-velocities', `${listed(p)} m/s`)),
  rule(
    String.raw`(?<a>${number}) (?<u>sqin|cm2) (?:\w+ )?(?:opening|hole|orifice|slot)|(?:opening|hole|orifice)(?: (?:is|of|in|on|the|box|at|was|area))*[:=,]? ?(?<b>${number}) (?<v>sqin|cm2)`,
    ({ a, u, b, v }) => fact('box-opening', area(a ?? b, u ?? v)),
  ),
  rule(
    String.raw`(?<p>\d{1,3}(?:\.\d+)?) ?%(?: (?:is|of (?:it|that|the (?:face|grille|area))))?(?: is)? (?:open|free)\b(?: area| share)?|(?:open|free)(?: (?:area|share|is|of|about))*[:=,]? ?(?<r>\d{1,3}(?:\.\d+)?) ?%`,
    ({ p, r }) => fact('free-share', `${p ?? r} %`),
  ),
  // Beside a flow box an area is its opening’s, whatever the word for it: named rather than taken for the grille.
  rule(String.raw`(?<!\bflow ?-?box\b.*)(?<a>${number}) (?<u>sqin|cm2)`, ({ a, u }) => fact('grille-area', area(a, u))),
];

const hoodList = (said: string): string =>
  `${said
    .replace(/m3\/h/g, '')
    .match(/\d+(?:\.\d+)?(?!\/)/g)
    ?.join(', ')} ${/l\/s|m3\/h/.exec(said)?.[0] ?? 'cfm'}`;

export const hoodReading: Rule = rule(
  String.raw`(?<!range |kitchen |draft )(?:flow )?hood\b(?:(?!need|requir|\bfan|rated|duct|code|elbow)[^\d~]){0,36}?(?<q>${airflow}(?:(?: ${airflow}){2,}|(?:${between} ?${airflow}(?!,? (?:needed|wanted|required|fan|with (?:the )?door|door)))*))(?: at (?:the )?grille)?`,
  ({ q = '' }) => fact('hood-reading', hoodList(q)),
);

/** "62, 60 and 63 cfm with a flow hood". */
export const readByHood: Rule = rule(
  String.raw`(?<q>${airflow}(?:(?:${between} ?| )${airflow})*) (?:was |were )?(?:with|on|by|using|from|off|at) (?:an? |the |my |our )?(?:flow |balometer )?hood\b`,
  ({ q = '' }) => fact('hood-reading', hoodList(q)),
);

/** "92 with the door open": the same reading with nothing in the air's way. */
export const doorOpen: Rule = rule(
  String.raw`(?<q>${airflow}) (?:with |when )?(?:the )?(?:bath(?:room)? )?door(?: is)? (?:wide )?open|door(?: is)? (?:wide )?open[^\d.;~]{0,12}(?<p>${airflow})(?! (?:with |when )?(?:the )?door (?:is )?(?:shut|closed))`,
  ({ q, p }) => fact('door-open-airflow', `${q ?? p}`),
);

const poweredHood =
  /(?<!\b(?:not a|no|un|non-?) ?)\bpowered (?:flow )?hood\b|\bhood with (?:a |its own )?(?:own )?fan\b/;

export function methodSaid(line: string): readonly Fact[] {
  if (/\bflow ?box\b/.test(line)) return fact('method', 'flow-box');
  if (/\b(?:anemometer|traverse|vane|fpm)\b/.test(line)) return fact('method', 'traverse');
  if (/\bbags?\b|\d (?:gal|liter)\b.*\d sec\b|\d sec\b.*\d (?:gal|liter)\b/.test(line)) return fact('method', 'bag');
  if (/\bspeeds?\b[^.;]{0,24}\b(?:grille|face)\b|\d mps\b/.test(line)) return fact('method', 'traverse');
  return /(?<!range |kitchen )\bhood\b/.test(line)
    ? [...fact('method', 'hood'), ...(poweredHood.test(line) ? fact('hood-powered', 'yes') : [])]
    : [];
}
