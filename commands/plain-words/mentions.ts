/**
 * What one line of plain words mentions: spans of text that are facts, found by patterns tried in order. A span is used once;
 * numbers left over are named to the person, never guessed.
 */
export interface Mention {
  /** The fact on the sheet, by the id of its question. */
  readonly fact: string;
  /** The answer as the question reads it. */
  readonly answer: string;
  /** The words that led to it. */
  readonly said: string;
}

interface Extractor {
  readonly pattern: RegExp;
  /** The facts a match stands for; none when it is something else after all. */
  facts(
    groups: Readonly<Record<string, string | undefined>>,
    match: string,
    line: string,
  ): readonly (readonly [fact: string, answer: string])[];
}

const number = String.raw`\d+(?:[.,]\d+)?(?:[ -]\d+\/\d+)?|\d+\/\d+|[.,]\d+`;
const foot = String.raw`(?:feet|foot|ft\b\.?|')`;
const inch = String.raw`(?:inches|inch|in\b\.?|"|'')`;
const flow = String.raw`(?:cfm|l\/s|lps|m3\/h|m³\/h)\b`;
const degrees = String.raw`(?:°\s*)?(?:degrees?|deg|°)?\s*(?:f|c)?\b`;

const x = (source: string) => new RegExp(source, 'gi');

const measure = (value: string | undefined, unit: string | undefined, fallback: string): string =>
  `${value ?? ''} ${unit ?? fallback}`.trim();

/** A length in feet where nothing is said; a bare decimal under 7 beside "m" is metres already. */
const room = (value: string | undefined, unit: string | undefined) => measure(value, unit, 'ft');

const fixtureWords: readonly (readonly [RegExp, string])[] = [
  [/\b(?:jetted|jacuzzi|whirlpool|jet)\s*(?:tub|bath)?\b/i, 'jetted-tub'],
  [/\bsteam\s*(?:shower|room)?\b/i, 'steam-shower'],
  [/\b(?:toilet|wc|commode|loo)s?\b/i, 'toilet'],
  [/\b(?:tub\s*(?:\/|and|&|with|-)?\s*shower|tub|bathtub|bath tub)s?\b/i, 'tub'],
  [/\bshowers?\b(?!\s*(?:for|of|lasting|\d))/i, 'shower'],
];

