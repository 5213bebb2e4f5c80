import { fact, type Rule, rule } from './line.ts';

const year = String.raw`(?<y>20(?:14|15|17|18|20|21|23|24|25|26))`;

/** The code a line names. Wiring and ventilation have codes of their own. */
export const buildingCodes: readonly Rule[] = [
  rule(String.raw`\b(?:irc|international residential(?: code)?) ?(?:of )?${year}(?: irc)?`, ({ y }) =>
    fact('building-code-edition', `irc-${y}`),
  ),
  rule(String.raw`${year} (?:irc|international residential)(?: code)?`, ({ y }) =>
    fact('building-code-edition', `irc-${y}`),
  ),
  rule(
    String.raw`(?:california|title 24|calif)\b[^~\d]{0,40}?2025(?: code)?|2025 (?:california|title 24)(?: code)?`,
    () => fact('building-code-edition', 'california-2025'),
  ),
  rule(String.raw`(?:ashrae ?)?62\.2(?:-20\d\d)?|ashrae`, () => fact('building-code-edition', 'ashrae-62-2')),
  rule(String.raw`\b(?:canada|canadian)(?: code)?|\bnbc(?: 20\d\d)?`, () => fact('building-code-edition', 'canada')),
  rule(String.raw`\b(?:england|english|part f|approved document f)\b`, () => fact('building-code-edition', 'england')),
];

export const wiringCodes: readonly Rule[] = [
  rule(String.raw`\bnec ?(?:of )?${year}`, ({ y }) => fact('electrical-code-edition', `${y}`)),
  rule(String.raw`${year} (?:nec|code|edition|cycle|electrical)`, ({ y }) => fact('electrical-code-edition', `${y}`)),
  rule(
    String.raw`\b(?:code|edition|on|under|by|per|using|use|enforces?|adopted)(?: (?:is|the|cycle|year|still|of))*[:=,]? ?${year}(?![\d.]| ?(?:cfm|ft|in|in3|watt|hdd|kd|irc|ibc)\b)`,
    ({ y }) => fact('electrical-code-edition', `${y}`),
  ),
  rule(String.raw`(?<=[,;.] ?)(?:the )?${year}(?= ?(?:$|[,;.?]))`, ({ y }) => fact('electrical-code-edition', `${y}`)),
  // A year at the very end of what fills a box.
  rule(
    String.raw`(?<=\b(?:clamps?|none|deep|square|octagon|studs?|devices?|switch(?:es)?|timers?|grounds?|egcs?|awg|1[024]) )${year}(?= ?[.?]?$)`,
    ({ y }) => fact('electrical-code-edition', `${y}`),
  ),
  rule(String.raw`\b(?:canada|canadian|cec)(?: electrical)?(?: code)?(?: 20\d\d)?`, () =>
    fact('electrical-code-edition', 'canada'),
  ),
];
