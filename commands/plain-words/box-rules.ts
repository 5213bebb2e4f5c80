import { cutsNumber, type Fact, fact, type Rule, rule, type Taken, taken, without } from './line.ts';
import { decimal, number } from './measures.ts';

const gauges = '(?:18|16|14|12|10|8|6)';

const boxes: readonly Rule[] = [
  rule(String.raw`(?<v>${number}) ?(?<u>in3|cm3|ml)`, ({ v, u }) =>
    fact('box', `${decimal(`${v}`)} ${u === 'ml' ? 'mL' : u}`),
  ),
  rule(
    String.raw`(?<a>4[ -]11/16) ?(?:in )?square(?: (?:box|metal|junction))*,? ?(?:by |x )?(?<d>${number})(?: in)?(?: deep)?`,
    ({ a, d }) => fact('box', `${sized(a)} x ${sized(d)} square`),
  ),
  rule(
    String.raw`(?<a>4|4[ -]11/16) ?(?:in )?(?:x|by) ?(?:4|4[ -]11/16) ?(?:in )?(?:x|by) ?(?<d>${number})(?: in)?(?: deep)?(?: square)?`,
    ({ a, d }) => fact('box', `${sized(a)} x ${sized(d)} square`),
  ),
  rule(
    String.raw`(?<a>\d+) ?(?:in )?(?:x|by) ?(?<b>\d+) ?(?:in )?(?:x|by) ?(?<c>${number})(?: in)?(?: deep)?(?: (?:device|handy|utility|switch|masonry))*`,
    ({ a, b, c }, said) => fact('box', `${a} x ${b} x ${sized(c)} ${/masonry/.test(said) ? 'masonry' : 'device'}`),
  ),
  rule(
    String.raw`(?<a>${number}) ?(?:in )?(?:x|by) ?(?<d>${number})(?: in)?(?: deep)? ?(?<s>square|octagon(?:al)?|oct|round)`,
    ({ a, d, s }) => fact('box', `${sized(a)} x ${sized(d)} ${shape(s)}`),
  ),
  rule(
    String.raw`(?<s>square|octagon(?:al)?|round)(?: (?:metal|junction|steel|box))*,? ?(?<a>${number}) ?(?:in )?(?:x|by) ?(?<d>${number})(?: in)?(?: deep)?`,
    ({ a, d, s }) => fact('box', `${sized(a)} x ${sized(d)} ${shape(s)}`),
  ),
  rule(
    String.raw`(?<a>${number}) ?(?:in )?(?<s>square|octagon(?:al)?|round)(?: (?:metal|junction|steel|box|that's))*,? ?(?:by |x )?(?<d>${number})(?: in)?(?: deep)?`,
    ({ a, d, s }) => fact('box', `${sized(a)} x ${sized(d)} ${shape(s)}`),
  ),
  // "Box says 14.5": a bare number of a box is what is stamped in it.
  rule(
    String.raw`\b(?:box(?:es)?|stamped|marked|volume|labell?ed)(?: (?:says|is|it|of|at|marked|stamped|labell?ed|reads|has|a|volume|size|inside|only|just|shows|on it))*[:=,]? ?(?<v>\d{1,2}(?:\.\d+)?)(?= ?(?:inside|cubic|[,;?)]|\.(?!\d)|$|and\b|with\b|has\b))`,
    ({ v }) => (Number(v) >= 7 ? fact('box', `${v} in3`) : undefined),
  ),
];

const sized = (said: string | undefined): string =>
  (said ?? '')
    .replace(/ (?=\d+\/)/, '-')
    .replace(/\.5$/, '-1/2')
    .replace(/\.25$/, '-1/4')
    .replace(/\.125$/, '-1/8');
const shape = (said: string | undefined): string => (/^oct/.test(said ?? '') ? 'octagon' : `${said}`);

