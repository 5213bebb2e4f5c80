import { type Fact, fact, type Rule, rule } from './line.ts';
import { airflow, noUnit, number } from './measures.ts';

const hedge = String.raw`(?:(?:only|about|around|roughly|at least|at|of|is|was|to|be|us|maybe|like|a|an|the|just|up|says?|said|came in at|comes in at|:|=|,) ?)*`;
const q = `(?<q>${airflow})`;
/** "80, 100 or 110". A space belongs to what follows it, so that a row of commas can be read in one way only. */
const settingsList = String.raw`(?<list>\d+(?:(?: ?(?:,|/|and|or|-))+ ?\d+(?![\d.]| ?(?:ft|in|mm|m|cm)\b))+|(?<!\d )\d{2,3}(?: \d{2,3}){1,3}(?! \d))`;

/** A pressure of a rated point. */
const pressureSaid = String.raw`0?\.\d+|0(?![\d.])|1(?:\.\d+)?(?!\/)|\d+(?:\.\d+)?(?= pa\b)`;

/** Rated points, each with the units it was told in: litres a second at pascals are no cubic feet a minute. */
function pointsSaid(points: string): readonly Fact[] {
  const found = [
    ...points.matchAll(/(\d+(?:\.\d+)?)(?: (cfm|l\/s|m3\/h))? ?(?:@|at) ?(\d*(?:\.\d+)?)(?: (pa)\b)?/g),
  ].map(([, flow, unit, pressure, pascals]) => ({ flow, unit, pressure, pascals }));
  // A unit told once stands for all of them.
  const unit = found.find((each) => each.unit !== undefined)?.unit;
  const pascals = found.some((each) => each.pascals !== undefined) ? ' Pa' : '';
  const flows = unit === 'l/s' ? ' L/s' : unit === 'm3/h' ? ' m3/h' : '';
  return fact('fan-curve', found.map(({ flow, pressure }) => `${flow}${flows}@${pressure}${pascals}`).join(' '));
}

/** What the label tells of the fan: its points, one constant airflow, its settings, the one number on the carton. */
export const fanRules: readonly Rule[] = [
  rule(
    String.raw`(?:\d+(?:\.\d+)?(?: (?:cfm|l/s|m3/h))? ?(?:@|at) ?(?:${pressureSaid})(?: (?:(?:in\b ?)?(?:of )?(?:water(?: (?:column|gauge))?|w\.?[gc]\.?(?![a-z]))|in\b|pa\b))?(?: (?:and|,|;) |[ ,;]+(?:and )?)?)+`,
    (_, points) => pointsSaid(points),
  ),
  rule(
    String.raw`constant(?: flow)? ?(?<q>\d+)(?: cfm)?(?: fan)?(?: good| rated| holds| held)? ?(?:up )?to (?<p>\d+(?:\.\d+)?)(?: in(?: w\.?[gc]\.?)?)?`,
    ({ q: flow, p }) => fact('fan-curve', `constant ${flow} to ${p}`),
  ),
  rule(
    String.raw`${settingsList}(?: (?:cfm|l/s))? ?(?:on|with|via)? ?(?:the |a )?(?:selector|settings?|speeds?|switchable|selectable|jumper|dial)`,
    ({ list }) => fact('fan-settings', (list ?? '').match(/\d+/g)?.join(', ') ?? ''),
  ),
  rule(
    String.raw`(?:selector|settings?|selectable|speeds?)(?: (?:fan|of|at|are|is|for|has|:))* ?${settingsList}(?: (?:cfm|l/s))?`,
    ({ list }) => fact('fan-settings', (list ?? '').match(/\d+/g)?.join(', ') ?? ''),
  ),
  rule(
    String.raw`(?<![\d/])(?<list>\d{2,3}(?: ?/ ?\d{2,3})+)(?: cfm)?(?= (?:fan|unit))|(?<![\d/])(?<three>\d{2,3}(?: ?/ ?\d{2,3}){2,})(?![\d/])`,
    ({ list, three }) => fact('fan-settings', (list ?? three ?? '').match(/\d+/g)?.join(', ') ?? ''),
  ),
  rule(
    String.raw`(?<=~ ?,? ?(?:and |but )?(?:it's|it is|its|fan is|fan's|currently|now|is|runs|running) )(?:set |now |currently )?(?:on|at|to) (?:the )?${q}`,
    ({ q: flow }) => fact('fan-setting', `${flow}`),
  ),
  rule(String.raw`(?<=~ (?:fan|unit) )(?:set )?(?:on|at|to) (?:the )?${q}(?= ?[,;])`, ({ q: flow }) =>
    fact('fan-setting', `${flow}`),
  ),
  rule(
    String.raw`(?:set (?:to|at|on)|(?:leave|left|keep|kept|run|running|runs) (?:it |them )?(?:on|at)|switched to|dialed to|selector (?:on|at|to))(?: the)? ${q}`,
    ({ q: flow }) => fact('fan-setting', `${flow}`),
  ),
];

