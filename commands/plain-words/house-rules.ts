import { type Fact, fact, type Rule, rule, type Taken, without } from './line.ts';
import { noUnit, number } from './measures.ts';

/** What else moves air through the house, and how tight it is. */
export const houseRules: readonly Rule[] = [
  rule(String.raw`(?<v>\d+) ?(?:cfm ?(?:at |@ ?)?50(?: pa)?|cfm50)`, ({ v }) => fact('house-leakage', `${v} cfm50`)),
  rule(String.raw`(?<v>\d+(?:\.\d+)?) (?<u>l/s|cfm|m3/h) ?(?:at|@) ?50 pa`, ({ v, u }) =>
    fact('house-leakage', u === 'cfm' ? `${v} cfm50` : `${v} ${u === 'l/s' ? 'L/s' : u} at 50 Pa`),
  ),
  // What a blower door showed is told at 50 Pa, whether that is said or not.
  rule(
    String.raw`\bblower[ -]door(?: (?:test|number|figure|reading|result|came|comes|in|is|was|at|of|says|said|showed|shows|reads|read|about|around|tested|measured|got|gave))*[:=,]? ?(?<v>[1-9]\d{2,3})(?: cfm)?(?: ?(?:at|@) ?50(?: pa)?)?(?! ?(?:l/s|m3/h|ach))`,
    ({ v }) => fact('house-leakage', `${v} cfm50`),
  ),
  rule(String.raw`(?<v>[1-9]\d{2,3}) (?:cfm )?(?:on|by|from|with) (?:the |a )?blower[ -]door`, ({ v }) =>
    fact('house-leakage', `${v} cfm50`),
  ),
  rule(String.raw`(?<v>[1-9]\d{2,3}) ?(?:at|@) ?50(?: pa\b|(?= ?(?:,|;|\.|$)))`, ({ v }) =>
    fact('house-leakage', `${v} cfm50`),
  ),
  rule(
    String.raw`(?:transfer )?grille (?:is |of )?(?<a>${number}) ?(?:in |mm )?(?:x|by) ?(?<b>${number}) ?(?<u>in\b|mm\b)?`,
    ({ a, b, u }) => fact('transfer-grille', `${a} x ${b} ${u ?? 'in'}`),
  ),
  rule(
    String.raw`(?<a>${number}) ?(?:in |mm )?(?:x|by) ?(?<b>${number}) ?(?<u>in|mm)? ?(?:transfer|jump|door|wall)? ?grille`,
    ({ a, b, u }) => fact('transfer-grille', `${a} x ${b} ${u ?? 'in'}`),
  ),
];

const machines: readonly (readonly [string, string])[] = [
  ['range hood', 'range hood|kitchen hood|cooker hood|kitchen exhaust|stove hood'],
  ['clothes dryer', '(?:clothes |tumble |gas |electric )?dryer'],
  ['another bath fan', '(?:another|other|2nd|second|a third) bath(?:room)? fan'],
  ['open fireplace', 'open fireplace'],
];
/** A machine's airflow: with its unit, or a number of hundreds that has none. */
const blown = String.raw`\d+(?:\.\d+)? (?:cfm|l/s)\b|[1-9]\d{1,3}${noUnit}`;
const machine = new RegExp(
  String.raw`(?:(?<b>${blown}) )?(?<m>${machines.map(([, words]) => words).join('|')})\b(?:(?: (?:at|of|is|rated|pulls|takes|that|moves|does|about|around|on high|blows))*[:=,]? ?(?<a>${blown}))?`,
  'g',
);

/** The other machines that blow air out, each with its airflow where one stands beside it. */
export function otherExhausts(text: string): Taken {
  let left = text;
  const named: string[] = [];
  for (const match of text.matchAll(machine)) {
    const { b, m, a } = match.groups ?? {};
    const name = machines.find(([, words]) => new RegExp(`^(?:${words})$`).test(m ?? ''))?.[0];
    if (name === undefined || /\b(?:no|not an?|without an?) $/.test(text.slice(0, match.index))) continue;
    const flow = a ?? b;
    named.push(flow === undefined ? name : `${name} ${/[a-z]/.test(flow) ? flow : `${flow} cfm`}`);
    left = without(left, match.index, match.index + match[0].length);
  }
  return { facts: named.length === 0 ? [] : fact('other-exhausts', named.join(', ')), text: left };
}

