import { type Fact, fact, type Rule, rule } from './line.ts';
import { number } from './measures.ts';

/** What the wiring's numbers are told by: the heater, the lamp, the breaker, the fan's own draw. */
export const loadRules: readonly Rule[] = [
  rule(
    String.raw`(?<w>\d+) watt (?:\w+ )?heater|heater(?: (?:is|of|at|draws|with|rated|a))*[:=,]? ?(?<v>\d+) watt`,
    ({ w, v }) => fact('heater-watts', `${w ?? v} W`),
  ),
  // Hundreds of watts beside a heater are the heater's: no fan draws that.
  rule(String.raw`heater\b[^\d~.;]{0,32}?(?<w>\d{3,4}) watt|(?<v>\d{3,4}) watt[^\d~.;]{0,32}? heater`, ({ w, v }) =>
    Number(w ?? v) < 400 ? undefined : fact('heater-watts', `${w ?? v} W`),
  ),
  rule(
    String.raw`(?<w>${number}) watt (?:led )?(?:lamps?|bulbs?|lights?)|(?:lamps?|bulbs?|light)(?: (?:is|of|at|draws|with|rated|a))*[:=,]? ?(?<v>${number}) watt`,
    ({ w, v }) => fact('lamp-watts', `${w ?? v} W`),
  ),
  rule(
    String.raw`(?<a>\d+) ?(?:amp )?(?:breaker|circuit)|(?<c>15|20|30) amp|breaker(?: (?:is|of|at|a|an))*[:=,]? ?(?<b>\d+)(?: amp)?`,
    ({ a, b, c }) => fact('breaker', `${a ?? b ?? c} A`),
  ),
  rule(String.raw`(?<a>\d+(?:\.\d+)?) amp`, ({ a }) => fact('fan-amps', `${a} A`)),
  rule(
    String.raw`(?:#|no\.? ?)?(?<w>14|12|10|16)(?: awg)? (?:copper )?(?:wires?|wiring)\b|(?<v>14|12|10|16) awg`,
    ({ w, v }) => fact('thinnest-wire', `${w ?? v}`),
  ),
];

/** The first of these that the line speaks of. */
type Heard = readonly (readonly [RegExp, string])[];

const over = String.raw`\b(?:over|above|in|inside|directly over|right over|right above)(?: (?:the|a|her|his|my|their))?(?: (?:\w+ )?)(?:shower|tub)`;
const places: Heard = [
  [/\b(?:not|away|out of|clear of|without|no)\b[^.?]{0,16}\bspray\b/, 'over-tub-or-shower'],
  [
    /\b(?:spray|gets? wet|splash\w*)\b|\b(?:in|inside) (?:the |a )?shower\b|\bshower (?:stall|enclosure|ceiling)\b/,
    'sprayed',
  ],
  [/\b(?:over|above) (?:the |a )?shower\b/, 'sprayed'],
  [/\b(?:over|above) (?:the |a )?(?:\w+ )?(?:tub|bath)\b/, 'over-tub-or-shower'],
  [new RegExp(over), 'over-tub-or-shower'],
  [
    /\b(?:[0-2](?:\.\d+)?|[0-2]?-?\d\/\d) ?ft\b[^.?]{0,20}\b(?:tub|shower)\b|\b(?:next to|beside|near|right by|close to) (?:the |a )?(?:tub|shower)\b/,
    'near-tub-or-shower',
  ],
];

const ofUnit = '(?:fan|heat(?:er)?|light)';
const joined = String.raw`(?:[ ,/+&-]|and|with|an?)*`;
const kinds: Heard = [
  [
    new RegExp(String.raw`\b${ofUnit}\b${joined}\b(?:fan|heat(?:er)?|light)\b${joined}\b${ofUnit}\b`),
    'fan-light-and-heater',
  ],
  [
    /\b(?:fan|unit)\b[^.?]{0,12}\blight\b[^.?]{0,12}\bheater\b|\bheater\b[^.?]{0,12}\blight\b[^.?]{0,12}\bfan\b/,
    'fan-light-and-heater',
  ],
  [
    /\bfan(?:s)? ?(?:with|and|\/|\+|-|&) ?(?:an? )?(?:built[ -]in )?(?:\d+ watt )?(?:heater|heat)\b|\bheater ?(?:\/|-)? ?fan\b|\bheat(?:ed)? fan\b|\bfan heater\b/,
    'fan-and-heater',
  ],
  [
    /\bfan(?:s)? ?(?:with|and|\/|\+|-|&) ?(?:an? )?(?:led )?light\b|\bfan light\b|\blight ?(?:\/|-|and) ?fan\b/,
    'fan-and-light',
  ],
];

const controls: Heard = [
  [/\b(?:humidity|humidistat|moisture) ?(?:sens\w+|switch|control)?\b(?!.*%)/, 'humidity-sensor'],
  [/\b(?:motion|occupancy)(?: sensor| switch| detector)?\b/, 'occupancy-sensor'],
  [/\b(?:spring|wind[ -]?up|mechanical|wound)[ -]?(?:wound )?(?:timer|switch)\b/, 'spring-timer'],
  [/\b(?:dimmer|speed control|rheostat)\b/, 'speed-control'],
  [/\b(?:countdown|electronic|digital|push[ -]?button)? ?timer\b/, 'countdown-timer'],
  [/\b(?:plain|regular|standard|single[ -]pole|toggle) switch\b/, 'plain-switch'],
];