/** "Is 80 doable": what is asked of the fan, whatever else "is" stands before. */
export const doable: readonly Rule[] = [
  rule(
    String.raw`(?:\b(?:is|are|would|will|can) )?(?:an? )?${q} (?:still |even |be |really |actually |is )*(?:doable|possible|realistic|reachable|achievable|attainable|feasible|within reach|in reach)\b`,
    ({ q: flow }) => fact('airflow-needed', `${flow}`),
  ),
];

export const neededRules: readonly Rule[] = [
  rule(
    String.raw`\b(?:did|do|does|will|would) (?:we|i|it|they|that|this|you) (?:\w+ )?(?:hit|make|meet|reach|pass)(?: (?:the|our|at|least))* ${q}(?! ?(?:fan|unit)\b)`,
    ({ q: flow }) => fact('airflow-needed', `${flow}`),
  ),
  rule(
    String.raw`(?:keep(?:ing)?|hold(?:ing)?|maintain(?:ing)?|spec(?:ified|ification)?|design(?:ed)?|aim(?:ing)? for|supposed to|short of|exceeds?|more than|still (?:have|get|see|make|move|pull|hit|give|deliver|leave|show)|at least|minimum|(?<!\d )\bmin|no less than)(?: (?:to|is|was|be|calls for|for|of|do|get|move|pull|at least|a|me|us|him|her|them|you|above|over|air ?flow|flow))*[:=,]? ?${q}(?! ?(?:fan|unit)\b)`,
    ({ q: flow }) => fact('airflow-needed', `${flow}`),
  ),
  rule(String.raw`${q} (?:achieved|met|attained|reached)\b`, ({ q: flow }) => fact('airflow-needed', `${flow}`)),
  rule(String.raw`code (?:says|wants|asks for|is) ${q}`, ({ q: flow }) => fact('airflow-needed', `${flow}`)),
  rule(
    String.raw`${q},? (?:is )?(?:what )?(?:i|we|you|they|it|she|he|code) (?:really )?(?:needs?|want|wants|requires?)`,
    ({ q: flow }) => fact('airflow-needed', `${flow}`),
  ),
  rule(String.raw`${q} (?:is |are )?(?:needed|required|wanted|minimum)(?! ?[:=]? ?\d)`, ({ q: flow }) =>
    fact('airflow-needed', `${flow}`),
  ),
  rule(
    String.raw`(?:needs?|needed|needing|requirements?(?: is| of)?|want(?:s|ed)?|require[sd]?|target(?:'s)?|calls? for|must|has to|have to|goal|(?:above|under|below)(?! ?[,;]))(?: (?:to )?(?:move|get|deliver|see|have|pull|hit|make|keep))?(?: (?:air ?flow|flow|air|rate|cfm))?[:=]? ?${hedge}${q}`,
    ({ q: flow }) => fact('airflow-needed', `${flow}`),
  ),
];

