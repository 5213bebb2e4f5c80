import { type AppliedRule, rulesThatApply } from '#engine/electrical/rules-that-apply.ts';
import type { Finding, Table, Weight } from '#findings/finding.ts';
import {
  type ObservationId,
  observations,
  type PowerRule,
  type PowerRuleId,
  powerFacts,
  powerRules,
  powerRulesAt,
  restsOn,
  whoDecides,
} from '#knowledge/circuit-rules.ts';
import { cite } from '#knowledge/sources.ts';
import { citations } from './citations.ts';

type Applied = AppliedRule<PowerRuleId, PowerRule>;
type Facts = Readonly<Record<string, string | undefined>>;

const planRules = powerRulesAt('plan');

const order: readonly Weight[] = ['stop', 'caution', 'advice', 'good'];
const rankOf = ({ weight, unknown }: Applied): number => order.indexOf(weight) * 2 + (unknown.length > 0 ? 1 : 0);

/** The rules that speak while the job is planned, for any reading of the answers, gravest first. */
function planRulesThatApply(readings: readonly Facts[]): readonly Applied[] {
  const gravest = new Map<PowerRuleId, Applied>();
  for (const applied of readings.flatMap((facts) => rulesThatApply(powerFacts(facts), planRules))) {
    const had = gravest.get(applied.id);
    if (had === undefined || rankOf(applied) < rankOf(had)) gravest.set(applied.id, applied);
  }
  return [...gravest.values()].toSorted((one, other) => rankOf(one) - rankOf(other));
}

const isObservation = (id: string): id is ObservationId => Object.hasOwn(observations, id);

/** What a stop leans on, where that is not the code as it was read. */
function leansOn(rule: PowerRule): string | undefined {
  const kind = restsOn(rule);
  if (kind === 'forum') return 'a code forum, not the code itself';
  if (kind === 'common practice') return 'common practice, no published source';
  if (kind === 'memory' || (kind === 'code text' && !rule.verified)) return 'the code from memory, not read in print';
  return undefined;
}

const saysOf = ({ rule, unknown }: Applied): string =>
  unknown.length > 0 ? (rule.whenUnknown?.says ?? rule.says) : rule.says;

function ruleFinding(applied: Applied, facts: Facts): Finding {
  const { id, rule, weight, unknown } = applied;
  const leans = weight === 'stop' ? leansOn(rule) : undefined;
  return {
    id,
    weight,
    says: `${saysOf(applied)} Decides: ${whoDecides[rule.decides].label.toLowerCase()}.${leans === undefined ? '' : ` Rests on ${leans}.`}`,
    working: Object.keys(rule.applies)
      .filter(isObservation)
      .map((fact) => {
        const { brief, options, whenUnknown } = observations[fact];
        const label = options.find((option) => option.id === facts[fact])?.label;
        return {
          what: brief,
          value: unknown.includes(fact) || label === undefined ? `not known. ${whenUnknown}` : label,
        };
      }),
    sources: citations(cite(rule)),
  };
}

const word: Readonly<Record<Weight, string>> = { stop: 'Stop', caution: 'Caution', advice: 'Advice', good: 'Fine' };

function furtherTable(rules: readonly Applied[]): Table {
  return {
    title: 'Further rules that apply',
    columns: ['weight', 'rule', 'decides'],
    rows: rules.map((applied) => [word[applied.weight], saysOf(applied), whoDecides[applied.rule.decides].label]),
  };
}

const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** The rules that did not fit among the first, as one finding with a table, as grave as the gravest of them. */
function further(rules: readonly Applied[]): Finding | undefined {
  const [gravest] = rules;
  if (!gravest) return undefined;
  const count = (weight: Weight) => rules.filter((each) => each.weight === weight).length;
  const parts = [
    ...(count('stop') > 0 ? [counted(count('stop'), 'more stop')] : []),
    ...(count('caution') > 0 ? [counted(count('caution'), 'caution')] : []),
    ...(count('advice') > 0 ? [`${count('advice')} of advice`] : []),
  ];
  return {
    id: 'further-rules',
    weight: gravest.weight,
    says: `Read the table too: ${parts.join(', ')}.`,
    working: [],
    sources: citations(...rules.map(({ rule }) => cite(rule))),
    table: furtherTable(rules),
  };
}

