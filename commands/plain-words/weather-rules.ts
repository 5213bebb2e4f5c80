import { cutsNumber, type Fact, fact, type Rule, rule, type Taken, without } from './line.ts';
import { decimal, length, number } from './measures.ts';

export const insulationRules: readonly Rule[] = [
  rule(String.raw`\brsi ?-?(?<v>\d+(?:\.\d+)?)`, ({ v }) => fact('duct-insulation', `RSI ${v}`)),
  rule(String.raw`\br(?:-value)?(?: of| is)? ?-? ?(?<v>\d+(?:\.\d+)?)(?![\d/])`, ({ v }) =>
    fact('duct-insulation', `R-${v}`),
  ),
  rule(
    String.raw`\b(?:uninsulated|bare|no insulation|not insulated|isn'?t (?:insulated|wrapped)|not any insulation|without insulation|no wrap|unwrapped|not wrapped|naked|nothing (?:is |was )?(?:wrapped|wrapping|insulating|around|over|on)(?: (?:on|around|over))? (?:it|the (?:duct|pipe))|no (?:jacket|sleeve))\b`,
    () => fact('duct-insulation', 'none'),
  ),
];

export interface Place {
  readonly word: RegExp;
  readonly id: string;
}

/** Small words that tie a place to the number before it: "20 deg in the attic". */
const tied =
  /^(?: ?(?:deg[fc]?|%|rh|air|within|inside|in|at|up|for|of|on|the|an?|her|his|their|my|our|that|cold|whole|rest|from|to))* ?$/;

/**
 * How far the word of each place stands from a number: a word before it counts as nearer, a comma between makes it farther, and a
 * word that a small word ties to the number is nearest of all.
 */
const distances = (
  text: string,
  { at, end }: { readonly at: number; readonly end: number },
  places: readonly Place[],
): readonly { readonly id: string; readonly far: number }[] =>
  places.flatMap(({ word, id }) =>
    [...text.matchAll(new RegExp(word.source, 'g'))].map(({ index, 0: said }) => {
      const behind = index >= end;
      const between = behind ? text.slice(end, index) : text.slice(index + said.length, at);
      const far = behind ? (tied.test(between) ? 3 : between.length * 1.6 + 6) : between.length;
      return { id, far: far + (between.match(/[,;.](?!\d)/g)?.length ?? 0) * 12 };
    }),
  );

interface Placing {
  readonly places: readonly Place[];
  /** What the line told already. */
  readonly known: readonly Fact[];
}

function placedBy(
  text: string,
  whole: string,
  pattern: RegExp,
  { places, known }: Placing,
  shown: (said: string) => string,
): Taken {
  const matches = [...text.matchAll(pattern)].filter(
    ({ index, 0: said }) => !cutsNumber(text, index, index + said.length),
  );
  const given = new Set(known.map(({ id }) => id));
  const facts: Fact[] = [];
  const placed = new Set<number>();
  let left = text;
  const place = ({ index, 0: said }: RegExpMatchArray & { readonly index: number }, id: string) => {
    if (given.has(id) || placed.has(index)) return;
    given.add(id);
    placed.add(index);
    facts.push({ id, answer: shown(said) });
    left = without(left, index, index + said.length);
  };
  // The surest pairs first; what is left over belongs where nothing was told yet.
  const pairs = matches.flatMap((match) =>
    distances(whole, { at: match.index, end: match.index + match[0].length }, places).map((each) => ({
      match,
      ...each,
    })),
  );
  for (const { match, id } of pairs.sort((one, other) => one.far - other.far)) place(match, id);
  for (const match of matches) place(match, (places[0] as Place).id);
  return { facts, text: left };
}

const temperature = /(?<![\d.])-?\d+(?:\.\d+)? (?:degf|degc|deg)\b(?! elbow)/g;
const shownTemperature = (said: string): string =>
  `${/-?\d+(?:\.\d+)?/.exec(said)?.[0]}${said.endsWith('degc') ? ' C' : said.endsWith('degf') ? ' F' : ''}`;