export const measuredRules: readonly Rule[] = [
  rule(
    String.raw`\bat (?:the )?grille,? (?:(?:it|it's|it is|is|was|we|i|got|get|reads?|shows?|about|only) )+${q}`,
    ({ q: flow }) => fact('measured-airflow', `${flow}`),
  ),
  rule(
    String.raw`(?:measur(?:ed?|es|ing)|metered|clocked|(?:flow )?hood (?:says|shows|reads|at|gave)?|hood|it says|reading|readings|tested at)(?: (?:airflow|flow|it))? ?${hedge}${q}(?: at (?:the )?grille)?`,
    ({ q: flow }) => fact('measured-airflow', `${flow}`),
  ),
  rule(String.raw`${q} (?:(?:was |is )?measured|at (?:the )?grille|on the (?:flow )?hood)`, ({ q: flow }) =>
    fact('measured-airflow', `${flow}`),
  ),
];

export const deliveredRules: readonly Rule[] = [
  // What leaves the house is what the fan moves.
  rule(
    String.raw`${q} (?:is )?(?:coming |going |blowing )?(?:out(?: of| at)?|at|through) (?:the )?(?:(?:cap|end|outlet|outside|outdoors|jack|termination|exterior)|(?:roof|wall|soffit|outside|outdoor) (?:cap|jack|vent|hood))\b`,
    ({ q: flow }) => fact('delivered-airflow', `${flow}`),
  ),
  rule(
    String.raw`\b(?:really|actually) (?:only |just )?(?:does|makes?|moves|pulls|gets|delivers) ${hedge}${q}`,
    ({ q: flow }) => fact('delivered-airflow', `${flow}`),
  ),
  rule(
    String.raw`\b(?:fan|it|unit|that|she|he)(?:'s| is)? (?:only |really |just )?(?:doing|running|making) ${hedge}${q}`,
    ({ q: flow }) => fact('delivered-airflow', `${flow}`),
  ),
  rule(
    String.raw`(?<!\d (?:cfm|l/s|m3/h) (?:is |are |really |actually )*)(?:deliver(?:s|ed|ing)?|mov(?:es?|ing)|pull(?:s|ing)?|tak(?:es|ing)|push(?:es|ing)|exhaust(?:s|ing)|gets?|getting|(?:really|actually|real|actual)(?: (?:flow|airflow|cfm))?)(?: (?:really|actually|out|air))* ?${hedge}${q}(?! (?:at|on|with) (?:the |a )?(?:grille|(?:flow )?hood)\b)(?: out)?`,
    ({ q: flow }) => fact('delivered-airflow', `${flow}`),
  ),
  rule(
    String.raw`\b(?:fan|it|unit|that|she|he) (?:(?:really|actually|only|just) )+(?:does|makes?|moves|pulls|gets) ${hedge}${q}`,
    ({ q: flow }) => fact('delivered-airflow', `${flow}`),
  ),
  rule(
    String.raw`\b(?<!\b(?:needed|required|target|design|rated|carton|label|fan) (?:air ?)?)(?:air ?)?flow(?:'s)? (?:is|was|of|at|through it is)\b ?${hedge}${q}(?! (?:is )?(?:needed|required|wanted))`,
    ({ q: flow }) => fact('delivered-airflow', `${flow}`),
  ),
  // What it does, not what its box says it does.
  rule(
    String.raw`(?<!\b(?:box|carton|label|sticker|package|sheet|rated)\b[^,;.\d]{0,24})\b(?:fan|unit) (?:does|did|makes) ${hedge}${q}(?! ?(?:@|at \d|measured\b))`,
    ({ q: flow }) => fact('delivered-airflow', `${flow}`),
  ),
  rule(String.raw`${q} (?:for real|in (?:real life|reality|practice|fact)|at best)`, ({ q: flow }) =>
    fact('delivered-airflow', `${flow}`),
  ),
  rule(
    String.raw`${q} (?:is |are |that )?(?:(?:actually|really) )?(?:com(?:ing|es)|go(?:ing|es)|gets|getting) (?:out|through|outside|outdoors|up the duct|into the duct|at the grille)`,
    ({ q: flow }) => fact('delivered-airflow', `${flow}`),
  ),
  rule(
    String.raw`${q} (?:actual(?:ly)? |really )?(?:delivered|delivering|delivers|actual|actually|real|moving)`,
    ({ q: flow }) => fact('delivered-airflow', `${flow}`),
  ),
];

