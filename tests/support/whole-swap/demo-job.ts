import type { ChecklistStep } from '#knowledge/checklist.ts';
import type { Part, PartOf } from '#knowledge/checklist-evidence.ts';
import { checklists } from '#knowledge/checklists.ts';
import type { WalkFacts } from '#walkthrough/walk-facts.ts';
import type { Asked } from './sight.ts';

/**
 * An invented house, built 1979, with a gas water heater on a draft hood. The crew's own electrically qualified lead may do
 * the wiring there, and a timer takes the place of the switch, so that a second box is opened.
 */
const demoHouse: WalkFacts = {
  'house-built': '1978-to-1980',
  access: 'attic',
  'ceiling-opening': 'as-it-is',
  'rated-ceiling': 'no',
  'duct-serves': 'this-fan-only',
  'duct-ending': 'wall-hood',
  'new-hood': 'no',
  'roof-work': 'none',
  'duct-against-collar': 'same-or-larger',
  'duct-material': 'flex',
  'duct-space': 'unheated',
  'duct-garage': 'clear-of-garage',
  'fan-role': 'bath-only',
  'fuel-appliances': 'natural-draft',
  'appliance-in-bath-zone': 'none',
  'unit-kind': 'fan-only',
  'fan-place': 'elsewhere',
  'insulation-near': 'clear',
  'control-wanted': 'countdown-timer',
  'switch-controls': 'fan-alone',
  'wiring-kind': 'copper-cable',
  'who-wires': 'crew-by-local-law',
  'assisted-housing': 'no',
};

/** What this invented crew agrees on with its customer, more than a small bathroom needs, and finds at the tub. */
const agreements: Said = { 'target-airflow airflow': '110 cfm', 'tub-distance distance': '5 ft' };

/** The cards of the lead of this invented crew: kind, number, last day. The apprentice has none. */
export const cardsOfLead = [
  ['electrically-qualified', 'EQ-1'],
  ['combustion-tester', 'CT-2'],
] as const;

export const lastDay = '2099-01-01';

export type ListId = keyof typeof checklists;

/** The step a page shows, by the code at the head of its line. */
export function stepShown(headline: string, list: ListId): ChecklistStep | undefined {
  const code = /^([A-Z]\d{2}[a-zL]?): /.exec(headline)?.[1];
  return checklists[list].steps.find((step) => step.code === code);
}

/** What was said at a step: the label of a choice, or words, each under the id of what it answers. */
export type Said = Readonly<Record<string, string>>;

/** An honest crew: it answers each step as is so in the demo house, and remembers what it agreed on. */
export interface HonestCrew {
  /** The answer that is chosen where a step asks one choice; nothing where it asks something else. */
  choice(step: ChecklistStep): { readonly id: string; readonly label: string } | undefined;
  fill(step: ChecklistStep, form: readonly Asked[]): Said;
}

export function honestCrew(facts: WalkFacts = demoHouse): HonestCrew {
  const remembered = new Map<string, string>();
  let pictures = 0;

  const chosen = ({ options, records }: PartOf<'choice'>) => {
    const fitting = options.filter(
      ({ stops, byOthers, signers }) =>
        stops === undefined && !byOthers && (signers ?? ['lead']).every((each) => each !== 'certified-renovator'),
    );
    return fitting.find(({ id }) => records !== undefined && facts[records] === id) ?? fitting[0];
  };

  const applies = (step: ChecklistStep, { onlyIf }: Part): boolean => {
    if (onlyIf === undefined) return true;
    const other = step.evidence.find(({ id }) => id === onlyIf.part);
    return other?.kind === 'choice' && onlyIf.is.includes(chosen(other)?.id ?? '');
  };

  const said = (step: ChecklistStep, part: Part, asked: Asked): string | undefined => {
    if (part.optional || !applies(step, part)) return undefined;
    switch (part.kind) {
      case 'choice':
        return chosen(part)?.label;
      case 'tick':
        return asked.choices[0] ?? 'yes';
      case 'tester-proof':
        return 'proving unit';
      case 'photo':
        pictures += 1;
        return asked.optional ? undefined : `${step.id}-${pictures}.png`;
      case 'text':
        return `words on ${part.id}${part.numbered ? ', number 4711' : ''}`;
      case 'pair':
        return numberWanted(asked.accepts);
      case 'number': {
        const agreed = agreedOn(step, part);
        const before = agreed && remembered.get(`${agreed.step} ${agreed.part}`);
        if (before && isMeanOf(step, part)) return doubled(before);
        return before ?? agreements[`${step.id} ${part.id}`] ?? numberWanted(asked.accepts);
      }
    }
  };

  return {
    choice(step) {
      const [only, ...more] = step.evidence;
      return only?.kind === 'choice' && more.length === 0 ? chosen(only) : undefined;
    },
    fill(step, form) {
      const slots = step.evidence.flatMap((part): { readonly id: string; readonly part: Part }[] =>
        part.kind === 'pair' ? [part.first, part.second].map(({ id }) => ({ id, part })) : [{ id: part.id, part }],
      );
      const pairs = form.flatMap((asked) => {
        const slot = slots.find(({ id }) => asked.id === id || asked.id === `part-${id}`);
        const words = slot && said(step, slot.part, asked);
        if (slot && words !== undefined) remembered.set(`${step.id} ${slot.id}`, words);
        return words === undefined ? [] : [[asked.id, words] as const];
      });
      return Object.fromEntries(pairs);
    },
  };
}

/** What an earlier step agreed on for this number, or for one of the same unit beside it: a mean is no less than its low end. */
function agreedOn({ evidence }: ChecklistStep, { unit, leastOf }: PartOf<'number'>) {
  const beside = evidence.flatMap((part) => (part.kind === 'number' && part.unit === unit ? (part.leastOf ?? []) : []));
  return leastOf ?? beside[0];
}

/** Whether another number of the step may be no more than this one: a mean, whose low end lies below it by the meter's error. */
const isMeanOf = ({ evidence }: ChecklistStep, { id }: PartOf<'number'>): boolean =>
  evidence.some((part) => part.kind === 'number' && part.mostOf?.part === id);

/** Twice as much: far enough above for every method to show the low end. */
const doubled = (words: string): string => words.replace(/^-?\d+(?:\.\d+)?/, (number) => String(2 * Number(number)));

/** A number that is fine, read from the words beside the field: its least or its most, and the example where any will do. */
function numberWanted(accepts: string): string {
  const [, least] = /at least (-?\d[^,;]*|R-\d[^,;]*)/.exec(accepts) ?? [];
  const [, most] = /at most ([^,;]+)/.exec(accepts) ?? [];
  const [, example] = /such as ([^,;]+?)(?: or |[,;]|$)/.exec(accepts) ?? [];
  const wanted = least ?? most ?? example;
  if (wanted === undefined) throw new Error(`Nothing says what number is wanted: ${accepts}`);
  return wanted.trim();
}