/** In this order: what is most surely one thing first, so that "4 in flex 20 ft" is duct before either number is anything else. */
const extractors: readonly Extractor[] = [
  {
    // Rated points: 84@0.1 66@0.25
    pattern: x(String.raw`(?:(?:${number})\s*(?:cfm)?\s*@\s*(?:${number})\s*(?:in\.?\s*w\.?[gc]\.?|"|pa)?[\s,;]*)+`),
    facts: (_, match) => [['fan-curve', match.trim()]],
  },
  {
    pattern: x(String.raw`constant(?:\s*flow)?\s*(?:${number})\s*(?:cfm)?\s*(?:up\s*)?to\s*(?:${number})`),
    facts: (_, match) => [['fan-curve', match.trim()]],
  },
  {
    // Cables by the trade's name: 3 14/2 with ground
    pattern: x(
      String.raw`(?:(?<count>\d{1,2}|an?)\s*(?:x\s*|runs?\s+of\s+|cables?\s+of\s+|pieces?\s+of\s+)?)(?<awg>1[024]|8|6)\s*[\/-]\s*(?<wires>[234])\b(?:\s*(?:romex|nm|nm-b|cables?|wires?))?(?<ground>\s*(?:with|w\/?|\+|and)?\s*(?:a\s+)?(?:grounds?|gnd|g\b))?`,
    ),
    facts: ({ count, awg, wires, ground }) => {
      const cables = /^an?$/.test(count ?? '') ? 1 : Number(count);
      const list: (readonly [string, string])[] = [['conductors', `${cables * Number(wires)}x${awg}`]];
      return ground ? [...list, ['grounds', `${cables}x${awg}`]] : list;
    },
  },
  {
    pattern: x(
      String.raw`(?<volume>${number})\s*(?:cubic\s*inch(?:es)?|cubic\s*in\b\.?|cu\.?\s*in\b\.?|in3|in³|cubes?|cube|cu\b|ci\b)`,
    ),
    facts: ({ volume }) => [['box', `${volume} in3`]],
  },
  {
    pattern: x(
      String.raw`(?:an?|one|1|(?<count>[2-4]))\s*(?:x\s*)?(?:dimmer\s+|timer\s+|fan\s+)?(?:switch(?:es)?|receptacles?|outlets?|timers?|devices?)\b`,
    ),
    facts: ({ count }) => [['devices', `${count ?? 1}`]],
  },
  {
    // A timed bag.
    pattern: x(
      String.raw`(?<volume>${number})\s*-?\s*(?<unit>gal(?:lon)?s?|l\b|lit(?:er|re)s?)\b(?:\s*(?:bag|bin|trash|garbage|contractor))*`,
    ),
    facts: ({ volume, unit }) => [['bag-volume', `${volume} ${unit}`]],
  },
  {
    pattern: x(String.raw`(?<times>(?:${number})(?:\s*(?:,|and|&)\s*(?:${number}))*)\s*(?:seconds?|secs?|s)\b`),
    facts: ({ times }) => [['fill-times', `${times} s`]],
  },
  {
    // Under the door.
    pattern: x(
      String.raw`(?<gap>${number})\s*(?<unit>${inch}|mm\b|cm\b)?\s*(?:gap|undercut|under\s*cut|clearance|under\s+the\s+door|off\s+the\s+floor)`,
    ),
    facts: ({ gap, unit }) => [['door-gap', measure(gap, unit, 'in')]],
  },
  {
    pattern: x(String.raw`(?:gap|undercut|clearance)\s*(?:of|is|=)?\s*(?<gap>${number})\s*(?<unit>${inch}|mm\b|cm\b)?`),
    facts: ({ gap, unit }) => [['door-gap', measure(gap, unit, 'in')]],
  },
  {
    pattern: x(
      String.raw`(?<width>${number})\s*-?\s*(?<unit>${inch}|mm\b|cm\b)?\s*(?:wide\s*)?(?:bath(?:room)?\s*)?door\b`,
    ),
    facts: ({ width, unit }) => [['door-width', measure(width, unit, 'in')]],
  },
  {
    pattern: x(String.raw`door\s*(?:is\s*)?(?<width>${number})\s*-?\s*(?<unit>${inch}|mm\b|cm\b)?\s*(?:wide)?`),
    facts: ({ width, unit }) => [['door-width', measure(width, unit, 'in')]],
  },
  {
    pattern: x(
      String.raw`\b(?:r-?\s*(?<r>\d+(?:\.\d+)?)|rsi\s*(?<rsi>\d+(?:[.,]\d+)?))\b(?:\s*(?:insulation|insulated|wrap))?`,
    ),
    facts: ({ r, rsi }) => [['duct-insulation', r === undefined ? `RSI ${rsi}` : `R-${r}`]],
  },
  {
    pattern: /\b(?:uninsulated|bare|no insulation|not insulated)\b(?:\s+duct)?/gi,
    facts: () => [['duct-insulation', 'R-0']],
  },
  {
    pattern: x(
      String.raw`attic\s*(?:is\s*|at\s*|temp(?:erature)?\s*(?:of\s*|is\s*)?|about\s*|around\s*)*(?<t>-?\d+(?:\.\d+)?)\s*(?<u>${degrees})`,
    ),
    facts: ({ t, u }) => [['attic-temperature', temperature(t, u)]],
  },
  {
    pattern: x(
      String.raw`(?<t>-?\d+(?:\.\d+)?)\s*(?<u>(?:°\s*)?(?:degrees?|deg|°)?\s*[fc]\b|degrees?|deg|°)\s*(?:in\s+(?:the\s+)?)?attic`,
    ),
    facts: ({ t, u }) => [['attic-temperature', temperature(t, u)]],
  },
  {
    pattern: x(
      String.raw`(?:shower(?:s|ing)?\s*(?:for|of|lasts?|lasting|is)?\s*(?<after>${number})\s*(?:minutes?|mins?)|(?<before>${number})\s*-?\s*(?:minutes?|mins?)\s*shower)`,
    ),
    facts: ({ after, before }) => [['shower-minutes', `${after ?? before} min`]],
  },
  {
    pattern: x(String.raw`(?<h>\d{1,2})\s*(?:%|percent)\s*(?:rh|humidity|humid|relative humidity)?`),
    facts: ({ h }) => [['house-humidity', `${h} %`]],
  },
  {
    // A room: 8x10, 8 by 10 ft, 2.4 m x 3 m, with a third number for the ceiling.
    pattern: x(
      String.raw`(?<a>${number})\s*(?<ua>${foot}|m\b|metres?|meters?)?\s*(?:x|×|by)\s*(?<b>${number})\s*(?<ub>${foot}|m\b|metres?|meters?)?(?:\s*(?:x|×|by)\s*(?<c>${number})\s*(?<uc>${foot}|m\b|metres?|meters?)?)?`,
    ),
    facts({ a, ua, b, ub, c, uc }) {
      const list: (readonly [string, string])[] = [
        ['room-length', room(a, ua ?? ub ?? uc)],
        ['room-width', room(b, ub ?? ua ?? uc)],
      ];
      return c === undefined ? list : [...list, ['ceiling-height', room(c, uc ?? ub ?? ua)]];
    },
  },
  {
    pattern: x(
      String.raw`(?<area>${number})\s*(?<u>sq\.?\s*f(?:ee)?t\.?|square\s*f(?:ee|oo)t|sf\b|ft2|ft²|sq\.?\s*m\b|m2|m²|square\s*met(?:er|re)s)`,
    ),
    facts: ({ area, u }) => [['room-area', `${area} ${/m/i.test(u ?? '') ? 'm2' : 'sq ft'}`]],
  },
  {
    pattern: x(
      String.raw`(?<h>${number})\s*-?\s*(?<u>${foot}|m\b|metres?|meters?)?\s*(?:high\s*)?(?:ceilings?|clg|high\b|tall\b)`,
    ),
    facts: ({ h, u }) => [['ceiling-height', room(h, u)]],
  },
  {
    pattern: x(String.raw`ceilings?\s*(?:height\s*)?(?:is|are|at|of|=)?\s*(?<h>${number})\s*(?<u>${foot}|m\b)?`),
    facts: ({ h, u }) => [['ceiling-height', room(h, u)]],
  },
  {
    pattern: x(String.raw`(?<c>${number})\s*-?\s*(?<u>${inch}|mm\b)?\s*(?:collar|outlet|port)\b`),
    facts: ({ c, u }) => [['collar', measure(c, u, 'in')]],
  },
  {
    pattern: x(String.raw`(?<s>${number})\s*sones?\b`),
    facts: ({ s }) => [['rated-sones', `${s} sones`]],
  },
  {
    pattern: x(String.raw`(?<w>${number})\s*(?:watts?|w)\b`),
    facts: ({ w }) => [['fan-watts', `${w} W`]],
  },
  {
    pattern: x(String.raw`(?<h>${number})\s*(?:hours?|hrs?|h)\s*(?:a|per|\/|each)\s*(?:day|d)\b`),
    facts: ({ h }) => [['hours-per-day', `${h} h`]],
  },
  {
    pattern: x(
      String.raw`(?:need(?:s|ed|ing)?|want(?:s|ed)?|require[sd]?|must move|target)\s*(?:is|of)?\s*(?<q>${number})\s*(?<u>${flow})?`,
    ),
    facts: ({ q, u }) => [['airflow-needed', measure(q, u, 'cfm')]],
  },
  {
    pattern: x(
      String.raw`(?:delivers?|delivering|moves|moving|measured|actual(?:ly)?|really|gets?|getting)\s*(?:about\s*|only\s*)*(?<q>${number})\s*(?<u>${flow})?`,
    ),
    facts: ({ q, u }) => [['delivered-airflow', measure(q, u, 'cfm')]],
  },
  {
    pattern: x(
      String.raw`(?:(?:rated|carton|sold as|label(?:ed|led)?)\s*(?:at\s*|of\s*)?(?<after>${number})\s*(?<ua>${flow})?|(?<before>${number})\s*(?<ub>${flow})?\s*(?:bath(?:room)?\s*)?(?:exhaust\s*)?fan\b|fan\s*(?:is|of|at|rated)?\s*(?<fan>\d{2,3})\s*(?<uf>${flow})?)`,
    ),
    facts: ({ after, ua, before, ub, fan, uf }) => [
      ['fan-curve', measure(after ?? before ?? fan, ua ?? ub ?? uf, 'cfm')],
    ],
  },
  {
    pattern: x(String.raw`(?<q>${number})\s*(?<u>${flow})`),
    facts: ({ q, u }) => [['airflow', `${q} ${u}`]],
  },
];