const fan = (flow: string | undefined) => fact('fan-curve', `${flow}`);

export const cartonRules: readonly Rule[] = [
  rule(
    String.raw`\bnow (?:it's |it is |there's |we have |we've got |with |has |got |is )?(?:an? |the )${q}`,
    ({ q: flow }) => fan(flow),
  ),
  rule(String.raw`\bnew (?:one |fan |unit )?(?:is |says |of |at |an? |rated )*${q}`, ({ q: flow }) => fan(flow)),
  rule(String.raw`${q} (?:is )?(?:on|off) (?:the |its )?(?:carton|box|label|package|sticker)`, ({ q: flow }) =>
    fan(flow),
  ),
  rule(
    String.raw`${q} ?-? ?(?:carton|rated|label|nominal|box fan|bath fan|bathroom fan|exhaust fan|fan|fans|unit|vent fan|inline)\b`,
    ({ q: flow }) => fan(flow),
  ),
  rule(
    String.raw`(?:fan|fan's|carton|label|\bbox (?=says|said|claims)|rated|marked|sold as|nominal|unit|sticker)(?: ?(?:is|says|said|states|of|at|marked|reads|rated|label|gives|for|a|it|on|the|shelf|to be|as|i have|carton|box|ours|was|claims|puts out|good for|does))* ?[:=,]? ?${q}(?: on the (?:box|carton|label))?`,
    ({ q: flow }) => fan(flow),
  ),
];

/** What the duct is asked to let through: "will it make 80 through 20 ft". */
export const askedOf: readonly Rule[] = [
  // Behind a fan that was named: "max metres for 40 L/s".
  rule(String.raw`(?<=~.*)\bfor (?:at least )?(?<q>\d+(?:\.\d+)? (?:cfm|l/s|m3/h))(?= ?(?:[?.!,;]|$))`, ({ q: flow }) =>
    fact('airflow-needed', `${flow}`),
  ),
  rule(String.raw`${q} (?:at|out(?: of)?) (?:the )?(?:\w+ )?(?:cap|end|outlet|outside|hood|jack)\b`, ({ q: flow }) =>
    fact('airflow-needed', `${flow}`),
  ),
  // "70 min" of a duct is the least it must move.
  rule(String.raw`(?<q>[2-9]\d|[1-4]\d\d) min\b`, ({ q: flow }) => fact('airflow-needed', `${flow} cfm`)),
  rule(
    String.raw`(?:make|do|gets?|getting|hit|meets?|satisf(?:y|ies)|see|pull|move|manage|deliver|give|gives|leave|reach|drops? (?:to|under|below)|only)(?: (?:at least|me|us|the|my|a|still|out))* ${q}(?= ?(?:at the|with|through|over|on the|on \d|in the|within|across|out|after|when|if|[,;?.]|$))(?! ?(?:fan|unit))`,
    ({ q: flow }) => fact('airflow-needed', `${flow}`),
  ),
];

/** The fan as the one who acts: "will 110 make 80", "110 on 4 in flex", "hook a 110 to it". */
export const fanActs: readonly Rule[] = [
  rule(String.raw`\b(?:left|becomes?|remains|out) of (?:an? |the |my |our |that |those )?${q}`, ({ q: flow }) =>
    fan(flow),
  ),
  rule(
    String.raw`(?:\b(?:will|would|does|do|can|could|is|has|if|hook|put|install|swap(?:ped)? in)(?: (?:i|we|they|you|it|up|to|an?|the|my|our|this|that|in|hook|put|run|use))*) ${q}(?! (?:ft|in|fan)\b)`,
    ({ q: flow }) => fan(flow),
  ),
  rule(
    String.raw`^(?:(?:duct|reach|sweat|cost|runtime|parts)[:,]? )?${q}(?=,? (?:cfm|on|through|into|with|over|flex|smooth|spiral|rigid|foil|pipe|${number} (?:in|ft|mm|m|flex|smooth|spiral|rigid|foil|pipe)\b))`,
    ({ q: flow }) => fan(flow),
  ),
];