const cable = new RegExp(
  String.raw`(?:(?<n>\d{1,2}|an?) ?(?:x |x|- ?|(?:runs?|cables?|pieces?|romex|nm)(?: of)? |of )?)?(?<awg>${gauges}) ?(?:[/-] ?(?<c>[234])|(?<d>[234])(?= cables?))(?![\d/])(?: ?(?:romex|nm-?b?|cables?|wires?))*(?<g> ?,?(?:\+|with|and|w|both with)? ?(?:an? |the |bare |their )?(?:grounds?|\bg\b))?(?: ?x ?(?<m>\d+))?`,
  'g',
);
/** What the wires of a box go by besides. */
const ofWires =
  '(?:wires?|conductors?|insulated(?: wires?)?|blacks?|whites?|reds?|blues?|hots?|neutrals?|travell?ers?|switch legs?)';
const wire = new RegExp(
  String.raw`(?<!\d)(?<n>\d{1,2})(?: ?x ?| )(?:#|no\.? ?)?(?<awg>${gauges})(?! ?/)(?: awg|ga)?(?: (?:solid|stranded|copper))*(?= ?(?:${ofWires}|,|;|\.|\?|\)|$|\d+ ?x|and|~|in |within|with|\+))(?: ?${ofWires})?|(?<p>\d{1,2}) ?${ofWires} ?,?(?:of |at )?(?:#|no\.? ?)?(?<big>${gauges})(?: awg)?|(?<k>\d{1,2}) ?(?:#|x) ?(?<small>${gauges})(?: awg)?(?: ${ofWires})?`,
  'g',
);