/** Temperatures by the place named beside them. */
export const temperaturesIn = (text: string, whole: string, placing: Placing): Taken =>
  placedBy(text, whole, temperature, placing, shownTemperature);

const humidity =
  /\d+(?:\.\d+)?(?: (?:rh|relative humidity|humidity)\b)|\d+(?:\.\d+)? %(?: (?:rh|relative humidity|humidity|humid))?|\b(?:rh|relative humidity|humidity)(?: (?:is|of|at|around|about))* ?\d+(?:\.\d+)?(?! ?(?:cfm|ft|in|min|deg|degf|degc)\b)(?: %)?/g;

export const humiditiesIn = (text: string, whole: string, placing: Placing): Taken =>
  placedBy(text, whole, humidity, placing, (said) => `${/\d+(?:\.\d+)?/.exec(said)?.[0]} %`);

export const atticPlaces: readonly Place[] = [
  {
    word: /\battic\b|\bloft\b|\bcrawl ?space\b|\boutside\b|\boutdoors?\b|\bup there\b|\bwinter\b|\bdesign\b/,
    id: 'attic-temperature',
  },
  {
    word: /\bbath(?:room)? (?:air|is|at|temperature)\b|\binside\b|\bexhaust\b|\bindoors?\b|\bbathroom air\b|\broom air\b|\bair(?:'s| is)? (?:leav\w+|going (?:out|in)|com(?:es|ing) (?:out|off)|go(?:es|ing) (?:out|into))\b|\bleav(?:es|ing) at\b|\binto the duct\b|\bair (?:(?:with)?in|inside|through) (?:the )?(?:duct|pipe)\b|\b(?:duct|pipe) air\b|\bgo(?:es|ing) out at\b|\b(?:the|her|his|in) bath(?:room)?\b/,
    id: 'exhaust-temperature',
  },
];
export const atticHumidities: readonly Place[] = [{ word: /\bexhaust\b/, id: 'exhaust-humidity' }];
export const roomTemperatures: readonly Place[] = [
  { word: /\bhouse\b/, id: 'house-temperature' },
  { word: /\bbath(?:room)?\b/, id: 'bathroom-temperature' },
];
export const roomHumidities: readonly Place[] = [{ word: /\bhouse\b/, id: 'house-humidity' }];

/** A temperature written without a sign of one: "attic 25", "attic at -10". */
export const bareAttic: Rule = rule(
  String.raw`(?:gets?|drops?|goes|hits|is|it's|its|down|about|around)(?: (?:to|down|as low as|like|about|around|maybe|at))* (?<u>-?\d+)(?: deg| degf)? (?:up there|in the (?:attic|winter)|outside|at night)|(?:attic|loft)(?:'s)?(?: (?:is|was|were|got|fell|dropped|reads?|showed|this morning|last night|at|gets|goes|drops|falls|stays|can|will|get|go|drop|as|low|down|to|about|around|hits|temperature|of|sits|runs|temp|probably|maybe|likely|say|roughly))* ?(?<t>-?\d+)(?! ?(?:ft|in|m|mm|cfm|l/s|degc|sqft|m2|to|x|by|flex|smooth|rigid|spiral|elbow|r)\b)(?! ?%)(?! or \d)(?: (?:deg|degf)\b)?(?: (?:above|(?<below>below))(?: zero)?\b(?= ?(?:[,;.?]|$|and\b|with\b)))?`,
  ({ t, u, below }) => fact('attic-temperature', `${below === undefined ? '' : '-'}${t ?? u}`),
);

/** "Temp 69" with no place named, where a house and its humidity are asked for. */
export const bareHouse: Rule = rule(
  String.raw`(?<!\b(?:bath|bathroom|exhaust|attic|outside|outdoor|room|water|duct|air|shower) )\btemperature(?: (?:is|of|at|inside|indoors|about|around))*[:=,]? ?(?<t>[5-8]\d)(?![\d.]| ?(?:degc|cfm|l/s|ft|in|min|sqft)\b)(?! ?%)(?: (?:degf|deg)\b)?`,
  ({ t }) => fact('house-temperature', `${t}`),
);

/** "Bath at 72": the warmth of a room where people undress. */
export const bareExhaust: Rule = rule(
  String.raw`\b(?:bath(?:room)?|exhaust|inside|indoors|room)(?:'s(?: (?:at|about|around))?|(?: (?:air|is|at|about|around|runs|stays|temperature|of))+) (?<t>[1-9]\d)(?! ?(?:ft|in|m|mm|cfm|l/s|%|x|by|min|sqft|m2)\b)(?! ?%)(?: deg\b)?|(?<![\d./-])(?<u>[1-9]\d) (?:within|in|inside) (?:the |her |his )?(?:bath(?:room)?|room|house|shower)\b`,
  ({ t = '', u = t }) => (Number(u) > 15 && Number(u) < 95 ? fact('exhaust-temperature', u) : undefined),
);

/** A number below nothing is a temperature. */
export const belowZero: Rule = rule(
  String.raw`(?<![\d.a-z/-])(?<t>-\d+)(?! ?(?:ft|in|m|mm|cfm|l/s|%)\b)(?: deg\b)?`,
  ({ t }) => fact('attic-temperature', `${t}`),
);

const ofUnit = (said: string | undefined, unit: string | undefined): string =>
  `${said}${unit === undefined ? '' : ` ${unit}`}`;

/** The unit of a width, with the inches that stand behind its feet. */
const across = String.raw`in|mm|cm|ft(?: ${number} in)?|m`;

/** Not an airflow. */
const notAir = String.raw`(?![\d.]| ?(?:cfm|l/s|m3/h|watt|%)\b)`;
/** The inches, or centimetres, a unit is made of, for telling a gap from a door. */
const inchesIn: Readonly<Record<string, number>> = { in: 1, mm: 1 / 25.4, cm: 1 / 2.54, m: 39.37, ft: 12 };
const inches = (said: string, unit: string | undefined): number =>
  Number(decimal(said)) * (inchesIn[unit?.split(' ')[0] ?? ''] ?? (Number(decimal(said)) > 60 ? 1 / 25.4 : 1));

/** No gap under a door is wider than this, and no door narrower than that, in inches. */
const widestGap = 6;
const narrowestDoor = 14;
const gap = (said: string | undefined, unit: string | undefined): readonly Fact[] | undefined =>
  inches(`${said}`, unit) > widestGap && !(unit === undefined && Number(said) < narrowestDoor)
    ? undefined
    : fact('door-gap', ofUnit(said, unit));
/** Feet and inches as doors are sold: "2-6" or "2/8", and none above three feet; 3/8 is a gap. */
const asSold = (feet: string, inches: string): string =>
  String.raw`(?<${feet}>2(?= ?(?:ft |-|/) ?(?:0|2|4|6|8|10)\b)|3(?= ?(?:ft |- ?0|/ ?0)))(?: ?ft |-|/)(?<${inches}>0|2|4|6|8|10)`;
/** A door whose width stands before it has none behind. */
const unsizedDoor = String.raw`(?<!\d ?(?:in|mm|cm|ft) (?:wide )?(?:bath(?:room)? )?)\bdoor(?:'s)?(?: (?:is|of|width|a|an|at|it's|its|just|only))*[:=,]? ?`;
const doorAsSold: readonly Rule[] = [
  // "A 2868 door" is 2 ft 8 in wide and 6 ft 8 in high.
  rule(
    String.raw`(?<![\d./x-] ?)(?<f>[23])(?<i>[02468])(?: ?x ?)?[67][068](?: (?:bath(?:room)?|hollow|core|slab|prehung|solid))* ?door\b|\bdoor(?:'s)?(?: (?:is|a|an|size))*[:=,]? ?(?<g>[23])(?<j>[02468])(?:6[68]|70|80)(?![\d/.]| ?(?:in|mm|ft|cfm|sqin)\b)`,
    ({ f, i, g, j }) => fact('door-width', `${f ?? g} ft ${i ?? j} in`),
  ),
  rule(
    String.raw`(?:${unsizedDoor}${asSold('f', 'i')}(?![\d/.]| ?(?:ft|x|by|gap|undercut|under|clearance)\b)(?: in\b)?|(?<![\d./x-] ?)${asSold('g', 'j')}(?: in)?(?: x 6-8)? (?:wide )?(?:bath(?:room)? )?door\b)`,
    ({ f, i, g, j }) => fact('door-width', `${f ?? g} ft ${i ?? j} in`),
  ),
];
const door = (said: string | undefined, unit: string | undefined): readonly Fact[] | undefined =>
  inches(`${said}`, unit) < narrowestDoor ? undefined : fact('door-width', ofUnit(said, unit));

/** "So call it 5/16": what somebody settles on, where it can only be a gap. */
const settledGap: Rule = rule(
  String.raw`\b(?:call|called|calling|say|figure|figured|make|put|guess)(?: (?:it|that|the gap|at|about|around|maybe|a|like|roughly))* (?<g>(?:[01][ -])?\d/\d{1,2})(?: (?<u>in))?\b`,
  ({ g, u }) => gap(g, u ?? 'in'),
);

export const doorRules: readonly Rule[] = [
  ...doorAsSold,
  settledGap,
  rule(
    String.raw`(?:\bdoor\b|~)[^\d~;.]{0,24}\b(?:cut|trimmed|planed|shaved|sits|clears)(?: (?:up|off|down|short|the|by|about|it|floor|tile|carpet|like|maybe))* (?<g>(?:[01][ -])?\d/\d{1,2})(?: (?<u>in))?\b`,
    ({ g, u }) => gap(g, u ?? 'in'),
  ),
  // "The gap under a 32 in door is 5/8 in": two widths in one breath, the door's first.
  rule(
    String.raw`(?:gap|undercut|clearance|space|crack)(?: (?:is|under|at|below|beneath|of|the|a|an|that|this|her|his|my|our|bottom))* (?<w>${number}) ?(?<v>in|mm|cm|ft|m)? ?(?:wide )?(?:bath(?:room)? )?door(?: (?:is|of|at|about|only|just|measures|maybe|like|around|a))*[:=,]? ?(?<g>${number})${notAir} ?(?<u>in|mm|cm)?`,
    ({ w, v, g, u }) => {
      const [under, width] = [gap(g, u), door(w, v)];
      return under && width ? [...under, ...width] : undefined;
    },
  ),
  // "Door 30 gap 1": each number behind its own word.
  rule(
    String.raw`door(?: (?:is|of|width|a|at))*[:=,]? ?(?<w>${number}) ?(?<v>${across})?(?: wide)?[ ,;.]*(?:and |with |an? |the )*(?:gap|undercut|clearance)(?: (?:is|of|at|under))*[:=,]? ?(?<g>${number})${notAir} ?(?<u>in|mm|cm)?`,
    ({ w, v, g, u }) => {
      const [under, width] = [gap(g, u), door(w, v)];
      return under && width ? [...under, ...width] : undefined;
    },
  ),
  rule(
    String.raw`(?<g>${number}) ?(?<u>in|mm|cm)? ?(?:of )?(?:air ?)?(?:door )?(?:gap|undercut|clearance|crack|space|under(?= (?:the |a |her |his |this |that )?(?:\S+ ){0,3}door\b)|off the (?:floor|tile|carpet)|under it|(?:at|off) the bottom|below)`,
    ({ g, u }) => gap(g, u),
  ),
  rule(
    String.raw`(?:gap|undercut|under cut|clearance)(?:'s)?(?:,? (?:is|between|and|tile|floor|carpet|bottom|of|under|at|by|about|only|maybe|the|like|door|bath|bathroom|around|measures|it|it's|a|just|like))*[:=,]? ?(?<g>${number})${notAir}(?! ?ft)(?! ?(?:in|mm|cm|m)? ?(?:wide )?(?:bath(?:room)? )?door) ?(?<u>in|mm|cm)?`,
    ({ g, u }) => gap(g, u),
  ),
  rule(String.raw`(?<w>${number}) ?-?(?<u>${across})? ?(?:wide )?(?:bath(?:room)? )?door\b`, ({ w, u }) => door(w, u)),
  rule(
    String.raw`(?<!blower[ -])\bdoor(?:'s)?(?: (?:is|of|width|wide|it's|a|an|measures|at|about|its))*[:=,]? ?(?<w>${number})${notAir} ?(?<u>${across})?(?: wide)?(?! (?:gap|undercut|clearance))`,
    ({ w, u }) => door(w, u),
  ),
  rule(String.raw`(?<g>(?:[01][ -])?\d/\d{1,2}) in\b`, ({ g }) => gap(g, 'in')),
  rule(String.raw`(?<w>${number}) (?<u>in|mm|cm|m|ft(?: ${number} in)?) wide`, ({ w, u }) => door(w, u)),
  rule(String.raw`(?<w>(?:1[89]|[23]\d|4[0-8])(?![\d.])) wide`, ({ w }) => fact('door-width', `${w}`)),
];

/** The gap and the door where each is named: a width alone may be the duct's. */
export const undercutRules: readonly Rule[] = doorRules.slice(0, 9).filter((each) => each !== settledGap);

/** A length beside a door that nothing else is said of: what is as wide as a door is one. */
export const doorBySize: readonly Rule[] = [
  rule(String.raw`(?<w>${number}) (?<u>in|mm|cm)\b`, ({ w, u }) =>
    inches(`${w}`, u) >= 18 && inches(`${w}`, u) <= 48 ? fact('door-width', `${w} ${u}`) : undefined,
  ),
  rule(String.raw`(?<g>${number}) (?<u>in|mm|cm)\b`, ({ g, u }) =>
    inches(`${g}`, u) <= 2.5 ? fact('door-gap', `${g} ${u}`) : undefined,
  ),
];

/** So long, or from so long to so long. */
const spell = String.raw`${number}(?: ?(?:to|or|-) ?${number})?`;

export const showerRules: readonly Rule[] = [
  // "10 min each, 20 total": all of them in a row are asked for.
  rule(
    String.raw`${number} min (?:each|apiece)\b[^.;~\d]{0,30}(?<m>${number})(?: min)? (?:total|altogether|in all|combined)`,
    ({ m }) => fact('shower-minutes', `${m} min`),
  ),
  rule(String.raw`(?<m>${number}) min (?:total|altogether|in all|combined)`, ({ m }) =>
    fact('shower-minutes', `${m} min`),
  ),
  rule(String.raw`(?<m>${spell}) ?min (?:long |hot )?(?:showers?|baths?)`, ({ m }) =>
    fact('shower-minutes', `${m} min`),
  ),
  rule(String.raw`showers?\b[^\d~.;]{0,30}?(?<m>${spell}) min`, ({ m }) => fact('shower-minutes', `${m} min`)),
  rule(
    String.raw`(?<h>${number}) hr (?:total |altogether |long )?(?:of |in the )?(?:\w+ )?(?:showers?|showering)|showers?\b[^\d~.;]{0,30}?(?<g>${number}) hr`,
    ({ h, g }) => fact('shower-minutes', `${h ?? g} h`),
  ),
  // Minutes told of the fan, of its timer or of what is still wrong after them are no shower.
  rule(
    String.raw`(?<!\b(?:after|fan|timer|run|runs|running|switch|leaves?|left|keeps?|kept|another|extra|clears?|dry|dries|still|stays?|set)\b[^.;,~\d]{0,24})(?<m>${spell}) min(?! (?:later|after|timer|on the timer|more|longer|extra|run)\b)`,
    ({ m }) => fact('shower-minutes', `${m} min`),
  ),
];

export const atticLength: Rule = rule(String.raw`(?<l>${length})`, ({ l }) =>
  / (?:ft|m)\b/.test(l ?? '') ? fact('attic-duct-length', `${l}`) : undefined,
);