const temperature = (value: string | undefined, unit: string | undefined): string =>
  `${value} ${/c/i.test((unit ?? '').replace(/degrees?|deg/gi, '')) ? 'C' : 'F'}`;

/** Fixtures are words, not numbers; each is found once. */
function fixturesIn(line: string): Mention | undefined {
  const found = fixtureWords.filter(([pattern]) => pattern.test(line)).map(([, id]) => id);
  // "Shower over a tub" is one fixture, a tub.
  const counted =
    found.includes('tub') && /tub\s*(?:\/|and|&|with|-)?\s*shower|shower\s*over/i.test(line)
      ? found.filter((id) => id !== 'shower')
      : found;
  return counted.length === 0 ? undefined : { fact: 'fixtures', answer: counted.join(', '), said: counted.join(', ') };
}

export interface Mentions {
  readonly found: readonly Mention[];
  /** The line with what was understood taken out. */
  readonly rest: string;
  /** Numbers nobody could place. */
  readonly loose: readonly string[];
}

/** Everything a line mentions, duct left to the run reader which sees the line first. */
export function mentionsIn(line: string): Mentions {
  const found: Mention[] = [];
  let rest = line;
  for (const { pattern, facts } of extractors) {
    rest = rest.replace(pattern, (...parts) => {
      const match = parts[0] as string;
      const groups = (typeof parts.at(-1) === 'object' ? parts.at(-1) : {}) as Record<string, string | undefined>;
      const stands = facts(groups, match, line).filter(([fact]) => !found.some((known) => known.fact === fact));
      if (stands.length === 0) return match;
      found.push(...stands.map(([fact, answer]) => ({ fact, answer, said: match.trim() })));
      return ' ; ';
    });
  }
  const fixtures = fixturesIn(line);
  if (fixtures) found.push(fixtures);
  return { found, rest, loose: [...rest.matchAll(/\d+(?:[.,]\d+)?(?:\/\d+)?/g)].map(([text]) => text) };
}