/** Kinds of flame; those of the first list are told of a heater that is named beside them, those of the second are heaters themselves. */
const vents: readonly (readonly [RegExp, string])[] = [
  [/\bnatural[ -]draft|\bdraft hood|\batmospheric(?:ally)?/g, 'natural-draft'],
  [/\bpower[ -]vent(?:ed)?/g, 'power-vented'],
  [/\binduced[ -]draft|\bdraft inducer/g, 'induced-draft'],
  [/\bdirect[ -]vent(?:ed)?|\bsealed[ -]combustion|\b(?:2|two)[ -]pipe (?:furnace|boiler)/g, 'sealed'],
];
const heaters: readonly (readonly [RegExp, string])[] = [
  [/\bunvented|\bventless|\bvent[ -]free|\bkerosene heater/g, 'unvented'],
  [/\b(?:wood|coal|pellet) ?stove|\bwood ?burner|\bfireplace|\bpellet|\bgas logs?\b/g, 'solid-fuel'],
];
const named =
  /(?<kind>\b(?:electric|heat pump|hybrid|induction) )?\b(?:water heater|hot water tank|furnace|boiler|oil burner|gas heater|space heater)s?\b|\b(?:gas|oil|propane)[ -]fired\b(?! (?:water heater|furnace|boiler))/g;