const wirings: Heard = [
  [/\bknob[ -](?:and|&|n)[ -]tube\b|\bk ?& ?t\b/, 'knob-and-tube'],
  [/\balumin(?:i)?um\b/, 'aluminium'],
];

const eras: Heard = [
  [
    /\b(?:wired|built|house|home)\b[^.?]{0,24}\b(?:19[0-4]\d)s?\b|\b(?:19[0-4]\d)s?(?:'s)? (?:house|home|wiring)\b/,
    'before-1950',
  ],
  [
    /\b(?:wired|built|house|home)\b[^.?]{0,24}\b(?:195\d|196[0-4])\b|\b(?:195\d|196[0-4])s? (?:house|home|wiring)\b/,
    '1950-to-1964',
  ],
  [
    /\b(?:wired|built|house|home)\b[^.?]{0,24}\b(?:196[5-9]|197[0-3])\b|\b(?:196[5-9]|197[0-3]) (?:house|home|wiring)\b/,
    '1965-to-1973',
  ],
];

const heard = (id: string, list: Heard, line: string): readonly Fact[] => {
  const found = list.find(([pattern]) => pattern.test(line));
  return found === undefined ? [] : fact(id, found[1]);
};

/** The control that is wanted, where one is named. */
export const controlSaid = (line: string): readonly Fact[] => heard('control-wanted', controls, line);
export const unitSaid = (line: string): readonly Fact[] => heard('unit-kind', kinds, line);

/** What a line tells of the wiring in words. What nobody said stays to be asked. */
export const wiringSaid = (line: string): readonly Fact[] => [
  ...heard('fan-place', places, line),
  ...unitSaid(line),
  ...controlSaid(line),
  ...heard('wiring-kind', wirings, line),
  ...heard('wiring-era', eras, line),
  ...(/\b(?:no|without an?|isn'?t an?|not an?|lacks an?|missing an?|missing|(?:doesn'?t|does not|don'?t|didn'?t) have an?(?:y)?) neutral\b|\bneutral\b[^.?]{0,12}\b(?:missing|not there)\b|\bswitch loop\b/.test(
    line,
  )
    ? fact('switch-box-neutral', 'none')
    : []),
  ...(/\b(?:no|without an?|isn'?t an?|not an?|lacks an?|missing|(?:doesn'?t|does not|don'?t|didn'?t) have an?(?:y)?) ground(?:s| wire)?\b(?![^.?]{0,20}\bswitch\b)|\bungrounded\b/.test(
    line,
  )
    ? fact('fan-ground', 'none')
    : []),
];

/** What a list of parts is made for, besides the duct. */
export const partsRules: readonly Rule[] = [
  rule(String.raw`\b(?<k>2x(?:6|8|10|12)s?)\b`, ({ k }) => fact('joist-kind', `${k}`.replace('s', ''))),
  rule(
    String.raw`(?<r>${number}) ?(?<v>in|mm|cm)? ?(?:o\.?c\.?(?![a-z])|on cent(?:er|re)s?|apart|joists?\b|between joists)|joists?(?: (?:are|is|at|on|every|spaced|with|of))*[:=,]? ?(?<s>${number})(?! ?(?:ft|m|x|by|cfm|watt|amp|elbow)\b)(?: (?<u>in|mm|cm))?(?: ?o\.?c\.?| on cent(?:er|re)s?)?`,
    ({ s, u, r, v }) => fact('joist-spacing', `${s ?? r} ${u ?? v ?? 'in'}`),
  ),
  rule(
    String.raw`grille(?: (?:is|of|size|at))*[:=,]? ?(?<a>${number}) ?(?:in |mm )?(?:x|by) ?(?<b>${number})(?: (?<u>in|mm))?|(?<c>${number}) ?(?:in |mm )?(?:x|by) ?(?<d>${number}) ?(?<v>in|mm)? grille`,
    ({ a, b, u, c, d, v }) => fact('grille-size', `${a ?? c} x ${b ?? d} ${u ?? v ?? 'in'}`),
  ),
  rule(
    String.raw`(?:opening|hole|cut-?out)(?: (?:is|of|was|at))*[:=,]? ?(?<a>${number}) ?(?:in |mm )?(?:x|by) ?(?<b>${number})(?: (?<u>in|mm))?|(?<c>${number}) ?(?:in |mm )?(?:x|by) ?(?<d>${number}) ?(?<v>in|mm)? (?:opening|hole|cut-?out)`,
    ({ a, b, u, c, d, v }) => fact('old-opening', `${a ?? c} x ${b ?? d} ${u ?? v ?? 'in'}`),
  ),
  rule(
    String.raw`housing(?: (?:is|of|size|at))*[:=,]? ?(?<a>${number}) ?(?:x|by) ?(?<b>${number}) ?(?:x|by) ?(?<c>${number})(?: (?<u>in|mm))?`,
    ({ a, b, c, u }) => fact('housing-size', `${a} x ${b} x ${c} ${u ?? 'in'}`),
  ),
  rule(String.raw`(?<l>${number}) (?<u>ft|m) (?:of )?(?:\S+ )?(?:cable|romex|wire)\b`, ({ l, u }) =>
    fact('cable-length', `${l} ${u}`),
  ),
  rule(String.raw`\br ?-? ?(?<v>\d+(?:\.\d+)?) (?:wrap|wrapped|insulated|sleeve|jacket|insulation)\b`, ({ v }) =>
    fact('duct-insulation', `R-${v}`),
  ),
  rule(String.raw`\br ?-? ?(?<v>\d+(?:\.\d+)?)(?![\d/])`, ({ v }) => fact('insulation-wanted', `R-${v}`)),
];
