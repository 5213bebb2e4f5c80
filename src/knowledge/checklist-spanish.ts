import type { Language } from '#words/language.ts';
import close from '../../knowledge/spanish/checklists/close.json' with { type: 'json' };
import duct from '../../knowledge/spanish/checklists/duct.json' with { type: 'json' };
import factsFile from '../../knowledge/spanish/checklists/facts.json' with { type: 'json' };
import hazards from '../../knowledge/spanish/checklists/hazards.json' with { type: 'json' };
import isolate from '../../knowledge/spanish/checklists/isolate.json' with { type: 'json' };
import listsFile from '../../knowledge/spanish/checklists/lists.json' with { type: 'json' };
import mount from '../../knowledge/spanish/checklists/mount.json' with { type: 'json' };
import opened from '../../knowledge/spanish/checklists/opened.json' with { type: 'json' };
import opening from '../../knowledge/spanish/checklists/opening.json' with { type: 'json' };
import plan from '../../knowledge/spanish/checklists/plan.json' with { type: 'json' };
import protect from '../../knowledge/spanish/checklists/protect.json' with { type: 'json' };
import remedy from '../../knowledge/spanish/checklists/remedy.json' with { type: 'json' };
import remove from '../../knowledge/spanish/checklists/remove.json' with { type: 'json' };
import rulesFile from '../../knowledge/spanish/checklists/rules.json' with { type: 'json' };
import shop from '../../knowledge/spanish/checklists/shop.json' with { type: 'json' };
import survey from '../../knowledge/spanish/checklists/survey.json' with { type: 'json' };
import test from '../../knowledge/spanish/checklists/test.json' with { type: 'json' };
import visit from '../../knowledge/spanish/checklists/visit.json' with { type: 'json' };
import wire from '../../knowledge/spanish/checklists/wire.json' with { type: 'json' };
import wordsFile from '../../knowledge/spanish/checklists/words.json' with { type: 'json' };
import type { Checklist, WalkRules } from './checklist.ts';
import { checklistWords, type WalkFact, type WalkFactId, walkFacts } from './checklist-facts.ts';
import { factIn, type StepTexts, stepIn, textsOfFact, textsOfStep } from './checklist-texts.ts';
import { type ChecklistId, checklists, stepLibraries } from './checklists.ts';
import { inSpanish } from './spanish.ts';

const folder = 'knowledge/spanish/checklists';

/** Spelled the same in both languages. */
const editions = ['IRC 2015', 'IRC 2018', 'IRC 2021', 'IRC 2024', 'ASHRAE 62.2', 'California 2025'];
const same = ['No', 'Metal', 'Panel', 'Control', 'Plan', ...editions];

function mapped<Key extends string, From, To>(
  entries: Readonly<Record<Key, From>>,
  to: (entry: From, key: Key) => To,
): Readonly<Record<Key, To>> {
  return Object.fromEntries(
    (Object.entries(entries) as [Key, From][]).map(([key, entry]) => [key, to(entry, key)]),
  ) as Readonly<Record<Key, To>>;
}

const translated = <English extends object>(name: string, english: English, contents: unknown): English =>
  inSpanish(`${folder}/${name}.json`, { english, same }, contents);

const files: Readonly<Record<keyof typeof stepLibraries, unknown>> = {
  survey,
  hazards,
  plan,
  protect,
  isolate,
  opened,
  remove,
  opening,
  duct,
  mount,
  wire,
  test,
  close,
  shop,
  remedy,
  visit,
};

/** What every step says in Spanish, by its id. */
const stepTexts: Readonly<Record<string, StepTexts>> = Object.assign(
  {},
  ...Object.values(mapped(stepLibraries, (steps, name) => translated(name, mapped(steps, textsOfStep), files[name]))),
);

const factTexts = translated('facts', mapped(walkFacts, textsOfFact), factsFile);
const words = translated('words', checklistWords, wordsFile);

const rulesOf = ({ idle, age, late, leaving }: WalkRules) => ({
  idle: idle.says,
  age: age.says,
  late: late.says,
  leaving,
});
const rules = translated('rules', rulesOf(checklists.swap.rules), rulesFile);

const lists = translated(
  'lists',
  mapped(checklists, ({ name, says, stages }) => ({
    name,
    says,
    stages: Object.fromEntries(stages.map(({ id, title }) => [id, title])),
  })),
  listsFile,
);

const facts: Readonly<Record<WalkFactId, WalkFact>> = mapped(walkFacts, (fact, id) => factIn(fact, factTexts[id]));

/** Units that are words; symbols stay as they are. */
const unitWords = { 'cubic inches': 'pulgadas cúbicas', 'in for each foot': 'in por pie', minutes: 'minutos' };

const spanish: Readonly<Record<ChecklistId, Checklist>> = mapped(checklists, (list, id) => {
  const { name, says, stages } = lists[id];
  const { idle, age, late } = list.rules;
  return {
    ...list,
    language: 'spanish' as const,
    name,
    says,
    stages: list.stages.map((stage) => ({ ...stage, title: stages[stage.id] ?? stage.title })),
    steps: list.steps.map((step) => stepIn(step, stepTexts[step.id] ?? textsOfStep(step), unitWords)),
    rules: {
      idle: { ...idle, says: rules.idle },
      age: { ...age, says: rules.age },
      late: { ...late, says: rules.late },
      leaving: rules.leaving,
    },
    facts,
    words,
  };
});

/** The lists in each language: the same steps, limits and holds in other words. */
export const checklistsIn: Readonly<Record<Language, Readonly<Record<ChecklistId, Checklist>>>> = {
  english: checklists,
  spanish,
};
