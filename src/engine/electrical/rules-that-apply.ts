/** What is known of the job: an answer for each observation. Absent, or `unknown`, means that nobody could say. */
export type Facts = Readonly<Record<string, string | undefined>>;

type RuleWeight = 'stop' | 'caution' | 'advice';

/** The part of a rule that decides when it speaks. */
export interface ConditionalRule {
  /** Observations and the answers that count. All must hold; a rule with none always speaks. */
  readonly applies: Readonly<Record<string, readonly string[]>>;
  readonly weight: RuleWeight;
  /** How the rule speaks when an answer is missing and nothing rules it out. Absent: it stays silent. */
  readonly whenUnknown?: { readonly weight: RuleWeight } | undefined;
}

export interface AppliedRule<Id extends string, Rule> {
  readonly id: Id;
  readonly rule: Rule;
  /** The weight it speaks with, which differs from the rule's own when an answer is missing. */
  readonly weight: RuleWeight;
  /** The observations that nobody could answer. Empty when the rule applies for certain. */
  readonly unknown: readonly string[];
}

interface Condition {
  readonly fact: string;
  readonly values: readonly string[];
}
type Rules = Readonly<Partial<Record<string, ConditionalRule>>>;

/** The conditions of each rule, taken apart once: an interview asks the same rules at every question. */
const takenApart = new WeakMap<ConditionalRule, readonly Condition[]>();

function conditionsOf(rule: ConditionalRule): readonly Condition[] {
  const known = takenApart.get(rule);
  if (known) return known;
  const conditions = Object.entries(rule.applies).map(([fact, values]) => ({ fact, values }));
  takenApart.set(rule, conditions);
  return conditions;
}

const order: readonly RuleWeight[] = ['stop', 'caution', 'advice'];

/**
 * The rules that speak for a job, gravest first, the certain ones before those that speak for want of an answer.
 *
 * holds = every condition answered with a value that counts;  silent = any condition answered otherwise;  else unknown
 *
 * An unanswered condition never silences a rule: whatever is not known is taken as the dangerous answer, with the weight
 * the rule itself sets for that.
 *
 * @source own working: three-valued conjunction
 */
export function rulesThatApply<Id extends string, Rule extends ConditionalRule>(
  facts: Facts,
  rules: Readonly<Partial<Record<Id, Rule>>>,
): AppliedRule<Id, Rule>[] {
  const entries = Object.entries(rules) as [Id, Rule][];
  const applied = entries.flatMap(([id, rule]): AppliedRule<Id, Rule>[] => {
    const conditions = conditionsOf(rule);
    if (!conditions.every(({ fact, values }) => mayHold(facts[fact], values))) return [];
    const unknown = conditions.map(({ fact }) => fact).filter((fact) => !isKnown(facts[fact]));
    if (unknown.length === 0) return [{ id, rule, weight: rule.weight, unknown }];
    return rule.whenUnknown ? [{ id, rule, weight: rule.whenUnknown.weight, unknown }] : [];
  });
  const rank = ({ weight, unknown }: AppliedRule<Id, Rule>) => order.indexOf(weight) * 2 + (unknown.length > 0 ? 1 : 0);
  return applied.toSorted((a, b) => rank(a) - rank(b));
}

/**
 * The observations still worth asking: those that some rule reads and that no other answer has already made idle for every
 * such rule. An observation answered "unknown" has been asked and is not asked again.
 *
 * @source own working
 */
export function factsStillToAsk<Fact extends string>(facts: Facts, rules: Rules, inOrder: readonly Fact[]): Fact[] {
  const open = new Set<string>();
  for (const rule of Object.values(rules)) {
    const conditions = rule ? conditionsOf(rule) : [];
    if (!conditions.every(({ fact, values }) => mayHold(facts[fact], values))) continue;
    for (const { fact } of conditions) open.add(fact);
  }
  return inOrder.filter((fact) => open.has(fact) && facts[fact] === undefined);
}

const isKnown = (answer: string | undefined): answer is string => answer !== undefined && answer !== 'unknown';

const mayHold = (answer: string | undefined, values: readonly string[]): boolean =>
  !isKnown(answer) || values.includes(answer);