/** Said of the whole house. Of gas alone it says nothing: oil and wood burn as well. */
const noFlames =
  /\b(?:no|without(?: any)?|zero|not any|(?:doesn'?t|does not|don'?t) have any|there'?s no|nothing)(?: (?:that|which|is|kind of|in the house))* (?:(?:fuel|combustion|flame)[ -]?(?:burn\w*|fired|appliances?|equipment|anything)|fuel|combustion(?! air)|appliances? that burns?|burns? (?:any )?fuel)\b|\b(?:fuel[ -](?:burning )?|combustion )appliances?(?: (?:are|is))?[:=]? ?(?:none|no)\b|\ball[ -]electric\b/;

const tally = (line: string, pattern: RegExp): number => [...line.matchAll(pattern)].length;

/** What burns fuel in the house, as far as it is told. A heater of which nobody said how it is vented is one of unknown kind. */
export function flamesSaid(line: string): readonly Fact[] {
  const vented = vents.filter(([words]) => tally(line, words) > 0);
  const others = heaters.filter(
    ([words]) => tally(line.replace(/\b(?:no|without an?y?) (?:wood ?stove|fireplace)/g, ''), words) > 0,
  );
  const count = [...line.matchAll(named)].filter(
    ({ groups, index }) =>
      groups?.['kind'] === undefined &&
      !/\b(?:no|not an?|without an?) $/.test(line.slice(0, index).replace(/\b(?:gas|oil) $/, '')),
  ).length;
  const told = vents.reduce((sum, [words]) => sum + tally(line, words), 0);
  const found = [...vented, ...others].map(([, id]) => id);
  if (found.length === 0 && count === 0 && noFlames.test(line)) return fact('fuel-appliances', 'none');
  if (/\b(?:no|without) (?:gas|fuel|combustion)|all[ -]electric/.test(line) && found.length === 0 && count === 0)
    return [];
  // One word of how it is vented stands for one heater: a second of which nothing is said may be of any kind.
  const unknown = count > told ? ['kind-unknown'] : [];
  return found.length + unknown.length === 0 ? [] : fact('fuel-appliances', [...found, ...unknown].join(', '));
}

/** What running the fan costs is worked from these. */
export const costRules: readonly Rule[] = [
  rule(String.raw`(?<m>${number}) ?min (?:out of |of )?(?:a|the|per|each|every|/) ?day\b`, ({ m }) =>
    fact('hours-per-day', `${m} min`),
  ),
  rule(String.raw`(?<h>${number}) ?hr (?:out of |of )?(?:a|per|each|every|/) ?d(?:ay)?\b`, ({ h }) =>
    fact('hours-per-day', `${h} h`),
  ),
  rule(String.raw`(?<h>${number}) ?(?:hr )?/ ?d(?:ay)?\b`, ({ h }) => fact('hours-per-day', `${h} h`)),
  rule(String.raw`24 ?/ ?7|a?round the clock|(?:all )?day and (?:all )?night|all day(?: long)?|\b24 hr\b`, () =>
    fact('hours-per-day', '24 h'),
  ),
  rule(String.raw`(?<h>${number}) hr daily|(?<g>${number}) hr`, ({ h, g }) => fact('hours-per-day', `${h ?? g} h`)),
  rule(String.raw`(?<d>\d+) kd\b`, ({ d }) => fact('degree-days', `${d} K·d`)),
  rule(String.raw`(?<d>\d+) hdd`, ({ d }) => fact('degree-days', `${d}`)),
  rule(String.raw`\bhdd(?: (?:is|of))? ?(?<d>\d+)`, ({ d }) => fact('degree-days', `${d}`)),
  rule(
    String.raw`(?:\$ ?)?(?<p>\d+(?:\.\d+)?) ?(?<c>cent)? ?(?:/|a|per|each)? ?(?:kwh|kilowatt[ -]?hour)`,
    ({ p, c }) => fact('electricity-price', c === undefined ? `$${p} per kWh` : `${p} cents per kWh`),
  ),
  rule(String.raw`(?:\$ ?)?(?<p>\d+(?:\.\d+)?) ?(?<c>cent)? ?(?:/|a|per|each) ?(?<u>therm|gj)s?\b`, ({ p, c, u }) =>
    fact('heating-price', `$${c === undefined ? p : Number(p) / 100} per ${u === 'gj' ? 'GJ' : 'therm'}`),
  ),
  rule(
    String.raw`(?:electric(?:ity)?|power)(?: (?:is|at|costs|price|rate|of|about|runs))* ?(?<s>\$ ?)?(?<p>\d+(?:\.\d+)?) ?(?<c>cent)?`,
    // Nobody pays ten dollars: so large a number without a unit is named, not taken.
    ({ p, c, s }) =>
      c === undefined && s === undefined && Number(p) >= 2
        ? undefined
        : fact('electricity-price', c === undefined ? `$${p} per kWh` : `${p} cents per kWh`),
  ),
  rule(String.raw`(?<p>\d+(?:\.\d+)?) cent(?: (?:power|electric(?:ity)?))?`, ({ p }) =>
    fact('electricity-price', `${p} cents per kWh`),
  ),
  rule(String.raw`gas(?: (?:is|at|costs|price|about|runs))* ?(?:\$ ?)(?<p>\d+(?:\.\d+)?)`, ({ p }) =>
    fact('heating-price', `$${p} per therm`),
  ),
  rule(String.raw`\b(?:rate|price|kwh)(?: (?:is|of|at|per kwh))*[:=]? ?\$? ?(?<p>0?\.\d+)`, ({ p }) =>
    fact('electricity-price', `$${p} per kWh`),
  ),
  // Less than a dollar, of which nothing else is said, is what a kilowatt-hour costs.
  rule(String.raw`\$ ?(?<p>0\.\d+)(?! ?(?:/|a|per|each)? ?(?:therm|gj|gal|liter|m3)\b)`, ({ p }) =>
    fact('electricity-price', `$${p} per kWh`),
  ),
  rule(
    String.raw`(?:furnace|boiler|heating|heat|efficien(?:cy|t)|afue)(?: (?:is|at|of|about|runs|efficiency|efficient))* ?(?<e>\d+) ?%(?: (?:efficient|afue))?|(?<f>\d+) ?% (?:efficient )?(?:furnace|boiler|efficien(?:cy|t)|afue|heating|gas)`,
    ({ e, f }) => fact('heating-efficiency', `${e ?? f} %`),
  ),
  rule(String.raw`(?<w>${number}) watt(?! (?:heater|lamp|bulb|light))`, ({ w }) => fact('fan-watts', `${w} W`)),
];