/** "How far at 110", "on a 150": where a duct is spoken of, that is the fan. */
export const fanImplied: Rule = rule(String.raw`(?:at|on|with|using|for|off)(?: an?| the| my)? ${q}`, ({ q: flow }) =>
  fan(flow),
);

/** A round number on its own beside a duct is the fan, where none was named. */
export const fanAlone: Rule = rule(
  String.raw`(?<![\d./-])(?<q>[5-9]0|[1-4]\d0)(?=,| ?$| ?\?| (?:~|\d|flex|foil|smooth|spiral|rigid|how|what|roof|wall))${noUnit}`,
  ({ q: flow }) => fan(flow),
);

/** "A 70", "the 110 we hung": a thing with a number for a name is the fan; "the 90" may be an elbow. */
export const fanByNumber: Rule = rule(
  String.raw`\b(?:an?|the|my|our|this|that|his|her|their) (?!(?:45|90)\b)(?<q>[3-9]\d|[1-4]\d\d)\b${noUnit}(?! ?(?:watt|volt|cable|wire|box|circuit|breaker|house|years?|day)s?\b)`,
  ({ q: flow }) => fan(flow),
);

/** An airflow of which nothing is said. */
export const bareAirflow = (id: string): readonly Rule[] => [
  rule(String.raw`(?<q>\d+(?:\.\d+)? (?:cfm|l/s|m3/h))(?![\da-z])`, ({ q: flow }) => fact(id, `${flow}`)),
];

export const fanDetails: readonly Rule[] = [
  rule(
    String.raw`(?:(?<c>${number}) ?(?<u>in|mm)|(?<![\d.])(?<b>[3-8]|10)) ?(?:round |duct )?(?:collar|port)\b|collar(?: (?:is|of|at))*[:=]? ?(?:(?<d>${number}) (?<v>in|mm)\b|(?<e>[3-8]|10)(?![\d/.]))`,
    ({ c, u, b, d, v, e }) => fact('collar', `${c ?? b ?? d ?? e} ${u ?? v ?? 'in'}`),
  ),
  rule(String.raw`(?<!\d )\bsones?(?: (?:of|is|at|rating))*[:=]? ?(?<s>\d+(?:\.\d+)?)(?! ?(?:cfm|in|ft)\b)`, ({ s }) =>
    fact('rated-sones', `${s} sones`),
  ),
  rule(String.raw`(?<s>${number}) sone`, ({ s }) => fact('rated-sones', `${s} sones`)),
  rule(String.raw`(?<h>\d+) (?<u>ft|m) (?:elevation|altitude|above sea(?: level)?)`, ({ h, u }) =>
    fact('altitude', `${h} ${u}`),
  ),
  rule(
    String.raw`(?:elevation|altitude|up at)(?: (?:is|of|at|about|here|around))*[:=]? ?(?<h>\d{3,5}) (?<u>ft|m)\b`,
    ({ h, u }) => fact('altitude', `${h} ${u}`),
  ),
  // No duct and no room is a thousand feet long: so much is how high the house stands.
  rule(
    String.raw`(?<h>\d{4,5}) (?<u>ft)\b(?! (?:of|duct|flex|run)\b)|(?<m>[3-9]\d\d|[1-4]\d{3}) m\b(?! (?:of|duct|flex|run)\b)`,
    ({ h, m }) => fact('altitude', h === undefined ? `${m} m` : `${h} ft`),
  ),
];

/** "8 hours a day at 50 cfm": what it moves while it runs. */
export const runsAt: Rule = rule(
  String.raw`\bat (?:about |around |only )?(?<q>\d+(?:\.\d+)? (?:cfm|l/s|m3/h))\b(?! (?:fan|unit)\b)`,
  ({ q: flow }) => fact('delivered-airflow', `${flow}`),
);