/** Wires and cables, each kind with its count; the thickest is what devices and grounds land on where nothing is told. */
function wiresIn(text: string): Taken & { readonly gauge: string | undefined } {
  let left = text;
  const list: string[] = [];
  const sizes: string[] = [];
  const take = (
    pattern: RegExp,
    said: (groups: Readonly<Record<string, string | undefined>>, whole: string) => string | undefined,
  ) => {
    for (const match of [...left.matchAll(pattern)]) {
      const cut = cutsNumber(left, match.index, match.index + match[0].length);
      const item = cut ? undefined : said(match.groups ?? {}, match[0]);
      if (item === undefined) continue;
      list.push(item);
      left = without(left, match.index, match.index + match[0].length);
    }
  };
  const allGrounded =
    /\b(?:both|all|everything|each|every one)(?: of (?:them|it))? (?:with|has|have|got) (?:an? |the )?(?:bare )?(?:grounds?|g)\b/.test(
      text,
    );
  take(cable, ({ n, m, awg, c, d, g }) => {
    sizes.push(`${awg}`);
    const count = n === undefined || /^an?$/.test(n) ? (m ?? '1') : n;
    return `${count} x ${awg}/${c ?? d}${g === undefined && !allGrounded ? '' : ' with ground'}`;
  });
  take(wire, ({ n, awg, p, big, k, small }, whole) => {
    const [count, gauge] = [n ?? p ?? k, awg ?? big ?? small];
    // A room is 5x8 before a box holds five wires as thick as that.
    if (
      Number(count) > 40 ||
      (Number(gauge) < 10 && !/#|awg|ga\b|wires?|conductors?|blacks?|whites?|reds?|hots?|neutrals?/.test(whole))
    )
      return undefined;
    sizes.push(`${gauge}`);
    return `${count}x${gauge}`;
  });
  return {
    facts: list.length === 0 ? [] : fact('conductors', together(list).join(', ')),
    text: left,
    gauge: sizes.sort((one, other) => Number(one) - Number(other))[0],
  };
}

/** "One 14/2 in and one 14/2 out" are two of them. */
function together(list: readonly string[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const item of list) {
    const [, count, what] = /^(\d+)( ?x.*)$/.exec(item) ?? [];
    if (what === undefined) return list;
    counts.set(what, (counts.get(what) ?? 0) + Number(count));
  }
  return [...counts].map(([what, count]) => `${count}${what}`);
}

/** How many gangs a box that is told by its room has. */
function withGangs(facts: readonly Fact[], line: string): readonly Fact[] {
  const [, said] = /\b(single|double|[1-4]|an?)[ -]?gang\b/.exec(line) ?? [];
  const gangs = said === undefined ? undefined : said === 'double' ? '2' : /\d/.test(said) ? said : '1';
  return facts.map((each) =>
    gangs !== undefined && each.id === 'box' && /^[\d.]+ (?:in3|cm3|mL)$/.test(each.answer)
      ? { id: each.id, answer: `${each.answer}, ${gangs}-gang` }
      : each,
  );
}

/** Equipment grounding conductors, by their letters or in full. */
const egc = String.raw`egcs?|equipment ground(?:ing|s)?(?: conductors?)?`;

const counted = (said: string | undefined): string => (said === undefined || /^an?$|^the$/.test(said) ? '1' : said);
/** "On 14", "biggest is 12", "landed on the 14s", "also 12": what a count of things lands on. */
const onGauge = String.raw`(?:(?: ?,| -)? ?(?:\(? ?(?:on|at|@|of|all|with|are|is|the|both|each|also|too|in|biggest|largest|thickest|max|being|landed|landing|lands|connected|wired|tied|to|size|sized) ?)*(?:#|no\.? ?)?(?<w>${gauges})'?s?(?! ?(?:in|mm|cm|ft|m|in3|cm3|ml|cfm|x|/|#|wires?|conductors?|cables?)(?![a-z\d])|-?\d|\.\d| \d(?!\d? ?(?:x ?)?(?:devices?|switch(?:es)?|timers?|dimmers?|yokes?|straps?|egcs?|grounds?|clamps?)\b)| ?- ?\d)(?: awg)?)?`;

/** "Three hots, three neutrals, all fourteen": one size told for every wire. */
const oneSize = new RegExp(
  String.raw`\b(?:all|everything(?:'s)?|both)(?: of (?:it|them|those))?(?: (?:is|are|in))? ?(?:#|no\.? ?)?(?<w>${gauges})(?: ?(?:awg|ga|wires?|copper))?(?! ?[/x-] ?\d|\d| ?(?:in3|in|ft|cfm))`,
);
function sizedAlike(line: string): string {
  const [said, gauge] = oneSize.exec(line) ?? [];
  if (said === undefined) return line;
  return line
    .replace(said, '~'.repeat(said.length))
    .replace(new RegExp(String.raw`(?<![\d/.x#])(\d{1,2}) (?=${ofWires}\b)`, 'g'), `$1x${gauge} `)
    .replace(/(?<![\d/.x#])(\d{1,2}) (?=(?:bare |equipment )?grounds?\b)/g, `$1x${gauge} `);
}

/** What fills a box: the box, the wires by size, grounds, devices, clamps. */
export function boxMentioned(line: string, given: readonly Fact[] = []): Taken {
  const boxed = taken(sizedAlike(line), boxes, given);
  const inside: Taken = {
    facts: withGangs(boxed.facts, line),
    text: boxed.text.replace(/\b[1-4](?=[ -]?gang\b)/, '~'),
  };
  const leads = taken(inside.text, [
    rule(
      String.raw`(?:fan(?:'s)?|fixture)(?: (?:has|wires?|leads?|are|is|of))*(?:[:=]|(?<=wires?|leads?),)? ?(?<n>\d) ?(?:x ?)?(?:leads? |wires? )?(?:are |is )?(?:#)?(?<w>${gauges})(?: awg)?|(?<f>\d) ?(?:x ?)?#?(?<fw>18|16|14)(?: ?(?:awg|ga))? (?:fan|fixture) (?:wires?|leads?)|(?<m>\d) (?:fixture|fan) (?:wires?|leads?)(?: (?:are|is|of|at))* ?(?:#)?(?<v>${gauges})(?: awg)?`,
      ({ n, w, m, v, f, fw }) => fact('fixture-wires', `${n ?? m ?? f}x${w ?? v ?? fw}`),
    ),
  ]);
  const grounds = taken(leads.text, [
    rule(
      String.raw`\b(?:grounds?|${egc})[:=]? ?(?<n>[1-9]\d?)(?: ?x ?#?| ?# ?)(?<w>${gauges})(?![\d/]| ?(?:wires?|conductors?|hots?|blacks?|whites?)\b)`,
      ({ n, w }) => fact('grounds', `${n}x${w}`),
    ),
    // A count, a size, then the word: "2 14 grounds" are two of them.
    rule(
      String.raw`(?<![\d/.])(?<n>\d{1,2})(?: ?x ?| ?# ?| )(?<w>${gauges})(?: (?:awg|ga|bare|equipment|copper))* (?:grounds?|bares?|${egc})\b`,
      ({ n, w }) => fact('grounds', `${n}x${w}`),
    ),
    rule(
      String.raw`(?<![\d/.]|\d ?x ?|\d ?# ?|(?<![\d/.x#]|[x#] )\d{1,2} )(?<n>\d{1,2}) (?:bare |equipment |copper )*(?:grounds?|bares?|bare wires?|${egc})(?: wires?| conductors?)?\b${onGauge}`,
      ({ n, w }) => fact('grounds', `${n}x${w ?? '?'}`),
    ),
    rule(
      String.raw`\b(?:grounds?|ground wires?|bare wires?)(?: (?:is|are))?[:=]? ?(?<n>[1-9])(?![\d./]| ?(?:x|#|in3|in|awg|wires?|conductors?|switch|timer|device|cable|romex|1[024]\b))`,
      ({ n }) => fact('grounds', `${n}x?`),
    ),
    rule(
      String.raw`\b(?:grounds?|ground wires?) (?:all |both )?(?:#|no\.? ?)(?<w>${gauges}) ?x ?(?<n>\d{1,2})\b`,
      ({ n, w }) => fact('grounds', `${n}x${w}`),
    ),
    rule(String.raw`(?<=wires?,? (?:and |plus )?)(?:an?|the) (?:bare )?ground\b${onGauge}`, ({ w }) =>
      fact('grounds', `1x${w ?? '?'}`),
    ),
    rule(String.raw`(?<n>\d{1,2}) (?:wire ?nuts?|wire connectors?|connectors?|nuts?)\b${onGauge}`, ({ n, w }) =>
      fact('wire-connectors', `${n}x${w ?? '?'}`),
    ),
    rule(String.raw`(?<d>${number}) (?<u>mm|in|cm) deep`, ({ d, u }) => fact('device-depth', `${d} ${u}`)),
  ]);
  const devices = taken(grounds.text, [
    rule(String.raw`\b(?:devices?|yokes?)[:=]? ?(?<n>\d)(?: ?[x@] ?#?| ?# ?)(?<w>${gauges})(?![\d/])`, ({ n, w }) =>
      fact('devices', `${n}x${w}`),
    ),
    rule(
      String.raw`\b(?:devices?|switch(?:es)?|timers?)(?:[:=]| -|(?= \d ?(?:,|;|\.(?!\d)|$))) ?(?<n>\d)(?![\d./]| ?(?:x|#))`,
      ({ n }) => fact('devices', `${n}x?`),
    ),
    rule(
      String.raw`(?<![a-z\d/.-])(?<n>\d|an?)(?: ?x ?| )#?(?<w>${gauges})(?: (?:awg|ga))? (?:switch(?:es)?|timers?|devices?|sensors?|dimmers?|receptacles?|yokes?)\b`,
      ({ n, w }) => fact('devices', `${counted(n)}x${w}`),
    ),
    rule(
      String.raw`(?<![a-z\d/.-])(?<n>\d|an?|the) (?:single[ -]?pole |3[ -]?way |humidity |motion |fan |wall |light |decora |dimmer |sensor |timer |countdown )*(?:switch(?:es)?|timers?|devices?|sensors?|dimmers?|receptacles?|outlets?|controls?|yokes?|straps?)\b(?! (?:box|loop|leg|plate|circuit|wires?)\b)${onGauge}`,
      ({ n, w }) => fact('devices', `${counted(n)}x${w ?? '?'}`),
    ),
    rule(
      String.raw`(?<!no )\b(?:switch|timer|dimmer|sensor|receptacle)\b(?! (?:box|loop|leg|plate|circuit|wires?)\b)${onGauge}`,
      ({ w }) => fact('devices', `1x${w ?? '?'}`),
    ),
  ]);
  const counts = devicesTogether(devices);
  const wires = wiresIn(counts.text);
  const known: Fact[] = [...inside.facts, ...leads.facts, ...grounds.facts, ...counts.facts, ...wires.facts];
  const told = given.find(({ id }) => id === 'conductors')?.answer;
  const gauge = told === undefined ? wires.gauge : wiresIn(told).gauge;
  const facts = known.flatMap((each) => sizedBy(each, gauge));
  // What has no size is asked for; how many were told is then still to be named.
  const unsized = known.filter(({ id, answer }) => severalOf(answer) && !facts.some((each) => each.id === id));
  return {
    facts: [...facts, ...wordsSaid(line)],
    text: [wires.text, ...unsized.map(({ answer }) => Number.parseInt(answer, 10))].join(' '),
  };
}

const further =
  /(?<=(?:and|plus|&|\+|,) )(?:(?<n>[1-4]|an?) |(?<=(?:and|plus|&|\+) ))(?:single[ -]?pole |3[ -]?way |humidity |motion |fan |light |wall |countdown )*(?:switch(?:es)?|timers?|devices?|sensors?|dimmers?|receptacles?|outlets?)\b(?! (?:box|loop|leg|plate|circuit|wires?)\b)/g;

/** "A switch and a timer" are two devices. */
function devicesTogether({ facts, text }: Taken): Taken {
  const [known] = facts.filter(({ id }) => id === 'devices');
  if (known === undefined) return { facts, text };
  let [left, count] = [text, Number.parseInt(known.answer, 10)];
  for (const match of text.matchAll(further)) {
    count += Number(counted(match.groups?.['n']));
    left = without(left, match.index, match.index + match[0].length);
  }
  return { facts: [fact('devices', known.answer.replace(/^\d+/, String(count)))].flat(), text: left };
}

const severalOf = (answer: string): boolean => Number.parseInt(answer, 10) > 1;

/** A count without a size is of the wires' size where that was told; else the question is left to be asked. */
const sizedBy = ({ id, answer }: Fact, gauge: string | undefined): readonly Fact[] =>
  !answer.endsWith('?') ? [{ id, answer }] : gauge === undefined ? [] : [{ id, answer: answer.replace('?', gauge) }];

const noClamps =
  /\b(?:no|without|zero|0|not any|(?:doesn'?t|does not|don'?t) (?:have|need|use)(?: any)?) (?:internal |inside |cable |romex )*clamps?\b|\bclamps?(?: (?:are|is|all|at|:))*[ :=-]*(?:none|no|zero|0|outside|external|out)\b|\b(?:external|outside) clamps?\b|\bclamp-?less\b|\bclamps? on the outside\b/;
const noDevices =
  /\b(?:no|zero|0|without(?: any)?|not any) (?:other )?(?:devices?|yokes?)\b|\bdevices?(?: ?[:=] ?| )(?:none|zero|no)\b/;
/** Stud and hickey, unless the stud is the wall's or there is none. */
function supportsSaid(line: string): readonly Fact[] {
  const studs =
    /\b(?:fixture|lamp|light|luminaire) studs?\b|\b(?:1|an?|with|and|plus|or) studs?\b(?! (?:bay|finder|wall|cavity))|\bstud (?:and|&|\+|in the box|inside)\b|\b(?:support(?:ing)? fittings?|supports?)\b[^;.~]{0,12}\bstuds?\b/;
  const found = [
    studs.test(line) && !/\b(?:no|without(?: an?)?|zero|0) (?:fixture )?studs?\b/.test(line) ? 'stud' : '',
    /\bhickeys?\b/.test(line) && !/\b(?:no|without(?: an?)?|zero|0|or) hickeys?\b/.test(line) ? 'hickey' : '',
  ].filter((id) => id !== '');
  return found.length === 0 ? [] : fact('support-fittings', found.join(', '));
}
const someClamps = /\bclamps?\b/;

function wordsSaid(line: string): readonly Fact[] {
  const none = noClamps.test(line);
  const inside = someClamps.test(line);
  const serves = /\bbox (?:for|at|on|of) the fan\b|\bfan(?:'s)? (?:junction )?box\b/.test(line)
    ? 'fan'
    : /\b(?:switch|timer) box\b|\bbox (?:for|behind) the (?:switch|timer)\b/.test(line)
      ? 'switch'
      : undefined;
  return [
    ...supportsSaid(line),
    ...(noDevices.test(line) ? fact('devices', 'none') : []),
    ...(none ? fact('clamps', 'none') : inside ? fact('clamps', 'internal') : []),
    ...(serves === undefined ? [] : fact('serves', serves)),
  ];
}
