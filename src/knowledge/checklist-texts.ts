import type { ChecklistStep } from './checklist.ts';
import type { Bound, ChoiceOption, Limit, Part } from './checklist-evidence.ts';
import type { WalkFact } from './checklist-facts.ts';

/** What is said on one answer of a choice: its label, and what taking it brings where it brings anything. */
type OptionTexts =
  | string
  | { readonly label: string; readonly stops?: string | undefined; readonly advises?: string | undefined };

interface PartTexts {
  readonly label: string;
  readonly options?: Readonly<Record<string, OptionTexts>>;
  readonly outsideStops?: string | undefined;
  readonly mostOf?: string | undefined;
  readonly leastBeside?: string | undefined;
  readonly advised?: string | undefined;
  readonly agrees?: string | undefined;
  readonly first?: string;
  readonly second?: string;
}

/** Everything that is said of one step. */
export interface StepTexts {
  readonly title: string;
  readonly do: string;
  readonly lookFor: string;
  readonly why: string;
  readonly caution?: string | undefined;
  readonly onFail?: string | undefined;
  readonly evidence?: Readonly<Record<string, PartTexts>> | undefined;
}

export interface FactTexts {
  readonly prompt: string;
  readonly why: string;
  readonly whenUnknown: string;
  readonly options: Readonly<Record<string, string>>;
}

type Texted = Omit<ChecklistStep, 'id' | 'stage'>;

const byId = <Entry extends { readonly id: string }, To>(
  entries: readonly Entry[],
  to: (entry: Entry) => To,
): Readonly<Record<string, To>> => Object.fromEntries(entries.map((entry) => [entry.id, to(entry)]));

/** What a step says, id by id. */
export const textsOfStep = (step: Texted): StepTexts => ({
  title: step.title,
  do: step.do,
  lookFor: step.lookFor,
  why: step.why,
  caution: step.caution,
  onFail: step.onFail,
  evidence: step.evidence.length > 0 ? byId(step.evidence, textsOfPart) : undefined,
});

function textsOfPart(part: Part): PartTexts {
  const { label } = part;
  if (part.kind === 'choice') return { label, options: byId(part.options, textsOfOption) };
  if (part.kind === 'pair') return { label, first: part.first.label, second: part.second.label };
  if (part.kind !== 'number') return { label };
  const { outsideStops, mostOf, leastBeside, advised, agrees } = part;
  return {
    label,
    outsideStops,
    mostOf: mostOf?.says,
    leastBeside: leastBeside?.says,
    advised: advised?.says,
    agrees: agrees?.says,
  };
}

const textsOfOption = ({ label, stops, advises }: ChoiceOption): OptionTexts =>
  stops === undefined && advises === undefined ? label : { label, stops, advises };

export const textsOfFact = ({ prompt, why, whenUnknown, options }: WalkFact): FactTexts => ({
  prompt,
  why,
  whenUnknown,
  options: byId(options, ({ label }) => label),
});

/** The same fact in other words. */
export const factIn = (fact: WalkFact, { options, ...texts }: FactTexts): WalkFact => ({
  ...fact,
  ...texts,
  options: fact.options.map(({ id, label }) => ({ id, label: options[id] ?? label })),
});

/** How units are written in a sentence, where that is not a symbol. */
export type UnitWords = Readonly<Record<string, string>>;

/** The same step in other words: what it asks, allows and stops stays as it is. */
export const stepIn = <Step extends Texted>(
  step: Step,
  { evidence = {}, ...texts }: StepTexts,
  units: UnitWords,
): Step => ({
  ...step,
  ...texts,
  evidence: step.evidence.map((part) => partIn(part, evidence[part.id], units)),
});

function partIn(part: Part, texts: PartTexts | undefined, units: UnitWords): Part {
  if (texts === undefined) return part;
  const { label } = texts;
  if (part.kind === 'choice') {
    return { ...part, label, options: part.options.map((option) => optionIn(option, texts.options?.[option.id])) };
  }
  if (part.kind === 'pair') {
    const { first = part.first.label, second = part.second.label } = texts;
    return { ...part, label, first: { ...part.first, label: first }, second: { ...part.second, label: second } };
  }
  return part.kind === 'number' ? numberIn({ ...part, label }, texts, units) : { ...part, label };
}

const optionIn = (option: ChoiceOption, texts: OptionTexts | undefined): ChoiceOption => ({
  ...option,
  ...(typeof texts === 'string' ? { label: texts } : texts),
});

type NumberPart = Extract<Part, { kind: 'number' }>;

function numberIn(
  part: NumberPart,
  { outsideStops, mostOf, leastBeside, advised, agrees }: PartTexts,
  units: UnitWords,
): Part {
  const boundIn = ({ si, shown }: Bound): Bound => ({
    si,
    shown: shown.replace(/^(\S+) (.+)$/, (whole, number: string, unit: string) =>
      units[unit] === undefined ? whole : `${number} ${units[unit]}`,
    ),
  });
  const limitIn = ({ by, values, otherwise }: Limit): Limit => ({
    by,
    values: Object.fromEntries(Object.entries(values).map(([id, bound]) => [id, boundIn(bound)])),
    otherwise: boundIn(otherwise),
  });
  return {
    ...part,
    ...(part.least ? { least: limitIn(part.least) } : {}),
    ...(part.most ? { most: limitIn(part.most) } : {}),
    ...(part.under ? { under: boundIn(part.under) } : {}),
    ...(outsideStops === undefined ? {} : { outsideStops }),
    ...(part.mostOf && mostOf !== undefined ? { mostOf: { ...part.mostOf, says: mostOf } } : {}),
    ...(part.leastBeside && leastBeside !== undefined
      ? { leastBeside: { ...part.leastBeside, says: leastBeside } }
      : {}),
    ...(part.agrees && agrees !== undefined ? { agrees: { ...part.agrees, says: agrees } } : {}),
    ...(part.advised && advised !== undefined ? { advised: { ...part.advised, says: advised } } : {}),
  };
}