/** What nobody knows, the answers that would settle most stops first. */
function findOutFirst(rules: readonly Applied[]): readonly ObservationId[] {
  const stops = new Map<ObservationId, number>();
  for (const { weight, unknown } of rules) {
    for (const fact of weight === 'stop' ? unknown : []) {
      if (isObservation(fact)) stops.set(fact, (stops.get(fact) ?? 0) + 1);
    }
  }
  return [...stops].toSorted(([, one], [, other]) => other - one).map(([fact]) => fact);
}

function findOut(rules: readonly Applied[]): Finding | undefined {
  const open = findOutFirst(rules);
  if (open.length === 0) return undefined;
  const first = open.slice(0, 4).map((fact) => lowerFirst(observations[fact].brief));
  return {
    id: 'find-out-first',
    weight: 'caution',
    says: `Find out first: ${first.join('; ')}.${open.length > first.length ? ` ${open.length - first.length} more ${open.length - first.length === 1 ? 'is' : 'are'} open.` : ''} What is not known counts as the dangerous answer.`,
    working: open.map((fact) => ({ what: observations[fact].brief, value: observations[fact].whenUnknown })),
    sources: [],
  };
}

/** Said in every reply, whatever the facts: how dead is proven, and who decides. */
function standing(): readonly Finding[] {
  const dead = [
    powerRules['find-every-source'],
    powerRules['not-locked'],
    powerRules['controls-left-off'],
    powerRules['test-every-pair'],
    powerRules['tester-not-proven'],
    powerRules['not-qualified-to-test'],
  ];
  return [
    {
      id: 'prove-dead',
      weight: 'caution',
      says: 'Prove it dead before touching: every control that feeds the fan on or calling, breaker open and locked, then a contact meter, proved before and after, on every pair of wires in every box opened. Test again with each control in its other position. A qualified person tests.',
      working: dead.map(({ topic, says }) => ({ what: topic.replaceAll('-', ' '), value: says })),
      sources: citations(...dead.map(cite)),
    },
    {
      id: 'who-decides',
      weight: 'caution',
      says: whoDecides['licensed-electrician'].says,
      working: [],
      sources: [],
    },
  ];
}

/** As many findings as a phone shows before a thumb tires. */
const mostFindings = 12;

/** The findings of the rules and the sums, stops first; what does not fit goes into a table. */
export function powerFindings(
  readings: readonly Facts[],
  loads: readonly Finding[],
  told: readonly Finding[],
): readonly Finding[] {
  const rules = planRulesThatApply(readings);
  const [facts = {}] = readings;
  const always = standing();
  const open = findOut(rules);
  const room = mostFindings - always.length - loads.length - told.length - (open ? 1 : 0);
  const shown = rules.length <= room ? rules : rules.slice(0, room - 1);
  const rest = further(rules.slice(shown.length));
  const ruled = shown.map((applied) => ruleFinding(applied, facts));
  const heavy = (finding: Finding) => finding.weight === 'stop';
  return [
    ...ruled.filter(heavy),
    ...loads.filter(heavy),
    ...(rest && heavy(rest) ? [rest] : []),
    ...told.filter(({ weight }) => weight === 'caution'),
    ...(open ? [open] : []),
    ...loads.filter((finding) => !heavy(finding)),
    ...ruled.filter((finding) => !heavy(finding)),
    ...(rest && !heavy(rest) ? [rest] : []),
    ...told.filter(({ weight }) => weight !== 'caution'),
    ...always,
  ];
}

/** How many of the stops come from an answer, and how many from none. */
export function stopsCounted(readings: readonly Facts[]): { readonly certain: number; readonly open: number } {
  const stops = planRulesThatApply(readings).filter(({ weight }) => weight === 'stop');
  const certain = stops.filter(({ unknown }) => unknown.length === 0).length;
  return { certain, open: stops.length - certain };
}
